package desk

import (
	"cmp"
	"slices"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// horseView is a horse around a date: its week against its limits, whom it
// carries, and what can be said of it.
type horseView struct {
	Horse   *model.Horse
	Date    model.Date
	Name    string // of the date
	Stopped string
	Out     bool   // until a person says that it is sound
	From    string // the time that a note on it begins at
	Week    *paper.Sheet
	Rides   []rideView
	Works   []string
	Over    bool
	Slips   []noteView // on it, that who looks may take back
	May     bool       // who looks may note
}

func showHorse(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	h, err := v.horse()
	if err != nil {
		return err
	}
	d := v.date()
	x := &horseView{Horse: h, Date: d, Name: r.dayName(d), Over: d < r.Today, May: v.notes()}
	s, err := r.on(d)
	if err != nil || s == nil { // the day says why
		s = r.bare(d)
	}
	x.Stopped = s.week.NotThere(h, d, 0, 24*60)
	x.Out = slices.ContainsFunc(h.Out, func(o model.Out) bool {
		return o.Why != model.Appointment && o.From.Date <= d && (o.End.IsZero() || d < o.End.Date)
	})
	x.Slips = v.notesOn(d, func(n *model.Note) bool { return n.Horse == h && v.slip(n) })
	x.From = r.noteFrom(d).String()
	x.Week, err = once(r, "horse "+h.Name+d.String(), func() (*paper.Sheet, error) {
		return sheet.HorseWeeks(s.week, s.plan, d, s.stamp, h)
	})
	if err != nil {
		return err
	}
	first := d.WeekStart(r.Centre.House.WeekStarts)
	for day := first; day <= first+6; day++ {
		s, err := r.on(day)
		if err != nil || s == nil {
			continue
		}
		for _, ride := range s.week.Rides {
			if t := s.turn(ride); ride.Date() == day && t != nil && t.Horse == h {
				x.Rides = append(x.Rides, timedRide(s, ride))
			}
		}
	}
	return v.show("horse", h.Name, x)
}

// noteFrom is the time of day from which something noted of a date holds: now,
// where it is the computer's own; else shortly before the first lesson.
func (r *reading) noteFrom(d model.Date) model.Minute {
	if r.Real && d == r.Today {
		return r.Now.Minute
	}
	first := model.Minute(8 * 60)
	for i, m := range r.bare(d).week.Meetings {
		if i == 0 || m.Start-30 < first {
			first = m.Start - 30
		}
	}
	return max(0, first)
}

// riderView is a rider around a date.
type riderView struct {
	Rider *model.Rider
	Date  model.Date
	Usual []string
	Rides []rideView
	Form  string

	Office bool   // who looks may look for room
	Path   string // that asks for it
}

func showRider(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	rider, err := v.rider()
	if err != nil {
		return err
	}
	d := v.date()
	x := &riderView{Rider: rider, Date: d, Office: v.role == model.Office, Path: "/rider/" + riderKey(rider) + "/room?on=" + d.String()}
	switch {
	case r.Centre.House.Elsewhere.Forms:
	case rider.FormUntil == 0:
		x.Form = "Nobody recorded until when her form is valid."
	default:
		x.Form = "Form valid until " + rider.FormUntil.String() + "."
	}
	first := d.WeekStart(r.Centre.House.WeekStarts)
	for day := first; day <= first+6; day++ {
		s, err := r.on(day)
		if err != nil || s == nil {
			s = r.bare(day)
		}
		for _, ride := range s.week.Rides {
			if ride.Date() != day || ride.Rider != rider {
				continue
			}
			x.Rides = append(x.Rides, timedRide(s, ride))
			if usual := usualWords(s, ride); usual != "" && !slices.Contains(x.Usual, usual) {
				x.Usual = append(x.Usual, usual)
			}
		}
	}
	slices.SortStableFunc(x.Rides, func(a, b rideView) int { return cmp.Compare(a.Date, b.Date) })
	return v.show("rider", rider.Called(), x)
}
