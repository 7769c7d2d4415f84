package model

import "cmp"

var instructorInOnePlace = &Rule{
	Name: "instructor in one place", Class: Timetable,
	Sentence: "an instructor holds one lesson at a time, and none while away; a lesson is held when one of its rides is seated",
	audit: func(l *ledger) {
		for i, m := range l.meetings {
			p := m.Instructor
			if p == nil {
				continue
			}
			if why := InstructorAway(m); why != "" {
				l.breaks(l.ofMeet[m], "%s: %s", lessonOn(m), why)
			}
			for _, n := range l.meetings[i+1:] {
				if n.Instructor == p && m.Meets(n) {
					l.breaks(append(l.ofMeet[m][:len(l.ofMeet[m]):len(l.ofMeet[m])], l.ofMeet[n]...),
						"%s: %s holds %s and %s at once", m.Date.Words(), p.Name, m.Name, n.Name)
				}
			}
		}
	},
}

// InstructorAway says that a meeting's instructor is away; "" is that she is
// not. What was written of it stays where it was written.
func InstructorAway(m *Meeting) string {
	if m.Instructor == nil {
		return ""
	}
	if a := anyMeets(m.Instructor.Away, m.Date, m.Start, m.End); a != nil {
		return m.Instructor.Name + " is away"
	}
	return ""
}

// Meets reports whether two meetings overlap in time.
func (m *Meeting) Meets(n *Meeting) bool {
	return m.Date == n.Date && m.Start < n.End && n.Start < m.End
}

var riderInOnePlace = &Rule{
	Name: "rider in one place", Class: Timetable,
	Sentence: "a rider has one ride at a time",
	audit: func(l *ledger) {
		for i, s := range l.stints {
			for _, t := range l.stints[i+1:] {
				if t.Date != s.Date {
					break
				}
				if s.Rider != nil && s.Rider == t.Rider && s.Meets(t) {
					l.breaks([]*Stint{s, t}, "%s has two rides at once on %s: %s and %s", s.Rider.Called(), s.Date.Words(), l.clock(s.Start), l.clock(t.Start))
				}
			}
		}
	},
}

var riderHere = &Rule{
	Name: "rider here", Class: Timetable,
	Sentence: "a rider who is away does not ride",
	audit: func(l *ledger) {
		for _, s := range l.open {
			if r := s.Ride; r.State == Off && !r.Past && r.Closed() == "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, r.OffWhy)
			}
		}
	},
}

var formInDate = &Rule{
	Name: "form in date", Class: Care,
	Sentence: "the rider's form is valid on that date",
	audit: func(l *ledger) {
		for _, s := range l.rides {
			if why := l.FormStops(s.Rider, s.Date); why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// FormStops says why a rider's form keeps her on the ground on a date; "" is
// that it does not.
func (w *Week) FormStops(r *Rider, d Date) string {
	switch {
	case w.House.Elsewhere.Forms:
		return ""
	case r.FormUntil == 0:
		return "the date of " + r.Called() + "'s form is not known"
	case r.FormUntil < d:
		return r.Called() + "'s form has expired"
	}
	return ""
}

var centreOpen = &Rule{
	Name: "centre open", Class: Timetable,
	Sentence: "no ride on a closed day, in a cancelled lesson or in a closed arena",
	audit: func(l *ledger) {
		for _, s := range l.rides {
			if why := NotOpen(s.ride()); why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// NotOpen says why the place is closed to a ride; "" is that it is open.
func NotOpen(r *Ride) string {
	if why := r.Closed(); why != "" {
		return why
	}
	m := r.Meeting
	if m.Arena != nil {
		if p := anyMeets(m.Arena.Closures, m.Date, r.Start, r.End); p != nil {
			return cmp.Or(p.Why, m.Arena.Name+" is closed")
		}
	}
	return ""
}

var asTold = &Rule{
	Name: "as told", Class: Timetable,
	Sentence: "a ride that has started stays as it was told; one that a person holds is as held or on the ground",
	audit: func(l *ledger) {
		for i, r := range l.Rides {
			if r.State == Started && (i >= len(l.plan.Turns) || !l.plan.Turns[i].Equal(r.Told)) {
				l.breaks([]*Stint{{Date: r.Date(), Start: r.Start, End: r.End, Ride: r, Rider: r.Rider, Meeting: r.Meeting, Open: true, Name: r.String()}},
					"%s has started, and the plan says otherwise than it was told", r)
			}
		}
		for _, s := range l.open {
			if s.Ride.Past {
				l.breaks([]*Stint{s}, "%s: its hour is past, and it was not told that it rides", s.Name)
			}
			if why := NotAsHeld(s.Ride, s.Turn.Horse, s.Turn.Seat); why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// NotAsHeld says how horse and seat differ from what a person holds for the
// ride; "" is that they do not.
func NotAsHeld(r *Ride, h *Horse, seat *Piece) string {
	switch {
	case r.Held == nil:
		return ""
	case r.Held.Horse != h:
		return "a note keeps this rider on " + r.Held.Horse.Name
	case r.Held.Seat != nil && r.Held.Seat != seat:
		return "a note keeps this rider in " + r.Held.Seat.Tag
	}
	return ""
}
