package model

import "slices"

// Repair is the week of days dates (1 to 7) from a date on, to be planned anew
// so that as little as can be differs from what was posted for it: its score
// begins with those who were told that they ride.
func (c *Centre) Repair(from Date, days int, now Instant) *Week {
	w := c.Week(from, days, now)
	w.Mends = true
	for d := w.From; d <= w.Until; d++ {
		w.recall(d)
	}
	for _, n := range Standing(c.Notes) {
		for _, r := range w.Rides {
			if n.Kind == NoteRiderAdded && n.isFor(r.Date()) && n.Rider == r.Rider && n.Lesson == r.Meeting.Lesson {
				r.Due = true
			}
		}
	}
	return w
}

// recall lays what was last posted for a date beside its rides: the first of a
// rider in a lesson beside the first, whatever their hours are now.
func (w *Week) recall(d Date) {
	var last *Posted
	for _, p := range w.Centre.Posted {
		if p.From <= d && d <= p.Until {
			last = p
		}
	}
	if last == nil {
		return
	}
	known := map[*Ride]bool{}
	for _, t := range last.Told {
		if t.Date != d || t.Lesson == nil || t.Rider == nil {
			continue
		}
		for _, r := range w.Rides {
			if !known[r] && r.Date() == d && r.Meeting.Lesson == t.Lesson && r.Rider == t.Rider {
				known[r] = true
				r.Was, r.Posted, r.Due = &t, t.Turn, t.Turn != nil
				break
			}
		}
	}
}

// mendScore is the score of a repair in what was told.
func (w *Week) mendScore(p *Plan) []GoalValue {
	var down, first, horse, tack, besides int
	for i, r := range w.Rides {
		if r.State != Open {
			continue
		}
		now := p.Turns[i]
		switch {
		case now == nil && r.Due:
			down++
			if r.Rider.RideFirst {
				first++
			}
		case now == nil:
			besides++
		}
		switch {
		case r.Posted == nil:
		case now == nil || now.Horse != r.Posted.Horse:
			horse++
		case !w.AlikeTack(now, r.Posted):
			tack++
		}
	}
	return []GoalValue{
		{"told a", "riders who were told that they ride, and are on the ground", down},
		{"told b", "of those, riders who ride first", first},
		{"keep a", "rides that are not on the horse that was posted", horse},
		{"keep b", "rides on the horse that was posted, in other tack", tack},
		{"besides", "other rides on the ground", besides},
	}
}

// AlikeTack reports whether seat, pads, girth and extras of two turns are alike,
// piece by piece.
func (w *Week) AlikeTack(t, u *Turn) bool {
	alike := func(a, b *Piece) bool { return a == b || a != nil && b != nil && w.alike[a] == w.alike[b] }
	return alike(t.Seat, u.Seat) && alike(t.Girth, u.Girth) && slices.EqualFunc(t.Pads, u.Pads, alike) && slices.EqualFunc(t.Extras, u.Extras, alike)
}
