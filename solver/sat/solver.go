// Package sat asks a SAT solver questions about clauses. It knows no trade, and it is the only
// package that imports gini.
//
// Every clause hangs on a selector, a literal that switches it on: rules on one of their own,
// permanent clauses on Root. A question is answered under assumptions; when the answer is no, Core
// names the assumptions to blame. One Solver belongs to one goroutine.
//
// Same calls, same answers: nothing here looks at a clock except to give up, so an answer (model
// and core included) depends only on the calls made before it. One thing can escape this: gini drops a
// tick of work when nobody waits for it at that instant, and a search that is to end after some ticks
// may then go on for one more. Where the process runs on one processor while it searches (GOMAXPROCS 1,
// as the program does) somebody does wait, unless that processor is taken away at that instant for longer than a
// time slice.
package sat

import (
	"context"
	"runtime"

	"github.com/irifrance/gini"
	"github.com/irifrance/gini/z"
)

// Lit is a variable or its negation: v or -v, v from 1 up. Zero is no literal.
type Lit int32

// Not is the opposite literal.
func (l Lit) Not() Lit { return -l }

// Var is the variable of l, from 1 up.
func (l Lit) Var() int { return int(max(l, -l)) }

// Status is an answer to Solve.
type Status int

const (
	Unknown Status = iota // gave up: deadline, cancellation or work spent
	Sat                   // yes; Model and Value tell how
	Unsat                 // no; Core tells which assumptions forbid it
)

// A Model tells for each variable whether it is true.
type Model []bool

// Value tells whether l is true in the model. Variables made after the model are false in it.
func (m Model) Value(l Lit) bool {
	v := l.Var()
	return (v < len(m) && m[v]) == (l > 0)
}

// Solver holds clauses and answers questions about them.
//
// The clauses handed to gini are at all times satisfied by "every variable false": a clause with
// no negative literal gets the negation of root added. So gini never meets an unsatisfiable
// formula (after which its next answer ends the process), and most clauses need no guard.
//
// Gini does not let go of clauses whose selector is retired. When those are most of all, a new one takes over
// what is left (see renew).
type Solver struct {
	gini     *gini.Gini // made at the first question, when the size is known
	store    []Lit      // the clauses, each ended by 0
	told     int        // of store: what gini knows
	root     Lit
	vars     int     // handed out
	inner    []z.Lit // by variable: its number in gini, or z.LitNull
	outer    []Lit   // by number in gini
	fixed    []int8  // by variable: 1 and -1 where clauses that are gone made it true or false
	numbered int     // variables that had their turn to be numbered
	reserved int     // made in gini
	clauses  int
	kept     int     // clauses in store
	marks    []Mark  // by variable
	mark     Mark    // of variables to come
	renewed  int     // times
	hung     []int32 // clauses in store by selector, of each variable and then of its negation
	dead     int     // those whose selector is retired
	tried    int     // kept when renewing came to nothing
	work     *int
	due      bool    // to be renewed
	assumed  []bool  // by variable: since the clauses were made easier
	gone     []gone  // in the order in which they went
	goneAt   []int32 // by variable: 1 + its place in gone, or 0
	model    Model
	core     []Lit
}

// New makes a solver with no clauses.
func New() *Solver {
	s := &Solver{work: new(int), inner: make([]z.Lit, 1), outer: make([]Lit, 1), fixed: make([]int8, 1), marks: make([]Mark, 1), hung: make([]int32, 2)}
	s.root = s.NewVar()
	return s
}

// Root is the literal that is true in every answer: the selector of permanent clauses, and the
// constant true. Its negation is the constant false.
func (s *Solver) Root() Lit { return s.root }

// NewVar makes a variable and returns its positive literal.
func (s *Solver) NewVar() Lit {
	s.vars++
	s.inner, s.fixed, s.marks, s.hung = append(s.inner, z.LitNull), append(s.fixed, 0), append(s.marks, s.mark), append(s.hung, 0, 0)
	return Lit(s.vars)
}

// ready makes gini know every variable and clause.
func (s *Solver) ready() {
	s.renew()
	for ; s.numbered < s.vars; s.numbered++ {
		s.number(Lit(s.numbered + 1))
	}
	if s.gini == nil {
		// Where gini has to grow it doubles, and then decides every variable that there is room for
		// in each answer: so it gets room for what a search usually adds.
		n := len(s.outer)
		s.gini = gini.NewVc(n+n/4+31, s.kept)
	}
	s.reserve()
	s.tell(s.store[s.told:])
	s.told = len(s.store)
}

// Vars is the number of variables made so far, Root and helpers of the encoders included.
func (s *Solver) Vars() int { return s.vars }

// Clauses is the number of clauses added so far.
func (s *Solver) Clauses() int { return s.clauses }

// Add adds the clause: if sel then at least one of lits. With no lits it forbids sel.
func (s *Solver) Add(sel Lit, lits ...Lit) {
	s.restore(sel)
	s.restore(lits...)
	negative := false
	begin := len(s.store)
	put := func(l Lit) {
		negative = negative || l < 0
		s.store = append(s.store, l)
	}
	for _, l := range lits {
		switch l {
		case s.root:
			s.store = s.store[:begin]
			return
		case s.root.Not():
		default:
			put(l)
		}
	}
	switch sel {
	case s.root:
	case s.root.Not():
		s.store = s.store[:begin]
		return
	default:
		put(sel.Not())
		*s.hangs(sel)++
	}
	if !negative {
		put(s.root.Not())
	}
	s.store = append(s.store, 0)
	s.clauses++
	s.kept++
}

// Retire forbids sel for good, which lets go of every clause that hangs on it.
func (s *Solver) Retire(sel Lit) {
	s.Add(s.root, sel.Not())
	s.dead += int(*s.hangs(sel))
	*s.hangs(sel) = 0
}

// hangs is how many clauses hang on a selector.
func (s *Solver) hangs(sel Lit) *int32 { return &s.hung[at(sel)] }

// Tick is the unit of work: this many propagations, a few milliseconds.
const Tick = 20_000

// Work is the number of whole ticks spent in answers so far, those of parts and copies too. It is the same in every run of the
// same calls that was not cut off by a context, unless gini dropped a tick.
func (s *Solver) Work() int { return *s.work }

// Solve asks whether the clauses can be satisfied with all of assume true. It answers Unknown once
// ctx is done; it looks at ctx once a tick.
func (s *Solver) Solve(ctx context.Context, assume ...Lit) Status {
	return s.SolveWithin(ctx, 0, assume...)
}

// SolveWithin is Solve that gives up after about the given number of ticks; 0 is no limit.
func (s *Solver) SolveWithin(ctx context.Context, ticks int, assume ...Lit) Status {
	if ctx.Err() != nil {
		return Unknown
	}
	s.expect(assume)
	s.ready()
	for _, l := range assume {
		if valueIn(s.fixed, l) < 0 {
			s.core = append(s.core[:0], l)
			return Unsat
		}
	}
	s.gini.Assume(s.in(s.root))
	for _, l := range assume {
		if valueIn(s.fixed, l) == 0 {
			s.gini.Assume(s.in(l))
		}
	}
	switch s.run(ctx, ticks) {
	case 1:
		s.model = make(Model, s.vars+1)
		for v := 1; v <= s.vars; v++ {
			s.model[v] = s.fixed[v] > 0 || s.inner[v] != z.LitNull && s.gini.Value(s.inner[v])
		}
		s.extend(s.model)
		return Sat
	case -1:
		s.core = s.core[:0]
		for _, m := range s.gini.Why(nil) {
			if l := s.out(m); l != s.root {
				s.core = append(s.core, l)
			}
		}
		return Unsat
	}
	return Unknown
}

// run lets gini search, stopping only at ticks that gini itself counts: unlike gini's Try, which
// restarts the search wherever the clock happens to stand, pausing leaves the search as it was.
func (s *Solver) run(ctx context.Context, ticks int) int {
	search := s.gini.GoSolve()
	for n := 1; ; n++ {
		answer, paused := search.Pause()
		if !paused {
			return answer
		}
		*s.work++
		runtime.Gosched() // to wait for the next tick at the start of a time slice: at its end, another may come first
		search.Unpause()
		if ctx.Err() != nil || n == ticks {
			return search.Stop()
		}
	}
}

// Model is the model of the last Sat answer. It stays valid and unchanged afterwards.
func (s *Solver) Model() Model { return s.model }

// Value tells whether l is true in the model of the last Sat answer.
func (s *Solver) Value(l Lit) bool { return s.model.Value(l) }

// Core is, after Unsat, a subset of the assumptions that cannot all hold. If the permanent clauses are at
// odds by themselves it is empty, or one assumption that they make false. It is not minimal: see Shrink. The
// caller may keep it.
func (s *Solver) Core() []Lit { return append([]Lit(nil), s.core...) }

// Recall makes the next search start near m: each variable is first tried with its value there.
// It changes what is found first, never what is possible.
func (s *Solver) Recall(m Model) {
	// Gini saves the value of each variable it takes back. So all are assumed, which a test carries
	// out without searching, and taken back. One that is to be made anew would forget them.
	if s.due {
		return
	}
	s.ready()
	s.gini.Assume(s.in(s.root))
	for v := 1; v < len(m); v++ {
		l := Lit(v)
		if !m[v] {
			l = -l
		}
		if s.inner[v] != z.LitNull {
			s.gini.Assume(s.in(l))
		}
	}
	s.gini.Test(nil)
	s.gini.Untest()
}
