package ordered_test

import (
	"math/rand/v2"
	"testing"

	"github.com/crillab/gophersat/solver"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// A second solver, gophersat, is asked for a solution as good as the one proved best, which it must
// find, and for a better one, which it must not.
func TestASecondSolverFindsNothingBetter(t *testing.T) {
	better := 0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 4))
		s := sat.New()
		p := &puzzle{}
		for range 12 + r.IntN(18) {
			p.lits = append(p.lits, s.NewVar())
		}
		var hard [][]int
		for range 3 * len(p.lits) {
			var clause []sat.Lit
			var ints []int
			for _, v := range r.Perm(len(p.lits))[:3] {
				l := p.lits[v]
				if r.IntN(4) > 0 {
					l = l.Not()
				}
				clause, ints = append(clause, l), append(ints, int(l))
			}
			s.Add(s.Root(), clause...)
			hard = append(hard, ints)
		}
		for range 2 {
			goal := ordered.Goal{Name: "wanted"}
			for _, v := range r.Perm(len(p.lits))[:len(p.lits)*2/3] {
				goal.Softs = append(goal.Softs, ordered.Soft{Lit: p.lits[v], Weight: 1 + r.IntN(9), Stratum: r.IntN(4) - 1})
			}
			p.goals = append(p.goals, goal)
		}
		_, results, err := ordered.Minimise(ctx, s, nil, p.goals, ordered.Options{})
		if err != nil || !results[0].Proved || !results[1].Proved {
			t.Fatalf("seed %d: %+v %v", seed, results, err)
		}
		possible := func(limits ...int) bool {
			var all []solver.PBConstr
			for _, clause := range hard {
				all = append(all, solver.PropClause(append([]int(nil), clause...)...))
			}
			for i, limit := range limits {
				var lits, weights []int
				for _, soft := range p.goals[i].Softs {
					lits, weights = append(lits, -int(soft.Lit)), append(weights, soft.Weight)
				}
				all = append(all, solver.LtEq(lits, weights, limit))
			}
			return solver.New(solver.ParsePBConstrs(all)).Solve() == solver.Sat
		}
		first, second := results[0].Value, results[1].Value
		if !possible(first, second) {
			t.Fatalf("seed %d: gophersat finds no solution worth %d, %d", seed, first, second)
		}
		if first > 0 && possible(first-1) {
			t.Fatalf("seed %d: gophersat finds a first goal below %d", seed, first)
		}
		if second > 0 && possible(first, second-1) {
			t.Fatalf("seed %d: gophersat finds a second goal below %d", seed, second)
		}
		if first > 0 && second > 0 {
			better++
		}
	}
	if better < 100 {
		t.Fatalf("only %d of 200 instances ask for anything", better)
	}
}
