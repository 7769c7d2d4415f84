package folder

import (
	"fmt"
	"slices"
	"time"

	"tackwright/model"
)

// check reports what no entry shows by itself: nouns that do not go together.
// What is half there is then left out of the centre, so that nothing trips over
// it.
func (r *reader) check() {
	r.checkHouse()
	r.giveMarks()
	r.checkLevels()
	r.checkTack()
	for _, h := range r.centre.Horses {
		r.noun = h
		r.checkLimits(h, h.Limits, "limits")
		for i, x := range h.Apart {
			if x == h {
				r.mistake(r.at(h, "apart", i), fmt.Sprintf("%s is to be kept apart from itself", h.Name), "name another horse")
			}
		}
	}
	for _, x := range r.centre.Riders {
		r.noun = x
		for _, l := range x.Likings {
			if l.Seat != nil && !l.Seat.IsSeat() && l.Seat.Kind != "" {
				r.mistake(r.at(x, "likes"), fmt.Sprintf("%s is a %s; a wish names a horse or a seat", l.Seat.Tag, l.Seat.Kind), "name a seat")
			}
		}
	}
	r.checkChart()
	r.checkTimes()
	r.noun = nil
	r.prune()
}

func (r *reader) checkHouse() {
	c, h := r.centre, &r.centre.House
	r.noun = c
	if _, err := time.LoadLocation(h.Zone); err != nil {
		r.mistake(r.at(c, "zone"), fmt.Sprintf("%q is not the name of a time zone", h.Zone), `write it like "Europe/London" or "America/Chicago"`)
	}
	r.noun = h
	gaps := []struct {
		name string
		gap  model.Minute
	}{{"stay", h.Stay}, {"same", h.Same}, {"other", h.Other}, {"move", h.Move}}
	for i := 1; i < len(gaps); i++ {
		if a, b := gaps[i-1], gaps[i]; a.gap > b.gap {
			at := r.at(h, "gaps", b.name)
			if n := r.entries[h]; n != nil && n.get("gaps") != nil && n.get("gaps").val.get(b.name) == nil {
				at = r.at(h, "gaps", a.name)
			}
			r.mistake(at, fmt.Sprintf("%s is %d min and %s is %d min: gaps grow from stay to same, to other, to move", a.name, a.gap, b.name, b.gap), "mend one of the two")
		}
	}
	if h.MarkPercent > h.LoadPercent {
		r.mistake(r.at(h, "mark_load"), fmt.Sprintf("load is marked above %d %%, which is more than the %d %% that stop a ride", h.MarkPercent, h.LoadPercent), "mend load or mark_load")
	}
	r.checkLimits(h, h.Limits, "limits")
}

// checkLimits reports limits above the ceilings that no house may lift.
func (r *reader) checkLimits(noun any, l model.Limits, key string) {
	if l.DayMinutes > model.MostDayMinutes {
		r.mistake(r.at(noun, key, "day"), "a day's work is at most 6 h (Certified Horsemanship Association)", `write "6 h" or less`)
	}
	if l.RunMinutes > model.MostRunMinutes {
		r.mistake(r.at(noun, key, "run"), "a run of work is at most 3 h", `write "3 h" or less`)
	}
}

func (r *reader) checkLevels() {
	levels := r.centre.House.Levels
	level := func(noun any, at Span, name string) {
		if name == "" || slices.Contains(levels, name) {
			return
		}
		r.noun = noun
		if len(levels) == 0 {
			r.mistake(at, fmt.Sprintf("the house has no levels, so %q is none", name), `add to [house]: levels = ["beginner", "novice"]`)
			return
		}
		r.mistake(at, fmt.Sprintf("%q is not a level of the house", name), didYouMean(name, levels))
	}
	for _, h := range r.centre.Horses {
		for i, l := range h.Levels {
			level(h, r.at(h, "levels", i), l)
		}
	}
	for _, x := range r.centre.Riders {
		level(x, r.at(x, "level"), x.Level)
	}
	for _, l := range r.centre.Lessons {
		level(l, r.at(l, "level"), l.Level)
	}
}

func (r *reader) checkTack() {
	for _, p := range r.centre.Pieces {
		r.noun = p
		if s := p.WithSeat; s == p {
			r.mistake(r.at(p, "with_seat"), p.Tag+" is kept with itself", "name a seat")
		} else if s != nil && s.Kind != "" && !s.IsSeat() {
			r.mistake(r.at(p, "with_seat"), fmt.Sprintf("%s is a %s, not a seat", s.Tag, s.Kind), "name a seat")
		}
	}
}

func (r *reader) checkChart() {
	for i, f := range r.centre.Chart {
		r.noun = f
		if f.Horse == nil || f.Seat == nil || f.Seat.Kind == "" {
			continue
		}
		if !f.Seat.IsSeat() {
			r.mistake(r.at(f, "seat"), fmt.Sprintf("%s is a %s, not a seat", f.Seat.Tag, f.Seat.Kind), "name a seat")
			continue
		}
		r.inOrder(r.entries[f], "approved", "until", f.Approved, f.Until)
		r.checkPads(f)
		r.checkGirths(f)
		for _, g := range r.centre.Chart[:i] {
			if g.Horse == f.Horse && g.Seat == f.Seat && slices.Equal(g.Pads, f.Pads) && slices.Equal(g.PadSizes, f.PadSizes) {
				r.mistake(r.at(f), fmt.Sprintf("%s on %s with the same pads is in the chart twice: the other row is at %s", f.Seat.Tag, f.Horse.Name, r.at(g)), "make one row of both")
			}
		}
	}
}

func (r *reader) checkPads(f *model.FitRow) {
	for i, p := range f.Pads {
		switch at := r.at(f, "pads", i); {
		case p.Kind != model.Pad && p.Kind != "":
			r.mistake(at, fmt.Sprintf("%s is a %s, not a pad", p.Tag, p.Kind), "name a pad")
		case p.WithSeat != nil && p.WithSeat != f.Seat:
			r.mistake(at, fmt.Sprintf("%s is kept with %s and travels with it, so it is not there for %s", p.Tag, p.WithSeat.Tag, f.Seat.Tag), "name another pad, or mend with_seat of "+p.Tag)
		case slices.Contains(f.Pads[:i], p):
			r.mistake(at, p.Tag+" is named twice", "leave one out")
		}
	}
}

func (r *reader) checkGirths(f *model.FitRow) {
	if !f.Seat.TakesGirth() {
		for _, key := range []string{"girth", "girths"} {
			if r.entries[f].get(key) != nil {
				r.mistake(r.at(f, key), fmt.Sprintf("%s has a girth of its own and takes no other", f.Seat.Tag), "leave "+key+" out, or state billets of "+f.Seat.Tag)
			}
		}
		return
	}
	for i, g := range f.Girths {
		switch at := r.at(f, "girths", i); {
		case g.Kind != model.Girth && g.Kind != "":
			r.mistake(at, fmt.Sprintf("%s is a %s, not a girth", g.Tag, g.Kind), "name a girth")
		case g.Family != model.NoFamily && f.Seat.Family != model.NoFamily && g.Family != f.Seat.Family:
			r.mistake(at, fmt.Sprintf("%s has %s, which take a girth of the family %q; %s is of the family %q",
				f.Seat.Tag, f.Seat.Family.Takes(), f.Seat.Family, g.Tag, g.Family),
				fmt.Sprintf("name another girth, or mend %s or %s", f.Seat.Tag, g.Tag))
		}
	}
}

// checkTimes reports terms, bookings, pairings and works that cannot be.
func (r *reader) checkTimes() {
	c := r.centre
	for _, t := range c.Terms {
		r.noun = t
		r.inOrder(r.entries[t], "first", "last", t.First, t.Last)
		for i, p := range t.Pairings {
			if p.Seat != nil && p.Seat.Kind != "" && !p.Seat.IsSeat() {
				r.mistake(r.at(t, "pairings", i, "seat"), fmt.Sprintf("%s is a %s, not a seat", p.Seat.Tag, p.Seat.Kind), "name a seat")
			}
			for j, q := range t.Pairings[:i] {
				if p.Rider != nil && p.Rider == q.Rider && p.Lesson == q.Lesson {
					r.mistake(r.at(t, "pairings", i), fmt.Sprintf("%s is paired twice: the other is at %s", p.Rider.Name, r.at(t, "pairings", j)), "leave one out, or name a lesson in each")
				}
			}
		}
	}
	for i, b := range c.Bookings {
		r.noun = b
		if b.Lesson == nil || b.Rider == nil || b.Date == 0 {
			continue
		}
		if !c.Holds(b.Lesson, b.Date) {
			r.mistake(r.at(b, "on"), fmt.Sprintf("%s is not held on %s", b.Lesson.Name, long(b.Date)), "mend the date or the lesson")
		}
		for _, x := range c.Bookings[:i] {
			if x.Lesson == b.Lesson && x.Rider == b.Rider && x.Date == b.Date && meet(model.Place{Start: x.Start, End: x.End}, model.Place{Start: b.Start, End: b.End}) {
				r.mistake(r.at(b), fmt.Sprintf("%s is booked twice: the other is at %s", b.Rider.Name, r.at(x)), "leave one out")
			}
		}
	}
	for _, w := range c.Works {
		r.noun = w
		r.checkWork(w)
	}
}

func (r *reader) checkWork(w *model.Work) {
	is := func(key string, p *model.Piece, ok bool, what string) {
		if p != nil && p.Kind != "" && !ok {
			r.mistake(r.at(w, key), fmt.Sprintf("%s is a %s, not a %s", p.Tag, p.Kind, what), "name a "+what)
		}
	}
	is("seat", w.Seat, w.Seat != nil && w.Seat.IsSeat(), "seat")
	is("girth", w.Girth, w.Girth != nil && w.Girth.Kind == model.Girth, "girth")
	for _, p := range w.Pads {
		is("pads", p, p.Kind == model.Pad, "pad")
	}
}

// long is a date as a message shows it: "Tuesday 2026-11-24".
func long(d model.Date) string { return d.Weekday().String() + " " + d.String() }

// prune takes out of the centre what lacks a part without which it is nothing.
// Each such part is a mistake that has been reported.
func (r *reader) prune() {
	c := r.centre
	c.Chart = slices.DeleteFunc(c.Chart, func(f *model.FitRow) bool { return f.Horse == nil || f.Seat == nil || !f.Seat.IsSeat() })
	c.Lessons = slices.DeleteFunc(c.Lessons, func(l *model.Lesson) bool { return l.Arena == nil || l.Instructor == nil || l.End <= l.Start })
	c.Bookings = slices.DeleteFunc(c.Bookings, func(b *model.Booking) bool {
		return b.Rider == nil || b.Lesson == nil || !slices.Contains(c.Lessons, b.Lesson)
	})
	c.Works = slices.DeleteFunc(c.Works, func(w *model.Work) bool { return w.Horse == nil || w.End <= w.Start })
	for _, t := range c.Terms {
		t.Pairings = slices.DeleteFunc(t.Pairings, func(p model.Pairing) bool { return p.Rider == nil || p.Horse == nil })
	}
}
