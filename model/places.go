package model

// NoPlace says why a rider cannot join a lesson for its date alone: as
// [Week.TakesIn], but that the place of somebody who is away, or who leaves it for
// another lesson (nil: nobody), is free on that date. "" is that she can.
func (w *Week) NoPlace(a Ask, leaves *Rider) string {
	why, _ := w.TakesIn(a)
	switch {
	case why == "full" && w.placesTaken(a.Meeting, leaves) < a.Meeting.Lesson.Size:
	case why != "":
		return why
	}
	return a.Rider.NotFree(a.Meeting.Date, a.Meeting.Start, a.Meeting.End)
}

// placesTaken are the most that are taken in a lesson at one time on its date, but
// for one rider's. A rider on the ground has a place.
func (w *Week) placesTaken(m *Meeting, but *Rider) (most int) {
	var rides []*Ride
	for _, x := range w.Rides {
		if x.Meeting == m && x.Rider != but && x.State != Off {
			rides = append(rides, x)
		}
	}
	for _, x := range rides {
		n := 0
		for _, y := range rides {
			n += b2i(y.Start <= x.Start && x.Start < y.End)
		}
		most = max(most, n)
	}
	return most
}

// NotFree says why a rider cannot come for [start, end) of a date: she is away, or has
// said when she is free and this is not in it; "" is that she can.
func (r *Rider) NotFree(d Date, start, end Minute) string {
	switch {
	case anyMeets(r.Away, d, start, end) != nil:
		return "the rider is away then"
	case len(r.Free) > 0 && anyCovers(r.Free, d, start, end) == nil:
		return OutsideHours
	}
	return ""
}
