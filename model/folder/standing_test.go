package folder

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// termFolder is a term with three riders in a lesson, of whom Ada has a pairing
// of the person's own.
const termFolder = `
-- all.toml --
[centre]
name = "Larkfield"
today = 2026-11-23
[[person]]
name = "Jo Marsh"
role = "office"
[[person]]
name = "Kim"
role = "instructor"
[[arena]]
name = "Indoor"
[[horse]]
name = "Duke"
[[horse]]
name = "Star"
[[tack]]
tag = "S1"
kind = "saddle"
[[rider]]
name = "Ada"
[[rider]]
name = "Ben"
[[rider]]
name = "Cy"
[[lesson]]
name = "Tue 10:00"
arena = "Indoor"
instructor = "Kim"
start = 10:00
length = "45 min"
day = "Tue"
riders = ["Ada", "Ben", "Cy"]
[[term]]
name = "Winter"
first = 2026-11-02
last = 2026-12-18
pairings = [{ rider = "Ada", horse = "Duke" }]
`

// pairings reads "Ada all Duke -, Ben Tue 10:00 Star S1".
func pairings(f *Folder) string {
	var all []string
	for _, p := range f.Centre.Terms[0].Pairings {
		in, seat := "all", "-"
		if p.Lesson != nil {
			in = p.Lesson.Name
		}
		if p.Seat != nil {
			seat = p.Seat.Tag
		}
		all = append(all, fmt.Sprint(p.Rider.Name, " ", in, " ", p.Horse.Name, " ", seat))
	}
	return strings.Join(all, ", ")
}

var monday8 = model.Instant{Date: model.On(2026, 11, 23), Minute: 8 * 60}

// writeStanding opens a folder, pairs all three with Star in S1, and opens it anew.
func writeStanding(t *testing.T) (*Folder, string) {
	t.Helper()
	f := openTxtar(t, txtar.Parse([]byte(termFolder)))
	c := f.Centre
	var all []model.Pairing
	for _, x := range c.Riders {
		all = append(all, model.Pairing{Rider: x, Lesson: c.Lessons[0], Horse: c.Horses[1], Seat: c.Pieces[0]})
	}
	name, err := f.WriteStanding(c.Terms[0], all, c.Persons[0], monday8)
	if err != nil {
		t.Fatal(err)
	}
	return again(t, f), name
}

func again(t *testing.T, f *Folder) *Folder {
	t.Helper()
	g, err := Open(f.Dir)
	if err != nil {
		t.Fatal(err)
	}
	if ms := g.Mistakes(); len(ms) > 0 {
		t.Fatal(shown(ms))
	}
	return g
}

func TestStandingPairingsAreReadAgainBehindThePersonsOwn(t *testing.T) {
	f, name := writeStanding(t)
	if name != "standing/2026-11-02.toml" {
		t.Errorf("written into %s", name)
	}
	if got, want := pairings(f), "Ada all Duke -, Ben Tue 10:00 Star S1, Cy Tue 10:00 Star S1"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestStandingPairingsOfWhatIsGoneDoNotCountAndAreNoMistake(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{`name = "Star"`, `name = "Sun"`, "Ada all Duke -"},
		{`name = "Star"`, "name = \"Sun\"\nwas = [\"Star\"]", "Ada all Duke -, Ben Tue 10:00 Sun S1, Cy Tue 10:00 Sun S1"},
		{`tag = "S1"`, `tag = "S2"`, "Ada all Duke -, Ben Tue 10:00 Star -, Cy Tue 10:00 Star -"},
		{`"Ben"`, `"Bee"`, "Ada all Duke -, Cy Tue 10:00 Star S1"},
		{`"Tue 10:00"`, `"Tuesday"`, "Ada all Duke -"},
	} {
		f, _ := writeStanding(t)
		file := filepath.Join(f.Dir, "all.toml")
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(strings.ReplaceAll(string(text), c.old, c.new)), 0o644); err != nil {
			t.Fatal(err)
		}
		if got := pairings(again(t, f)); got != c.want {
			t.Errorf("%s in place of %s: %q, want %q", c.new, c.old, got, c.want)
		}
	}
}

func TestStandingPairingsWrittenAnewTakeThePlaceOfTheOldAndCanBePutBack(t *testing.T) {
	f, name := writeStanding(t)
	c := f.Centre
	if _, err := f.WriteStanding(c.Terms[0], []model.Pairing{{Rider: c.Riders[2], Lesson: c.Lessons[0], Horse: c.Horses[0]}}, c.Persons[0], monday8); err != nil {
		t.Fatal(err)
	}
	f = again(t, f)
	if got, want := pairings(f), "Ada all Duke -, Cy Tue 10:00 Duke -"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if _, err := f.Undo(0, f.Centre.Persons[0], monday8); err != nil {
		t.Fatal(err)
	}
	if got, want := pairings(again(t, f)), "Ada all Duke -, Ben Tue 10:00 Star S1, Cy Tue 10:00 Star S1"; got != want {
		t.Errorf("after undoing: %q, want %q", got, want)
	}
	files, err := os.ReadDir(filepath.Join(f.Dir, "standing"))
	if err != nil || len(files) != 1 || files[0].Name() != filepath.Base(name) {
		t.Errorf("%v, %v", files, err)
	}
}

func TestOneWithoutANameTakesNoStandingPairings(t *testing.T) {
	f := openTxtar(t, txtar.Parse([]byte(termFolder)))
	if _, err := f.WriteStanding(f.Centre.Terms[0], nil, nil, monday8); err == nil {
		t.Error("written by nobody")
	}
}

func TestTwoFilesOfStandingPairingsOfATermAreAMistake(t *testing.T) {
	f, name := writeStanding(t)
	text, err := os.ReadFile(filepath.Join(f.Dir, name))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(f.Dir, "standing", "mine.toml"), text, 0o644); err != nil {
		t.Fatal(err)
	}
	g, err := Open(f.Dir)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.ContainsFunc(g.Mistakes(), func(x Trouble) bool {
		return strings.Contains(x.Message, "two files have the standing pairings of Winter")
	}) {
		t.Errorf("mistakes: %s", shown(g.Mistakes()))
	}
}
