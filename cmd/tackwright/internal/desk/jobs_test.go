package desk_test

import (
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/model"
)

const wednesday = "2026-10-14"

var seal = regexp.MustCompile(`name="seal" value="([0-9a-f]+)"`)

// planned plans the week and posts it.
func (b *browser) planned() {
	b.t.Helper()
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	says(b.t, b.found(), "Proved: no plan does better")
	m := seal.FindStringSubmatch(b.get("/week/"+wednesday+"/post", http.StatusOK))
	if m == nil {
		b.t.Fatal("the plan cannot be posted")
	}
	b.post("/week/"+wednesday+"/post", http.StatusOK, "seal", m[1])
}

func TestTheCoordinatorPlansTheWeekComparesAndPosts(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	says(t, b.get("/day/"+wednesday, http.StatusOK), "Version 6, posted by Nell Ashworthy")
	posted := read(t, dir).Centre.Posted
	if last := posted[len(posted)-1]; last.By == nil || last.By.Name != "Nell Ashworthy" || last.From != model.On(2026, 10, 12) {
		t.Errorf("posted: %+v", last)
	}
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	b.found()
	says(t, b.get("/week/"+wednesday+"/post", http.StatusOK), "It stands in for version 6", "0 differ")
}

func TestWhatIsPostedIsWhatWasLookedAt(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	b.found()
	says(t, b.post("/week/"+wednesday+"/post", http.StatusConflict, "seal", "0123"), "no longer what you looked at")
}

func TestAPencilledWeekIsCalledBestOnlyOfTheFolderAsItIs(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post("/horse/Wicket/out?on=2026-10-14", http.StatusOK, "from", "07:35", "why", "lame")
	for _, page := range []string{b.get("/week/"+wednesday, http.StatusOK), b.get("/week/"+wednesday+"/post", http.StatusOK)} {
		says(t, page, "Pencilled:", "The week has changed since: nothing is proved of it.", "Plan again")
		if strings.Contains(page, "no plan does better") {
			t.Error("it is still called best")
		}
	}
}

// Two touches from the day: the horse, and why it cannot work.
func TestALameHorseIsTwoTouchesFromAProvedRepair(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	day := b.get("/day/"+wednesday, http.StatusOK)
	if !strings.Contains(day, `href="/horse/Wicket?on=2026-10-14"`) {
		t.Fatal("the day does not lead to the horse")
	}
	horse := b.get("/horse/Wicket?on=2026-10-14", http.StatusOK)
	says(t, horse, "Lame: mend the day")
	if !strings.Contains(horse, `value="07:35"`) {
		t.Error("the note does not begin now")
	}
	b.post("/horse/Wicket/out?on=2026-10-14", http.StatusOK, "from", "07:35", "why", "lame")
	job := b.at
	page := b.found()
	says(t, page, "4 rides are not as posted", "Proved:", "10:00 Alban", "Before Wicket: W1", "Because Wicket is out (lame)",
		"For the office: posted for later dates", "To be told")
	if n := len(read(t, dir).Centre.Posted); n != 3 {
		t.Fatalf("%d versions are posted before anybody said so", n)
	}
	page = b.post(job+"/post", http.StatusOK)
	says(t, page, "It stands, as version 7")
	if pdf := b.get(job+"/moved.pdf", http.StatusOK); !strings.HasPrefix(pdf, "%PDF-") {
		t.Error("what moved cannot be printed")
	}
	says(t, b.get("/day/"+wednesday, http.StatusOK), "Version 7")
	says(t, b.get("/horse/Wicket?on=2026-10-14", http.StatusOK), "Sound again, on my word")
	// Only somebody who may end it has it back.
	says(t, b.post("/horse/Wicket/back?on=2026-10-14", http.StatusConflict), "Nell Ashworthy may not end this")
	b.post("/name", http.StatusOK, "name", "Wilf Garrick-Lane")
	says(t, b.post("/horse/Wicket/back?on=2026-10-14", http.StatusOK), "Cannot work")
	c := read(t, dir).Centre
	n := c.Notes[len(c.Notes)-2] // the last has it back
	if n.Kind != model.NoteHorseOut || n.Why != model.Lame || n.Horse.Name != "Wicket" || n.By.Name != "Nell Ashworthy" || n.From != 7*60+35 {
		t.Errorf("noted: %+v", n)
	}
}

func TestThePullListIsTickedOffAndTheTicksStayAfterARestart(t *testing.T) {
	dir := demo(t)
	d := open(t, dir, nil)
	b := d.nell()
	b.planned()
	list := b.get("/pull/"+wednesday, http.StatusOK)
	ticks := regexp.MustCompile(`name="tick" value="([^"]+)"`).FindAllStringSubmatch(list, -1)
	if len(ticks) < 20 {
		t.Fatalf("%d things can be ticked", len(ticks))
	}
	b.post("/pull/"+wednesday, http.StatusOK, "tick", ticks[0][1])
	b.post("/pull/"+wednesday, http.StatusOK, "tick", ticks[1][1])
	says(t, b.post("/pull/"+wednesday, http.StatusOK, "untick", ticks[1][1]), "1 of ")
	says(t, b.post("/pull/"+wednesday, http.StatusConflict, "tick", "up Nobody 09:50 S99"), "no longer on the pull list")
	d.close()
	again := open(t, dir, nil).browser()
	page := again.get("/pull/"+wednesday, http.StatusOK)
	says(t, page, "1 of ", "done, Nell Ashworthy")
	if !strings.Contains(page, `name="untick" value="`+ticks[0][1]+`"`) {
		t.Error("the tick is gone")
	}
}

func TestARideIsKeptAndForbiddenByAButtonAndTakenBack(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	alban := rideOf(t, b.get("/day/"+wednesday, http.StatusOK), "Alban")
	says(t, b.post(alban+"/never", http.StatusOK, "horse", "Wicket"), "never, Alban, Wicket")
	says(t, b.post(alban+"/keep", http.StatusConflict, "horse", "Wicket"), "contradicts note")
	c := read(t, dir).Centre
	note := c.Notes[len(c.Notes)-1]
	b.post("/day/"+wednesday+"/mend", http.StatusOK)
	says(t, b.found(), "10:00 Alban Wed 10:00: another horse")
	b.post("/lift", http.StatusOK, "note", strconv.Itoa(note.Number))
	b.post("/lift", http.StatusConflict, "note", "99")
}

func TestWhyIsAnsweredWhereTheQuestionArises(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post("/horse/Wicket/out?on=2026-10-14", http.StatusOK, "from", "07:35", "why", "lame")
	job := b.at
	b.found()
	b.post(job+"/post", http.StatusOK)
	day := b.get("/day/"+wednesday, http.StatusOK)
	b.post(rideOf(t, day, "Felix")+"/why", http.StatusOK)
	says(t, b.found(), "Why is Felix on the ground?", "Felix could ride alone, and not with all that ride now.")
	b.post(rideOf(t, day, "Alban")+"/whynot", http.StatusOK, "horse", "Quince")
	says(t, b.found(), "Why is Alban not on Quince?")
}

// rideOf is where a day's page leads for a rider.
func rideOf(t testing.TB, day, rider string) string {
	t.Helper()
	m := regexp.MustCompile(`href="(/ride/[^"]+)">` + rider + `<`).FindStringSubmatch(day)
	if m == nil {
		t.Fatalf("%s is not on the page", rider)
	}
	return m[1]
}

func TestNothingIsNotedByNobody(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).browser()
	b.get("/", http.StatusOK)
	before := len(read(t, dir).Centre.Notes)
	says(t, b.post("/horse/Wicket/out?on=2026-10-14", http.StatusConflict, "from", "07:35", "why", "lame"), "Say who you are first")
	if n := len(read(t, dir).Centre.Notes); n != before {
		t.Errorf("%d notes, not %d", n, before)
	}
}

func TestPagesAreServedWhileASearchGoesOn(t *testing.T) {
	held := make(chan struct{})
	b := open(t, demo(t), func(o *desk.Options) { o.Search = stuck(held) }).nell()
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	job := b.at
	b.post("/week/"+wednesday+"/buy", http.StatusOK) // waits for no week that is planned
	for try := 0; strings.Contains(b.get(b.at, http.StatusOK), "Waits for another search"); try++ {
		if try == 100 {
			t.Fatal("a question waits for the week that is planned")
		}
		time.Sleep(20 * time.Millisecond)
	}
	b.post("/week/"+wednesday+"/room", http.StatusOK)
	says(t, b.get(b.at, http.StatusOK), "Waits for another search to end")
	for _, path := range []string{"/week/" + wednesday, "/day/" + wednesday, job} {
		begun := time.Now()
		b.get(path, http.StatusOK)
		if took := time.Since(begun); took > 2*time.Second {
			t.Errorf("%s waited %s", path, took)
		}
	}
	close(held)
}

func TestADayIsClosedAsItWasRiddenAndAnew(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	page := b.get("/day/"+wednesday+"/close", http.StatusOK)
	field := func(rider string) string {
		m := regexp.MustCompile(`<legend>[^<]* ` + rider + `,[^<]*</legend>\s*<label for="(ride\w+)-how"`).FindStringSubmatch(page)
		if m == nil {
			t.Fatalf("%s cannot be closed", rider)
		}
		return m[1]
	}
	alban, orla, una := field("Alban"), field("Orla"), field("Una")
	says(t, b.post("/day/"+wednesday+"/close", http.StatusConflict, orla+"-how", "horse", orla+"-horse", "Teasel"), "cannot both have had Teasel")
	says(t, b.post("/day/"+wednesday+"/close", http.StatusConflict, una+"-how", "short", una+"-until", "09:00"), "say when it ended")
	b.post("/day/"+wednesday+"/close", http.StatusOK, alban+"-how", "no-show", orla+"-how", "horse", orla+"-horse", "Hobnail", una+"-how", "short", una+"-until", "11:20")
	closed := func() map[string]model.DiffersHow {
		differs := map[string]model.DiffersHow{}
		for _, x := range read(t, dir).Centre.ClosedOn(model.DateOf(morning)).Differs {
			differs[x.Rider.Called()] = x.How
		}
		return differs
	}
	if got := closed(); len(got) != 3 || got["Alban"] != model.NoShow || got["Orla"] != model.OtherHorse || got["Una"] != model.CutShort {
		t.Errorf("closed: %v", got)
	}
	says(t, b.get("/day/"+wednesday+"/close", http.StatusOK), "Closed by Nell Ashworthy")
	b.post("/day/"+wednesday+"/close", http.StatusOK, una+"-how", "short", una+"-until", "11:20")
	if got := closed(); len(got) != 1 {
		t.Errorf("closed anew: %v", got)
	}
}

// What is told otherwise while somebody closes the day is not what she closes, though
// she says nothing of it.
func TestADayThatIsMendedMeanwhileIsLookedAtAgainBeforeItIsClosed(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	page := b.get("/day/"+wednesday+"/close", http.StatusOK)
	var asTold []string
	for _, m := range regexp.MustCompile(`name="(ride\w+-how)"`).FindAllStringSubmatch(page, -1) {
		asTold = append(asTold, m[1], "")
	}
	b.post("/horse/Wicket/out?on="+wednesday, http.StatusOK, "from", "07:35", "why", "lame")
	b.found()
	b.post(b.at+"/post", http.StatusOK)
	says(t, b.post("/day/"+wednesday+"/close", http.StatusConflict, asTold...), "changed since you looked at it", "Nothing was changed")
}

// The note is on the disk before its mending begins, and the day says so.
func TestARestartInTheMiddleOfMendingLosesNothing(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	held := make(chan struct{})
	defer close(held)
	d := open(t, dir, func(o *desk.Options) { o.Search = stuck(held) })
	b := d.nell()
	b.post("/horse/Wicket/out?on=2026-10-14", http.StatusOK, "from", "07:35", "why", "lame")
	job := b.at
	d.close()
	b = open(t, dir, nil).nell()
	says(t, b.get(job, http.StatusNotFound), "no longer kept")
	says(t, b.get("/day/"+wednesday, http.StatusOK), "No longer possible", "Wicket is out (lame)", "Mend the day")
	b.post("/day/"+wednesday+"/mend", http.StatusOK)
	says(t, b.found(), "Before and after")
}

func TestWhatElseHappensIsNotedAndTheDayMended(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	at := "/day/" + wednesday + "/happened"
	b.get(at, http.StatusOK)
	b.post(at, http.StatusOK, "kind", "close", "arena", "Paddock", "from", "10:00", "until", "12:00")
	says(t, b.found(), "10:15 Desmond")
	says(t, b.post(at, http.StatusOK, "kind", "weather", "temperature-such-as-84f-or-29c", "29C", "humidity-in-percent", "60"),
		"weather, 85 °F (29 °C) and 60 % make 145: caution (a person decides)")
	if b.at != "/day/"+wednesday {
		t.Errorf("weather alone leads to %s", b.at)
	}
	says(t, b.post(at, http.StatusConflict, "kind", "move", "lesson", "Wed 10:00", "begins-at", "soon"), "is not a time of day")
	says(t, b.post(at, http.StatusConflict, "kind", "cancel"), "Say: lesson")
	b.post(at, http.StatusOK, "kind", "helpers", "lesson", "Wed 10:00", "leaders", "5", "sidewalkers", "1")
	for _, path := range []string{"/day/" + wednesday, "/history"} {
		says(t, b.get(path, http.StatusOK), "helpers", "Wed 10:00, 5 leaders and 1 sidewalker")
	}
	notes := read(t, dir).Centre.Notes
	if n := notes[len(notes)-3]; n.Kind != model.NoteArenaClosed || n.Arena.Name != "Paddock" || n.By.Name != "Nell Ashworthy" {
		t.Errorf("noted: %+v", n)
	}
}

func TestAButtonTouchedTwiceBeginsOneSearch(t *testing.T) {
	held := make(chan struct{})
	defer close(held)
	b := open(t, demo(t), func(o *desk.Options) { o.Search = stuck(held) }).nell()
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	first := b.at
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	if b.at != first {
		t.Errorf("%s and %s look for the same", first, b.at)
	}
	if b.post("/week/2026-10-21/plan", http.StatusOK); b.at == first {
		t.Error("another week is taken for it")
	}
}
