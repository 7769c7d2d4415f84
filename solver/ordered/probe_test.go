package ordered

import (
	"context"
	"testing"

	"tackwright/solver/sat"
)

// One literal is at odds with what is wanted most, one is not: the first alone is forbidden, with a clause.
func TestWhatPricesLeaveOpenIsForbiddenWhereItFails(t *testing.T) {
	ctx := context.Background()
	s := sat.New()
	wanted, against, free := s.NewVar(), s.NewVar(), s.NewVar()
	s.Add(s.Root(), wanted.Not(), against.Not())
	q := &query{ctx: ctx, s: s, own: s.NewVar(), goals: []Goal{{Name: "wishes", Softs: []Soft{{Lit: wanted, Weight: 2}}}}, unit: 1}
	q.assume = []sat.Lit{q.own}
	if q.ask(0, []sat.Lit{wanted, free.Not()}) != sat.Sat {
		t.Fatal("what is wanted cannot be had")
	}
	g := newSearch(q, 0)
	g.sum = sumOf(Beside{Grain: 1, Priced: []Priced{{Lit: against}, {Lit: free}}})
	g.hold()
	before := s.Clauses()
	g.probe()
	if n := s.Clauses() - before; n != 1 {
		t.Errorf("%d clauses more", n)
	}
	for _, c := range []struct {
		assume []sat.Lit
		want   sat.Status
	}{{[]sat.Lit{q.own, against}, sat.Unsat}, {[]sat.Lit{q.own, free}, sat.Sat}, {[]sat.Lit{against}, sat.Sat}} {
		if got := s.Solve(ctx, c.assume...); got != c.want {
			t.Errorf("%v: %v, want %v", c.assume, got, c.want)
		}
	}
}
