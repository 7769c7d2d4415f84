package model

import (
	"fmt"
	"slices"
)

// goesBy reports whether a version was posted with something in view: what a note
// of that number said, or, where no note did, what was known at that instant.
func (p *Posted) goesBy(note int, at Instant) bool {
	if note > 0 {
		return note <= p.Notes
	}
	return !p.At.Before(at)
}

// worksLost are the works of a date that are still to begin, and that were to be done
// when it was posted and are no longer: suspended since, or left out.
func (w *Week) worksLost(d Date) []*Stint {
	p := w.Centre.lastPosted(d)
	if p == nil {
		return nil
	}
	r := newRecorder(w.Centre)
	var lost []*Stint
	for _, x := range w.Centre.Works {
		if !x.IsOn(d) || w.hasStarted(d, x.Start) || !r.lostSince(p, d, x) {
			continue
		}
		s, _ := r.work(d, x, false)
		s.Name = w.workName(s, x)
		lost = append(lost, s)
	}
	return lost
}

// workName is a work in words.
func (w *Week) workName(s *Stint, x *Work) string {
	return fmt.Sprintf("%s %s %s of %s", s.Date.Words(), w.clock(x.Start), x.Kind, x.Horse.Name)
}

// lostSince reports whether something stops a work, and nothing did that a version
// goes by.
func (r *recorder) lostSince(p *Posted, d Date, x *Work) bool {
	stopped, before := false, false
	stop := func(known bool) { stopped, before = true, before || known }
	for _, n := range r.notes {
		if n.leavesOut(d, x) {
			stop(p.goesBy(n.Number, n.At))
		}
	}
	for _, o := range x.Horse.Out {
		if o.Meets(d, x.Start, x.End) {
			stop(p.goesBy(o.Note, o.known()))
		}
	}
	if x.Arena != nil {
		for _, c := range x.Arena.Closures {
			if c.Meets(d, x.Start, x.End) {
				stop(p.goesBy(0, c.At))
			}
		}
	}
	return stopped && !before
}

// closedSince reports whether there is no lesson for a ride, and was one when its date
// was posted: its arena is closed, or its instructor away.
func (w *Week) closedSince(r *Ride) bool {
	p, m := w.Centre.lastPosted(r.Date()), r.Meeting
	if p == nil || NoLesson(r) == "" {
		return false
	}
	var closed []Period
	if m.Arena != nil {
		closed = append(closed, m.Arena.Closures...)
	}
	if m.Instructor != nil {
		closed = append(closed, m.Instructor.Away...)
	}
	closed = slices.DeleteFunc(closed, func(c Period) bool { return !c.Meets(m.Date, r.Start, r.End) })
	return len(closed) > 0 && !slices.ContainsFunc(closed, func(c Period) bool { return p.goesBy(0, c.At) })
}
