package folder

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/model"
)

var monday = model.On(2026, 11, 23)

// planned is a week of the folder that uses every key, planned by hand.
func planned(t *testing.T, now model.Instant) (*Folder, *model.Week, *model.Plan) {
	f := openText(t, whole(t))
	c := f.Centre
	w := c.Week(monday, 7, now)
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for i, r := range w.Rides {
		if r.Rider.Name == "Ada Grey" {
			p.Turns[i] = &model.Turn{Horse: c.Horses[0], Seat: c.Pieces[0], Pads: c.Pieces[3:4], Girth: c.Pieces[5], Extras: c.Pieces[7:9]}
		} else {
			p.Ground[i] = []string{`no horse "free"`, `a \ backslash`}
		}
	}
	p.Proof.Goals = []model.GoalResult{{Name: "seat a", Value: 2, Bound: 1}, {Name: "seat b", Proved: true}}
	p.Proof.Hash = w.Fingerprint(p)
	return f, w, p
}

func TestAPlanIsReadBackAsItWasWritten(t *testing.T) {
	for _, now := range []model.Instant{{}, {Date: monday + 1, Minute: 7 * 60}} {
		f, w, p := planned(t, now)
		path, kept, err := f.WritePlan(w, p)
		if err != nil || kept != "" || len(w.Rides) < 3 {
			t.Fatal(path, kept, err, len(w.Rides))
		}
		v, q, troubles, err := f.ReadPlan(path)
		if err != nil || len(troubles) > 0 {
			t.Fatal(err, shown(troubles))
		}
		for i := range p.Turns {
			if !p.Turns[i].Equal(q.Turns[i]) || !cmp.Equal(p.Ground[i], q.Ground[i]) {
				t.Errorf("%s was written as %v %v and read as %v %v", w.Rides[i], p.Turns[i], p.Ground[i], q.Turns[i], q.Ground[i])
			}
		}
		if !cmp.Equal(p.Proof, q.Proof) || v.Now != now || v.Fingerprint(q) != p.Proof.Hash {
			t.Errorf("the proof was written as %v and read as %v, now %v", p.Proof, q.Proof, v.Now)
		}
	}
}

func TestTheSamePlanIsTheSameBytes(t *testing.T) {
	f, w, p := planned(t, model.Instant{})
	g, v, q := planned(t, model.Instant{})
	one, _, err := f.WritePlan(w, p)
	if err != nil {
		t.Fatal(err)
	}
	two, _, err := g.WritePlan(v, q)
	if err != nil {
		t.Fatal(err)
	}
	a, _ := os.ReadFile(one)
	b, _ := os.ReadFile(two)
	if len(a) == 0 || string(a) != string(b) || one == two {
		t.Errorf("%s\n%s", a, b)
	}
}

func TestAPlanEditedByHandIsKeptWhenTheWeekIsPlannedAgain(t *testing.T) {
	f, w, p := planned(t, model.Instant{})
	write := func() (path, kept string) {
		t.Helper()
		path, kept, err := f.WritePlan(w, p)
		if err != nil {
			t.Fatal(err)
		}
		return path, kept
	}
	path, _ := write()
	p.Turns[0] = nil
	if _, kept := write(); kept != "" {
		t.Errorf("a plan that nobody edited was kept as %s", kept)
	}
	edited, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	edited = []byte(strings.Replace(string(edited), "no horse", "no pony", 1))
	for _, want := range []string{"2026-11-23-edited-1.toml", "2026-11-23-edited-2.toml"} {
		if err := os.WriteFile(path, edited, 0o644); err != nil {
			t.Fatal(err)
		}
		_, kept := write()
		got, _ := os.ReadFile(kept)
		if filepath.Base(kept) != want || string(got) != string(edited) {
			t.Errorf("the edited plan was kept as %q: %s", kept, got)
		}
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(entries) != 3 {
		t.Errorf("plans/ holds %v", entries)
	}
}

func TestAMistakeInAnEditedPlanIsNamedWithItsPlace(t *testing.T) {
	f, w, p := planned(t, model.Instant{})
	path, _, err := f.WritePlan(w, p)
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ old, new, want string }{
		{`horse = "Duke"`, `horse = "Dike"`, `plans/2026-11-23.toml:28:9: there is no horse "Dike"
    horse = "Dike"
            ^^^^^^
  did you mean "Duke"?`},
		{`start = 10:00`, `start = 10:30`, `plans/2026-11-23.toml:24:9: Ada Grey rides in Tue 10:00 from 10:00 to 10:45 on Tuesday 2026-11-24
    start = 10:30
            ^^^^^
  mend start and end, or plan again`},
		{`date = 2026-11-24`, `date = 2026-11-25`, `plans/2026-11-23.toml:27:9: Ada Grey has no ride in Tue 10:00 on Wednesday 2026-11-25
    rider = "Ada Grey"
            ^^^^^^^^^^
  leave this ride out, or plan again`},
		{`rider = "Cy Reed"`, `rider = "Ada Grey"`, `plans/2026-11-23.toml:36:9: Ada Grey rides in Tue 10:00 from 10:00 to 10:45 on Tuesday 2026-11-24
    start = 10:05
            ^^^^^
  mend start and end, or plan again`},
		{`ground =`, `grund =`, `plans/2026-11-23.toml:40:1: [[ride]] of a plan has no key "grund"
    grund = ["no horse \"free\"", "a \\ backslash"]
    ^^^^^
  did you mean ground?`},
		{`until = 2026-11-29`, `until = 2026-12-29`, `plans/2026-11-23.toml:5:9: a plan is of at most seven dates
    until = 2026-12-29
            ^^^^^^^^^^
  mend from or until`},
	} {
		if err := os.WriteFile(path, []byte(strings.Replace(string(text), c.old, c.new, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		_, plan, troubles, err := f.ReadPlan(path)
		if d := cmp.Diff(c.want, strings.TrimSpace(shown(troubles))); err != nil || d != "" || plan != nil {
			t.Errorf("%s: %v\n%s", c.new, err, d)
		}
	}
	if len(f.Mistakes()) > 0 {
		t.Error("a plan's mistakes are not the folder's")
	}
}

func TestAPlanHasEachRideOfItsWeekOnce(t *testing.T) {
	f, w, p := planned(t, model.Instant{})
	path, _, err := f.WritePlan(w, p)
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rides := strings.Split(string(text), "\n[[ride]]")
	for _, c := range []struct{ text, want string }{
		{strings.Join(rides[:2], "\n[[ride]]"), "the plan does not have the ride of Cy Reed in Tue 10:00, Tuesday 2026-11-24 10:05"},
		{string(text) + "\n[[ride]]" + rides[1], "this ride is here twice: it is at plans/2026-11-23.toml:22:1 as well"},
	} {
		if err := os.WriteFile(path, []byte(c.text), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, _, troubles, err := f.ReadPlan(path); err != nil || !strings.Contains(shown(troubles), c.want) {
			t.Errorf("%v %s; want %s", err, shown(troubles), c.want)
		}
	}
	if _, _, _, err := f.ReadPlan(filepath.Join(f.Dir, "plans", "nowhere.toml")); err == nil {
		t.Error("a plan that is not there was read")
	}
}

// Names of files on every system: no colon, blank or other sign that one of
// them forbids, whatever the centre and its riders are called.
func TestAPlanIsNamedByItsDatesAlone(t *testing.T) {
	f := openText(t, strings.Replace(whole(t), `name = "Larkfield"`, `name = "a/b: c?"`, 1))
	for days, want := range map[int]string{7: "2026-11-23.toml", 1: "2026-11-23-day.toml", 3: "2026-11-23-to-2026-11-25.toml"} {
		w := f.Centre.Week(monday, days, model.Instant{})
		path, _, err := f.WritePlan(w, &model.Plan{Turns: make([]*model.Turn, len(w.Rides))})
		name := filepath.Base(path)
		if err != nil || name != want || !regexp.MustCompile(`^[a-z0-9.-]+$`).MatchString(name) {
			t.Errorf("%d days are in %s (%v)", days, name, err)
		}
	}
}
