package examples

import (
	"testing"

	"tackwright/model"
	"tackwright/model/folder"
	"tackwright/solver"
)

// seated counts the open rides that a plan seats.
func seated(w *model.Week, p *model.Plan) int {
	n := 0
	for i, r := range w.Rides {
		if r.State == model.Open && p.Turns[i] != nil {
			n++
		}
	}
	return n
}

// best is the plan of the week, proved and clean; no time limit is set.
func best(t *testing.T, w *model.Week) *model.Plan {
	t.Helper()
	p, err := solver.Plan(t.Context(), w, solver.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !p.Proof.Proved() {
		t.Errorf("not proved: %v", p.Proof.Goals)
	}
	clean(t, w, p)
	return p
}

func clean(t *testing.T, w *model.Week, p *model.Plan) {
	t.Helper()
	for _, v := range w.Audit(p) {
		t.Errorf("%s: %s", v.Rule.Name, v.Words)
	}
}

func TestTheDemoWeekSeatsAtLeastThreeRidersMoreThanFirstCome(t *testing.T) {
	w := demoWeek(open(t).Centre)
	ours, theirs := best(t, w), firstCome(w)
	clean(t, w, theirs)
	if a, b := seated(w, ours), seated(w, theirs); a < b+3 {
		t.Errorf("our plan seats %d riders and first-come %d", a, b)
	}
}

func TestItIsTackThatFirstComeRunsOutOf(t *testing.T) {
	c := open(t).Centre
	w := demoWeek(c)
	scarce := seated(w, firstCome(w))
	spared(c)
	w = demoWeek(c)
	plan := firstCome(w)
	clean(t, w, plan)
	if plenty := seated(w, plan); plenty < scarce+3 {
		t.Errorf("first-come seats %d riders, and %d where every piece is there twice", scarce, plenty)
	}
}

func TestFewRidersOfTheDemoStayOnTheGroundAndEachIsToldWhy(t *testing.T) {
	w := demoWeek(open(t).Centre)
	p := best(t, w)
	own, others := 0, 0
	for i, r := range w.Rides {
		if r.State != model.Open || p.Turns[i] != nil {
			continue
		}
		if len(p.Ground[i]) == 0 {
			t.Errorf("%s is not told why", r)
		}
		switch _, free := w.Alone(r); {
		case len(free) > 0:
			others++
		case w.FormStops(r.Rider, r.Date()) != "":
			own++
		default:
			t.Errorf("%s could not ride if nobody else did: %v", r, p.Ground[i])
		}
		if w.Grounded(r.Rider) && w.FormStops(r.Rider, r.Date()) == "" {
			t.Errorf("%s was on the ground last time, and is again", r)
		}
	}
	if own != 1 || others < 1 || others > 3 {
		t.Errorf("%d are on the ground for a reason of their own, %d because of others", own, others)
	}
}

// BenchmarkDemoWeek is to stay well below a second of one processor.
func BenchmarkDemoWeek(b *testing.B) {
	f, err := folder.Open(demo)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := solver.Plan(b.Context(), demoWeek(f.Centre), solver.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
