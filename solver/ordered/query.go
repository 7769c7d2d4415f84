package ordered

import (
	"context"
	"math"
	"slices"

	"tackwright/solver/sat"
)

// A query is one call of Minimise.
type query struct {
	ctx    context.Context
	s      *sat.Solver
	asks   *sat.Part         // who is asked at the moment; nil: the whole
	parts  map[int]*sat.Part // by group
	own    sat.Lit           // selector of all that the query adds
	assume []sat.Lit         // own, then the caller's
	goals  []Goal
	opts   Options

	unit    int // ticks of the solver that count as one here: about what it takes to set every variable
	asked   int
	renewed int    // what was spent when s was renewed last
	begun   int    // work of the solver before
	enough  func() // ends ctx
	best    sat.Model
	values  []int // of the goals in best
	late    []sat.Model
	found   []Count // by the goals that are proved
	clash   []Count // of literals that along could not have together
}

// ask solves under the query's assumptions and the given ones, and keeps a solution that is better
// than all before. It gives up after the given ticks of work, 0 for never.
func (q *query) ask(ticks int, lits []sat.Lit) sat.Status {
	q.asked++
	if balk != nil && ticks > 0 && q.best != nil && balk() {
		return sat.Unknown
	}
	solve := q.s.SolveWithin
	if q.asks != nil {
		solve = q.asks.SolveWithin
	}
	status := solve(q.ctx, ticks*q.unit, slices.Concat(q.assume, lits)...)
	if status == sat.Sat && q.asks == nil { // solutions of a part are none of the whole
		q.remember(q.s.Model())
		q.keep(q.s.Model())
	}
	if q.best != nil && q.left() <= 0 {
		q.enough()
	}
	return status
}

// left is what may still be spent of Options.Effort, in ticks of the solver.
func (q *query) left() int {
	if q.opts.Effort == 0 {
		return math.MaxInt32
	}
	return q.opts.Effort - (q.s.Work() - q.begun + q.asked/pace.questions)
}

// balk, which only tests set, has a question end undecided: those of small puzzles never do.
var balk func() bool

// pace is how soon better solutions get their turn: after some ticks of effort, then twice that, and
// so on; so many questions count as a tick. A variable so that tests can be impatient.
var pace = struct{ ticks, questions int }{20, 16}

// effort measures what was spent, in ticks, questions that took less included. It is the same in
// every run.
func (q *query) effort() int { return q.s.Work()/q.unit + q.asked/pace.questions }

func (q *query) keep(m sat.Model) {
	values := make([]int, len(q.goals))
	for i, goal := range q.goals {
		if goal.Value != nil {
			values[i] = goal.Value(m)
			continue
		}
		for _, soft := range goal.Softs {
			if !m.Value(soft.Lit) {
				values[i] += soft.Weight
			}
		}
	}
	if q.best != nil && slices.Compare(values, q.values) >= 0 {
		return
	}
	q.best, q.values = m, values
	if q.opts.Improved != nil {
		q.opts.Improved(m.Value)
	}
}

// blamed is the part of the last core that is not the query's own assumptions.
func (q *query) blamed() []sat.Lit {
	core := q.s.Core
	if q.asks != nil {
		core = q.asks.Core
	}
	return slices.DeleteFunc(core(), func(l sat.Lit) bool { return slices.Contains(q.assume, l) })
}

// first finds a solution to have in hand, one that satisfies what it easily can of Start.
func (q *query) first() error {
	if q.along(q.opts.Start, 30, math.MaxInt32) || q.ask(0, nil) == sat.Sat {
		return nil
	}
	if err := q.ctx.Err(); err != nil {
		return err
	}
	return &Unsatisfiable{Core: slices.DeleteFunc(q.s.Core(), func(l sat.Lit) bool { return l == q.own })}
}

// along looks for a solution in which lits hold, but for those that turn out to be in the way: of
// those to blame the last gives in. Where that is hard it does without the last ones first. It reports
// whether a solution was found, and gives up after about the given effort, or where so many clashes were found first.
func (q *query) along(lits []sat.Lit, most, clashes int) bool {
	const ticks, short = 1, 24 // who is to blame is noted if they are few
	end := q.effort() + most
	clashes += len(q.clash)
	lits = slices.Clone(lits)
	n := len(lits)
	found := false
	q.recall()
	for n > 0 && q.effort() < end && (found || len(q.clash) < clashes) {
		switch q.ask(ticks, lits[:n]) {
		case sat.Sat:
			if found = true; n == len(lits) {
				return true
			}
			n = min(n+len(lits)/8+1, len(lits))
		case sat.Unsat:
			blamed := q.blamed()
			last := n - 1
			for last >= 0 && !slices.Contains(blamed, lits[last]) {
				last--
			}
			if last < 0 {
				return false
			}
			if len(blamed) <= short {
				q.clash = append(q.clash, Count{Lits: q.shrink(blamed), Least: 1})
			}
			lits = slices.Delete(lits, last, last+1)
			n--
		default:
			if q.ctx.Err() != nil {
				return found
			}
			q.recall()
			n = n * 3 / 4
			if found { // those are hard to have: leave them
				lits = lits[:n]
			}
		}
	}
	return found
}

// spent is the effort since Minimise was called.
func (q *query) spent() int { return (q.s.Work()-q.begun)/q.unit + q.asked/pace.questions }

// hard is how much effort shows that a search is worth what it takes to make it easier. A variable so that tests can have
// all searches be.
var hard = 25

// hard is more in a large problem, where it takes memory and where more cores first leave less open to the goals after:
// sooner, carry of stress loose 8 came to no end.
func (q *query) hard() int {
	if q.unit > 4 {
		return 4 * hard
	}
	return hard
}

// isHard reports whether the search has turned out to be hard. One that is not goes on as if there were neither parts nor
// anything to make certain.
func (q *query) isHard() bool { return q.spent() >= q.hard() }

// renew lets go of what has become certain, where that was work: all that was added, if nothing is asked after it.
func (q *query) renew() {
	if q.opts.Last && q.spent()-q.renewed >= q.hard() {
		q.s.Add(q.s.Root(), q.own)
		q.s.Renew()
		q.renewed = q.spent()
	}
}

// recall makes the next search start near the best solution.
func (q *query) recall() {
	if q.best != nil {
		q.s.Recall(q.best)
	}
}

// prove brings goal i to its least value and holds it there for the goals after it. It returns the
// bound proved, and whether the best solution meets it.
func (q *query) prove(i int) (bound int, proved bool, err error) {
	g := newSearch(q, i)
	defer g.close()
	g.run()
	if g.err != nil {
		return 0, false, g.err
	}
	if proved = g.met(); proved && i+1 < len(q.goals) {
		if g.tighten(); g.err != nil {
			return 0, false, g.err
		}
		g.sum.below(q, q.own, g.upper()+1)
		q.found = append(q.found, g.found()...)
		g.hold()
		g.probe()
		q.renew()
	}
	return g.bound(), proved, nil
}
