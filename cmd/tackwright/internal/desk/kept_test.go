package desk_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/model"
)

// clock is a desk's time, which a test puts on.
type clock struct{ ahead atomic.Int64 }

func (c *clock) now() time.Time         { return morning.Add(time.Duration(c.ahead.Load())) }
func (c *clock) passes(d time.Duration) { c.ahead.Add(int64(d)) }

var carriedField = regexp.MustCompile(`<input type="hidden" name="([^"]+)" value="([^"]*)">`)

// carried are the fields that a page carries unseen, as a form has them.
func carried(page string) (all []string) {
	for _, m := range carriedField.FindAllStringSubmatch(page, -1) {
		all = append(all, m[1], html.UnescapeString(m[2]))
	}
	return all
}

func TestAFormThatCameTooLateIsFilledInAgainAfterThePassPhrase(t *testing.T) {
	dir := demo(t)
	var c clock
	d := open(t, dir, func(o *desk.Options) { withPhrases(o); o.Now = c.now })
	b := d.browser()
	b.post("/enter", http.StatusOK, "phrase", phrases[model.Office])
	b.post("/name", http.StatusOK, "name", "Nell Ashworthy")
	path, page := b.form("Wicket")
	looks, weight := fields(page)["looks"], fields(page)["weight"]
	c.passes(13 * time.Hour)
	door := b.post(path, http.StatusForbidden, looks[0], "golden,\na \"new\" scar", "was-"+looks[0], looks[1], weight[0], weight[1], "was-"+weight[0], weight[1])
	says(t, door, "Your session is over, and nothing was saved yet", "Pass phrase of the barn")
	door = b.post("/enter", http.StatusForbidden, append(carried(door), "phrase", "not the phrase at all")...)
	if strings.Contains(door, "not the phrase at all") {
		t.Error("the page carries a pass phrase")
	}
	b.post("/enter", http.StatusOK, append(carried(door), "phrase", phrases[model.Office])...)
	if strings.Contains(b.at, "golden") {
		t.Errorf("the address tells what was typed: %s", b.at)
	}
	page = b.post("/name", http.StatusOK, "name", "Nell Ashworthy", "back", path)
	says(t, page, "Nothing of this was saved yet")
	if b.at != path || !strings.Contains(page, html.EscapeString("golden,\na \"new\" scar")) {
		t.Fatalf("at %s: %s", b.at, words(page))
	}
	b.post(path, http.StatusOK, looks[0], "golden", "was-"+looks[0], looks[1])
	if page := b.get(path, http.StatusOK); strings.Contains(page, "was saved yet") {
		t.Error("what was sent is still kept")
	}
	for _, h := range read(t, dir).Centre.Horses {
		if h.Name == "Wicket" && h.Looks != "golden" {
			t.Errorf("Wicket is %q", h.Looks)
		}
	}
}

func TestAFormOutlastsARestartAndTheNameThatIsAskedFor(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	b := open(t, dir, nil).browser() // nobody has said her name at it
	at := "/day/" + wednesday + "/happened"
	says(t, b.post(at, http.StatusConflict, "kind", "close", "arena", "Paddock", "from", "10:00", "until", "12:00"), "Say who you are first")
	page := b.post("/name", http.StatusOK, "name", "Nell Ashworthy", "back", at)
	for _, want := range []string{"<details open><summary>An arena is closed", "<option selected>Paddock", `value="10:00"`, `value="12:00"`} {
		if !strings.Contains(page, want) {
			t.Errorf("the page has no %s", want)
		}
	}
	says(t, page, "Nothing of this was saved yet")
	// Nobody else finds it there.
	b.post("/name", http.StatusOK, "name", "Oona Tarrowby", "back", at)
	if page := b.get(at, http.StatusOK); strings.Contains(page, "<details open>") {
		t.Error("another has what she filled in")
	}
}

func TestADayThatWasToBeClosedIsFilledInAgain(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	b := open(t, dir, nil).browser()
	at := "/day/" + wednesday + "/close"
	id := regexp.MustCompile(`name="(ride\w+)-how"`).FindStringSubmatch(b.get(at, http.StatusOK))[1]
	b.post(at, http.StatusConflict, id+"-how", "short", id+"-until", "10:20")
	page := b.post("/name", http.StatusOK, "name", "Nell Ashworthy", "back", at)
	says(t, page, "Nothing of this was saved yet")
	if !strings.Contains(page, `type="time" value="10:20"`) || !strings.Contains(page, `<option value="short" selected>`) {
		t.Error("it is not filled in")
	}
	if read(t, dir).Centre.ClosedOn(model.DateOf(morning)) != nil {
		t.Error("the day is closed")
	}
}

func TestWhoHasToEnterComesToWhatSheWanted(t *testing.T) {
	b := open(t, demo(t), withPhrases).browser()
	b.get("/week/"+wednesday, http.StatusOK)
	if want := "/enter?back=" + url.QueryEscape("/week/"+wednesday); b.at != want {
		t.Errorf("at %s, not %s", b.at, want)
	}
	b.post("/enter", http.StatusOK, "phrase", phrases[model.Barn], "back", "/week/"+wednesday)
	if want := "/name?back=" + url.QueryEscape("/week/"+wednesday); b.at != want {
		t.Errorf("at %s, not %s", b.at, want)
	}
	b.post("/leave", http.StatusOK)
	for _, elsewhere := range []string{"//elsewhere.example/", "https://elsewhere.example/add/horse"} {
		b.post("/enter", http.StatusOK, "phrase", phrases[model.Barn], "back", elsewhere, "form", elsewhere, "kept-x", "y")
		if b.at != "/name" {
			t.Errorf("%s leads to %s", elsewhere, b.at)
		}
	}
}

// What a page from elsewhere sends is not even shown again.
func TestAFormFromElsewhereIsNotKept(t *testing.T) {
	d := open(t, demo(t), withPhrases)
	r, err := http.NewRequest("POST", d.address+"add/horse", strings.NewReader("field0=Sleipnir"))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	b := d.browser()
	got, err := b.Do(r)
	if page := b.done(got, err, "/add/horse", http.StatusForbidden); strings.Contains(page, "Sleipnir") {
		t.Error("it is kept")
	}
}
