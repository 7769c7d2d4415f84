// Package examples holds the demo centre of the README, and tests that it shows
// what a centre can say and stays worth a tour.
package examples

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tackwright/model"
	"tackwright/model/folder"
)

const demo = "sallowdene"

// open reads the demo centre, which has no mistake.
func open(t *testing.T) *folder.Folder {
	t.Helper()
	f, err := folder.Open(demo)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range f.Mistakes() {
		t.Errorf("a mistake in the demo: %s", m)
	}
	return f
}

// demoWeek is the week that the README plans.
func demoWeek(c *model.Centre) *model.Week { return c.Week(c.Today, 7, model.Instant{}) }

func TestTheDemoHasTheUntidinessOfAnyOffice(t *testing.T) {
	var got []string
	for _, f := range open(t).Findings(0) {
		got = append(got, f.Message)
	}
	want := []string{
		"Harriet Yeoland's form ran out on 2026-09-30, so there is no ride",
		"Saturday 2026-10-10 is not closed: it counts as posted, not confirmed",
		"the fit of S4 on Marigold runs out on 2026-10-31",
		"Cosmo Dunkerley has no size of seat, so that sizes of seats are not checked",
		"Cosmo Dunkerley has no weight, and so does not ride",
		"Lavinia Stroudley's form runs out on 2026-11-06",
		"Thu 13:30 on Thursday 2026-10-15: the riders of the lesson need 5 sidewalkers at once, and it counts on 3",
		"the check of S8 runs out on 2026-11-05",
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("findings are\n%s", strings.Join(got, "\n"))
	}
}

// The sizes of a median centre are those of the survey of US therapeutic centres
// (Watson 2018; J. Equine Vet. Sci. 2020): 10 horses, 75 rides in 5 days, 6
// lessons a day with 3 to 4 riders. 14 saddles and 20 girths are a guess of ours.
func TestTheDemoIsACentreOfMedianSize(t *testing.T) {
	c := open(t).Centre
	kinds := map[model.Kind]int{}
	for _, p := range c.Pieces {
		kinds[p.Kind]++
	}
	families := map[model.Family]int{}
	for _, p := range c.Pieces {
		if p.Kind == model.Girth {
			families[p.Family]++
		}
	}
	sizes := map[model.Label]bool{}
	for _, p := range c.Pieces {
		if p.Kind == model.Saddle {
			sizes[p.Label] = true
		}
	}
	instructors := 0
	for _, p := range c.Persons {
		if p.Role == model.Instructor {
			instructors++
		}
	}
	w := demoWeek(c)
	dates, busiest := map[model.Date]bool{}, map[model.Date]int{}
	for _, m := range w.Meetings {
		dates[m.Date] = true
		busiest[m.Date]++
	}
	for _, x := range []struct {
		what             string
		got, least, most int
	}{
		{"horses", len(c.Horses), 10, 10},
		{"saddles", kinds[model.Saddle] + kinds[model.Western], 14, 14},
		{"western saddles", kinds[model.Western], 1, 3},
		{"sizes of English saddles", len(sizes), 5, 14},
		{"bareback pads", kinds[model.BarebackPad], 2, 2},
		{"surcingles", kinds[model.Surcingle], 1, 1},
		{"girths", kinds[model.Girth], 20, 20},
		{"short girths", families[model.ShortGirth], 2, 18},
		{"long girths", families[model.LongGirth], 2, 18},
		{"cinches", families[model.Cinch], 1, 18},
		{"arenas", len(c.Arenas), 2, 2},
		{"instructors", instructors, 3, 4},
		{"lesson days", len(dates), 5, 5},
		{"rides of the week", len(w.Rides), 70, 80},
	} {
		if x.got < x.least || x.got > x.most {
			t.Errorf("%d %s, and not %d to %d", x.got, x.what, x.least, x.most)
		}
	}
	for d := range dates {
		if n := busiest[d]; n < 5 || n > 6 {
			t.Errorf("%d lessons on %s", n, d)
		}
	}
	term := c.TermOn(c.Today)
	lessonWeeks := map[model.Date]bool{}
	for d := term.First; d <= term.Last; d++ {
		for _, m := range c.Week(d, 1, model.Instant{}).Meetings {
			if m.NotHeld == "" {
				lessonWeeks[d.WeekStart(c.House.WeekStarts)] = true
			}
		}
	}
	if len(lessonWeeks) != 8 || len(term.Closures) == 0 || len(term.Pairings) < 40 {
		t.Errorf("the term has %d weeks, %d closures, %d pairings", len(lessonWeeks), len(term.Closures), len(term.Pairings))
	}
}

func TestTheDemoHasEveryTableOfTheManual(t *testing.T) {
	var text strings.Builder
	files, err := filepath.Glob(demo + "/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		text.Write(b)
	}
	written, _, _ := strings.Cut(folder.Keys(), "# What the program writes")
	heads := regexp.MustCompile("(?m)^##+ `\\[+([a-z_.]+)\\]+`$").FindAllStringSubmatch(written, -1)
	if len(heads) < 15 {
		t.Fatalf("the manual has only %d tables", len(heads))
	}
	for _, h := range heads {
		name := h[1]
		inner := name[strings.LastIndex(name, ".")+1:]
		if !strings.Contains(text.String(), "["+name+"]") &&
			!(inner != name && regexp.MustCompile(`(?m)^`+inner+` = [\[{]`).MatchString(text.String())) {
			t.Errorf("no [%s]", name)
		}
	}
	c := open(t).Centre
	for what, n := range map[string]int{"notes": len(c.Notes), "posted plans": len(c.Posted), "ridden records": len(c.Ridden)} {
		if n < 2 {
			t.Errorf("%d %s", n, what)
		}
	}
	kinds := map[model.NoteKind]bool{}
	for _, n := range c.Notes {
		kinds[n.Kind] = true
	}
	for _, k := range []model.NoteKind{model.NoteHorseOut, model.NotePieceOut, model.NoteRiderAway, model.NoteHands, model.NoteKeep} {
		if !kinds[k] {
			t.Errorf("no note of the kind %q", k)
		}
	}
	how := map[model.DiffersHow]bool{}
	for _, x := range c.Ridden {
		for _, d := range x.Differs {
			how[d.How] = true
		}
	}
	if len(how) != 4 {
		t.Errorf("ridden differs in %v", how)
	}
}

func TestNoTwoRidersOfTheDemoAreCalledAlike(t *testing.T) {
	first, called, marked := map[string][]*model.Rider{}, map[string]bool{}, 0
	for _, r := range open(t).Centre.Riders {
		first[r.First] = append(first[r.First], r)
		if called[r.Called()] {
			t.Errorf("two riders are called %s", r.Called())
		}
		called[r.Called()] = true
	}
	for name, rs := range first {
		for _, r := range rs {
			if len(rs) > 1 && r.Mark == "" {
				t.Errorf("%d riders have the first name %s, and %s has no mark", len(rs), name, r.Name)
			}
			if r.Mark != "" {
				marked++
			}
		}
	}
	if marked < 2 {
		t.Error("no first name is there twice")
	}
}

func TestNoNameOfTheDemoIsInTheDocumentsThatTheProjectShares(t *testing.T) {
	docs, err := filepath.Glob("../../shared/*.md")
	if err != nil {
		t.Fatal(err)
	}
	if len(docs) == 0 {
		t.Skip("../shared is not here")
	}
	word := regexp.MustCompile(`\p{Lu}\p{L}+`)
	known := map[string]bool{}
	for _, d := range docs {
		b, err := os.ReadFile(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range word.FindAllString(string(b), -1) {
			known[w] = true
		}
	}
	for _, n := range names(open(t).Centre) {
		for _, w := range word.FindAllString(n, -1) {
			if known[w] {
				t.Errorf("%s: %s is in ../shared", n, w)
			}
		}
	}
}

// names are the names of the centre and of its people and horses.
func names(c *model.Centre) []string {
	all := []string{c.Name}
	for _, p := range c.Persons {
		all = append(append(all, p.Name), p.Was...)
	}
	for _, h := range c.Horses {
		all = append(append(all, h.Name), h.Was...)
	}
	for _, r := range c.Riders {
		all = append(append(all, r.Name), r.Was...)
	}
	for _, f := range c.Chart {
		all = append(all, fmt.Sprint(f.By))
	}
	return all
}
