package model

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
)

// Bedrock marks what a week stands on: two weeks with the same mark differ at
// most in which rides are off, which horses are out, who is kept on or off which
// horse, what was posted, and the facts of other dates. 32 hexadecimal digits.
func (w *Week) Bedrock() string {
	sum := new(bytes.Buffer)
	c := w.Centre
	horses := make([]Horse, len(c.Horses))
	for i, h := range c.Horses {
		horses[i] = *h
		horses[i].Out = nil
	}
	riders := make([]Rider, len(c.Riders))
	for i, r := range c.Riders {
		riders[i] = *r
		riders[i].Away, riders[i].FormUntil = nil, 0
	}
	arenas := make([]Arena, len(c.Arenas))
	for i, a := range c.Arenas {
		arenas[i] = *a
		arenas[i].Closures = nil
	}
	for _, v := range []any{w.House, w.From, w.Until, w.Now, w.Mends, horses, riders, arenas, c.Pieces, c.Chart} {
		write(sum, reflect.ValueOf(v), true)
	}
	meetings := slices.Clone(w.Meetings)
	for _, f := range w.Facts {
		if f.Date < w.From || w.Until < f.Date {
			continue
		}
		write(sum, reflect.ValueOf(f), true)
		if f.Meeting != nil && !slices.Contains(meetings, f.Meeting) { // no longer in the folder
			meetings = append(meetings, f.Meeting)
		}
	}
	for _, m := range meetings {
		fmt.Fprintf(sum, "meeting %q %d %d %d %v;", m.Name, m.Date, m.Start, m.End, m.Hands)
		if m.Arena != nil {
			fmt.Fprintf(sum, "%q", m.Arena.Name)
		}
		if m.Instructor != nil {
			fmt.Fprintf(sum, "%q %d", m.Instructor.Name, m.Instructor.RidersAtOnce)
		}
		if l := m.Lesson; l != nil {
			fmt.Fprintf(sum, "%q %q %d;", l.Name, l.Kind, l.Size)
		}
	}
	for _, r := range w.Rides {
		if r.State == Started {
			fmt.Fprint(sum, "started ", r)
		}
		if horse, seat := w.Usual(r); horse != nil {
			fmt.Fprintf(sum, "usual %s %q", r, horse.Name)
			if seat != nil {
				fmt.Fprintf(sum, " %q", seat.Tag)
			}
		}
		if r.Held != nil && r.Held.Seat != nil {
			fmt.Fprintf(sum, "held %s %q", r, r.Held.Seat.Tag)
		}
	}
	w.writeBefore(sum)
	return digest(sum)
}

// Copy is the week with rides of its own, so that the state of these can be
// changed without changing those.
func (w *Week) Copy() *Week {
	c := *w
	c.Rides = make([]*Ride, len(w.Rides))
	own := map[*Ride]*Ride{}
	for i, r := range w.Rides {
		ride := *r
		c.Rides[i] = &ride
		own[r] = &ride
	}
	c.Facts = slices.Clone(w.Facts)
	for i, f := range c.Facts {
		if f.Ride != nil {
			fact := *f
			fact.Ride = own[f.Ride]
			c.Facts[i] = &fact
		}
	}
	return &c
}
