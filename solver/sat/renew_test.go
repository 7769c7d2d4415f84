package sat

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
)

// Clauses under selectors come and go, and are made easier now and then; each question is answered as trying all values of
// few variables does, by a copy of which it is certain too.
func TestWhatIsLeftWhenSelectorsAreRetiredSaysTheSameToANewSearch(t *testing.T) {
	defer func(was int) { burden = was }(burden)
	burden = 1
	renewed, went, back := 0, 0, 0
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 1))
		s := New()
		var x []Lit
		for range 5 {
			x = append(x, s.NewVar())
		}
		literal := func(of []Lit) Lit {
			if l := of[r.IntN(len(of))]; r.IntN(2) == 0 {
				return l
			} else {
				return l.Not()
			}
		}
		var sels []Lit
		clauses := map[Lit][][]Lit{}
		for range 40 {
			switch r.IntN(3) {
			case 0:
				sel := s.Root()
				if r.IntN(8) > 0 {
					sel = s.NewVar()
					sels = append(sels, sel)
				}
				for range 1 + r.IntN(4) {
					clause := []Lit{literal(x), literal(x), literal(x)}[:1+r.IntN(3)]
					clauses[sel] = append(clauses[sel], clause)
					s.Add(sel, clause...)
				}
			case 1:
				if len(sels) > 0 {
					i := r.IntN(len(sels))
					s.Retire(sels[i])
					clauses[sels[i]] = [][]Lit{{}}
					sels = slices.Delete(sels, i, i+1)
				}
			}
			assume := []Lit{literal(x)}
			for _, sel := range sels {
				if r.IntN(2) == 0 {
					assume = append(assume, sel)
				}
			}
			if len(x) < 8 && r.IntN(2) == 0 { // one that is defined by others
				a, b, y := literal(x), literal(x), s.NewVar()
				for _, clause := range [][]Lit{{a.Not(), y}, {b.Not(), y}, {y.Not(), a, b}} {
					clauses[s.Root()] = append(clauses[s.Root()], clause)
					s.Add(s.Root(), clause...)
				}
				x = append(x, y)
			}
			if r.IntN(2) == 0 {
				s.Renew()
			}
			before := s.gini
			status := s.Solve(context.Background(), assume...)
			if before != nil && before != s.gini {
				renewed++
			}
			switch want := tried(x, s.Root(), clauses, assume); {
			case status == Sat && !want, status == Unsat && want:
				t.Fatalf("seed %d: %v with %v, and trying all says %v", seed, status, assume, want)
			case status == Sat && !holds(s.Value, s.Root(), clauses, assume):
				t.Fatalf("seed %d: %v is no solution with %v", seed, s.Model(), assume)
			case status == Unsat:
				for _, l := range s.Core() {
					if !slices.Contains(assume, l) {
						t.Fatalf("seed %d: %v is to blame, which was not assumed", seed, l)
					}
				}
				if tried(x, s.Root(), clauses, s.Core()) {
					t.Fatalf("seed %d: %v can hold together", seed, s.Core())
				}
			}
			if status == Sat {
				s.Recall(s.Model())
			}
			copied := s.Copy(assume...)
			if got := copied.Solve(context.Background()); got != status {
				t.Fatalf("seed %d: %v with %v, and %v where that is certain", seed, status, assume, got)
			} else if got == Sat && !holds(copied.Value, s.Root(), clauses, assume) {
				t.Fatalf("seed %d: the copy's %v is no solution with %v", seed, copied.Model(), assume)
			}
		}
		for _, g := range s.gone {
			if went++; g.clauses == nil {
				back++
			}
		}
	}
	if renewed < 300 {
		t.Errorf("only %d new searches", renewed)
	}
	if went < 1000 || back < 300 || went == back {
		t.Errorf("%d variables were eliminated, and %d came back", went, back)
	}
}

// holds reports whether values are a solution.
func holds(value func(Lit) bool, root Lit, clauses map[Lit][][]Lit, assume []Lit) bool {
	for sel, of := range clauses {
		if sel != root && !value(sel) {
			continue
		}
		for _, c := range of {
			if !slices.ContainsFunc(c, value) {
				return false
			}
		}
	}
	return !slices.ContainsFunc(assume, func(l Lit) bool { return !value(l) })
}

// tried tries all values of x; selectors hold where they are assumed.
func tried(x []Lit, root Lit, clauses map[Lit][][]Lit, assume []Lit) bool {
	for mask := range 1 << len(x) {
		value := func(l Lit) bool {
			i := slices.Index(x, Lit(l.Var()))
			if i < 0 {
				return slices.Contains(assume, l)
			}
			return (mask>>i&1 == 1) == (l > 0)
		}
		if holds(value, root, clauses, assume) {
			return true
		}
	}
	return false
}
