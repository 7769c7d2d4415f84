package model

import "slices"

// noted is what a posted plan told for a date, as the notes left it that were
// written since: a rider who is away and a lesson that is cancelled are left out,
// one that was moved or shortened has its new hours, and where the horse was out,
// the arena closed or the instructor away she was on the ground. What was written
// after a ride's start leaves it as it was told, but for its end. Where the ridden
// record tells how a ride went, it went.
func (r *recorder) noted(d Date, p *Posted) []Told {
	var notes []*Note
	for _, n := range r.notes {
		if n.isFor(d) {
			notes = append(notes, n)
		}
	}
	var told []Told
	for _, t := range p.Told {
		if t.Date != d {
			continue
		}
		went, last := r.ridden[d].tells(t), max(p.Notes, t.Notes)
		if !t.heldUnder(notes, last) && !went || t.awayUnder(notes, last) && !went {
			continue
		}
		if t.Turn != nil && !went {
			if why := t.stoppedUnder(notes, last); why != "" {
				t.Turn, t.Work, t.Ground = nil, 0, []string{why}
			}
		}
		told = append(told, t)
	}
	return told
}

// tells reports whether the record says on what, or until when, the ride went.
func (x *Ridden) tells(t Told) bool {
	return x != nil && slices.ContainsFunc(x.Differs, func(x Differs) bool {
		return x.Lesson == t.Lesson && x.Rider == t.Rider && (x.How == OtherHorse || x.How == CutShort)
	})
}

// since reports whether the note was written after those that the plan went by,
// and before the ride started.
func (t *Told) since(n *Note, posted int) bool {
	return n.Number > posted && n.known().Before(Instant{t.Date, t.Start})
}

// heldUnder gives the ride the hours, arena and instructor that notes give its
// lesson, and reports whether there is still something of it to ride.
func (t *Told) heldUnder(notes []*Note, posted int) bool {
	l := t.Lesson
	if l == nil {
		return true
	}
	m := l.meeting(t.Date)
	for _, n := range notes {
		known := t.since(n, posted)
		if n.Number > posted && !known && n.Kind != NoteShortened {
			continue
		}
		was := *m
		m.note(n)
		if n.Number <= posted {
			continue
		}
		start, end := t.under(&was, m)
		gone := m.NotHeld != "" || end <= start
		switch {
		case gone && known:
			return false
		case !gone:
			t.last(start, end)
		}
		if m.Arena != was.Arena {
			t.Arena = m.Arena
		}
		if m.Instructor != was.Instructor {
			t.Instructor = m.Instructor
		}
	}
	return true
}

// under are the hours of the ride where its lesson was as it was, and is now m.
func (t *Told) under(was, m *Meeting) (start, end Minute) {
	switch {
	case m.Start == was.Start && m.End == was.End:
		return t.Start, t.End
	case t.Start == was.Start && t.End == was.End: // the whole of it
		return m.Start, m.End
	}
	start = t.Start + m.Start - was.Start
	return start, min(t.End+m.Start-was.Start, m.End)
}

// awayUnder reports whether the rider is noted away.
func (t *Told) awayUnder(notes []*Note, posted int) bool {
	return slices.ContainsFunc(notes, func(n *Note) bool {
		return n.Kind == NoteRiderAway && t.since(n, posted) && n.Rider == t.Rider &&
			(n.Lesson == nil || n.Lesson == t.Lesson) && n.during(t.Start, t.End)
	})
}

// stoppedUnder says why the ride cannot have been ridden as it was told; "" is that it
// can.
func (t *Told) stoppedUnder(notes []*Note, posted int) string {
	if h := t.Turn.Horse; h.wasOut(t.Date, t.Start, t.End) {
		return h.Name + " was out"
	}
	for _, n := range notes {
		if !t.since(n, posted) || !n.period().Meets(t.Date, t.Start, t.End) {
			continue
		}
		switch {
		case n.Kind == NoteArenaClosed && n.Arena == t.Arena:
			return n.Arena.Name + " was closed"
		case n.Kind == NoteAway && n.Instructor == t.Instructor:
			return n.Instructor.Name + " was away"
		}
	}
	return ""
}
