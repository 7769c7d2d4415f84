package command

import (
	"fmt"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
)

var calendarCommand = &command{
	name: "calendar", args: "FOLDER",
	short: "print an instructor's lessons, or a horse's rides, for a phone",
	about: `Prints what is posted as iCalendar (RFC 5545): the lessons of the instructor whom
--instructor names, or the rides and other work of the horse that --horse does,
from today on unless --from says another date. A phone or a calendar program
reads the file; read again after the next posting it changes what it read
before, and what is no longer held goes.

It names riders by first name and mark, is marked private, and holds no caution.
Dates for which nothing is posted are not in it.
`,
	example: `tackwright calendar examples/sallowdene --instructor "Dev Marchbank" --to dev.ics`,
	least:   1, most: 1, answer: calendarAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o calendarOptions
		fs.StringVar(&o.instructor, "instructor", "", "lessons of the instructor of this `NAME`")
		fs.StringVar(&o.horse, "horse", "", "rides of the horse of this `NAME`")
		fs.StringVar(&o.from, "from", "", "first `DATE` (else today)")
		fs.StringVar(&o.until, "until", "", "last `DATE`, which counts (else all that is posted)")
		fs.StringVar(&o.to, "to", "", "write it to this `FILE`, such as dev.ics")
		o.json = jsonFlag(fs)
		o.today = todayFlag(fs)
		return func(c *call) error { return printCalendar(c, &o) }
	},
}

type calendarOptions struct {
	instructor, horse, from, until, to string
	today                              *string
	json                               *bool
}

// calendarAnswer is a calendar as JSON.
type calendarAnswer struct {
	Name   string          `json:"name"`
	Events []calendarEvent `json:"events" about:"by time"`
}

type calendarEvent struct {
	UID      string `json:"uid" about:"the same for the same thing in every version"`
	Version  int    `json:"version" about:"of the posted plan that it is from"`
	Start    string `json:"start" about:"\"2026-11-26 09:50\", the centre's time"`
	End      string `json:"end"`
	Summary  string `json:"summary"`
	Where    string `json:"where,omitempty" about:"arena"`
	Words    string `json:"words" about:"lines"`
	Off      bool   `json:"off,omitempty" about:"it was told and is not held"`
	Revised  string `json:"revised" about:"when it was posted, or the latest note of the date was written"`
	TimeZone string `json:"time_zone" about:"of the centre"`
}

func printCalendar(c *call, o *calendarOptions) error {
	switch {
	case (o.instructor == "") == (o.horse == ""):
		return wrongUse("say whose it is: --instructor NAME or --horse NAME")
	case *o.json && o.to != "":
		return wrongUse("of --to and --json only one can be said")
	}
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	var of sheet.Whose
	if o.horse != "" {
		of.Horse, err = horseNamed(f.Centre, o.horse)
	} else {
		of.Instructor, err = colleague(f.Centre, o.instructor)
	}
	if err != nil {
		return err
	}
	from, until := k.Today, model.Date(0)
	for _, p := range f.Centre.Posted {
		until = max(until, p.Until)
	}
	if o.from != "" {
		if from, err = k.date(o.from); err != nil {
			return err
		}
	}
	if o.until != "" {
		if until, err = k.date(o.until); err != nil {
			return err
		}
	}
	cal := sheet.Agenda(f.Centre, c.postedDays(f.Centre, from, until, k), of)
	loc := f.Centre.Location()
	switch {
	case len(cal.Events) == 0:
		return no("nothing is posted for %s from %s on", cal.Name, from.Words())
	case *o.json:
		a := &calendarAnswer{Name: cal.Name}
		for _, e := range cal.Events {
			a.Events = append(a.Events, calendarEvent{e.UID, e.Sequence, e.Start.String(), e.End.String(), e.Summary, e.Where, e.Words, e.Off, e.Revised.String(), loc.String()})
		}
		return c.json(a)
	case o.to != "":
		return c.write(o.to, []byte(cal.ICS(loc)))
	}
	return c.print(cal.ICS(loc))
}

// postedDays are the dates for which something is posted. A day that no longer
// keeps every rule is told on standard error too.
func (c *call) postedDays(centre *model.Centre, from, until model.Date, k clock) (days []sheet.PostedDay) {
	for d := from; d <= until; d++ {
		p, w, plan, _ := centre.PostedAt(d, k.Begun())
		if p == nil {
			continue
		}
		day := sheet.PostedDay{Week: w, Plan: plan, Date: d, Broken: len(model.Broken(w.Audit(plan))) > 0,
			Stamp: sheet.Stamp{Version: p.Version, At: p.At, Notes: centre.NotesSince(p, d), Printed: k.Now}}
		if p.By != nil {
			day.Stamp.By = p.By.Name
		}
		if day.Broken {
			fmt.Fprintf(c.err, "Warning: version %d no longer keeps every rule on %s; mend the day: tackwright repair\n", p.Version, d.Words())
		}
		days = append(days, day)
	}
	return days
}
