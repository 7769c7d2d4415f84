package model

import (
	"fmt"
	"time"
)

// Date is a day of the calendar, counted from 1 January of year 1 as day 1.
// The zero Date means "none stated".
type Date int32

// On is the date of a year, month and day; values out of range carry over as
// in [time.Date].
func On(year int, month time.Month, day int) Date {
	return DateOf(time.Date(year, month, day, 0, 0, 0, 0, time.UTC))
}

// DateOf is the calendar date that t shows in its own location.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	u := time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	return Date((u.Unix()-time.Time{}.Unix())/(24*60*60)) + 1 // a time.Duration ends after 292 years
}

// ParseDate reads an RFC 3339 full-date, such as 2026-11-25.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return 0, fmt.Errorf("%q is not a date like 2026-11-25", s)
	}
	return DateOf(t), nil
}

// Time is midnight of the date in loc.
func (d Date) Time(loc *time.Location) time.Time {
	t := time.Time{}.AddDate(0, 0, int(d)-1)
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, loc)
}

// Weekday of the date.
func (d Date) Weekday() time.Weekday { return time.Weekday(int(d) % 7) }

// Year of the date.
func (d Date) Year() int { return d.Time(time.UTC).Year() }

// AddYears is the same day n years on (29 February becomes 1 March).
func (d Date) AddYears(n int) Date { return DateOf(d.Time(time.UTC).AddDate(n, 0, 0)) }

// String is the date as RFC 3339 writes it, or "" for none.
func (d Date) String() string {
	if d == 0 {
		return ""
	}
	return d.Time(time.UTC).Format(time.DateOnly)
}

// Words is the date as people here read it: "Wed 25 Nov".
func (d Date) Words() string {
	if d == 0 {
		return "no date"
	}
	return d.Time(time.UTC).Format("Mon 2 Jan")
}

// WeekStart is the first date of the calendar week that d is in, where weeks
// begin on first.
func (d Date) WeekStart(first time.Weekday) Date {
	return d - Date((int(d.Weekday())-int(first)+7)%7)
}
