package model

import (
	"cmp"
	"fmt"
	"slices"
)

// Week is the week of days dates (1 to 7) from a date on. Rides that start at
// or before now are facts; a zero now starts none. The centre must be free of
// mistakes.
func (c *Centre) Week(from Date, days int, now Instant) *Week {
	days = min(max(days, 1), 7)
	w := &Week{Centre: c, House: &c.House, From: from, Until: from + Date(days) - 1, Now: now}
	k := newWeekMaker(w)
	for d := w.From; d <= w.Until; d++ {
		k.meetings(d)
	}
	slices.SortStableFunc(w.Meetings, func(a, b *Meeting) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Start, b.Start), cmp.Compare(a.Name, b.Name))
	})
	for _, m := range w.Meetings {
		k.rides(m)
	}
	slices.SortStableFunc(w.Rides, func(a, b *Ride) int {
		return cmp.Or(cmp.Compare(a.Date(), b.Date()), cmp.Compare(a.Start, b.Start),
			cmp.Compare(a.Meeting.Name, b.Meeting.Name), cmp.Compare(a.Rider.Name, b.Rider.Name))
	})
	for i, r := range w.Rides {
		r.Index = i
	}
	k.facts()
	w.settle()
	return w
}

// settle works out what is fixed for the week once its rides and facts stand.
func (w *Week) settle() {
	w.contacts = contactsBefore(w)
	w.alike = alikeClasses(w)
	w.mostRidden = mostRiddenBefore(w)
	w.rows = rowsByFit(w.Centre)
}

// weekMaker builds a week under the notes that stand.
type weekMaker struct {
	*Week
	notes  []*Note
	record *recorder
}

func newWeekMaker(w *Week) *weekMaker {
	record := newRecorder(w.Centre)
	return &weekMaker{Week: w, notes: record.notes, record: record}
}

// on are the standing notes of a kind for a date, in order.
func (k *weekMaker) on(kind NoteKind, d Date) []*Note {
	var out []*Note
	for _, n := range k.notes {
		if n.Kind == kind && n.isFor(d) {
			out = append(out, n)
		}
	}
	return out
}

func (k *weekMaker) meetings(d Date) {
	for _, l := range k.Centre.Lessons {
		if !k.Centre.Holds(l, d) {
			continue
		}
		m := l.meeting(d)
		m.twelve = k.House.TwelveHour
		for _, n := range k.notes {
			m.note(n)
		}
		m.closures = k.Centre.closures(l, d)
		if p := anyCovers(m.closures, d, m.Start, m.End); p != nil && m.NotHeld == "" {
			m.NotHeld = closed(p)
		}
		k.Meetings = append(k.Meetings, m)
	}
}

// meeting is the lesson on a date as it stands in the folder.
func (l *Lesson) meeting(d Date) *Meeting {
	m := &Meeting{Lesson: l, Name: l.Name, Date: d, Start: l.Start, End: l.End, Arena: l.Arena,
		Instructor: l.Instructor, Hands: l.Hands}
	if h, ok := l.HandsOn[d]; ok {
		m.Hands = h
	}
	return m
}

// note changes the meeting as a note says that is for its lesson and date.
func (m *Meeting) note(n *Note) {
	if n.Lesson != m.Lesson || !n.isFor(m.Date) {
		return
	}
	switch n.Kind {
	case NoteCancelled:
		m.NotHeld = cmp.Or(n.Words, "the lesson is cancelled")
	case NoteMoved:
		if n.Until != 0 {
			m.Start, m.End = n.From, n.Until
		}
		if n.Arena != nil {
			m.Arena = n.Arena
		}
	case NoteShortened:
		m.End = min(m.End, n.Until)
	case NoteHands:
		m.Hands = n.Hands
	case NoteInstructor:
		m.Instructor = n.Instructor
	}
}

func (k *weekMaker) rides(m *Meeting) {
	l := m.Lesson
	add := func(r *Rider, start, end Minute) {
		for _, x := range k.Rides {
			if x.Meeting == m && x.Rider == r && x.Start == start {
				return // a make-up in her own lesson
			}
		}
		ride := &Ride{Meeting: m, Rider: r, Start: start, End: end}
		k.state(ride)
		k.Rides = append(k.Rides, ride)
	}
	for _, p := range l.Places {
		if p.On(m.Date, k.House.WeekStarts) {
			start, end := m.part(p.Start, p.End)
			add(p.Rider, start, end)
		}
	}
	for _, b := range k.Centre.Bookings {
		if b.Lesson == l && b.Date == m.Date {
			start, end := m.part(b.Start, b.End)
			add(b.Rider, start, end)
		}
	}
	for _, n := range k.on(NoteRiderAdded, m.Date) {
		if n.Lesson == l {
			add(n.Rider, m.Start, m.End)
		}
	}
}

// part places a part of a lesson in the meeting; an end of 0 is the whole. A
// lesson that was moved takes its parts along, one that was shortened cuts them;
// a part of which nothing is left keeps its hours, and its ride is off.
func (m *Meeting) part(start, end Minute) (Minute, Minute) {
	if end == 0 {
		return m.Start, m.End
	}
	moved := m.Start - m.Lesson.Start
	start, end = start+moved, end+moved
	if start < m.End {
		end = min(end, m.End)
	}
	return start, end
}

// state settles whether the ride is open, and what a person has held for it.
func (k *weekMaker) state(r *Ride) {
	d := r.Date()
	off := func(why string) { r.State, r.OffWhy = Off, why }
	if p := anyMeets(r.Rider.Away, d, r.Start, r.End); p != nil {
		off(cmp.Or(p.Why, r.Rider.Called()+" is away"))
	}
	for _, n := range k.on(NoteRiderAway, d) {
		if n.Rider == r.Rider && (n.Lesson == nil || n.Lesson == r.Meeting.Lesson) && n.during(r.Start, r.End) {
			off(cmp.Or(n.Words, r.Rider.Called()+" is away"))
		}
	}
	if r.Start >= r.Meeting.End {
		off(endsBefore)
	}
	if why := r.Closed(); why != "" {
		off(why)
	}
	for _, n := range k.on(NoteNever, d) {
		if n.Rider == r.Rider && (n.Lesson == nil || n.Lesson == r.Meeting.Lesson) {
			r.Never = append(r.Never, n.Horse)
		}
	}
	for _, n := range k.on(NoteKeep, d) {
		if n.Rider != r.Rider || n.Lesson != nil && n.Lesson != r.Meeting.Lesson {
			continue
		}
		why := r.noHold(n.Horse)
		switch {
		case why == "":
			r.Held = &Hold{Horse: n.Horse, Seat: n.Seat, Note: n.Number}
		case !k.hasStarted(d, r.Start):
			k.Suspended = append(k.Suspended, fmt.Sprintf("%s was to keep %s: %s", r, n.Horse.Name, why))
		}
	}
}

// noHold says what makes it impossible to hold the ride on the horse, whatever
// others ride; "" is nothing. What was written of an absence is not repeated.
func (r *Ride) noHold(h *Horse) string {
	out := h.outDuring(r.Date(), r.Start, r.End)
	switch {
	case out != nil:
		return fmt.Sprintf("%s is out (%s)", h.Name, out.Why)
	case NotOpen(r) != "":
		return NotOpen(r)
	case r.Start >= r.Meeting.End:
		return endsBefore
	case r.State == Off:
		return r.Rider.Called() + " is away"
	case InstructorAway(r.Meeting) != "":
		return r.Meeting.Instructor.Name + " is away"
	}
	return ""
}

const endsBefore = "the lesson ends before this part of it"

// during reports whether a note's time of day meets [start, end).
func (n *Note) during(start, end Minute) bool {
	return n.From < end && (n.Until == 0 || start < n.Until)
}

func (h *Horse) outDuring(d Date, start, end Minute) *Out {
	for i := range h.Out {
		if h.Out[i].Meets(d, start, end) {
			return &h.Out[i]
		}
	}
	return nil
}

// Holds reports whether a lesson is due on the date: in its term, and between
// the dates it states. Closures and notes do not count here.
func (c *Centre) Holds(l *Lesson, d Date) bool {
	if l.On != 0 {
		return l.On == d
	}
	if l.Weekday != d.Weekday() || d < l.From || l.Until != 0 && d > l.Until {
		return false
	}
	if l.Term != nil {
		return l.Term.Has(d)
	}
	return len(c.Terms) == 0 || len(c.termsOn(l, d)) > 0
}

// Has reports whether the date is in the term.
func (t *Term) Has(d Date) bool { return t.First <= d && d <= t.Last }

// TermOn is the first term that the date is in; nil is none.
func (c *Centre) TermOn(d Date) *Term {
	if i := slices.IndexFunc(c.Terms, func(t *Term) bool { return t.Has(d) }); i >= 0 {
		return c.Terms[i]
	}
	return nil
}

// termsOn are the terms that a lesson is held in on a date: its own, else all
// that have the date.
func (c *Centre) termsOn(l *Lesson, d Date) []*Term {
	if l.Term != nil {
		return []*Term{l.Term}
	}
	return slices.DeleteFunc(slices.Clone(c.Terms), func(t *Term) bool { return !t.Has(d) })
}

// closures of the lesson's terms that touch the date.
func (c *Centre) closures(l *Lesson, d Date) (ps []Period) {
	for _, t := range c.termsOn(l, d) {
		for _, p := range t.Closures {
			if p.Has(d) {
				ps = append(ps, p)
			}
		}
	}
	return ps
}

func closed(p *Period) string { return cmp.Or(p.Why, "the centre is closed") }

// Closed says why the ride's lesson is not held, or the centre closed for that
// part of it; "" is that it is open.
func (r *Ride) Closed() string {
	m := r.Meeting
	if m.NotHeld != "" {
		return m.NotHeld
	}
	if p := anyMeets(m.closures, m.Date, r.Start, r.End); p != nil {
		return closed(p)
	}
	return ""
}
