package model

// With is the week as it would be if notes stood beside those that do, in that
// order; nothing is written. It shares no noun with w: see [Week.Same]. Where a note
// says when, by whom or under which number it is written, that counts as it does in a
// folder.
func (w *Week) With(notes ...*Note) *Week {
	both := deepCopy(&struct {
		Centre *Centre
		Notes  []*Note
	}{w.Centre, notes})
	c := both.Centre
	last := 0
	for _, n := range c.Notes {
		last = max(last, n.Number)
	}
	for _, n := range both.Notes {
		last++
		n.Number = last
		c.Notes = append(c.Notes, n)
		n.obey()
	}
	return c.Week(w.From, int(w.Until-w.From)+1, w.Now)
}

// Same is the ride of another reading of the week that is the one of w, by its
// rider, lesson and date; nil is that it has none. Of a rider with two in a lesson the
// one of that start is meant, else the first.
func (w *Week) Same(r *Ride) *Ride {
	for _, x := range w.Rides {
		if x.Rider.Name == r.Rider.Name && x.Meeting.Name == r.Meeting.Name && x.Date() == r.Date() && x.Start == r.Start {
			return x
		}
	}
	return w.RideOf(r.Rider.Name, r.Meeting.Name, r.Date())
}

// RideOf is the first ride of a rider in a lesson on a date, each by name; nil is none.
func (w *Week) RideOf(rider, lesson string, d Date) *Ride {
	for _, x := range w.Rides {
		if x.Rider.Name == rider && x.Meeting.Name == lesson && x.Date() == d {
			return x
		}
	}
	return nil
}
