package solver

import (
	"context"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/model"
)

// Each goal of the plan found has the least value that any plan has which is as
// good in the goals before: found by trying all plans of a small week.
func TestAPlanIsBestInEveryGoalByTryingAllPlans(t *testing.T) {
	for seed := range uint64(*weeks) {
		for _, w := range smallWeeks(seed, 1000) {
			w.House.Goals = append(model.DefaultGoals(), model.GoalBringIn)
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
			for i, g := range plan.Proof.Goals {
				if !g.Proved || g.Value != best[i].Value || g.Bound != g.Value {
					t.Fatalf("week %d (%s): %+v, and the best is %+v", seed, w.Centre.Name, plan.Proof.Goals, best)
				}
			}
		}
	}
}

func better(a, b []model.GoalValue) bool {
	for i := range a {
		if a[i].Value != b[i].Value {
			return a[i].Value < b[i].Value
		}
	}
	return false
}
