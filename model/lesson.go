package model

import (
	"strings"
	"time"
)

// LessonKind says who may join.
type LessonKind string

const (
	Private     LessonKind = "private"
	SemiPrivate LessonKind = "semi-private"
	Group       LessonKind = "group"
)

// Lesson is a fixed place and time, weekly (On is 0) or on one date.
type Lesson struct {
	Name       string
	Was        []string
	Weekday    time.Weekday
	On         Date // 0: every week on Weekday
	Start, End Minute
	Arena      *Arena
	Instructor *Person
	Kind       LessonKind
	Level      string
	Size       int  // riders at once; 0 no limit stated
	Open       bool // to riders from elsewhere
	Hands      Hands
	HandsOn    map[Date]Hands // where a date has another number
	Places     []Place
	Term       *Term // 0: in every term
	From       Date  // 0 open
	Until      Date
}

// Hands are the helpers that a lesson can count on; -1 is no number given.
type Hands struct{ Leaders, Sidewalkers int }

// NoHands is a lesson that gives no number.
var NoHands = Hands{-1, -1}

// Words are the numbers that are given: "1 leader and 2 sidewalkers".
func (h Hands) Words() string {
	var all []string
	for _, x := range []struct {
		n    int
		what string
	}{{h.Leaders, "leader"}, {h.Sidewalkers, "sidewalker"}} {
		if x.n >= 0 {
			all = append(all, Count(x.n, x.what))
		}
	}
	return strings.Join(all, " and ")
}

// Place is a rider's standing place in a lesson.
type Place struct {
	Rider       *Rider
	From, Until Date   // 0 open
	EveryOther  bool   // every other week, counted from From's
	Start, End  Minute // the part of the lesson she rides; End 0: the whole
}

// On reports whether the place is taken on the date.
func (p Place) On(d Date, first time.Weekday) bool {
	if d < p.From || p.Until != 0 && d > p.Until {
		return false
	}
	return !p.EveryOther || (d.WeekStart(first)-p.From.WeekStart(first))%14 == 0
}

// Booking is a ride for one date: a make-up or a guest.
type Booking struct {
	Date       Date
	Lesson     *Lesson
	Rider      *Rider
	Start, End Minute // part; End 0: the whole
	Why        string
	Note       int // number of the note it came from; 0: a person's file
}

// Term is a run of weeks in which the standing lessons are held.
type Term struct {
	Name        string
	Was         []string
	First, Last Date
	Closures    []Period
	Pairings    []Pairing
}

// Pairing is a rider's usual horse and seat in a term, in one lesson or in all.
type Pairing struct {
	Rider  *Rider
	Lesson *Lesson // nil: in all
	Horse  *Horse
	Seat   *Piece // nil: none stated
}

// Work is a horse's work with no rider of a lesson: schooling, lunging, an
// evaluation. It takes time and a place in the arena and counts in limits.
type Work struct {
	Horse       *Horse
	Kind        string
	Weekday     time.Weekday
	On          Date // 0: every week on Weekday
	From, Until Date
	Start, End  Minute
	Arena       *Arena // nil: none
	Person      *Person
	Seat        *Piece // nil: names no tack
	Pads        []*Piece
	Girth       *Piece
}

// IsOn reports whether the work is done on the date.
func (w *Work) IsOn(d Date) bool {
	if w.On != 0 {
		return d == w.On
	}
	return d.Weekday() == w.Weekday && d >= w.From && (w.Until == 0 || d <= w.Until)
}
