package ordered

import (
	"context"
	"testing"

	"tackwright/solver/sat"
)

// Four things in three places: a supposition that nothing fails is refuted, which proves a bound; one
// that less than two fail leads to a solution; and neither leaves anything behind.
func TestAWagerProvesABoundOrFindsASolutionAndIsTakenBack(t *testing.T) {
	for _, c := range []struct {
		target        int
		bound, at     int
		priced, found bool
	}{
		{target: 1, bound: 1, at: 4},
		{target: 2, bound: 0, at: 1, found: true},
		{target: 2, bound: 2, at: 4, priced: true}, // where prices say that each place costs 2
	} {
		s := sat.New()
		goal := Goal{Name: "seat"}
		var places [3][]sat.Lit
		var priced []Priced
		for range 4 {
			thing := s.NewVar()
			some := []sat.Lit{thing.Not()}
			for p := range places {
				l := s.NewVar()
				places[p], some = append(places[p], l), append(some, l)
				priced = append(priced, Priced{Lit: l, Least: 2})
			}
			s.Add(s.Root(), some...)
			goal.Softs = append(goal.Softs, Soft{Lit: thing, Weight: 1, Stratum: -1})
		}
		for _, p := range places {
			for i, a := range p {
				for _, b := range p[i+1:] {
					s.Add(s.Root(), a.Not(), b.Not())
				}
			}
		}
		q := &query{ctx: context.Background(), s: s, own: s.NewVar(), goals: []Goal{goal}, unit: 1}
		q.assume = []sat.Lit{q.own}
		var none []sat.Lit
		for _, soft := range goal.Softs {
			none = append(none, soft.Lit.Not())
		}
		if q.ask(0, none) != sat.Sat {
			t.Fatal("nothing need be anywhere")
		}
		g := newSearch(q, 0)
		if c.priced {
			g.priced = priced
		}
		wishes := len(g.wishes)
		g.suppose(c.target, 1000)
		if g.bound() != c.bound || c.found && g.upper() >= c.target || !c.found && g.upper() != c.at {
			t.Errorf("below %d, prices %v: value %d, bound %d", c.target, c.priced, g.upper(), g.bound())
		}
		if len(g.wishes) != wishes || g.lower != 0 || q.ask(0, none) != sat.Sat {
			t.Error("something of the supposition is left")
		}
	}
}
