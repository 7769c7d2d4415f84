package desk

import (
	"tackwright/model"
)

// lessonView is a lesson of a date, with who rides what in it.
type lessonView struct {
	Name, Start, End  string
	Arena, Instructor string
	NotHeld           bool
	Rides             []rideView
}

// rideView is a ride as a line of a table.
type rideView struct {
	Path, RiderPath string
	Rider, Start    string // Start: in a lesson only where it is not the lesson's
	Lesson          string
	Date            model.Date
	Horse           *model.Horse
	HorsePath       string
	Seat, Girth     string
	Pads, Extras    []string
	Off             string // it does not take place, and why
	None            bool   // there is no plan of it yet
	Ground          []string
	Started, Held   bool
	Differs         bool // from the standing pairing
}

// lessonsOf a date, with what a plan has.
func lessonsOf(s *standing, d model.Date) []lessonView {
	var all []lessonView
	for _, m := range s.week.Meetings {
		if m.Date != d {
			continue
		}
		twelve := s.week.House.TwelveHour
		l := lessonView{Name: m.Name, Start: m.Start.Clock(twelve), End: m.End.Clock(twelve), NotHeld: m.NotHeld != ""}
		if m.Arena != nil {
			l.Arena = m.Arena.Name
		}
		if m.Instructor != nil {
			l.Instructor = m.Instructor.Name
		}
		for _, r := range s.week.Rides {
			if r.Meeting == m {
				l.Rides = append(l.Rides, rideOf(s, r))
			}
		}
		all = append(all, l)
	}
	return all
}

// timedRide is a ride with its time, for where no lesson says it.
func timedRide(s *standing, r *model.Ride) rideView {
	x := rideOf(s, r)
	x.Start = r.Start.Clock(s.week.House.TwelveHour)
	return x
}

func rideOf(s *standing, r *model.Ride) rideView {
	x := rideView{Path: ridePath(r), RiderPath: riderPath(r.Rider, r.Date()), Rider: r.Rider.Called(), Date: r.Date(), Lesson: r.Meeting.Name,
		Started: r.State == model.Started, Held: r.Held != nil}
	if r.Start != r.Meeting.Start {
		x.Start = r.Start.Clock(s.week.House.TwelveHour)
	}
	t := s.turn(r)
	switch {
	case r.State == model.Off:
		x.Off = offWords(r)
	case s.none:
		x.None = true
	case t == nil:
		x.Ground = s.plan.Ground[r.Index]
	default:
		x.Horse, x.HorsePath = t.Horse, horsePath(t.Horse, r.Date())
		x.Pads, x.Extras = tagsOf(t.Pads), tagsOf(t.Extras)
		if t.Seat != nil {
			x.Seat = t.Seat.Tag
		}
		if t.Girth != nil {
			x.Girth = t.Girth.Tag
		}
		usual := s.week.Standing(r)
		x.Differs = usual != nil && usual.Horse != t.Horse
	}
	return x
}

// offWords say why a ride does not take place; what a person wrote of a rider's
// absence stays in the folder.
func offWords(r *model.Ride) string {
	switch {
	case r.Meeting.NotHeld != "":
		return "the lesson is not held"
	case r.Closed() != "":
		return "the centre is closed then"
	case r.Past:
		return "past, and not posted"
	case r.Start >= r.Meeting.End:
		return "the lesson was shortened, and ends before it"
	}
	return "away"
}

// usualWords are the standing pairing of a ride; "" is none.
func usualWords(s *standing, r *model.Ride) string {
	usual := s.week.Standing(r)
	switch {
	case usual == nil:
		return ""
	case usual.Seat == nil:
		return usual.Horse.Name
	}
	return usual.Horse.Name + " in " + usual.Seat.Tag
}

func tagsOf(ps []*model.Piece) (tags []string) {
	for _, p := range ps {
		tags = append(tags, p.Tag)
	}
	return tags
}
