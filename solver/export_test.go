package solver

import (
	"context"
	"slices"
	"testing"

	gophersat "github.com/crillab/gophersat/solver"

	"tackwright/fixtures/random"
	"tackwright/model"
)

// Another solver, asked the exported problem goal after goal, finds a plan of the value that Plan
// proves, and none of less.
func TestASecondSolverConfirmsTheValuesThatPlanProves(t *testing.T) {
	for seed := range uint64(min(*weeks, 200)) {
		w := random.Week(seed, 20_000)
		w.House.Goals = append(model.DefaultGoals(), model.GoalBringIn)
		plan, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, err)
		}
		p := Export(w)
		rules := constraints(p)
		for i, goal := range p.Goals {
			g := plan.Proof.Goals[i]
			less := append(slices.Clone(rules), atMost(goal.Wishes, g.Value-1))
			rules = append(rules, atMost(goal.Wishes, g.Value))
			if g.Name != goal.Name || !g.Proved || !holds(rules) || holds(less) {
				t.Fatalf("week %d (%s): %s: %+v, %v that a second solver finds as much, %v that it finds less",
					seed, w.Centre.Name, goal.Name, g, holds(rules), holds(less))
			}
		}
	}
}

func constraints(p *Problem) []gophersat.PBConstr {
	var rules []gophersat.PBConstr
	for _, c := range p.Clauses {
		rules = append(rules, gophersat.PropClause(c...))
	}
	for _, s := range p.Sums {
		var not []Wish
		all := 0
		for _, x := range s.Terms {
			not, all = append(not, Wish{-x.Lit, x.Weight}), all+x.Weight
		}
		if all > s.Most { // what is false, or Unless, makes up for what is too much
			rules = append(rules, atLeast(append(not, Wish{s.Unless, all - s.Most}), all-s.Most))
		}
	}
	return rules
}

// atMost lets wishes of at most a weight fail.
func atMost(wishes []Wish, value int) gophersat.PBConstr {
	all := 0
	for _, x := range wishes {
		all += x.Weight
	}
	return atLeast(wishes, all-value)
}

// atLeast names each literal once: the second solver asks for that.
func atLeast(terms []Wish, weight int) gophersat.PBConstr {
	var lits, weights []int
	for _, x := range terms {
		if i := slices.Index(lits, x.Lit); i >= 0 {
			weights[i] += x.Weight
			continue
		}
		lits, weights = append(lits, x.Lit), append(weights, x.Weight)
	}
	return gophersat.GtEq(lits, weights, weight)
}

func holds(rules []gophersat.PBConstr) bool {
	own := slices.Clone(rules) // it writes over what it is given
	for i, r := range own {
		own[i].Lits, own[i].Weights = slices.Clone(r.Lits), slices.Clone(r.Weights)
	}
	return gophersat.New(gophersat.ParsePBConstrs(own)).Solve() == gophersat.Sat
}
