package model

import "slices"

// Ask is for a rider to have a place in a meeting.
type Ask struct {
	Rider   *Rider
	Meeting *Meeting
}

// WithRides is the week with a ride more for each of the asks, as a guest's is,
// and the rides asked for, in their order. The rides of w are there as well, each
// a copy of its own, in the same order among themselves. An ask for a ride that
// there is already is that ride.
func (w *Week) WithRides(asks []Ask) (*Week, []*Ride) {
	c := *w.Centre
	c.Bookings = slices.Clone(c.Bookings)
	for _, a := range asks {
		c.Bookings = append(c.Bookings, &Booking{Date: a.Meeting.Date, Lesson: a.Meeting.Lesson, Rider: a.Rider})
	}
	more := c.Week(w.From, int(w.Until-w.From)+1, w.Now)
	var rides []*Ride
	for _, a := range asks {
		i := slices.IndexFunc(more.Rides, func(r *Ride) bool {
			return r.Rider == a.Rider && r.Meeting.Lesson == a.Meeting.Lesson && r.Date() == a.Meeting.Date
		})
		rides = append(rides, more.Rides[i])
	}
	return more, rides
}

// OutsideHours is why most meetings do not take a rider in.
const OutsideHours = "outside the rider's free hours"

// TakesIn says why a meeting does not take a rider in by its lesson's kind, level
// and size and by her hours, whatever horses and tack there are; "" is that it does.
// unchecked is what is not known and would have told. Hours come first, so that any
// other reason is of a lesson she could come to.
//
// Who is away keeps her place, and one who comes every other week keeps it in the
// weeks between.
func (w *Week) TakesIn(a Ask) (why string, unchecked []string) {
	m, r, l := a.Meeting, a.Rider, a.Meeting.Lesson
	switch {
	case l == nil || m.NotHeld != "":
		return "not held on that date", nil
	case len(r.Free) > 0 && anyCovers(r.Free, m.Date, m.Start, m.End) == nil:
		return OutsideHours, nil
	case slices.ContainsFunc(w.Rides, func(x *Ride) bool { return x.Meeting == m && x.Rider == r }):
		return "the rider is in it already", nil
	case l.Kind == Private:
		return "private, and so takes nobody in", nil
	case !l.Open:
		return "closed to others", nil
	case l.Level != "" && r.Level != "" && l.Level != r.Level:
		return "for riders of another level", nil
	case l.Size != 0 && w.places(m) >= l.Size:
		return "full", nil
	}
	if len(r.Free) == 0 {
		unchecked = append(unchecked, "the rider's free hours")
	}
	if l.Level != "" && r.Level == "" {
		unchecked = append(unchecked, "the rider's level")
	}
	if need := r.handsNeeded(); need.Leaders > 0 && m.Hands.Leaders < 0 || need.Sidewalkers > 0 && m.Hands.Sidewalkers < 0 {
		unchecked = append(unchecked, "helpers of the lesson")
	}
	return "", unchecked
}

func (r *Rider) handsNeeded() Hands { return HandsFor(r, &Horse{}) }

// places are those taken at once in a meeting, on its date or a week later.
func (w *Week) places(m *Meeting) int {
	taken := func(d Date) int {
		var parts []Period
		for _, p := range m.Lesson.Places {
			if p.On(d, w.House.WeekStarts) {
				parts = append(parts, Period{Start: p.Start, End: p.End})
			}
		}
		for _, r := range w.Rides {
			if r.Meeting == m && d == m.Date && !slices.ContainsFunc(m.Lesson.Places, func(p Place) bool { return p.Rider == r.Rider && p.On(d, w.House.WeekStarts) }) {
				parts = append(parts, Period{}) // for that date alone; whole, to be careful
			}
		}
		most := 0
		for _, p := range parts {
			at := 0
			for _, q := range parts {
				at += b2i(q.End == 0 || p.End == 0 || q.Start <= p.Start && p.Start < q.End)
			}
			most = max(most, at)
		}
		return most
	}
	return max(taken(m.Date), taken(m.Date+7))
}
