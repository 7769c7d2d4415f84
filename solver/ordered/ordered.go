// Package ordered finds the best solution of clauses by several goals, the first counting before
// all others: each goal is proved before the next is opened. It knows no trade.
//
// A goal counts the weights of wanted literals that are false. The search is core-guided (OLL,
// Andres et al. 2012; weight-aware, Berg & Järvisalo 2017): it assumes every wish at once, and each
// set of wishes found to be at odds (a core) raises the proved bound and is replaced by a count of
// how many of it fail.
//
// It runs anytime: a context that ends leaves the best solution seen and the bounds proved. The
// clock decides nothing else: where the proofs complete, the same calls give the same model (but see
// package sat on ticks that are dropped; what is proved never depends on it).
package ordered

import (
	"context"
	"fmt"
	"slices"

	"tackwright/solver/sat"
)

// Soft is a literal wanted true. While it is false it costs Weight, 1 or more. Stratum, from 0 up,
// groups wishes whose cores are looked for together before those of the whole, such as the wishes
// of one day; -1 is no group. The variables of a group's part of the problem, if it has one, are marked 1 + Stratum.
type Soft struct {
	Lit     sat.Lit
	Weight  int
	Stratum int
}

// Count is a fact known from arithmetic: in every solution at least Least of Lits are false. It may
// lean on the assumptions, and on the goals before being at their best. Lits are among the literals
// of the goal's Softs, each once. It takes the place of the search that would have to find it, which
// for "201 riders in 200 places" no clause learner ends.
type Count struct {
	Lits  []sat.Lit
	Least int
}

// Goal is to falsify as little weight of Softs as can be.
type Goal struct {
	Name  string
	Softs []Soft
	// Open, if any, gives Softs and Least once the goals before have been proved, from the best
	// solution so far: for a goal that is dear to write down whole. They need to be right only for
	// solutions no worse than that one.
	Open func(best sat.Model) (softs []Soft, least int)
	// Value, if any, tells the value of any solution: where Softs are not there before Open, or may
	// fail without need.
	Value func(sat.Model) int
	// Least is a lower bound on the value, proved by other means; 0 is always one.
	Least  int
	Counts []Count
	// Given, if any, writes under a selector clauses that hold in every solution that is as good as
	// the best one in the goals before, when those have been proved.
	Given func(sel sat.Lit, best sat.Model)
	// Better, if any, writes under a selector clauses that hold in every solution whose value is less
	// than below and that is as good as can be in the goals before. They are for a goal whose weights
	// are 1, and then a better solution is looked for under them before cores are.
	Better func(sel sat.Lit, below int)
	// Beside, if any, prepares what is worked out beside the search, from the best solution so far, the
	// goal's value in it, and what the search has found to be true of all that are no worse: of the goals'
	// wishes, and of literals of an earlier Hint that could not be had together. What it
	// returns, if anything, runs in a goroutine of its own, ends soon after its context and reads
	// nothing that the caller's goroutine writes. Its answer is awaited at a fixed point of the search,
	// so that the clock does not decide which solution comes out. It is asked again, one at a time,
	// when there is more to go by, and after a while, which is longer each time.
	Beside func(best sat.Model, upper int, found []Count) func(context.Context) Beside
	// Patience is how much effort without a core sets it off, and how much more goes by before its answer
	// is awaited, in ticks; 0: 10. The sooner, the less it must cost.
	Patience int
}

// Beside is what can be known of a goal by other means than search.
type Beside struct {
	// Least is a lower bound on the value.
	Least int
	// Priced are literals that are false in every solution whose value is below what they tell; none: those told
	// before are as good.
	Priced []Priced
	// Base and Grain, if Grain is not 0, say what literals of Priced cost together: in every solution Grain times the
	// value is at least Base plus, of each group, the most that any of its literals adds that are true.
	Base, Grain int
	// Hint are literals that hold in a good solution, or nearly so; the first are tried first.
	Hint []sat.Lit
}

// Priced is a literal, or two, and a lower bound on the value of every solution in which it is true.
type Priced struct {
	Lit, And sat.Lit // And is 0 or a second literal: it is about both being true
	Least    int
	Group    int // from 0 up
	More     int // what it adds, in parts of Grain; 0 or more
}

// not is a clause that forbids it.
func (p Priced) not() []sat.Lit {
	if p.And == 0 {
		return []sat.Lit{p.Lit.Not()}
	}
	return []sat.Lit{p.Lit.Not(), p.And.Not()}
}

// Result tells what became of a goal: its Value in the solution returned, and the Bound below which
// no solution with the earlier goals at their values can be. Proved means that the two are equal
// and that every goal before it is proved.
type Result struct {
	Name         string
	Value, Bound int
	Proved       bool
}

// Options may all be left out.
type Options struct {
	// Partitions part literals that tell solutions apart into regions, each in its way. Better solutions
	// are also looked for among those that differ from the best in a few regions only.
	Partitions [][][]sat.Lit
	// Start lists literals that the first solution should satisfy, as far as that is easy.
	Start []sat.Lit
	// Progress is told when the best value or the bound of the goal being worked on changes.
	Progress func(goal string, best, bound int)
	// Effort, if not 0, is the work after which it returns, once there is a solution, as if ctx had
	// ended: in ticks of the solver, questions counted in. Other than time it is the same in every run.
	Effort int
	// Last says that s will not be asked again: what becomes certain is worked into its clauses then, which makes hard
	// goals easier.
	Last bool
	// Improved is told each solution that is better than all before it.
	Improved func(value func(sat.Lit) bool)
}

// Unsatisfiable is the error of clauses that cannot hold under the assumptions: Core names those
// to blame, none if the permanent clauses are at odds by themselves. It is not minimal.
type Unsatisfiable struct{ Core []sat.Lit }

func (u *Unsatisfiable) Error() string {
	return fmt.Sprintf("no solution: %d assumptions are at odds", len(u.Core))
}

// Minimise returns the best solution in which all of assume is true, and a result for each goal.
//
// When ctx ends first it returns the best solution seen, the results so far and no error; if none
// had been seen, the error of ctx. A goal that was not reached has the value that the solution
// happens to give it, and its Least for a bound. A Count, Least or Beside that a solution found
// contradicts is an error. Afterwards s answers as if Minimise had not been
// called, with more variables: all that was added hangs on a selector that is retired, unless it was the Last call.
func Minimise(ctx context.Context, s *sat.Solver, assume []sat.Lit, goals []Goal, opts Options) (sat.Model, []Result, error) {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	q := &query{ctx: ctx, enough: cancel, begun: s.Work(), s: s, own: s.NewVar(), parts: map[int]*sat.Part{}, goals: slices.Clone(goals), opts: opts, unit: 1 + s.Vars()/sat.Tick}
	if !opts.Last {
		defer s.Retire(q.own)
	}
	q.assume = append([]sat.Lit{q.own}, assume...)
	defer s.Mark(s.Mark(sat.Across))
	if err := q.first(); err != nil {
		return nil, nil, err
	}
	results := make([]Result, len(goals))
	open := true // every goal so far is proved
	for i, goal := range goals {
		bound := goal.Least
		if open {
			var err error
			if bound, open, err = q.prove(i); err != nil {
				return nil, nil, err
			}
		}
		results[i] = Result{Name: goal.Name, Bound: bound, Proved: open}
	}
	for i := range results {
		results[i].Value = q.values[i]
	}
	return q.best, results, nil
}
