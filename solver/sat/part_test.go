package sat

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
)

// Clauses about two parts, what ties them and what is defined by them come in turn with questions to the first part: it
// answers as trying all values does, of the clauses that speak of it alone.
func TestAPartFindsImpossibleWhatItsOwnClausesForbid(t *testing.T) {
	ctx := context.Background()
	no, onlyWhole := 0, 0
	for seed := range uint64(1000) {
		r := rand.New(rand.NewPCG(seed, 2))
		s := New()
		var own, all []Lit // variables
		more := func() {
			m := []Mark{1, 1, 2, Across}[r.IntN(4)]
			defer s.Mark(s.Mark(m))
			l := s.NewVar()
			if all = append(all, l); m == 1 {
				own = append(own, l)
			}
		}
		for range 6 {
			more()
		}
		literal := func(of []Lit) Lit {
			l := of[r.IntN(len(of))]
			if r.IntN(2) == 0 {
				return l.Not()
			}
			return l
		}
		var ours, clauses [][]Lit
		add := func(of []Lit) {
			clause := []Lit{literal(of), literal(of), literal(of)}[:2+r.IntN(2)]
			clauses = append(clauses, clause)
			if !slices.ContainsFunc(clause, func(l Lit) bool { return s.MarkOf(l) != 1 }) {
				ours = append(ours, clause)
			}
			if len(clause) == 3 && r.IntN(2) == 0 { // by way of a definition, which has no mark
				clause = []Lit{clause[0], s.Or(clause[1:]...)}
			}
			s.Add(s.Root(), clause...)
		}
		part := s.Part(1)
		if part == nil {
			continue
		}
		for range 12 {
			if r.IntN(3) == 0 && len(all) < 9 {
				more()
			}
			add(all)
			if r.IntN(2) == 0 {
				add(own)
			}
			if r.IntN(4) == 0 {
				s.Renew()
			}
			assume := []Lit{literal(own), literal(own)}
			status := part.SolveWithin(ctx, 0, assume...)
			whole := map[Lit][][]Lit{s.Root(): clauses}
			switch alone := tried(own, s.Root(), map[Lit][][]Lit{s.Root(): ours}, assume); {
			case status == Unsat == alone && s.renewed == 0: // later it goes by what is certain in the whole
				t.Fatalf("seed %d: %v with %v, and trying all says %v", seed, status, assume, alone)
			case status == Unsat:
				no++
				if tried(all, s.Root(), whole, part.Core()) {
					t.Fatalf("seed %d: %v can hold together", seed, part.Core())
				}
			case s.Solve(ctx, assume...) == Unsat:
				onlyWhole++
			}
		}
	}
	if no < 1000 || onlyWhole < 300 {
		t.Errorf("it said no %d times, and the whole alone did %d times", no, onlyWhole)
	}
}

func TestWhatNoVariableIsOfIsNoPart(t *testing.T) {
	s := New()
	s.NewVar()
	if s.Part(1) != nil {
		t.Error("there is a part without variables")
	}
}
