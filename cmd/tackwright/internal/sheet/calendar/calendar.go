// Package calendar writes lessons as iCalendar (RFC 5545), for a phone.
//
// Times are in UTC: each event is on one date, so that none needs the rules of a
// time zone, and a phone shows it at its own hour wherever it is.
package calendar

import (
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"tackwright/model"
)

// Calendar is a row of events under one name. An iCalendar has one event at least
// (RFC 5545, 3.6).
type Calendar struct {
	Name   string
	Events []Event
}

// Event is something on one date at the centre's hours.
type Event struct {
	UID        string        // the same for the same thing in every version
	Sequence   int           // greater in a later version
	Revised    model.Instant // when what it says was last changed
	Start, End model.Instant
	Summary    string
	Where      string
	Words      string // lines
	Off        bool   // it was told and is not held
	Busy       bool   // it takes the time of the person whose calendar it is
}

// ICS is the calendar as a file. loc is the centre's time zone.
func (c *Calendar) ICS(loc *time.Location) string {
	cal := ics.NewCalendarFor("tackwright")
	cal.SetProductId("-//tackwright//lessons//EN")
	cal.SetCalscale("GREGORIAN")
	cal.SetName(c.Name)       // RFC 7986, 5.1
	cal.SetXWRCalName(c.Name) // what phones read
	for _, e := range c.Events {
		x := cal.AddEvent(e.UID)
		x.SetDtStampTime(at(e.Revised, loc))
		x.SetModifiedAt(at(e.Revised, loc))
		x.SetSequence(e.Sequence)
		x.SetStartAt(at(e.Start, loc))
		x.SetEndAt(at(e.End, loc))
		x.SetSummary(clean(e.Summary))
		if e.Where != "" {
			x.SetLocation(clean(e.Where))
		}
		if e.Words != "" {
			x.SetDescription(clean(e.Words))
		}
		x.SetClass(ics.ClassificationPrivate)
		x.SetStatus(ics.ObjectStatusConfirmed)
		if e.Off {
			x.SetStatus(ics.ObjectStatusCancelled)
		}
		transparent := ics.TransparencyTransparent
		if e.Busy && !e.Off {
			transparent = ics.TransparencyOpaque
		}
		x.SetTimeTransparency(transparent)
	}
	return cal.Serialize(ics.WithNewLine("\r\n")) // whatever the computer's own is
}

func at(i model.Instant, loc *time.Location) time.Time {
	d := i.Date.Time(loc)
	return time.Date(d.Year(), d.Month(), d.Day(), 0, int(i.Minute), 0, 0, loc)
}

// clean is a text without the control characters that a calendar must not have
// (RFC 5545, 3.1), but for line feeds.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case r < 0x20 || r == 0x7F:
			return ' '
		}
		return r
	}, s)
}
