package solver

import (
	"cmp"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// entry is one line of a horse's diary for a date: a place that it may work in,
// or a fact.
type entry struct {
	start, end model.Minute
	work       int64
	session    *model.Meeting // nil: a work
	lit        sat.Lit        // of a place; unused for a fact
	fact       bool
}

// diary is all that a horse does, or may do, on a date, by start; facts before
// places where they start together, as the audit has them.
func (e *encoder) diary(h *model.Horse, d model.Date) []entry {
	var day []entry
	for _, f := range e.facts[h] {
		if f.Date == d {
			day = append(day, entry{start: f.Start, end: f.End, work: f.Work, session: f.Meeting, fact: true})
		}
	}
	for _, p := range e.of[h] {
		if p.meeting.Date == d {
			day = append(day, entry{start: p.start, end: p.end, session: p.meeting, lit: p.worked,
				work: e.w.WorkOf(p.rides[0].ride, h)})
		}
	}
	slices.SortStableFunc(day, func(a, b entry) int { return cmp.Compare(a.start, b.start) })
	return day
}

// impossible reports whether a horse that has worked until last cannot also work
// an entry, because another rule keeps the two from overlapping.
func (e *encoder) impossible(worked bool, last model.Minute, x entry) bool {
	return worked && x.start < last && !x.fact && e.premise("horse in one place")
}

// verdict on a step of a walk.
type verdict int

const (
	fine   verdict = iota
	broken         // the rule is broken for good
	moot           // another rule forbids the step
)

func kept(ok bool) verdict {
	if ok {
		return fine
	}
	return broken
}

// walk follows a horse through a diary, from entry to entry, and forbids under
// sel every way of working of which step says that it breaks the rule. It makes
// a literal for each state from which that is still open: "the horse came this
// way". States are compared, so that ways that come to the same are followed
// once.
func walk[S comparable](s *sat.Solver, sel sat.Lit, day []entry, from S, step func(S, entry) (S, verdict)) {
	w := &walker[S]{s: s, day: day, step: step, seen: map[stage[S]]sat.Lit{}}
	s.Add(sel, w.at(stage[S]{0, from}))
}

type stage[S comparable] struct {
	entry int
	state S
}

type walker[S comparable] struct {
	s    *sat.Solver
	day  []entry
	step func(S, entry) (S, verdict)
	seen map[stage[S]]sat.Lit
}

// at is root where no way on from the stage breaks the rule, its negation where
// all do, else a literal from which the clauses forbid those that do.
func (w *walker[S]) at(x stage[S]) sat.Lit {
	if x.entry == len(w.day) {
		return w.s.Root()
	}
	if lit, ok := w.seen[x]; ok {
		return lit
	}
	day := w.day[x.entry]
	works := w.s.Root()
	switch next, verdict := w.step(x.state, day); verdict {
	case fine:
		works = w.at(stage[S]{x.entry + 1, next})
	case broken:
		works = w.s.Root().Not()
	}
	lit := works
	if !day.fact {
		rests := w.at(stage[S]{x.entry + 1, x.state})
		if rests != works {
			lit = w.s.NewVar()
			w.s.Add(lit, day.lit.Not(), works)
			w.s.Add(lit, day.lit, rests)
		}
	}
	w.seen[x] = lit
	return lit
}
