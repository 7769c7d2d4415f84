package model

import (
	"cmp"
	"slices"
)

// LaterBroken are rides posted for dates after those of the week that break a
// rule as things stand once the plan (nil: none) is posted for the week, for the
// office to look at: in order of time, each once, with the rule in words.
func (w *Week) LaterBroken(plan *Plan) []Violation {
	then := *w.Centre
	if plan != nil {
		then.Posted = append(slices.Clone(then.Posted), w.asPosted(plan))
	}
	var last Date
	for _, p := range w.Centre.Posted {
		last = max(last, p.Until)
	}
	var broken []Violation
	for d := w.Until + 1; d <= last; d++ {
		week := then.Repair(d, 1, Instant{}) // whatever their hours are now
		told := &Plan{Turns: make([]*Turn, len(week.Rides)), Ground: make([][]string, len(week.Rides))}
		for i, r := range week.Rides {
			if r.State == Open {
				told.Turns[i] = r.Posted
			}
		}
		for _, v := range Broken(week.Audit(told)) {
			same := func(u Violation) bool { return u.Rule == v.Rule && u.Words == v.Words }
			if !slices.ContainsFunc(broken, same) { // a week's limit is broken on each of its dates
				broken = append(broken, v)
			}
		}
	}
	slices.SortStableFunc(broken, func(u, v Violation) int { return compareInstants(u.openFrom(), v.openFrom()) })
	return broken
}

// asPosted is the plan as the next version that would tell it.
func (w *Week) asPosted(p *Plan) *Posted {
	x := &Posted{Now: w.Now, From: w.From, Until: w.Until, Told: w.TellsOf(p)}
	for _, v := range w.Centre.Posted {
		x.Version = max(x.Version, v.Version+1)
	}
	for _, n := range w.Centre.Notes {
		x.Notes = max(x.Notes, n.Number)
	}
	return x
}

// openFrom is when the first ride takes part that a plan could change.
func (v Violation) openFrom() Instant {
	var first Instant
	for _, s := range v.Stints {
		if at := (Instant{s.Date, s.Start}); s.Open && (first.IsZero() || at.Before(first)) {
			first = at
		}
	}
	return first
}

func compareInstants(i, j Instant) int {
	return cmp.Or(cmp.Compare(i.Date, j.Date), cmp.Compare(i.Minute, j.Minute))
}
