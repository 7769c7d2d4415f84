package ordered_test

import (
	"math/rand/v2"
	"testing"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// atMost writes under sel that no more than most of the wishes fail.
func atMost(s *sat.Solver, sel sat.Lit, most int, wishes []ordered.Soft) {
	var fail []sat.Term
	for _, x := range wishes {
		fail = append(fail, sat.Term{Lit: x.Lit.Not(), Weight: 1})
	}
	s.WeightedAtMost(sel, most, fail...)
}

// better is what is known of better solutions: that they are.
func better(s *sat.Solver, wishes []ordered.Soft) func(sat.Lit, int) {
	return func(sel sat.Lit, below int) { atMost(s, sel, below-1, wishes) }
}

// 41 riders in 40 places are a pigeon hole: what is known of better solutions, that there are none with
// all seated, must end the search.
func TestWhatIsKnownOfBetterSolutionsSparesTheSearchAPigeonHole(t *testing.T) {
	s := sat.New()
	_, goal := riders(s, 41, 40)
	goal.Better = func(sel sat.Lit, below int) {
		if below == 1 {
			s.Add(sel)
		}
	}
	_, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, ordered.Options{})
	if err != nil || results[0] != (ordered.Result{Name: "seat", Value: 1, Bound: 1, Proved: true}) {
		t.Fatalf("%+v %v", results, err)
	}
}

func TestWhatIsKnownOfBetterSolutionsIsForgottenWithTheGoal(t *testing.T) {
	s := sat.New()
	seated, goal := riders(s, 6, 4)
	goal.Better = better(s, goal.Softs)
	if _, _, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, ordered.Options{}); err != nil {
		t.Fatal(err)
	}
	var nobody []sat.Lit
	for _, l := range seated {
		nobody = append(nobody, l.Not())
	}
	if status := s.Solve(ctx, nobody...); status != sat.Sat {
		t.Errorf("nobody seated: %v", status)
	}
}

// Whatever is written of better solutions, and of what the goals before leave, as long as it is true.
func TestWhatIsKnownChangesNoValue(t *testing.T) {
	told := 0
	for seed := range uint64(1000) {
		r := rand.New(rand.NewPCG(seed, 17))
		s := sat.New()
		p := random(r, s)
		for i := range p.goals {
			g := &p.goals[i]
			for k := range g.Softs {
				g.Softs[k].Weight = 1
			}
			g.Better = better(s, g.Softs)
			if i == 0 {
				continue
			}
			before := p.goals[i-1]
			g.Given = func(sel sat.Lit, best sat.Model) {
				told++
				atMost(s, sel, cost(before, best.Value), before.Softs)
			}
		}
		check(t, s, p, seed)
	}
	if told == 0 {
		t.Error("nothing was told")
	}
}
