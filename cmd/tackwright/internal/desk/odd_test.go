package desk_test

import (
	"context"
	"html"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/model"
)

func TestBeforeThereIsAPlanNobodyIsOnTheGround(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	day := b.get("/day/"+wednesday, http.StatusOK)
	ride := b.get(rideOf(t, day, "Alban"), http.StatusOK)
	rider := regexp.MustCompile(`href="(/rider/[^"]+)"`).FindStringSubmatch(ride)[1]
	for _, page := range []string{day, b.get("/week/"+wednesday, http.StatusOK), ride, b.get(rider, http.StatusOK)} {
		says(t, strings.ReplaceAll(page, "No plan yet", "no plan yet"), "no plan yet")
		if strings.Contains(strings.ToLower(page), "on the ground") {
			t.Errorf("somebody is on the ground of no plan: %s", words(page))
		}
	}
	says(t, b.get("/week/"+wednesday, http.StatusOK), "no plan yet: 15 rides")
}

func TestAHorseOfAnyNameCanBeOut(t *testing.T) {
	dir := demo(t)
	name := `Zoë/O'Hara? <script>&"x"`
	file, err := os.OpenFile(filepath.Join(dir, "horses.toml"), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := file.WriteString("\n[[horse]]\nname = '''" + name + "'''\n"); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	b := open(t, dir, nil).nell()
	day := b.get("/day/"+wednesday, http.StatusOK)
	path := regexp.MustCompile(`href="(/horse/Zo[^"]+)"`).FindStringSubmatch(day)[1]
	page := b.get(html.UnescapeString(path), http.StatusOK)
	if strings.Contains(day+page, "<script>&") {
		t.Error("a name is taken for a script")
	}
	out := regexp.MustCompile(`action="(/horse/[^"]+/out[^"]*)"`).FindStringSubmatch(page)
	if out == nil {
		t.Fatal("it cannot be said to be out")
	}
	b.post(html.UnescapeString(out[1]), http.StatusOK, "from", "07:35", "why", "lame")
	c := read(t, dir).Centre
	if n := c.Notes[len(c.Notes)-1]; n.Horse == nil || n.Horse.Name != name || n.Kind != model.NoteHorseOut {
		t.Errorf("noted: %+v", n)
	}
}

// A name that begins as a flag does is a name.
func TestARiderOfAnyNameCanBeAskedAbout(t *testing.T) {
	dir := demo(t)
	files, err := filepath.Glob(filepath.Join(dir, "*.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(strings.NewReplacer(`"Lionel Dacey"`, `"-Lionel Dacey"`, `"Agnes Tolliver"`, `"-Agnes Tolliver"`).Replace(string(text))), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	b := open(t, dir, nil).nell()
	b.planned()
	ride := rideOf(t, b.get("/day/2026-10-15", http.StatusOK), "-Lionel")
	week := regexp.MustCompile(`href="(/rider/[^"]+)"`).FindStringSubmatch(b.get(ride, http.StatusOK))[1]
	room := regexp.MustCompile(`action="(/rider/[^"]+/room[^"]*)"`).FindStringSubmatch(b.get(week, http.StatusOK))[1]
	for path, answer := range map[string]string{ride + "/why": "Why is -Lionel on the ground? -Lionel could ride alone", ride + "/ways": "What would seat -Lionel? Each of these", room: "No room was found"} {
		b.post(path, http.StatusOK)
		says(t, b.found(), answer)
	}
	b.post(ride+"/ways", http.StatusOK)
	b.found()
	b.post(b.at+"/take", http.StatusOK, "way", "0")
	says(t, b.found(), "Taken", "-Lionel rides", "It stands, as version 7")
}

// An address that was torn must not plan or mend today.
func TestADateThatIsNoneIsNotToday(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.get("/day/2026-10-1", http.StatusNotFound)
	b.get("/horse/Wicket?on=tomorrow", http.StatusNotFound)
	b.post("/week/2026-13-40/plan", http.StatusNotFound)
}

func TestAFormThatIsTooLargeChangesNothing(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	before := len(read(t, dir).Centre.Horses)
	says(t, b.post("/add/horse", http.StatusConflict, "field0", strings.Repeat("long ", 2000)), "longer than 4000 letters")
	says(t, b.post("/add/horse", http.StatusRequestEntityTooLarge, "field0", "Duke", "field1", strings.Repeat("long ", 1<<18)), "more than a form can hold")
	if n := len(read(t, dir).Centre.Horses); n != before {
		t.Errorf("%d horses, not %d", n, before)
	}
}

// The wrong rider is soon touched with gloves on.
func TestARiderWhoWasSaidNotToComeIsHadBack(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	alban := rideOf(t, b.get("/day/"+wednesday, http.StatusOK), "Alban")
	b.post(alban+"/away", http.StatusOK)
	c := read(t, dir).Centre
	number := strconv.Itoa(c.Notes[len(c.Notes)-1].Number)
	says(t, b.get(alban, http.StatusOK), "Take note "+number+" back")
	b.post("/lift", http.StatusOK, "note", number)
	if page := b.get(alban, http.StatusOK); strings.Contains(words(page), "Away.") {
		t.Errorf("the rider is away still: %s", words(page))
	}
}

func TestAWeekThatIsPostedAsItIsPencilledIsNotToBePostedAgain(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	page := b.get("/week/"+wednesday, http.StatusOK)
	says(t, page, "Posted as pencilled:")
	if strings.Contains(page, "Compare and post") {
		t.Error("it can be posted once more")
	}
}

func TestWhoHadToSayHerNameIsBackWhereSheWas(t *testing.T) {
	d := open(t, demo(t), nil)
	b := d.browser()
	horse := "/horse/Wicket?on=" + wednesday
	at := strings.TrimSuffix(d.address, "/")
	ask := func(method, path, from string) string {
		r, err := http.NewRequest(method, at+path, strings.NewReader("from=07:35&why=lame"))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Referer", from)
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		got, err := b.Do(r)
		return b.done(got, err, path, map[string]int{"GET": http.StatusOK, "POST": http.StatusConflict}[method])
	}
	refused := ask("POST", "/horse/Wicket/out?on="+wednesday, at+horse)
	to := regexp.MustCompile(`href="(/name\?back=[^"]+)"`).FindStringSubmatch(refused)
	if to == nil {
		t.Fatalf("it does not lead to the names: %s", refused)
	}
	name := b.get(html.UnescapeString(to[1]), http.StatusOK)
	if !strings.Contains(name, `name="back" value="`+html.EscapeString(horse)+`"`) {
		t.Errorf("the names do not lead back: %s", name)
	}
	b.post("/name", http.StatusOK, "name", "Nell Ashworthy", "back", horse)
	if b.at != horse {
		t.Errorf("she is at %s", b.at)
	}
	// From elsewhere, or from what takes a form alone, nothing is led to.
	for _, from := range []string{"http://elsewhere.example/day/x", at + "/horse/Wicket/out", at + "/enter", ""} {
		if page := ask("GET", "/name", from); !strings.Contains(page, `name="back" value=""`) {
			t.Errorf("from %q it leads back: %s", from, page)
		}
	}
	for _, back := range []string{"//elsewhere.example/", `/\elsewhere.example`, "https://elsewhere.example/"} {
		b.post("/name", http.StatusOK, "name", "Nell Ashworthy", "back", back)
		if b.at != "/day/"+wednesday {
			t.Errorf("%s leads to %s", back, b.at)
		}
	}
}

func TestWhoFindsNoRoomIsToldWhy(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post("/week/"+wednesday+"/room", http.StatusOK)
	page := b.found()
	says(t, page, "No room was found in this week", "Why, lesson by lesson", "closed to others", "add a booking")
	if strings.Contains(page, "[[") {
		t.Error("the page speaks of an entry of a file")
	}
}

func TestAWeekThatIsPostedTwiceIsOneVersion(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	posted := len(read(t, dir).Centre.Posted)
	m := seal.FindStringSubmatch(b.get("/week/"+wednesday+"/post", http.StatusOK))
	b.post("/week/"+wednesday+"/post", http.StatusOK, "seal", m[1])
	if n := len(read(t, dir).Centre.Posted); n != posted {
		t.Errorf("%d versions, not %d", n, posted)
	}
}

// Two horses go lame in one minute, at two phones: the first mending takes in both.
func TestWhatIsNotedWhileADayIsMendedIsMendedToo(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	var two *browser
	tries := 0
	d := open(t, dir, func(o *desk.Options) {
		o.Search = func(ctx context.Context, in io.Reader, out io.Writer) error {
			if tries++; tries == 1 {
				two.post("/horse/Pilot/out?on="+wednesday, http.StatusOK, "from", "07:35", "why", "ill")
			}
			return searchHere(ctx, in, out)
		}
	})
	one := d.nell()
	two = d.nell()
	one.post("/horse/Wicket/out?on="+wednesday, http.StatusOK, "from", "07:35", "why", "lame")
	says(t, one.found(), "Because Wicket is out (lame)", "Because Pilot is out (ill)")
}

func TestADateThatNobodyClosedIsAPageFromWhatToMend(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	b := open(t, dir, func(o *desk.Options) { o.Now = func() time.Time { return morning.AddDate(0, 0, 1) } }).nell()
	page := b.get("/check", http.StatusOK)
	m := regexp.MustCompile(`<a href="(/day/[^"]+/close)">Confirm what was ridden.</a>`).FindStringSubmatch(page)
	if m == nil || strings.Contains(page, "FOLDER") {
		t.Fatalf("it leads to no page: %s", words(page))
	}
	b.get(m[1], http.StatusOK)
}
