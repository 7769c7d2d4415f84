package model

import (
	"cmp"
	"slices"
)

// Change is a ride that is not as it was posted.
type Change struct {
	Ride          *Ride
	Before, After *Turn // nil: on the ground
	Why           string
}

// How a ride differs from what was posted.
func (c Change) How() string {
	switch {
	case c.Ride.State == Off:
		return "does not ride"
	case c.After == nil:
		return "on the ground"
	case c.Before == nil:
		return "rides"
	case c.Before.Horse != c.After.Horse:
		return "another horse"
	}
	return "other tack"
}

// Changes are the rides of a repair that are not as they were posted, in order,
// each with the reason. Those that had started are never among them.
func (w *Week) Changes(p *Plan) []Change {
	var all []Change
	for i, r := range w.Rides {
		after := p.Turns[i]
		if r.State == Off {
			after = nil
		}
		if r.State == Started || after.Equal(r.Posted) {
			continue
		}
		c := Change{Ride: r, Before: r.Posted, After: after}
		switch {
		case r.State == Off:
			c.Why = r.OffWhy
		case after != nil && r.Posted != nil:
			c.Why = cmp.Or(w.WhyNot(p, r, r.Posted.Horse, r.Posted.Seat), "something else of its tack is used elsewhere then")
		case after == nil && len(p.Ground[i]) > 0:
			c.Why = p.Ground[i][0]
		case after != nil && r.Due:
			c.Why = "added by a note"
		case after != nil:
			c.Why = "there is a horse for it now"
		}
		all = append(all, c)
	}
	return all
}

// LaterBroken are rides posted for dates after those of the week that break a
// rule as things stand, for the office to look at: by date, with the rule in
// words.
func (w *Week) LaterBroken() []Violation {
	var last Date
	for _, p := range w.Centre.Posted {
		last = max(last, p.Until)
	}
	var broken []Violation
	for d := w.Until + 1; d <= last; d++ {
		_, week, plan, _ := w.Centre.PostedOn(d)
		if week == nil {
			continue
		}
		broken = append(broken, Broken(week.Audit(plan))...)
	}
	return slices.Clip(broken)
}
