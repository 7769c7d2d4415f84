package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// A repair has the least value in every goal that any plan has which is as good
// in the goals before: found by trying all plans of a small week.
func TestARepairChangesNoMoreThanTryingAllPlansDoes(t *testing.T) {
	moved, kept := 0, 0
	for seed := range uint64(*weeks) {
		before := random.Week(seed, 1000)
		if len(before.Rides) == 0 {
			continue
		}
		posted, err := Plan(context.Background(), before, Options{})
		if err != nil {
			t.Fatal(err)
		}
		w := random.Repair(seed, before, posted)
		var best []model.GoalValue
		judge := oracle.For(w)
		judge.Choices().Each(func(p *model.Plan) bool {
			if judge.Legal(p) {
				if score := w.Score(p); best == nil || better(score, best) {
					best = score
				}
			}
			return true
		})
		plan, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, err)
		}
		for i, x := range plan.Proof.Goals {
			if !x.Proved || x.Value != best[i].Value {
				t.Fatalf("week %d (%s): %+v, and the best is %+v", seed, w.Centre.Name, plan.Proof.Goals, best)
			}
		}
		for i, r := range w.Rides {
			if r.State == model.Started && !r.Told.Equal(plan.Turns[i]) {
				t.Fatalf("week %d: %s had started, and is changed", seed, r)
			}
		}
		if slices.ContainsFunc(best[2:4], func(x model.GoalValue) bool { return x.Value > 0 }) {
			moved++
		} else {
			kept++
		}
	}
	if moved < kept/20 || kept == 0 {
		t.Errorf("of the weeks %d changed and %d stayed: the mishaps test nothing", moved, kept)
	}
}
