package solver

import (
	"cmp"
	"slices"

	"tackwright/model"
)

// line has the places of a date in the order of their ends, and of each how many of the first a horse can come
// from. It reports false where more than that says what can be worked together: a limit on work, a fact, or a
// break long enough for the horse but too short for its tack to be changed.
func (e *encoder) line(h *model.Horse, places []*place) ([]stretch, []int, bool) {
	limits := e.w.LimitsOf(h)
	limits.WeekDays, limits.RowDates = 0, 0 // of the week
	if limits != (model.Limits{}) || slices.ContainsFunc(e.facts[h], func(f *model.Stint) bool { return f.Date == places[0].meeting.Date }) {
		return nil, nil, false
	}
	byEnd := slices.SortedStableFunc(slices.Values(places), func(p, q *place) int { return cmp.Compare(p.end, q.end) })
	stretches, before := make([]stretch, len(byEnd)), make([]int, len(byEnd))
	for i, q := range byEnd {
		stretches[i] = stretch{places: []*place{q}}
		for k, p := range byEnd[:i] {
			gap := q.start - p.end
			switch {
			case e.tooClose(gap, p.meeting.Arena, q.meeting.Arena):
			case before[i] < k || gap < max(e.w.House.Other, e.w.House.Move):
				return nil, nil, false
			default:
				before[i] = k + 1
			}
		}
	}
	return stretches, before, true
}
