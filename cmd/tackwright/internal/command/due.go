package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
)

var dueCommand = &command{
	name: "due", args: "FOLDER",
	short: "list the dates to close, and what runs out and the rides it stops",
	about: `Lists first the dates that were posted, are over and that nobody has closed: they
count as posted, not confirmed. Then what has run out, and what does in 7, 30 and
60 days: riders' forms, fits of the chart, checks of tack, weighings (where the
centre says weigh_every), and when somebody looks again at a horse that is out.

Each has the rides of the next 60 days that it stops: those that the rules would
let go again by the fewest renewals, with this one among them. So a ride that
either of two would save counts with both, and so does one that needs two; one
that another horse or piece can still carry counts with none. Each ride is looked
at alone: limits of work, and what other rides take, are left out. Of posted
rides it is also said how many were told to go by it and then cannot.

What has no date at all is named by check.
`,
	example: "tackwright due examples/sallowdene",
	least:   1, most: 1, answer: dueAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		today, asJSON := todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return due(c, *today, *asJSON) }
	},
}

// dueSteps are the days within which what runs out is listed together; the last
// is how far ahead anything is listed, and rides are counted.
var dueSteps = []model.Date{7, 30, 60}

// dueAnswer is what due says as JSON.
type dueAnswer struct {
	Centre string     `json:"centre"`
	Today  string     `json:"today"`
	Until  string     `json:"until" about:"last date that is looked at"`
	Open   []openDate `json:"open_dates" about:"posted and over, and nobody has closed them: they count as posted, not confirmed"`
	Due    []dueThing `json:"due" about:"what has run out or does, the earliest first"`

	today model.Date
}

type openDate struct {
	Date  string `json:"date"`
	Rides int    `json:"rides" about:"that were posted with a horse"`

	date model.Date
}

type dueThing struct {
	Kind   string `json:"kind" about:"review (of a horse that is out), form, fit, tack check or weighing"`
	Of     string `json:"of" about:"a rider's whole name, for the office; a horse; a tag"`
	On     string `json:"horse,omitempty" about:"of a fit: the horse"`
	Why    string `json:"why,omitempty" about:"of a review: why the horse is out"`
	Date   string `json:"date,omitempty" about:"last date on which it holds, or on which to look again or weigh; none: no date is stated"`
	Within int    `json:"within" about:"days: 7, 30 or 60; 0: it has run out"`
	Stops  int    `json:"stops" about:"rides up to the last date that it stops unless it is renewed"`
	First  string `json:"first,omitempty" about:"date of the first of them"`
	Posted int    `json:"posted" about:"posted rides that were told to go by it, and then cannot"`

	due *model.Due
}

func due(c *call, flag string, asJSON bool) error {
	f, k, err := c.openOn(flag)
	if err != nil {
		return err
	}
	a := dueOf(f.Centre, k.Today)
	if asJSON {
		return c.json(a)
	}
	return c.print(a.text(f.Centre))
}

func dueOf(c *model.Centre, today model.Date) *dueAnswer {
	last := dueSteps[len(dueSteps)-1]
	a := &dueAnswer{Centre: c.Name, Today: today.String(), Until: (today + last).String(), today: today}
	for _, o := range c.OpenDates(today) {
		a.Open = append(a.Open, openDate{o.Date.String(), o.Rides, o.Date})
	}
	for _, x := range c.Due(today, int(last)) {
		d := dueThing{Kind: string(x.Kind), Why: string(x.Why), Date: x.On.String(), Stops: len(x.Waits), Posted: x.Posted, due: x}
		switch {
		case x.Rider != nil:
			d.Of = x.Rider.Name
		case x.Piece != nil:
			d.Of = x.Piece.Tag
			if x.Horse != nil {
				d.On = x.Horse.Name
			}
		default:
			d.Of = x.Horse.Name
		}
		if len(x.Waits) > 0 {
			d.First = x.Waits[0].Date().String()
		}
		if x.On >= today {
			for _, step := range dueSteps {
				if d.Within = int(step); x.On <= today+step {
					break
				}
			}
		}
		a.Due = append(a.Due, d)
	}
	return a
}

func (a *dueAnswer) text(c *model.Centre) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: what is due, as of %s %d\n", a.Centre, a.today.Words(), a.today.Year())
	if len(a.Open) > 0 {
		b.WriteString("\nOPEN DATES: posted and over, and nobody has closed them. They count as posted,\nnot confirmed\n\n")
	}
	for _, o := range a.Open {
		fmt.Fprintf(&b, "  %-10s  %s\n", o.date.Words(), model.Count(o.Rides, "ride"))
	}
	for i := 0; i < len(a.Due); {
		d := a.Due[i]
		if i == 0 || d.Within != a.Due[i-1].Within {
			b.WriteString("\n" + a.title(d.Within) + "\n\n")
		}
		n := 1
		for i+n < len(a.Due) && d.quiet() && a.Due[i+n].quiet() && a.Due[i+n].due.Kind == d.due.Kind && a.Due[i+n].due.On == d.due.On {
			n++
		}
		var of []string
		for _, x := range a.Due[i : i+n] {
			of = append(of, x.words())
		}
		b.WriteString(wrap(fmt.Sprintf("  %-10s  ", a.when(d.due.On)), dueVerbs[d.due.Kind]+strings.Join(of, ", ")+": "+d.stops(c.House.TwelveHour)))
		i += n
	}
	switch {
	case len(a.Due) == 0 && len(a.Open) == 0:
		fmt.Fprintf(&b, "\nNothing: no date is open, and nothing runs out in %d days.\n", dueSteps[len(dueSteps)-1])
	case len(a.Due) == 0:
		fmt.Fprintf(&b, "\nNothing runs out in %d days.\n", dueSteps[len(dueSteps)-1])
	default:
		a.foot(&b, c)
	}
	return b.String()
}

// title heads what runs out within so many days.
func (a *dueAnswer) title(within int) string {
	if within == 0 {
		return "HAS RUN OUT, OR HAS NO DATE"
	}
	return fmt.Sprintf("IN %d DAYS, up to %s", within, a.when(a.today+model.Date(within)))
}

// when is a date in words, with its year where that is not today's.
func (a *dueAnswer) when(d model.Date) string {
	if d == 0 || d.Year() == a.today.Year() {
		return d.Words()
	}
	return fmt.Sprintf("%s %d", d.Words(), d.Year())
}

// dueVerbs lead the names of what is due on one date.
var dueVerbs = map[model.DueKind]string{model.DueReview: "look again at ", model.DueForm: "form of ", model.DueFit: "fit of ",
	model.DueCheck: "check of ", model.DueWeighing: "weigh "}

// words names the thing.
func (d *dueThing) words() string {
	switch d.due.Kind {
	case model.DueReview:
		return fmt.Sprintf("%s (%s)", d.Of, d.Why)
	case model.DueFit:
		return d.Of + " on " + d.On
	}
	return d.Of
}

// quiet is one for which no ride waits: those of a date are told together.
func (d *dueThing) quiet() bool { return d.Stops+d.Posted == 0 }

// stops says how many rides it stops.
func (d *dueThing) stops(twelve bool) string {
	if d.due.Kind == model.DueWeighing {
		return "stops no ride: the last weight counts meanwhile"
	}
	s := "stops no ride"
	if d.Stops > 0 {
		r := d.due.Waits[0]
		s = fmt.Sprintf("stops %s, the first on %s %s", model.Count(d.Stops, "ride"), r.Date().Words(), r.Start.Clock(twelve))
	}
	if d.Posted > 0 {
		s += fmt.Sprintf("; %s told to go by it", model.Count(d.Posted, "posted ride"))
	}
	return s
}

// foot says how rides are counted, and who may do what is due.
func (a *dueAnswer) foot(b *strings.Builder, c *model.Centre) {
	b.WriteString("\n" + wrap("", fmt.Sprintf("Counted are the rides up to %s that the rules would let go again by the fewest renewals, with this one among them; one that either of two would save counts with both.",
		(a.today+dueSteps[len(dueSteps)-1]).Words())))
	for _, x := range []struct {
		kind model.DueKind
		ends model.Ends
		said string
	}{
		{model.DueReview, model.EndsVetStop, "A horse comes back on the word of"},
		{model.DueForm, model.EndsForm, "A form is renewed, or extended to a date by"},
	} {
		var names []string
		for _, p := range c.Persons {
			if p.May(x.ends) {
				names = append(names, p.Name)
			}
		}
		if len(names) > 0 && slices.ContainsFunc(a.Due, func(d dueThing) bool { return d.due.Kind == x.kind }) {
			b.WriteString(wrap("", x.said+" "+strings.Join(names, " or ")+"."))
		}
	}
	b.WriteString("\n" + deferral)
}
