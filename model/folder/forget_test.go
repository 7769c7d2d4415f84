package folder

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// worked is what each horse did on each date of the records: minutes x percents.
func worked(f *Folder) map[string]int64 {
	all := map[string]int64{}
	for _, p := range f.Centre.Posted {
		for _, t := range p.Told {
			if t.Turn != nil {
				all[fmt.Sprintf("v%d %s %s", p.Version, t.Date, t.Turn.Horse.Name)] += t.Work
			}
		}
	}
	for _, x := range f.Centre.Ridden {
		for _, d := range x.Differs {
			if d.Turn != nil {
				all[fmt.Sprintf("ridden %s %s", x.Date, d.Turn.Horse.Name)] += int64(d.End - d.Start)
			}
		}
	}
	return all
}

// adas is the small centre with Ada Grey in every place that can name a rider.
func adas(t testing.TB) *Folder {
	text := strings.Replace(yard, `[[rider]]
name = "Ada Grey"`, `# Ada: her mother's number is 555 0100.
[[rider]]
name = "Ada Grey"   # once Ada Bell
was = "Ada Bell"
likes = [{ horse = "Duke" }]`, 1) + `
# Tuesdays were Ada Grey's own wish.
[[term]]
name = "Autumn"
first = 2026-09-01
last = 2026-12-18
pairings = [{ rider = "Cy Reed", horse = "Pepper" }, { rider = "Ada Grey", horse = "Duke" }]

[[booking]]   # for ADA GREY
on = 2026-11-25
lesson = "Wed 11:00"
rider = "Ada \u0047rey"

[[booking]]
on = 2026-11-26
lesson = "Thu 11:00"
rider = "Cy Reed"
why = "in place of Ada  Grey"

# Ben is next.
[[rider]]
name = "Ada Greyson"
weight = "50 kg"
height = "150 cm"
`
	for day, riders := range map[string]string{
		"Wed": `"Ada Grey"`, "Fri": `[{ rider = "Ada Grey", from = 2026-10-02 }]`,
		"Thu": "[\n    \"Ada Bell\", # by her old name\n    # Greyson rides last.\n    \"Ada Greyson\"\n]",
	} {
		text += fmt.Sprintf("[[lesson]]\nname = \"%s 11:00\"\nday = \"%s\"\nstart = 11:00\nlength = \"30 min\"\narena = \"Indoor\"\ninstructor = \"Jo Marsh\"\nriders = %s\n", day, day, riders)
	}
	f := openTxtar(t, &txtar.Archive{Files: []txtar.File{
		{Name: "yard.toml", Data: []byte(text)},
		{Name: "standing/2026-09-01.toml", Data: []byte("term = \"Autumn\"\nby = \"Jo Marsh\"\nat = 2026-09-01T09:00\n[[pairing]]\nrider = \"Ada Grey\"\nlesson = \"Wed 11:00\"\nhorse = \"Pepper\"\n")},
		{Name: "yard.toml.bak", Data: []byte(text)},
		{Name: "letter.txt", Data: []byte("Dear Mrs Grey, Ada  grey rides on Tuesday.")},
		{Name: "notes/hand.toml", Data: []byte("# asked by Ada Grey\n[[note]]\nnumber = 1\nkind = \"rider added\"\nat = 2026-11-20T08:00\nby = \"Jo Marsh\"\ndate = 2026-12-01\nrider = \"Ada Grey\"\nlesson = \"Tue 10:00\"\nwords = \"hip is better\"\n")},
	}})
	if got := shown(f.Mistakes()); got != "" {
		t.Fatal(got)
	}
	jo, ada := f.Centre.Persons[0], f.Centre.Riders[0]
	w, p := adaRides(f, monday)
	if _, _, err := f.WritePlan(w, p); err != nil {
		t.Fatal(err)
	}
	post(t, f, monday, adaRides)
	f = reopen(t, f)
	noted(t, f, &model.Note{Kind: model.NoteKeep, By: jo, At: tuesdayMorning, Date: monday + 8, Rider: ada, Horse: f.Centre.Horses[0], Words: "promised"})
	for _, minute := range []model.Minute{1100, 1200} { // history keeps the first
		err := f.Close(&model.Ridden{Date: monday + 1, By: jo, At: model.Instant{Date: monday + 1, Minute: minute}, Differs: []model.Differs{{How: model.ExtraRide,
			Lesson: f.Centre.Lessons[0], Rider: ada, Turn: &model.Turn{Horse: f.Centre.Horses[1]}, Start: 660, End: 690}}})
		if err != nil {
			t.Fatal(err)
		}
	}
	return reopen(t, f)
}

func TestARiderIsForgottenAndTheHorsesRecordStays(t *testing.T) {
	f := adas(t)
	was := worked(f)
	ada := f.Centre.Riders[0]
	got, err := f.Forget(ada, f.Centre.Persons[0], tuesdayMorning)
	if err != nil {
		t.Fatal(err)
	}
	if got.As != "rider forgotten 1" || !slices.Equal(got.Left, []string{"letter.txt", "yard.toml.bak"}) {
		t.Errorf("forgotten as %+v", got)
	}
	all := files(t, f.Dir)
	for name, text := range all {
		if slices.Contains(got.Left, name) {
			continue
		}
		low := strings.ReplaceAll(strings.ToLower(text), "ada greyson", "")
		for _, gone := range []string{"ada grey", `ada \u0047rey`, "ada  grey", "ada bell", "555 0100", "hip is better", "promised", "60 kg"} {
			if strings.Contains(low, gone) {
				t.Errorf("%s holds %q:\n%s", name, gone, text)
			}
		}
	}
	g := reopen(t, f)
	if d := cmp.Diff(was, worked(g)); d != "" || len(was) < 2 {
		t.Errorf("what the horses did is now another: %s", d)
	}
	if r := g.Centre.Riders; len(r) != 2 || r[0].Name != "Cy Reed" || r[1].Name != "Ada Greyson" {
		t.Errorf("the riders are now %d", len(r))
	}
	if w := g.Centre.Week(monday+7, 7, model.Instant{}); len(w.Rides) != 2 {
		t.Errorf("the week after has %v", w.Rides)
	}
	if !strings.Contains(all["yard.toml"], "# Greyson rides last.") || !strings.Contains(all["yard.toml"], "# Ben is next.") {
		t.Errorf("remarks on others are gone: %s", all["yard.toml"])
	}
	if len(g.Centre.Notes) != 2 || len(all["plans/2026-11-23.toml"]) > 0 {
		t.Errorf("%d notes, plans %q", len(g.Centre.Notes), all["plans/2026-11-23.toml"])
	}
	if w, p, troubles, err := g.ReadPosted(g.Centre.Posted[0]); err != nil || len(troubles) > 0 || len(w.Rides) == 0 || w.Fingerprint(p) == p.Proof.Hash {
		t.Errorf("what was posted is not read without her, or still counts as proved: %v %s", err, shown(troubles))
	}
	// What held her is not brought back.
	var refused *RefusedError
	for _, n := range []int{4, 5} { // the date closed again; the forgetting
		if _, err := g.Undo(n, g.Centre.Persons[0], tuesdayMorning); !errors.As(err, &refused) {
			t.Errorf("change %d was undone: %v", n, err)
		}
	}
}

func TestTheNextWhoIsForgottenHasAnotherName(t *testing.T) {
	f := adas(t)
	for i, want := range []string{"rider forgotten 1", "rider forgotten 2"} {
		got, err := f.Forget(f.Centre.Riders[0], f.Centre.Persons[0], tuesdayMorning)
		if err != nil || got.As != want {
			t.Fatalf("rider %d: %+v %v", i, got, err)
		}
		f = reopen(t, f)
	}
	if n := len(f.Centre.Riders); n != 1 {
		t.Errorf("%d riders are left", n)
	}
	var refused *RefusedError
	if _, err := f.Forget(&model.Rider{Name: "Nobody"}, f.Centre.Persons[0], tuesdayMorning); !errors.As(err, &refused) {
		t.Errorf("got %v", err)
	}
}

func TestARiderIsNotForgottenInAFileEditedMeanwhile(t *testing.T) {
	f := adas(t)
	hand := files(t, f.Dir)["yard.toml"] + "# more\n"
	if err := os.WriteFile(filepath.Join(f.Dir, "yard.toml"), []byte(hand), 0o644); err != nil {
		t.Fatal(err)
	}
	var changed *ChangedError
	if _, err := f.Forget(f.Centre.Riders[0], f.Centre.Persons[0], tuesdayMorning); !errors.As(err, &changed) || files(t, f.Dir)["yard.toml"] != hand {
		t.Errorf("got %v", err)
	}
}

func TestWhatARecordKeepsOfARiderGoesToo(t *testing.T) {
	names := newEraser([]string{"Zo\u00eb Grey"})
	names.as = forgottenName(7)
	for _, c := range []struct{ file, text, want string }{
		{"history/0000/000001.toml", "[[file]]\nname = \"riders.toml\"\ntext = '''\n[[rider]]\nname = \"Zo\u00eb Grey\"\nweight = \"60 kg\"\n'''\n",
			"[[file]]\nname = \"riders.toml\"\n# what it held is not kept: it named a rider who is forgotten\n"},
		{"notes/a.toml", "[[note]]\nrider = \"Zo\\u00eb Grey\"\n", "[[note]]\nrider = \"rider forgotten 7\"\n"},
		{"notes/a.toml", "# Zoe\u0308 GREY, and Zo\u00eb Greyling\n", "# rider forgotten 7, and Zo\u00eb Greyling\n"}, // an accent apart
		{"posted/a.toml", "[[ride]]\nrider = \"Zo\u00eb Grey\"\nground = [\"too heavy for Duke\"]\n", "[[ride]]\nrider = \"rider forgotten 7\"\nground = []\n"},
	} {
		if got := string(names.outOfRecord(c.file, []byte(c.text))); got != c.want || !names.mayBeIn([]byte(c.text)) {
			t.Errorf("%s became %s, want %s", c.text, got, c.want)
		}
	}
}
