package model

import (
	"cmp"
	"fmt"
	"slices"
)

// recorder tells what was ridden on a date: as posted and noted, but for what
// the ridden record of that date says otherwise.
type recorder struct {
	posted []*Posted
	notes  []*Note // that stand
	ridden map[Date]*Ridden
	house  *House
}

func newRecorder(c *Centre) *recorder {
	r := &recorder{posted: c.Posted, notes: Standing(c.Notes), ridden: map[Date]*Ridden{}, house: &c.House}
	for _, x := range c.Ridden {
		r.ridden[x.Date] = x
	}
	return r
}

// on is what was told for the date, as the notes left it, corrected by what was
// ridden; extra rides come last. Those on the ground have no turn.
func (r *recorder) on(d Date) []Told {
	var told []Told
	for _, p := range slices.Backward(r.posted) {
		if p.From <= d && d <= p.Until {
			told = r.noted(d, p)
			break
		}
	}
	record := r.ridden[d]
	if record == nil {
		return told
	}
	for _, x := range record.Differs {
		hers := func(t Told) bool {
			return t.Lesson == x.Lesson && t.Rider == x.Rider && (x.Start == 0 || x.Start == t.Start)
		}
		switch x.How {
		case NoShow:
			told = slices.DeleteFunc(told, hers)
		case ExtraRide:
			told = r.besides(told, r.extra(d, x))
		case OtherHorse:
			for i, t := range told {
				if hers(t) {
					told[i].Turn, told[i].Ground = x.Turn, nil
					told[i].Work = r.workOf(told[i])
				}
			}
		case CutShort: // never longer, and of her parts the one that was under way
			for i, t := range told {
				if hers(t) && t.Start < x.End && x.End < t.End {
					told[i].last(t.Start, x.End)
				}
			}
		}
	}
	return told
}

// besides adds an extra ride. She who was on the ground rode after all; and one
// at the very start of a ride of hers is that ride.
func (r *recorder) besides(told []Told, extra Told) []Told {
	same := func(t Told) bool { return t.Lesson == extra.Lesson && t.Rider == extra.Rider }
	i := slices.IndexFunc(told, func(t Told) bool { return same(t) && t.Start == extra.Start })
	if i < 0 {
		i = slices.IndexFunc(told, func(t Told) bool { return same(t) && t.Turn == nil })
	}
	if i >= 0 {
		told = slices.Delete(told, i, i+1)
	}
	return append(told, extra)
}

// extra is an extra ride; what it does not say of its hours is the lesson's.
func (r *recorder) extra(d Date, x Differs) Told {
	t := Told{Date: d, Start: x.Start, End: x.End, Lesson: x.Lesson, Rider: x.Rider, Turn: x.Turn, Extra: true}
	if l := x.Lesson; l != nil {
		m := l.meeting(d)
		for _, n := range r.notes {
			m.note(n)
		}
		t.LessonName, t.Arena, t.Instructor = l.Name, m.Arena, m.Instructor
		t.Start, t.End = cmp.Or(x.Start, m.Start), cmp.Or(x.End, m.End)
		if t.End <= t.Start { // after the lesson: as long as one
			t.End = t.Start + m.End - m.Start
		}
	}
	t.Work = r.workOf(t)
	return t
}

func (r *recorder) workOf(t Told) int64 {
	if t.Turn == nil {
		return 0
	}
	kind := ""
	if t.Lesson != nil {
		kind = string(t.Lesson.Kind)
	}
	return int64(t.End-t.Start) * int64(r.house.Factor(kind)) * int64(t.Turn.Horse.factor())
}

// last gives a ride other hours; its work goes by the minute.
func (t *Told) last(start, end Minute) {
	if old := int64(t.End - t.Start); old > 0 {
		t.Work = t.Work / old * int64(end-start)
	}
	t.Start, t.End = start, end
}

// works are the works of a date: those that the folder plans and that were not left
// out in time and, of a date that was closed, those that were done besides.
func (r *recorder) works(c *Centre, d Date) []*Work {
	var out []*Work
	for _, x := range c.Works {
		if x.IsOn(d) && !r.leftOut(d, x) {
			out = append(out, x)
		}
	}
	if record := r.ridden[d]; record != nil {
		out = append(out, record.Works...)
	}
	return out
}

// leftOut reports whether a note that was written before it began leaves a work out.
func (r *recorder) leftOut(d Date, x *Work) bool {
	return slices.ContainsFunc(r.notes, func(n *Note) bool { return n.leavesOut(d, x) })
}

func (n *Note) leavesOut(d Date, x *Work) bool {
	return n.Kind == NoteWorkOff && n.isFor(d) && n.Horse == x.Horse && (n.From == 0 || n.From == x.Start) &&
		n.known().Before(Instant{d, x.Start})
}

// work is a work on a date, and why it is suspended, where its horse is out or
// its arena closed then; "" is that it is not. Of one whose hour has begun only
// what was known before counts: it was done, to the minute in which its horse
// went out. One that a ridden record tells of was done.
func (r *recorder) work(d Date, x *Work, begun bool) (s *Stint, why string) {
	s = &Stint{Date: d, Start: x.Start, End: x.End, Arena: x.Arena, Turn: x.turn(),
		Work: int64(x.End-x.Start) * int64(r.house.Factor(x.Kind)) * int64(x.Horse.factor())}
	if record := r.ridden[d]; record != nil && slices.Contains(record.Works, x) {
		return s, ""
	}
	if begun {
		s.endWhenOut()
	}
	counts := func(known Instant) bool { return !begun || known.Before(Instant{d, x.Start}) }
	for _, o := range x.Horse.Out {
		if o.Meets(d, s.Start, s.End) && counts(o.known()) {
			return s, fmt.Sprintf("%s is out (%s)", x.Horse.Name, o.Why)
		}
	}
	if x.Arena != nil {
		for _, p := range x.Arena.Closures {
			if p.Meets(d, s.Start, s.End) && counts(p.At) {
				return s, x.Arena.Name + " is closed"
			}
		}
	}
	return s, ""
}
