package model

import (
	"fmt"
	"time"
)

// Week is any run of up to seven dates to be planned: its rides, and what
// stands around them.
type Week struct {
	Centre      *Centre
	House       *House
	From, Until Date    // the dates planned, both counted
	Now         Instant // rides that start at or before it are facts; zero: none
	Mends       bool    // what was posted for it is kept as far as can be: see [Centre.Repair]

	Meetings  []*Meeting // by date, start, name
	Rides     []*Ride    // by date, start, lesson, rider
	Facts     []*Stint   // works, started rides, and rides posted on dates around
	Suspended []string   // holds and works that a note has made impossible

	grounded   map[*Rider]bool
	mostRidden map[*Rider]*Horse    // in the last four weeks
	contacts   map[*Piece][]contact // with marked horses, before the dates planned
	alike      map[*Piece]int
	rows       map[fit][]*FitRow // of the fit chart
}

// Meeting is one lesson on one date, as the notes of that date have it.
type Meeting struct {
	Lesson     *Lesson // nil for a posted lesson that is no longer in the folder
	Name       string
	Date       Date
	Start, End Minute
	Arena      *Arena
	Instructor *Person
	Hands      Hands
	NotHeld    string // closure or cancellation, in words; "" is held

	closures []Period // of its terms, that touch the date
	twelve   bool     // the house's clock, for words
}

// RideState is whether a ride is to be planned.
type RideState int

const (
	Open    RideState = iota
	Started           // a fact: as told
	Off               // counts in no goal: rider away, lesson cancelled, day closed
)

// Ride is one rider in one lesson, or part of it, on one date.
type Ride struct {
	Index      int // in Week.Rides
	Meeting    *Meeting
	Rider      *Rider
	Start, End Minute
	State      RideState
	OffWhy     string
	Past       bool  // Off, because it was never posted and its hour is past
	Told       *Turn // of a started ride; nil: on the ground
	Held       *Hold // nil: free
	Never      []*Horse

	Posted *Turn // in a repair: as last posted; nil: on the ground, or never posted
	Was    *Told // in a repair: the hours, arena, instructor and turn last posted; nil: never posted
	Due    bool  // in a repair: the rider was told that she rides
}

// Hold is a pairing that a person has told the program to keep: the ride has
// it, or is on the ground.
type Hold struct {
	Horse *Horse
	Seat  *Piece // nil: any
	Note  int
}

// Date of the ride.
func (r *Ride) Date() Date { return r.Meeting.Date }

// Minutes that the ride takes.
func (r *Ride) Minutes() int { return int(r.End - r.Start) }

// String names the ride for messages, on the house's clock: "Wed 25 Nov 10:00 Mia".
func (r *Ride) String() string {
	return fmt.Sprintf("%s %s %s", r.Date().Words(), r.Start.Clock(r.Meeting.twelve), r.Rider.Called())
}

// Stint is one occupation of one horse: a seated ride or a work.
type Stint struct {
	Date       Date
	Start, End Minute
	Turn       *Turn    // of a work that names no tack: the horse alone
	Meeting    *Meeting // nil: a work
	Rider      *Rider   // nil: a work
	Arena      *Arena   // nil: none
	Ride       *Ride    // of this week; nil: posted on other dates, or a work
	Open       bool     // an open seated ride: not a fact
	Work       int64    // minutes x percent of its kind x percent of the horse
	Name       string   // in words
}

// workUnit is one minute of work at 100 % of kind and horse.
const workUnit = 100 * 100

// Meets reports whether two stints overlap in time.
func (s *Stint) Meets(t *Stint) bool {
	return s.Date == t.Date && s.Start < t.End && t.Start < s.End
}

// SameSession reports whether both count as one session of a horse: parts of
// one lesson do.
func (s *Stint) SameSession(t *Stint) bool {
	return s == t || s.Meeting != nil && s.Meeting == t.Meeting
}

// Rests is the least gap that the rules ask between two stints of a horse, of
// which s comes first.
func (w *Week) Rests(s, t *Stint) Minute {
	named := s.Turn.Seat != nil && t.Turn.Seat != nil
	switch {
	case !named || !s.Turn.SameTack(t.Turn):
		return w.House.Other
	case s.Arena == t.Arena && s.Arena != nil:
		return w.House.Stay
	}
	return w.House.Same
}

// stintOf is what a ride seated on t takes.
func (w *Week) stintOf(r *Ride, t *Turn) *Stint {
	return &Stint{Date: r.Date(), Start: r.Start, End: r.End, Turn: t, Meeting: r.Meeting, Rider: r.Rider,
		Arena: r.Meeting.Arena, Ride: r, Open: r.State == Open, Work: w.WorkOf(r, t.Horse), Name: r.String()}
}

// WorkOf is the work that a ride is to a horse: minutes x percent of the
// lesson's kind x percent of the horse, never rounded.
func (w *Week) WorkOf(r *Ride, h *Horse) int64 {
	kind := ""
	if r.Meeting.Lesson != nil {
		kind = string(r.Meeting.Lesson.Kind)
	}
	return int64(r.Minutes()) * int64(w.House.Factor(kind)) * int64(h.factor())
}

func (h *Horse) factor() Percent {
	if h.Factor == 0 {
		return 100
	}
	return h.Factor
}

// Dates are the dates planned.
func (w *Week) Dates() []Date {
	var ds []Date
	for d := w.From; d <= w.Until; d++ {
		ds = append(ds, d)
	}
	return ds
}

// Grounded reports whether the rider was on the ground at her latest ride
// before the first date planned.
func (w *Week) Grounded(r *Rider) bool { return w.grounded[r] }

// clock is a time of day as the house writes it.
func (w *Week) clock(m Minute) string { return m.Clock(w.House.TwelveHour) }

// DayName of a date of the week, for people.
func (w *Week) DayName(d Date) string { return d.Time(time.UTC).Format("Monday 2 January") }
