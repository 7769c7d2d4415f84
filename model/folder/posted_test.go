package folder

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// standing is what is posted for the riders of a date: "v2 Ada Grey on Duke".
func standing(f *Folder, date model.Date) string {
	var out []string
	for i := len(f.Centre.Posted) - 1; i >= 0; i-- {
		p := f.Centre.Posted[i]
		if date < p.From || p.Until < date {
			continue
		}
		for _, t := range p.Told {
			horse := "the ground"
			if t.Turn != nil {
				horse = t.Turn.Horse.Name
			}
			if t.Date == date {
				out = append(out, t.Rider.Name+" on "+horse)
			}
		}
		return "v" + string(rune('0'+p.Version)) + " " + strings.Join(out, ", ")
	}
	return "nothing"
}

func TestAPostedPlanIsReadBackWithItsProof(t *testing.T) {
	f := openYard(t)
	w, p := adaRides(f, monday)
	if v, err := f.Post(w, p, f.Centre.Persons[0], tuesdayMorning); v != 1 || err != nil {
		t.Fatal(v, err)
	}
	g := reopen(t, f)
	if got, want := standing(g, monday+1), "v1 Ada Grey on Duke, Cy Reed on the ground"; got != want {
		t.Errorf("%s stands, want %s", got, want)
	}
	x := g.Centre.Posted[0]
	if x.By != g.Centre.Persons[0] || x.At != tuesdayMorning || x.From != monday || x.Until != monday+6 {
		t.Errorf("posted as %+v", x)
	}
	// 45 min at 100 % of the lesson's kind and of the horse.
	if told := x.Told[0]; told.Work != 45*100*100 || told.Arena != g.Centre.Arenas[0] || told.Instructor != g.Centre.Persons[0] || told.Turn.Girth != g.Centre.Pieces[2] {
		t.Errorf("told as %+v", told)
	}
	v, q, troubles, err := g.ReadPosted(x)
	if err != nil || len(troubles) > 0 {
		t.Fatal(err, shown(troubles))
	}
	if !cmp.Equal(p.Proof, q.Proof) || v.Fingerprint(q) != p.Proof.Hash || !cmp.Equal(q.Ground[1], p.Ground[1]) {
		t.Errorf("the proof was %v and is %v, of %s", p.Proof, q.Proof, v.Fingerprint(q))
	}
}

// Load is the example because its figures change most: a horse is weighed again
// each month.
func TestALaterWeighingDoesNotTurnAnOldPlanWrong(t *testing.T) {
	f := openYard(t)
	post(t, f, monday, adaRides)
	f = reopen(t, f)
	noted(t, f, lame(f))
	light := strings.Replace(strings.Replace(yard, `"500 kg"`, `"250 kg"`, 1), `name = "Cy Reed"`, `name = "Cyril Reed"`, 1)
	light = strings.Replace(light, `"Ada Grey", "Cy Reed"]`, `"Ada Grey", "Cyril Reed"]`, 1)
	if err := os.WriteFile(filepath.Join(f.Dir, "yard.toml"), []byte(light), 0o644); err != nil {
		t.Fatal(err)
	}
	g := reopen(t, f)
	w, p, troubles, err := g.ReadPosted(g.Centre.Posted[0])
	if err != nil || len(troubles) > 0 {
		t.Fatal(err, shown(troubles))
	}
	if broken := model.Broken(w.Audit(p)); len(broken) > 0 || w.Fingerprint(p) != p.Proof.Hash {
		t.Errorf("what was posted is now wrong: %v", broken)
	}
	// 60 kg and 11.5 kg of tack are 28 % of 250 kg; and Duke is lame now.
	now, plan := adaRides(g, monday)
	if broken := model.Broken(now.Audit(plan)); len(broken) != 2 {
		t.Errorf("the same plan breaks %v today", broken)
	}
	if _, err := g.Post(now, plan, g.Centre.Persons[0], tuesdayMorning); err == nil || !strings.Contains(err.Error(), "breaks the rule") {
		t.Errorf("and it was posted: %v", err)
	}
}

func TestWhatIsPostedOrClosedLaterDoesNotCountForAnOldPlan(t *testing.T) {
	later := map[string]func(f *Folder) error{
		"the week before is posted": func(f *Folder) error {
			w, p := adaRides(f, monday-7)
			_, err := f.Post(w, p, f.Centre.Persons[0], tuesdayMorning)
			return err
		},
		"a date before is closed": func(f *Folder) error {
			return f.Close(&model.Ridden{Date: monday - 6, By: f.Centre.Persons[0], At: tuesdayMorning, Works: []*model.Work{
				{Horse: f.Centre.Horses[0], Kind: "lunging", Start: 540, End: 560, On: monday - 6}}})
		},
	}
	for name, do := range later {
		f := openYard(t)
		post(t, f, monday, adaRides)
		f = reopen(t, f)
		if err := do(f); err != nil {
			t.Fatal(err)
		}
		f = reopen(t, f)
		v1 := f.Centre.Posted[0]
		w, p, troubles, err := f.ReadPosted(v1)
		if err != nil || len(troubles) > 0 || v1.Version != 1 {
			t.Fatal(err, shown(troubles))
		}
		if w.Fingerprint(p) != p.Proof.Hash {
			t.Errorf("%s, and the plan of before is of another week", name)
		}
		if now, p := adaRides(f, monday); now.Fingerprint(p) == w.Fingerprint(p) {
			t.Errorf("%s, and that counts for nothing", name)
		}
	}
}

func TestAPostedPlanGoesByThePairingsThatStoodThen(t *testing.T) {
	term := yard + "[[term]]\nname = \"Autumn\"\nfirst = 2026-09-01\nlast = 2026-12-18\n"
	f := openTxtar(t, &txtar.Archive{Files: []txtar.File{{Name: "yard.toml", Data: []byte(term)}}})
	c := f.Centre
	stand := func(horse *model.Horse) {
		t.Helper()
		pairings := []model.Pairing{{Rider: c.Riders[0], Lesson: c.Lessons[0], Horse: horse}}
		if _, err := f.WriteStanding(c.Terms[0], pairings, c.Persons[0], tuesdayMorning); err != nil {
			t.Fatal(err)
		}
		f = reopen(t, f)
		c = f.Centre
	}
	stand(c.Horses[1])
	post(t, f, monday, adaRides)
	f = reopen(t, f)
	c = f.Centre
	stand(c.Horses[0])
	w, p, troubles, err := f.ReadPosted(c.Posted[0])
	if err != nil || len(troubles) > 0 {
		t.Fatal(err, shown(troubles))
	}
	if usual, _ := w.Usual(w.Rides[0]); usual.Name != "Pepper" || w.Fingerprint(p) != p.Proof.Hash {
		t.Errorf("her usual horse was %s", usual.Name)
	}
}

func TestAPlanIsPostedOnlyOnWhatItWasSolvedFrom(t *testing.T) {
	hand := []byte("# another line\n" + yard)
	for name, c := range map[string]struct {
		meanwhile func(f *Folder) error
		want      string
	}{
		"a file was edited":      {func(f *Folder) error { return os.WriteFile(filepath.Join(f.Dir, "yard.toml"), hand, 0o644) }, "yard.toml was edited since"},
		"a file was added":       {func(f *Folder) error { return os.WriteFile(filepath.Join(f.Dir, "more.toml"), nil, 0o644) }, "more.toml was edited since"},
		"a file was taken away":  {func(f *Folder) error { return os.Remove(filepath.Join(f.Dir, "yard.toml")) }, "yard.toml was edited since"},
		"it was noted elsewhere": {func(f *Folder) error { g := reopen(t, f); _, err := g.AddNote(lame(g)); return err }, "notes/2026-11-24.toml is newer than what was read of the folder: wrote note 1: horse out: Duke, by Jo Marsh, 2026-11-24T07:40"},
		"it was noted here":      {func(f *Folder) error { _, err := f.AddNote(lame(f)); return err }, "open it again"},
		"it was posted elsewhere": {func(f *Folder) error {
			g := reopen(t, f)
			w, p := onGround(g, monday)
			_, err := g.Post(w, p, g.Centre.Persons[0], tuesdayMorning)
			return err
		}, "posted/2026-11-23-v1.toml is newer"},
	} {
		t.Run(name, func(t *testing.T) {
			f := openYard(t)
			w, p := adaRides(f, monday)
			if err := c.meanwhile(f); err != nil {
				t.Fatal(err)
			}
			before := files(t, f.Dir)
			if _, err := f.Post(w, p, f.Centre.Persons[0], tuesdayMorning); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want %s", err, c.want)
			}
			after := files(t, f.Dir)
			delete(before, lockFile)
			delete(after, lockFile)
			if d := cmp.Diff(before, after); d != "" {
				t.Error(d)
			}
		})
	}
}

func TestAWithdrawnVersionLeavesTheOneBeforeItUnderANewNumber(t *testing.T) {
	f := openYard(t)
	post(t, f, monday, adaRides)
	f = reopen(t, f)
	post(t, f, monday, onGround)
	f = reopen(t, f)
	for _, c := range []struct {
		undo int
		want string
	}{
		{0, "v3 Ada Grey on Duke, Cy Reed on the ground"},       // of the second
		{3, "v4 Ada Grey on the ground, Cy Reed on the ground"}, // of that undoing
		{0, "v5 Ada Grey on Duke, Cy Reed on the ground"},       // of the second, once more
	} {
		if _, err := f.Undo(c.undo, f.Centre.Persons[0], tuesdayMorning); err != nil {
			t.Fatal(err)
		}
		f = reopen(t, f)
		if got := standing(f, monday+1); got != c.want {
			t.Errorf("%s stands, want %s", got, c.want)
		}
	}
	all := files(t, f.Dir)
	for _, v := range []string{"1", "2", "3", "4", "5"} {
		if all["posted/2026-11-23-v"+v+".toml"] == "" {
			t.Errorf("version %s is gone", v)
		}
	}
	if _, p, troubles, err := f.ReadPosted(f.Centre.Posted[0]); err != nil || len(troubles) > 0 || p == nil {
		t.Errorf("what stands again cannot be read: %v %s", err, shown(troubles))
	}
}

func TestARepairStandsWhenTheWeekBeforeItIsWithdrawn(t *testing.T) {
	f := openYard(t)
	post(t, f, monday-7, adaRides)
	f = reopen(t, f)
	w := f.Centre.Week(monday-6, 1, model.Instant{})
	if _, err := f.Post(w, &model.Plan{Turns: make([]*model.Turn, len(w.Rides))}, f.Centre.Persons[0], tuesdayMorning); err != nil {
		t.Fatal(err)
	}
	f = reopen(t, f)
	if _, err := f.Undo(1, f.Centre.Persons[0], tuesdayMorning); err != nil {
		t.Fatal(err)
	}
	f = reopen(t, f)
	if got, want := standing(f, monday-6), "v2 Ada Grey on the ground, Cy Reed on the ground"; got != want {
		t.Errorf("%s stands, want %s", got, want)
	}
	if got := standing(f, monday-5); got != "nothing" {
		t.Errorf("%s stands on the date after", got)
	}
}

func TestTheOnlyVersionOfADateLeavesNothingWhenItIsWithdrawn(t *testing.T) {
	f := openYard(t)
	post(t, f, monday, adaRides)
	if _, err := f.Undo(0, f.Centre.Persons[0], tuesdayMorning); err != nil {
		t.Fatal(err)
	}
	f = reopen(t, f)
	if got := standing(f, monday+1); got != "nothing" {
		t.Errorf("%s stands", got)
	}
	if v := post(t, f, monday, onGround); v != 3 {
		t.Errorf("the next is version %d", v)
	}
}

func TestARideOfALessonThatIsGoneIsPostedAgainWithItsDate(t *testing.T) {
	f := openYard(t)
	post(t, f, monday, adaRides)
	other := strings.Replace(yard, `name = "Tue 10:00"
day = "Tuesday"`, `name = "Thu 10:00"
day = "Thursday"`, 1)
	if err := os.WriteFile(filepath.Join(f.Dir, "yard.toml"), []byte(other), 0o644); err != nil {
		t.Fatal(err)
	}
	f = reopen(t, f)
	w := f.Centre.Week(monday, 7, model.Instant{Date: monday + 2, Minute: 0})
	if _, err := f.Post(w, &model.Plan{Turns: make([]*model.Turn, len(w.Rides))}, f.Centre.Persons[0], tuesdayMorning); err != nil {
		t.Fatal(err)
	}
	f = reopen(t, f)
	if got, want := standing(f, monday+1), "v2 Ada Grey on Duke, Cy Reed on the ground"; got != want {
		t.Errorf("%s was ridden, want %s", got, want)
	}
	if _, _, troubles, err := f.ReadPosted(f.Centre.Posted[1]); err != nil || len(troubles) > 0 {
		t.Errorf("it cannot be read: %v %s", err, shown(troubles))
	}
}

func TestARecordWithoutItsWeekIsReadAgainstTheFolder(t *testing.T) {
	f := openYard(t, txtar.File{Name: "posted/0001.toml", Data: []byte(`version = 1
by = "Jo Marsh"
at = 2026-11-20T16:00
from = 2026-11-24
until = 2026-11-24
ride = [
    { date = 2026-11-24, start = 10:00, end = 10:45, lesson = "Tue 10:00", rider = "Ada Grey", horse = "Duke", seat = "S1", pads = ["P1"], girth = "G1" },
    { date = 2026-11-24, start = 10:00, end = 10:45, lesson = "Tue 10:00", rider = "Di Old", ground = ["no horse"] },
]
`)})
	_, _, troubles, err := f.ReadPosted(f.Centre.Posted[0])
	if want := "posted/0001.toml:8:84: Di Old has no ride in Tue 10:00 on Tuesday 2026-11-24"; err != nil || !strings.HasPrefix(shown(troubles), want) {
		t.Errorf("got %v %s, want %s", err, shown(troubles), want)
	}
	var refused *RefusedError
	if _, _, _, err := f.ReadPosted(&model.Posted{}); !errors.As(err, &refused) {
		t.Errorf("got %v", err)
	}
}
