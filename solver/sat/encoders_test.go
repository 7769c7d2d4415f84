package sat_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/crillab/gophersat/solver"

	"tackwright/solver/sat"
)

// agree checks that sel demands exactly what allowed says, for every assignment of lits.
func agree(t *testing.T, s *sat.Solver, sel sat.Lit, lits []sat.Lit, allowed func(mask int) bool) {
	t.Helper()
	for mask := range 1 << len(lits) {
		want := sat.Unsat
		if allowed(mask) {
			want = sat.Sat
		}
		if got := s.Solve(ctx, append(holds(lits, mask), sel)...); got != want {
			t.Fatalf("assignment %0*b: %v, want %v", len(lits), mask, got, want)
		}
		if s.Solve(ctx, holds(lits, mask)...) != sat.Sat {
			t.Fatalf("assignment %0*b is forbidden without the selector", len(lits), mask)
		}
	}
}

// pick chooses n of the literals or their negations, with repeats.
func pick(r *rand.Rand, lits []sat.Lit, n int) []sat.Lit {
	out := make([]sat.Lit, n)
	for i := range out {
		out[i] = lits[r.IntN(len(lits))]
		if r.IntN(3) == 0 {
			out[i] = out[i].Not()
		}
	}
	return out
}

func isTrue(lits []sat.Lit, mask int, l sat.Lit) bool {
	return mask>>slices.Index(lits, max(l, -l))&1 == 1 == (l > 0)
}

func sum(lits []sat.Lit, mask int, terms []sat.Term) int {
	total := 0
	for _, term := range terms {
		if isTrue(lits, mask, term.Lit) {
			total += term.Weight
		}
	}
	return total
}

func units(lits []sat.Lit) []sat.Term {
	terms := make([]sat.Term, len(lits))
	for i, l := range lits {
		terms[i] = sat.Term{Lit: l, Weight: 1}
	}
	return terms
}

func TestLimitsOnHowManyAllowExactlyThatMany(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 2))
		s := sat.New()
		lits, sel := vars(s, 1+r.IntN(9)), s.NewVar()
		some := pick(r, lits, r.IntN(11))
		if r.IntN(2) == 0 {
			some = lits
		}
		k := r.IntN(len(some)+3) - 1
		count := func(mask int) int { return sum(lits, mask, units(some)) }
		switch seed % 3 {
		case 0:
			s.AtMost(sel, k, some...)
			agree(t, s, sel, lits, func(mask int) bool { return count(mask) <= k })
		case 1:
			s.AtLeast(sel, k, some...)
			agree(t, s, sel, lits, func(mask int) bool { return count(mask) >= k })
		case 2:
			s.AtMostOne(sel, some...)
			agree(t, s, sel, lits, func(mask int) bool { return count(mask) <= 1 })
		}
	}
}

func TestAWeightedLimitAllowsExactlyTheSumsUpToIt(t *testing.T) {
	for seed := range uint64(600) {
		r := rand.New(rand.NewPCG(seed, 3))
		s := sat.New()
		lits, sel := vars(s, 1+r.IntN(8)), s.NewVar()
		var terms []sat.Term
		scale, reach, total := 1+r.IntN(3), 1+r.IntN(12), 0
		for _, l := range pick(r, lits, r.IntN(12)) {
			w := scale * (r.IntN(reach+1) - r.IntN(2)*r.IntN(2)*reach)
			terms = append(terms, sat.Term{Lit: l, Weight: w})
			total += max(w, 0)
		}
		bound := r.IntN(total+4) - 2
		s.WeightedAtMost(sel, bound, terms...)
		agree(t, s, sel, lits, func(mask int) bool { return sum(lits, mask, terms) <= bound })
	}
}

func TestACounterTellsHowManyAreTrueHoweverLateItIsAsked(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 4))
		s := sat.New()
		lits := vars(s, 1+r.IntN(8))
		some := pick(r, lits, r.IntN(10))
		c := s.NewCounter(s.Root(), some...)
		for range 4 {
			k := r.IntN(len(some) + 2)
			few := c.AtLeast(k).Not()
			agree(t, s, few, lits, func(mask int) bool { return sum(lits, mask, units(some)) < k })
		}
	}
}

func TestSumsOfWeighedCountersAreExact(t *testing.T) {
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 8))
		s := sat.New()
		lits := vars(s, 2+r.IntN(6))
		var parts []*sat.Counter
		var meaning []func(mask int) int
		for range 1 + r.IntN(4) {
			if r.IntN(2) == 0 {
				l, w := lits[r.IntN(len(lits))], 1+r.IntN(4)
				parts = append(parts, s.Weigh(l, w))
				meaning = append(meaning, func(mask int) int { return sum(lits, mask, []sat.Term{{Lit: l, Weight: w}}) })
				continue
			}
			some, base, each := pick(r, lits, r.IntN(5)), r.IntN(3), 1+r.IntN(3)
			parts = append(parts, s.NewCounter(s.Root(), some...).Beyond(base, each))
			meaning = append(meaning, func(mask int) int { return each * max(0, sum(lits, mask, units(some))-base) })
		}
		c := s.Sum(s.Root(), parts...)
		k := r.IntN(c.Size() + 2)
		agree(t, s, c.AtLeast(k).Not(), lits, func(mask int) bool {
			total := 0
			for _, part := range meaning {
				total += part(mask)
			}
			return total < k
		})
	}
}

func TestDisjointForbidsExactlyTheOverlaps(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 5))
		s := sat.New()
		lits, sel := vars(s, 1+r.IntN(10)), s.NewVar()
		var rides []sat.Interval
		for _, l := range append(slices.Clone(lits), pick(r, lits, r.IntN(3))...) {
			start := r.IntN(12)
			rides = append(rides, sat.Interval{Lit: l, Start: start, End: start + r.IntN(6)})
		}
		s.Disjoint(sel, rides)
		agree(t, s, sel, lits, func(mask int) bool {
			for i, a := range rides {
				for _, b := range rides[i+1:] {
					if max(a.Start, b.Start) < min(a.End, b.End) &&
						isTrue(lits, mask, a.Lit) && isTrue(lits, mask, b.Lit) {
						return false
					}
				}
			}
			return true
		})
	}
}

func TestDefinitionsMeanWhatTheySay(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 6))
		s := sat.New()
		lits := vars(s, 1+r.IntN(5))
		some := pick(r, lits, r.IntN(5))
		some1 := func(mask int) bool { return sum(lits, mask, units(some)) > 0 }
		all := func(mask int) bool { return sum(lits, mask, units(some)) == len(some) }
		or, and, any := s.Or(some...), s.And(some...), s.Any(some...)
		root := s.Root()
		check := func(assume sat.Lit, allowed func(int) bool) {
			t.Helper()
			sel := s.NewVar()
			s.Add(sel, assume)
			agree(t, s, sel, lits, allowed)
		}
		check(or, some1)
		check(or.Not(), func(mask int) bool { return !some1(mask) })
		check(and, all)
		check(and.Not(), func(mask int) bool { return !all(mask) })
		check(any.Not(), func(mask int) bool { return !some1(mask) })
		check(root, func(int) bool { return true })
	}
}

// A second solver, gophersat, decides the same weighted limits together with the same clauses.
func TestWeightedLimitsTogetherAgreeWithASecondSolver(t *testing.T) {
	counts := map[sat.Status]int{}
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 7))
		s := sat.New()
		lits := vars(s, 12+r.IntN(14))
		var second []solver.PBConstr
		for range 2 + r.IntN(4) {
			var terms []sat.Term
			var ls, ws []int
			total := 0
			for _, l := range lits {
				if r.IntN(3) > 0 {
					w := 1 + r.IntN(40)
					terms = append(terms, sat.Term{Lit: l, Weight: w})
					ls, ws = append(ls, int(l)), append(ws, w)
					total += w
				}
			}
			if len(ls) == 0 {
				continue
			}
			if low := total * (3 + r.IntN(3)) / 10; r.IntN(2) == 0 {
				s.WeightedAtMost(s.Root(), low, terms...)
				second = append(second, solver.LtEq(ls, ws, low))
			} else {
				for i := range terms {
					terms[i].Lit = terms[i].Lit.Not()
				}
				s.WeightedAtMost(s.Root(), total-low, terms...)
				second = append(second, solver.GtEq(ls, ws, low))
			}
		}
		for range 3 * len(lits) {
			var clause []sat.Lit // of distinct variables, which gophersat relies on
			for _, i := range r.Perm(len(lits))[:3] {
				clause = append(clause, pick(r, lits[i:i+1], 1)...)
			}
			s.Add(s.Root(), clause...)
			second = append(second, solver.PropClause(int(clause[0]), int(clause[1]), int(clause[2])))
		}
		got := s.Solve(ctx)
		want := sat.Unsat
		if solver.New(solver.ParsePBConstrs(second)).Solve() == solver.Sat {
			want = sat.Sat
		}
		if got != want {
			t.Fatalf("seed %d: %v, gophersat says %v", seed, got, want)
		}
		counts[got]++
	}
	if counts[sat.Sat] < 50 || counts[sat.Unsat] < 50 {
		t.Fatalf("too one-sided to tell: %v", counts)
	}
}
