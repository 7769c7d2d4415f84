package command

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// aYear is how many dates ahead the next lesson is looked for.
const aYear = 366

// whyNone says why a week has no lesson, and when the next one is; "" where it
// has lessons, whose rides are then counted with why they are off.
func whyNone(w *model.Week) string {
	if len(w.Meetings) > 0 {
		return ""
	}
	why := " No lesson falls on these dates"
	covered := slices.ContainsFunc(w.Dates(), func(d model.Date) bool { return w.Centre.TermOn(d) != nil })
	if len(w.Centre.Terms) > 0 && !covered {
		why = " No term covers these dates"
	}
	for d := w.Until + 1; d < w.Until+aYear; d++ {
		for _, l := range w.Centre.Lessons {
			if w.Centre.Holds(l, d) {
				return fmt.Sprintf("%s; the next lesson is %s on %s.", why, l.Name, d.Words())
			}
		}
	}
	return why + ", nor does any lesson within a year."
}

// closedFor is the reason of the closure for which a lesson is not held; "" where
// it is another reason, which may be nobody's business.
func closedFor(w *model.Week, r *model.Ride) string {
	term := w.Centre.TermOn(r.Date())
	if l := r.Meeting.Lesson; l != nil && l.Term != nil {
		term = l.Term
	}
	if term == nil || !slices.ContainsFunc(term.Closures, func(p model.Period) bool { return p.Why == r.Meeting.NotHeld }) {
		return ""
	}
	return ": " + r.Meeting.NotHeld
}
