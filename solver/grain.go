package solver

import (
	"tackwright/model"
	"tackwright/solver/sat"
)

// about is the smallest thing that a rule can be lifted for by itself: a horse on
// a date, a pool at a time, two lessons. What a rule has no use for is zero.
type about struct {
	rule          string
	what          string // which of its limits
	horse, other  *model.Horse
	pool          *pool
	place         string // arena, lesson or instructor, by name
	meeting, next *model.Meeting
	ride, also    *model.Ride
	fact          *model.Stint
	date          model.Date
	at            model.Minute
	limit         int // what facts leave of it
}

// Which of its limits a rule is about.
const (
	minutes  = "minutes"
	sessions = "sessions"
	dates    = "dates"
	inARow   = "dates in a row"
)

// under gives the selector on which the clauses of a rule hang that are about
// one thing.
type under func(about) sat.Lit

// grain has a selector for each thing that a rule is about. To plan, all rules
// hang on one: the fewer assumptions, the faster. To say why something cannot be,
// each must be lifted by itself.
type grain struct {
	lit   map[about]sat.Lit
	about []about // in the order of their making
}

// encodeFine writes the rules so that each can be lifted for each thing that it
// is about: none rests on another's being kept.
func encodeFine(w *model.Week) *encoder {
	return choicesIn(w, nil, false, &grain{lit: map[about]sat.Lit{}}).rules()
}

// under gives the selectors of a rule.
func (e *encoder) under(rule string) under {
	return func(a about) sat.Lit {
		if e.fine == nil {
			return e.s.Root()
		}
		a.rule = rule
		return once(e.fine.lit, a, func() sat.Lit {
			e.fine.about = append(e.fine.about, a)
			return e.s.NewVar()
		})
	}
}

// premise reports whether other rules may count on a rule's being kept.
func (e *encoder) premise(rule string) bool { return e.on(rule) && e.fine == nil }
