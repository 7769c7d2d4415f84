package model

import (
	"fmt"
	"time"
)

// Minute is a minute of a local date, counted from midnight. The folder's
// reader keeps rides inside a date (0 to 1440); the model does not depend on
// it, so outside instances may run longer.
type Minute int

// String is the time on a 24-hour clock: "09:05".
func (m Minute) String() string { return fmt.Sprintf("%02d:%02d", int(m)/60, int(m)%60) }

// Clock writes the time on a 24 h or 12 h clock: "14:30" or "2:30 pm".
func (m Minute) Clock(twelve bool) string {
	if !twelve {
		return m.String()
	}
	h, half := int(m)/60%24, "am"
	if h >= 12 {
		half = "pm"
	}
	return fmt.Sprintf("%d:%02d %s", (h+11)%12+1, int(m)%60, half)
}

// Period says when something holds: on the dates From to Until (both counted;
// zero is open), on those Weekdays (none: all), during [Start, End) of each
// such date (End 0: the whole date).
type Period struct {
	From, Until Date
	Weekdays    []time.Weekday
	Start, End  Minute
	Why         string  // in words, for people
	At          Instant // when it was noted; zero: known all along
}

// Has reports whether the period touches the date at all.
func (p Period) Has(d Date) bool {
	if d < p.From || p.Until != 0 && d > p.Until {
		return false
	}
	for _, w := range p.Weekdays {
		if w == d.Weekday() {
			return true
		}
	}
	return len(p.Weekdays) == 0
}

// Meets reports whether the period overlaps [start, end) of the date.
func (p Period) Meets(d Date, start, end Minute) bool {
	return p.Has(d) && (p.End == 0 || p.Start < end && start < p.End)
}

// Covers reports whether the whole of [start, end) of the date lies in the
// period.
func (p Period) Covers(d Date, start, end Minute) bool {
	return p.Has(d) && (p.End == 0 || p.Start <= start && end <= p.End)
}

func anyMeets(ps []Period, d Date, start, end Minute) *Period {
	for i := range ps {
		if ps[i].Meets(d, start, end) {
			return &ps[i]
		}
	}
	return nil
}

func anyCovers(ps []Period, d Date, start, end Minute) *Period {
	for i := range ps {
		if ps[i].Covers(d, start, end) {
			return &ps[i]
		}
	}
	return nil
}

// Instant is a minute of a date, for what begins or ends in the middle of one.
type Instant struct {
	Date   Date
	Minute Minute
}

// Before reports whether i comes before j.
func (i Instant) Before(j Instant) bool {
	return i.Date < j.Date || i.Date == j.Date && i.Minute < j.Minute
}

// IsZero reports whether no instant is stated.
func (i Instant) IsZero() bool { return i == Instant{} }

// String is the instant as "2026-11-25 09:05".
func (i Instant) String() string { return i.Date.String() + " " + i.Minute.String() }
