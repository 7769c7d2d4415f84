package model

import "slices"

// ToldOn is what was posted for a date, as the notes left it that were written
// since, in the order of the posted plan: those on the ground have no turn. What
// the ridden record of the date says does not count.
func (c *Centre) ToldOn(d Date) []Told {
	r := newRecorder(c)
	delete(r.ridden, d)
	return r.on(d)
}

// ToldThen is [Centre.ToldOn] with those rides whole of which the ridden record
// tells how they went: what it corrects is what was told, and stays to be corrected.
func (c *Centre) ToldThen(d Date) []Told {
	r := newRecorder(c)
	for _, p := range slices.Backward(r.posted) {
		if p.From <= d && d <= p.Until {
			return r.noted(d, p)
		}
	}
	return nil
}

// RiddenOn is what was ridden on a date, as far as it is known: as [Centre.ToldOn],
// corrected by the ridden record of the date. Extra rides come last.
func (c *Centre) RiddenOn(d Date) []Told { return newRecorder(c).on(d) }

// ClosedOn is the ridden record of a date; nil is that nobody has closed it, and
// what was told counts, not confirmed.
func (c *Centre) ClosedOn(d Date) *Ridden {
	for _, x := range c.Ridden {
		if x.Date == d {
			return x
		}
	}
	return nil
}
