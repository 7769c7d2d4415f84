package command

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var groundedCommand = &command{
	name: "grounded", args: "FOLDER [TERM]",
	short: "list who was on the ground in a term, how often, and why",
	about: `Lists each rider who was on the ground on the dates of a term that are over: how
often, of how many rides, when and why. Left out, TERM is the one that today is in,
else the last before. --from and --until say other dates.

It goes by what was ridden, as far as it is known: as posted and noted, and where
a date was closed as recorded then. A rider who was away, and a lesson that was
not held, do not count. tackwright why mentions it of a rider.
`,
	example: "tackwright grounded examples/sallowdene",
	least:   1, most: 2, answer: groundedAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o groundedOptions
		fs.StringVar(&o.from, "from", "", "first `DATE`")
		fs.StringVar(&o.until, "until", "", "last `DATE`, which counts")
		o.today, o.json = todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return grounded(c, &o) }
	},
}

type groundedOptions struct {
	from, until string
	today       *string
	json        *bool
}

// groundedAnswer is what grounded says as JSON. Riders go by first name and mark.
type groundedAnswer struct {
	From   string          `json:"from" about:"first date"`
	Until  string          `json:"until" about:"last date, which counts"`
	Term   string          `json:"term,omitempty"`
	Rides  int             `json:"rides" about:"of all riders, those on the ground counted in"`
	Ground int             `json:"ground" about:"of those, on the ground"`
	Riders []groundedRider `json:"riders" about:"those who were on the ground, the most often first"`
	Never  int             `json:"never" about:"how many riders were not"`
}

type groundedRider struct {
	Rider string         `json:"rider"`
	Rides int            `json:"rides"`
	Times []groundedTime `json:"times" about:"on the ground"`
}

type groundedTime struct {
	Date   string   `json:"date"`
	Start  string   `json:"start"`
	Lesson string   `json:"lesson"`
	Why    []string `json:"why" about:"as it was posted or noted"`

	told model.Told
}

func grounded(c *call, o *groundedOptions) error {
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	from, until, term, err := o.dates(c, f.Centre, k)
	if err != nil {
		return err
	}
	if f, err = folder.OpenAround(c.args[0], min(from, k.Today)); err != nil {
		return err
	}
	a := groundedOf(f.Centre.GroundedOver(from, until))
	a.From, a.Until = from.String(), until.String()
	title := datesWords(from, until)
	if term != nil {
		a.Term, title = term.Name, term.Name+", "+title
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(f.Centre, title))
}

// dates are those of the term that are over.
func (o *groundedOptions) dates(c *call, centre *model.Centre, k clock) (from, until model.Date, term *model.Term, err error) {
	if o.from+o.until != "" {
		switch {
		case len(c.args) > 1:
			err = wrongUse("say a term, or dates")
		case o.from == "" || o.until == "":
			err = wrongUse("say both dates: --from DATE --until DATE")
		}
		if err == nil {
			from, err = k.date(o.from)
		}
		if err == nil {
			until, err = k.date(o.until)
		}
		if err == nil && until < from {
			err = wrongUse("--until: %s is before %s", until, from)
		}
		return from, until, nil, err
	}
	if len(c.args) > 1 {
		term, err = find("term", c.args[1], centre.Terms, func(t *model.Term) []string { return append([]string{t.Name}, t.Was...) })
		if err != nil {
			return 0, 0, nil, err
		}
	} else if term = termOf(centre, k.Today); term == nil {
		return 0, 0, nil, no("no term has begun; say which dates: --from DATE --until DATE")
	}
	return term.First, max(term.First, min(term.Last, k.Today-1)), term, nil
}

// termOf is the term that a date is in, else the last that began before; nil is none.
func termOf(c *model.Centre, d model.Date) *model.Term {
	if t := c.TermOn(d); t != nil {
		return t
	}
	var last *model.Term
	for _, t := range c.Terms {
		if t.First <= d && (last == nil || last.First < t.First) {
			last = t
		}
	}
	return last
}

func groundedOf(all []*model.Grounded) *groundedAnswer {
	a := &groundedAnswer{}
	for _, g := range all {
		a.Rides += g.Rides
		a.Ground += len(g.Times)
		if len(g.Times) == 0 {
			a.Never++
			continue
		}
		r := groundedRider{Rider: g.Rider.Called(), Rides: g.Rides}
		for _, t := range g.Times {
			r.Times = append(r.Times, groundedTime{Date: t.Date.String(), Start: t.Start.String(), Lesson: t.LessonName, Why: t.Ground, told: t})
		}
		a.Riders = append(a.Riders, r)
	}
	return a
}

func (a *groundedAnswer) text(c *model.Centre, title string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %s: %d of %s %s on the ground.\n", c.Name, title, a.Ground, model.Count(a.Rides, "ride"), were(a.Ground))
	for _, r := range a.Riders {
		fmt.Fprintf(&b, "\n%s: %d of %s\n", r.Rider, len(r.Times), model.Count(r.Rides, "ride"))
		for _, t := range r.Times {
			fmt.Fprintf(&b, "  %s %s  %s\n", t.told.Date.Words(), t.told.Start.Clock(c.House.TwelveHour), t.Lesson)
			for _, why := range t.Why {
				b.WriteString(wrap("      ", why))
			}
		}
	}
	if a.Ground > 0 && a.Never > 0 {
		fmt.Fprintf(&b, "\n%s had a horse each time.\n", model.Count(a.Never, "other rider"))
	}
	return b.String()
}

// before says how often the rider has been on the ground in the term so far; "" is
// that no date of it is told.
func (q *asked) before() string {
	term := termOf(q.folder.Centre, q.ride.Date())
	if term == nil {
		return ""
	}
	for _, g := range q.folder.Centre.GroundedOver(term.First, q.ride.Date()-1) {
		if g.Rider.Name != q.ride.Rider.Name {
			continue
		}
		if len(g.Times) == 0 {
			return fmt.Sprintf("In %s %s was not on the ground before, in %s.", term.Name, g.Rider.Called(), model.Count(g.Rides, "ride"))
		}
		var dates []string
		for _, t := range g.Times {
			dates = append(dates, t.Date.Words())
		}
		return fmt.Sprintf("In %s %s was on the ground before, in %d of %s: %s.", term.Name, g.Rider.Called(), len(g.Times), model.Count(g.Rides, "ride"), strings.Join(dates, ", "))
	}
	return ""
}

func were(n int) string {
	if n == 1 {
		return "was"
	}
	return "were"
}
