package ordered_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

var ctx = context.Background()

// A puzzle is a small random instance that brute force can answer.
type puzzle struct {
	lits    []sat.Lit
	clauses [][]sat.Lit
	goals   []ordered.Goal
	assume  []sat.Lit
}

func (p *puzzle) literal(r *rand.Rand) sat.Lit {
	l := p.lits[r.IntN(len(p.lits))]
	if r.IntN(2) == 0 {
		return l.Not()
	}
	return l
}

func random(r *rand.Rand, s *sat.Solver) *puzzle {
	p := &puzzle{}
	for range 3 + r.IntN(6) {
		s.Mark(sat.Mark(r.IntN(5) - 1)) // whatever is told of parts, it must only be of use
		p.lits = append(p.lits, s.NewVar())
	}
	s.Mark(0)
	for range r.IntN(3 * len(p.lits)) {
		clause := []sat.Lit{p.literal(r), p.literal(r), p.literal(r)}
		p.clauses = append(p.clauses, clause[:1+r.IntN(3)])
		s.Add(s.Root(), p.clauses[len(p.clauses)-1]...)
	}
	heaviest := []int{1, 1, 4, 9}[r.IntN(4)]
	for range 1 + r.IntN(3) {
		var goal ordered.Goal
		for range r.IntN(2 * len(p.lits)) {
			goal.Softs = append(goal.Softs, ordered.Soft{
				Lit: p.literal(r), Weight: 1 + r.IntN(heaviest), Stratum: r.IntN(4) - 1,
			})
		}
		p.goals = append(p.goals, goal)
	}
	for range r.IntN(3) {
		p.assume = append(p.assume, p.literal(r))
	}
	return p
}

func (p *puzzle) value(mask int) func(sat.Lit) bool {
	return func(l sat.Lit) bool { return mask>>slices.Index(p.lits, max(l, -l))&1 == 1 == (l > 0) }
}

func cost(goal ordered.Goal, value func(sat.Lit) bool) int {
	total := 0
	for _, soft := range goal.Softs {
		if !value(soft.Lit) {
			total += soft.Weight
		}
	}
	return total
}

// solutions lists the assignments that keep every clause and assumption.
func (p *puzzle) solutions() []int {
	var all []int
	for mask := range 1 << len(p.lits) {
		value := p.value(mask)
		keeps := !slices.ContainsFunc(p.clauses, func(c []sat.Lit) bool { return !slices.ContainsFunc(c, value) }) &&
			!slices.ContainsFunc(p.assume, func(l sat.Lit) bool { return !value(l) })
		if keeps {
			all = append(all, mask)
		}
	}
	return all
}

// best is the least value of each goal in order, by looking at every solution.
func (p *puzzle) best() []int {
	var best []int
	for _, mask := range p.solutions() {
		var values []int
		for _, goal := range p.goals {
			values = append(values, cost(goal, p.value(mask)))
		}
		if best == nil || slices.Compare(values, best) < 0 {
			best = values
		}
	}
	return best
}

// partitions of the variables: each by itself, and two halves.
func (p *puzzle) partitions() [][][]sat.Lit {
	var each [][]sat.Lit
	for _, l := range p.lits {
		each = append(each, []sat.Lit{l, l.Not()})
	}
	half := len(p.lits) / 2
	return [][][]sat.Lit{each, {p.lits[:half], p.lits[half:]}}
}

// check asks Minimise and compares with every solution there is.
func check(t *testing.T, s *sat.Solver, p *puzzle, seed uint64) {
	t.Helper()
	checkWith(t, s, p, seed, ordered.Options{})
}

func checkWith(t *testing.T, s *sat.Solver, p *puzzle, seed uint64, opts ordered.Options) {
	t.Helper()
	want := p.best()
	opts.Start, opts.Partitions = p.lits[:2], p.partitions()
	model, results, err := ordered.Minimise(ctx, s, p.assume, p.goals, opts)
	if want == nil {
		u, ok := err.(*ordered.Unsatisfiable)
		if !ok {
			t.Fatalf("seed %d: %v, want Unsatisfiable", seed, err)
		}
		blamed := *p
		blamed.assume = u.Core
		if len(blamed.solutions()) > 0 || slices.ContainsFunc(u.Core, func(l sat.Lit) bool { return !slices.Contains(p.assume, l) }) {
			t.Fatalf("seed %d: core %v of %v is not to blame", seed, u.Core, p.assume)
		}
		return
	}
	if err != nil {
		t.Fatalf("seed %d: %v", seed, err)
	}
	for i, r := range results {
		if r.Value != want[i] || r.Bound != want[i] || !r.Proved || cost(p.goals[i], model.Value) != want[i] {
			t.Fatalf("seed %d: goal %d: %+v, model %d, want %d", seed, i, r, cost(p.goals[i], model.Value), want[i])
		}
	}
	mask := 0
	for i, l := range p.lits {
		if model.Value(l) {
			mask |= 1 << i
		}
	}
	if !slices.Contains(p.solutions(), mask) {
		t.Fatalf("seed %d: the model breaks a clause or an assumption", seed)
	}
}

func TestGoalsInOrderReachWhatBruteForceFinds(t *testing.T) {
	for seed := range uint64(4000) {
		r := rand.New(rand.NewPCG(seed, 1))
		s := sat.New()
		check(t, s, random(r, s), seed)
	}
}

// known adds to each goal true facts of the kind that arithmetic gives.
func (p *puzzle) known(r *rand.Rand) {
	kept := p.solutions()
	for i := range p.goals {
		goal := &p.goals[i]
		// A bound may lean on the goals before it being at their best.
		best := cost(*goal, p.value(kept[0]))
		for _, mask := range kept {
			best = min(best, cost(*goal, p.value(mask)))
		}
		kept = slices.DeleteFunc(kept, func(mask int) bool { return cost(*goal, p.value(mask)) > best })
		goal.Least = r.IntN(best + 1)
		if r.IntN(3) == 0 {
			bound := r.IntN(best + 1)
			goal.Beside = besideOf(ordered.Beside{Least: bound, Priced: p.priced(r, *goal, kept), Grain: 1})
			goal.Patience = 1
		}
		if r.IntN(3) == 0 {
			goal.Least = best
		}
		for range r.IntN(3) {
			var c ordered.Count
			for _, soft := range goal.Softs {
				if r.IntN(2) == 0 && !slices.Contains(c.Lits, soft.Lit) {
					c.Lits = append(c.Lits, soft.Lit)
				}
			}
			c.Least = len(c.Lits)
			for _, mask := range p.solutions() {
				fails := 0
				for _, l := range c.Lits {
					if !p.value(mask)(l) {
						fails++
					}
				}
				c.Least = min(c.Least, fails)
			}
			c.Least -= r.IntN(2) // arithmetic may fall short
			goal.Counts = append(goal.Counts, c)
		}
	}
}

// priced are some literals, and some pairs of them, with what the solutions that are left cost in which they hold, or less: no
// solution costs less than the dearest that holds in it.
func (p *puzzle) priced(r *rand.Rand, goal ordered.Goal, left []int) (all []ordered.Priced) {
	for range r.IntN(8) {
		x := ordered.Priced{Lit: p.literal(r), Least: 1000}
		if r.IntN(2) == 0 {
			x.And = p.literal(r)
		}
		for _, mask := range left {
			if value := p.value(mask); value(x.Lit) && (x.And == 0 || value(x.And)) {
				x.Least = min(x.Least, cost(goal, value))
			}
		}
		x.Least -= r.IntN(2)
		x.More = max(x.Least, 0)
		all = append(all, x)
	}
	return all
}

func TestFactsFromArithmeticChangeNoValue(t *testing.T) {
	for seed := range uint64(4000) {
		r := rand.New(rand.NewPCG(seed, 2))
		s := sat.New()
		p := random(r, s)
		if len(p.solutions()) > 0 {
			p.known(r)
			check(t, s, p, seed)
		}
	}
}

func TestWhatIsWorkedIntoASolverThatIsNotAskedAgainChangesNoValue(t *testing.T) {
	defer ordered.Hard()()
	checkMany(t, 6, ordered.Options{Last: true})
}

func TestLookingForBetterSolutionsAllTheTimeChangesNoValue(t *testing.T) {
	defer ordered.Impatient()()
	checkMany(t, 5, ordered.Options{})
}

// checkMany checks puzzles of a drawing, with facts from arithmetic in every other one.
func checkMany(t *testing.T, drawing uint64, opts ordered.Options) {
	t.Helper()
	for seed := range uint64(4000) {
		r := rand.New(rand.NewPCG(seed, drawing))
		s := sat.New()
		p := random(r, s)
		if len(p.solutions()) > 0 && seed%2 == 0 {
			p.known(r)
		}
		checkWith(t, s, p, seed, opts)
	}
}

func TestALiveSolverAnswersLikeAFreshOne(t *testing.T) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 3))
		s := sat.New()
		p := random(r, s)
		for range 6 {
			other := random(r, sat.New())
			p.assume = nil
			for range r.IntN(4) {
				p.assume = append(p.assume, p.literal(r))
			}
			for i := range other.goals {
				for j, soft := range other.goals[i].Softs {
					soft.Lit = p.literal(r)
					other.goals[i].Softs[j] = soft
				}
			}
			p.goals = other.goals
			check(t, s, p, seed)
		}
	}
}
