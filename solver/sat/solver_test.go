package sat_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"tackwright/solver/sat"
)

var ctx = context.Background()

func vars(s *sat.Solver, n int) []sat.Lit {
	lits := make([]sat.Lit, n)
	for i := range lits {
		lits[i] = s.NewVar()
	}
	return lits
}

// holds lists lits as assumptions that say exactly which of them are true: bit i of mask for lit i.
func holds(lits []sat.Lit, mask int) []sat.Lit {
	out := make([]sat.Lit, len(lits))
	for i, l := range lits {
		out[i] = l
		if mask>>i&1 == 0 {
			out[i] = l.Not()
		}
	}
	return out
}

func TestContradictoryPermanentClausesAnswerNoAgainAndAgain(t *testing.T) {
	s := sat.New()
	x := s.NewVar()
	s.Add(s.Root(), x)
	s.Add(s.Root(), x.Not())
	for range 3 {
		if got := s.Solve(ctx, s.NewVar()); got != sat.Unsat {
			t.Fatalf("Solve = %v, want Unsat", got)
		}
		if core := s.Core(); len(core) != 0 {
			t.Fatalf("Core = %v, want none: no assumption is to blame", core)
		}
	}
}

func TestAClauseBindsOnlyWhereItsSelectorHolds(t *testing.T) {
	s := sat.New()
	x, sel := s.NewVar(), s.NewVar()
	s.Add(sel, x)
	s.Add(sel, x.Not())
	if s.Solve(ctx) != sat.Sat || s.Solve(ctx, sel) != sat.Unsat || s.Solve(ctx, sel.Not()) != sat.Sat {
		t.Fatal("want yes without the selector, no with it")
	}
	s.Retire(sel)
	if s.Solve(ctx, x) != sat.Sat || s.Value(sel) {
		t.Fatal("a retired selector must be false and its clauses gone")
	}
}

func TestRootIsTheConstantTrue(t *testing.T) {
	s := sat.New()
	x := s.NewVar()
	s.Add(s.Root(), s.Root().Not(), x)       // x
	s.Add(s.Root(), s.Root(), x.Not())       // nothing
	s.Add(s.Root().Not(), x.Not())           // nothing
	s.Add(x, s.Root().Not(), s.Root().Not()) // not x
	if s.Solve(ctx) != sat.Unsat {
		t.Fatal("x and not x were both demanded")
	}
}

func TestAModelOutlivesTheNextQuestion(t *testing.T) {
	s := sat.New()
	x := s.NewVar()
	s.Solve(ctx, x)
	m := s.Model()
	y := s.NewVar()
	s.Solve(ctx, x.Not(), y)
	if !m.Value(x) || m.Value(x.Not()) || m.Value(y) || !m.Value(y.Not()) {
		t.Fatal("the first model must still say x, and that a later variable is false")
	}
}

func TestARecalledModelIsFoundAgain(t *testing.T) {
	s := sat.New()
	lits := vars(s, 20)
	s.AtLeast(s.Root(), 5, lits...)
	s.Solve(ctx, holds(lits, 0b1010_0110_1000_1111_0001)...)
	m := s.Model()
	s.Solve(ctx, holds(lits, 0b0101_1001_0111_0000_1110)...)
	s.Recall(m)
	s.Solve(ctx)
	for _, l := range lits {
		if s.Value(l) != m.Value(l) {
			t.Fatalf("nothing forbids the model recalled, yet %d differs", l)
		}
	}
}

// pigeons demands under the returned selector that n+1 pigeons sit in n holes: hard for n above 10.
func pigeons(s *sat.Solver, n int) sat.Lit {
	sel := s.NewVar()
	sits := make([][]sat.Lit, n+1)
	for p := range sits {
		sits[p] = vars(s, n)
		s.Add(sel, sits[p]...)
	}
	for h := range n {
		for p := range sits {
			for q := range p {
				s.Add(s.Root(), sits[p][h].Not(), sits[q][h].Not())
			}
		}
	}
	return sel
}

func TestSolveGivesUpWhenItsContextOrItsWorkEnds(t *testing.T) {
	s := sat.New()
	sel := pigeons(s, 14)
	short, cancel := context.WithTimeout(ctx, 30*time.Millisecond)
	defer cancel()
	begin := time.Now()
	if got := s.Solve(short, sel); got != sat.Unknown {
		t.Fatalf("Solve of 15 pigeons in 14 holes for 30 ms = %v", got)
	}
	if late := time.Since(begin); late > 5*time.Second {
		t.Fatalf("Solve returned after %v, its context ended at 30 ms", late)
	}
	before := s.Work()
	if got := s.SolveWithin(ctx, 3, sel); got != sat.Unknown {
		t.Fatalf("SolveWithin 3 ticks = %v", got)
	}
	if spent := s.Work() - before; spent != 3 {
		t.Fatalf("spent %d ticks of 3", spent)
	}
	if s.Solve(ctx, sel.Not()) != sat.Sat {
		t.Fatal("an answer that was given up must not spoil the next")
	}
	over, cancel := context.WithCancel(ctx)
	cancel()
	if s.Solve(over) != sat.Unknown {
		t.Fatal("a context that is over allows no answer")
	}
}

func TestACoreHoldsNothingBesideTheBlame(t *testing.T) {
	s := sat.New()
	lits := vars(s, 30)
	s.AtMost(s.Root(), 3, lits[5:15]...)
	if s.Solve(ctx, lits...) != sat.Unsat {
		t.Fatal("want no: ten are assumed where three may be")
	}
	core := s.Core()
	for _, l := range core {
		if !slices.Contains(lits, l) {
			t.Fatalf("core %v holds %d, which was not assumed", core, l)
		}
	}
	shrunk := s.Shrink(ctx, core)
	if len(shrunk) != 4 || s.Solve(ctx, shrunk...) != sat.Unsat {
		t.Fatalf("Shrink(%v) = %v; want four, any of which are too many", core, shrunk)
	}
	if rest := s.Shrink(ctx, lits[5:15], lits[5], lits[6], lits[7]); len(rest) != 1 {
		t.Fatalf("beside three that stay, Shrink = %v; want one", rest)
	}
}

func TestAnswersAgreeWithEveryAssignment(t *testing.T) {
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 1))
		n := 1 + r.IntN(6)
		s := sat.New()
		lits := vars(s, n)
		var clauses [][]sat.Lit
		for range r.IntN(4 * n) {
			clause := make([]sat.Lit, 1+r.IntN(3))
			for i := range clause {
				clause[i] = lits[r.IntN(n)]
				if r.IntN(2) == 0 {
					clause[i] = clause[i].Not()
				}
			}
			clauses = append(clauses, clause)
			s.Add(s.Root(), clause...)
			switch r.IntN(5) { // questions in between must change nothing
			case 0:
				s.Solve(ctx, lits[r.IntN(n)])
			case 1:
				s.Recall(s.Model()) // perhaps of clauses that were fewer then
			}
		}
		for mask := range 1 << n {
			value := func(l sat.Lit) bool { return mask>>slices.Index(lits, max(l, -l))&1 == 1 == (l > 0) }
			want := sat.Sat
			for _, c := range clauses {
				if !slices.ContainsFunc(c, value) {
					want = sat.Unsat
				}
			}
			if got := s.Solve(ctx, holds(lits, mask)...); got != want {
				t.Fatalf("seed %d, assignment %b: Solve = %v, want %v", seed, mask, got, want)
			}
		}
	}
}

func TestTheSameCallsGiveTheSameModelAndCore(t *testing.T) {
	run := func() (sat.Model, []sat.Lit, int) {
		s := sat.New()
		sel := pigeons(s, 7)
		lits := vars(s, 40)
		s.AtMost(s.Root(), 13, lits...)
		s.Solve(ctx, sel)
		s.Solve(ctx, lits[3:16]...)
		m := s.Model()
		s.Solve(ctx, lits...)
		return m, s.Core(), s.Work()
	}
	m1, c1, w1 := run()
	m2, c2, w2 := run()
	if !slices.Equal(m1, m2) || !slices.Equal(c1, c2) || w1 != w2 {
		t.Fatal("two runs of the same calls differ")
	}
	if w1 == 0 {
		t.Fatal("too easy to tell: the search was over within one tick")
	}
}
