package desk

import (
	"strconv"

	"tackwright/model"
)

// ridePage is one ride with what can be asked and said of it.
type ridePage struct {
	rideView
	When, Arena string
	LessonName  string
	Posted      bool
	Over        bool
	Usual       string // its standing pairing, and why it is not on that
	UsualWhy    string
	Horses      []string // other ones of the herd
	Notes       []noteView
	Pieces      []string
	May         bool // who looks may note and ask
}

func number(n int) string { return strconv.Itoa(n) }

// ride is that of the address, in the plan of its date or in none.
func (v *visit) ride() (*standing, *model.Ride, error) {
	v.reading.Lock()
	defer v.reading.Unlock()
	return v.rideLocked()
}

// rideLocked is ride for a caller who holds the reading's lock.
func (v *visit) rideLocked() (*standing, *model.Ride, error) {
	d := v.date()
	s, err := v.reading.on(d)
	if err != nil || s == nil {
		s = v.reading.bare(d)
	}
	for _, r := range s.week.Rides {
		if r.Date() == d && rideKey(r) == v.r.PathValue("ride") {
			return s, r, nil
		}
	}
	return nil, nil, notThere("there is no such ride on %s any more", d.Words())
}

func showRide(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	s, ride, err := v.rideLocked()
	if err != nil {
		return err
	}
	twelve := s.week.House.TwelveHour
	x := &ridePage{rideView: rideOf(s, ride), When: r.dayName(ride.Date()) + ", " + ride.Start.Clock(twelve) + " to " + ride.End.Clock(twelve),
		LessonName: ride.Meeting.Name, Posted: s.posted(), Over: ride.Date() < r.Today, May: v.notes()}
	if ride.Meeting.Arena != nil {
		x.Arena = ride.Meeting.Arena.Name
	}
	t := s.turn(ride)
	if t != nil {
		for _, p := range t.Pieces() {
			x.Pieces = append(x.Pieces, string(p.Kind)+" "+p.Tag)
		}
	}
	for _, h := range r.Centre.Horses {
		if t == nil || t.Horse != h {
			x.Horses = append(x.Horses, h.Name)
		}
	}
	x.Usual = usualWords(s, ride)
	if usual := s.week.Standing(ride); usual != nil && ride.State == model.Open && t != nil && v.notes() {
		x.UsualWhy = model.Sentence(s.week.WhyNot(s.plan, ride, usual.Horse, usual.Seat))
	}
	x.Notes = v.notesOn(ride.Date(), func(n *model.Note) bool {
		return n.Rider == ride.Rider && (n.Lesson == nil || n.Lesson == ride.Meeting.Lesson)
	})
	return v.show("ride", ride.Rider.Called()+", "+ride.Date().Words()+" "+ride.Start.Clock(twelve), x)
}
