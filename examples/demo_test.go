package examples

import (
	"testing"

	"tackwright/model"
	"tackwright/model/folder"
	"tackwright/solver"
)

const demo = "sallowdene"

func open(t *testing.T) *folder.Folder {
	t.Helper()
	f, err := folder.Open(demo)
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range f.Mistakes() {
		t.Error(m)
	}
	return f
}

// ridden counts the open rides that a plan seats.
func seated(w *model.Week, p *model.Plan) int {
	n := 0
	for _, r := range w.Rides {
		if r.State == model.Open && p.Turns[r.Index] != nil {
			n++
		}
	}
	return n
}

func TestTheDemoWeekSeatsThreeRidersMoreThanFirstComeDoes(t *testing.T) {
	f := open(t)
	w := f.Centre.Week(f.Centre.Today, 7, model.Instant{})
	best, err := solver.Plan(t.Context(), w, solver.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !best.Proof.Proved() {
		t.Errorf("not proved: %v", best.Proof.Goals)
	}
	first := firstCome(w)
	for _, p := range []*model.Plan{best, first} {
		for _, v := range model.Broken(w.Audit(p)) {
			t.Errorf("%s: %s", v.Rule.Name, v.Words)
		}
	}
	for i, r := range w.Rides {
		if r.State == model.Open && first.Turns[i] == nil {
			t.Log("first-come:", r)
		}
	}
	if a, b := seated(w, best), seated(w, first); a < b+3 {
		t.Errorf("our plan seats %d riders and first-come %d", a, b)
	}
}
