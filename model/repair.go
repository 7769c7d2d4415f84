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
			if n.Kind == NoteRiderAdded && r.Was == nil && n.isFor(r.Date()) && n.Rider == r.Rider && n.Lesson == r.Meeting.Lesson {
				r.Due = true
			}
		}
	}
	return w
}

// recall lays what was last posted for a date beside its rides: those of a rider
// in a lesson at the same hour, then the first that is left beside the first,
// whatever their hours are now.
func (w *Week) recall(d Date) {
	told := w.lastTold(d)
	for _, sameHour := range []bool{true, false} {
		for i, t := range told {
			if t == nil || t.Lesson == nil || t.Rider == nil {
				continue
			}
			k := slices.IndexFunc(w.Rides, func(r *Ride) bool {
				return r.Was == nil && r.Date() == d && r.Meeting.Lesson == t.Lesson && r.Rider == t.Rider && (!sameHour || r.Start == t.Start)
			})
			if k >= 0 {
				w.Rides[k].Was, w.Rides[k].Posted, w.Rides[k].Due = t, t.Turn, t.Turn != nil
				told[i] = nil
			}
		}
	}
}

// lastTold is what was last posted for a date.
func (w *Week) lastTold(d Date) (told []*Told) {
	if p := w.Centre.lastPosted(d); p != nil {
		for i := range p.Told {
			if p.Told[i].Date == d {
				told = append(told, &p.Told[i])
			}
		}
	}
	return told
}

// AsPosted are the stints of a date of a repair as the barn knows them, by start:
// what has started and the other work of horses as they are, with what was to be
// done when the date was posted; all else as posted.
func (w *Week) AsPosted(d Date) []*Stint {
	stints := w.worksLost(d)
	for _, s := range w.Facts {
		if s.Date == d {
			stints = append(stints, s)
		}
	}
	for _, t := range w.lastTold(d) {
		var ride *Ride
		if i := slices.IndexFunc(w.Rides, func(r *Ride) bool { return r.Was == t }); i >= 0 {
			ride = w.Rides[i]
		}
		begun := w.hasStarted(d, t.Start) && (ride == nil || ride.State != Open)
		if t.Turn == nil || begun || ride != nil && ride.State == Started {
			continue
		}
		stints = append(stints, &Stint{Date: d, Start: t.Start, End: t.End, Turn: t.Turn, Rider: t.Rider, Arena: t.Arena, Ride: ride, Name: t.LessonName})
	}
	slices.SortStableFunc(stints, compareStints)
	return stints
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
	alike := func(a, b *Piece) bool {
		return a == b || a != nil && b != nil && w.alike[a] != 0 && w.alike[a] == w.alike[b]
	}
	return alike(t.Seat, u.Seat) && alike(t.Girth, u.Girth) && slices.EqualFunc(t.Pads, u.Pads, alike) && slices.EqualFunc(t.Extras, u.Extras, alike)
}
