package model

import "slices"

// OrdinaryWeeks are the term's weeks as they stand when nothing happens: the
// lessons and works that are held every week, with their standing riders, and
// none of what comes and goes: bookings, notes, posted and ridden records;
// closures, absences and days off that have a date, but for those of weekdays all
// through the rest of the term; appointments. A horse or a piece that the centre's
// own files, and no note, say is out stays out.
//
// The first is the fullest calendar week of the term, of alike ones the earliest;
// of those weeks that end on the date from or later, where the term has any. The
// second is there where riders ride every other week: the fullest of the weeks
// of the other kind, if it has a rider in a lesson that the first has not. There
// is none where the term has no ride.
//
// Both are of one centre made for them, a copy, with this term alone.
func (c *Centre) OrdinaryWeeks(t *Term, from Date) []*Week {
	o := c.ordinary(t, max(from, t.First))
	first := t.First.WeekStart(c.House.WeekStarts)
	if from <= t.Last {
		first = max(first, from.WeekStart(c.House.WeekStarts))
	}
	var kinds [2]*Week // one of each kind
	for i := 0; first+Date(7*i) <= t.Last; i++ {
		w := o.Week(first+Date(7*i), 7, Instant{})
		if best := kinds[i%2]; w.openRides() > 0 && (best == nil || w.openRides() > best.openRides()) {
			kinds[i%2] = w
		}
	}
	one, other := kinds[0], kinds[1]
	if one == nil || other != nil && (other.openRides() > one.openRides() || other.openRides() == one.openRides() && other.From < one.From) {
		one, other = other, one
	}
	switch {
	case one == nil:
		return nil
	case other == nil || !slices.ContainsFunc(other.Rides, func(r *Ride) bool { return r.State == Open && !one.seats(r.Rider, r.Meeting.Lesson) }):
		return []*Week{one}
	}
	return []*Week{one, other}
}

func (w *Week) openRides() int {
	n := 0
	for _, r := range w.Rides {
		n += b2i(r.State == Open)
	}
	return n
}

// seats reports whether the rider has a ride in the lesson.
func (w *Week) seats(r *Rider, l *Lesson) bool {
	return slices.ContainsFunc(w.Rides, func(x *Ride) bool { return x.State == Open && x.Rider == r && x.Meeting.Lesson == l })
}

// ordinary is a copy of the centre with what its ordinary weeks have, from a date on.
func (c *Centre) ordinary(t *Term, from Date) *Centre {
	everyWeek := func(ps *[]Period) { everyWeek(ps, from, t.Last) }
	some := *c
	some.Terms, some.Bookings, some.Notes, some.Posted, some.Ridden = []*Term{t}, nil, nil, nil, nil
	some.Lessons = slices.DeleteFunc(slices.Clone(c.Lessons), func(l *Lesson) bool { return l.On != 0 || l.Term != nil && l.Term != t })
	some.Works = slices.DeleteFunc(slices.Clone(c.Works), func(w *Work) bool { return w.On != 0 })
	o := deepCopy(&some)
	everyWeek(&o.Terms[0].Closures)
	for _, x := range o.Persons {
		everyWeek(&x.Away)
	}
	for _, x := range o.Arenas {
		everyWeek(&x.Closures)
	}
	for _, x := range o.Riders {
		everyWeek(&x.Away)
	}
	for _, l := range o.Lessons {
		l.HandsOn = nil
	}
	for _, h := range o.Horses {
		everyWeek(&h.DaysOff)
		h.Out = slices.DeleteFunc(h.Out, func(x Out) bool { return x.Note != 0 || x.Why == Appointment || !x.End.IsZero() })
	}
	for _, p := range o.Pieces {
		p.Out = slices.DeleteFunc(p.Out, func(x PieceOut) bool { return x.Note != 0 || !x.End.IsZero() })
	}
	return o
}

// everyWeek leaves the periods that come every week: those that have no date, and
// those of weekdays whose dates are all of some, from a first to a last.
func everyWeek(ps *[]Period, first, last Date) {
	*ps = slices.DeleteFunc(*ps, func(p Period) bool {
		dated := p.From != 0 || p.Until != 0
		return dated && (len(p.Weekdays) == 0 || p.From > first || p.Until != 0 && p.Until < last)
	})
}

// Pairings are a plan's horses and seats as standing pairings, in the order of
// the rides: of a rider with parts in a lesson, those of the first.
func (w *Week) Pairings(p *Plan) []Pairing {
	var all []Pairing
	for i, r := range w.Rides {
		if t := p.Turns[i]; t != nil && r.Meeting.Lesson != nil &&
			!slices.ContainsFunc(all, func(x Pairing) bool { return x.Rider == r.Rider && x.Lesson == r.Meeting.Lesson }) {
			all = append(all, Pairing{Rider: r.Rider, Lesson: r.Meeting.Lesson, Horse: t.Horse, Seat: t.Seat})
		}
	}
	return all
}
