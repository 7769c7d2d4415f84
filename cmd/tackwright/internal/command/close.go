package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var closeCommand = &command{
	name: "close", args: "FOLDER DATE",
	short: "confirm what was ridden on a day, or say where it differed",
	about: `Closes a date: it was ridden as posted and noted, but for what is said here. Each
may be said more than once, a text between quotes:

  --no-show "RIDER"                      she did not ride
  --other   "RIDER on HORSE with TAGS"   on another horse, or in other tack
  --extra   "RIDER in LESSON on HORSE with TAGS at 10:00-10:30"
                                         rode who was not told that she rides
  --short   "RIDER until 10:20"          it ended early
  --work    "HORSE lunging 12:30-12:50 in ARENA by PERSON"

A rider with more than one ride that day is named with the lesson, "RIDER in
LESSON", or with the start of her part of it, "RIDER at 14:00". "with" names the
tags of all tack; left out, the tack is not recorded. "in", "by" and the hours
of an extra ride may be left out: they are then the lesson's.

It can be done at any hour, and again: what was said before stays, unless it is
said anew of the same ride, or --anew starts over. Limits, wishes, fairness and
the written record go by what was ridden. A date that nobody closes counts as
posted, and is marked as not confirmed.
`,
	example: `tackwright close examples/sallowdene 2026-10-10 --no-show "Otis Bramley" --by "Dev Marchbank"`,
	least:   2, most: 2, answer: closeAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o closeOptions
		fs.StringArrayVar(&o.noShow, "no-show", nil, "`TEXT`: a rider who did not ride")
		fs.StringArrayVar(&o.other, "other", nil, "`TEXT`: a rider and the horse that she had instead")
		fs.StringArrayVar(&o.extra, "extra", nil, "`TEXT`: a rider who rode besides")
		fs.StringArrayVar(&o.short, "short", nil, "`TEXT`: a rider, and when her ride ended")
		fs.StringArrayVar(&o.work, "work", nil, "`TEXT`: a horse's work besides")
		fs.BoolVar(&o.anew, "anew", false, "forget what was said of this date before")
		o.by = byFlag(fs)
		o.now = nowFlag(fs)
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error { return closeDate(c, &o) }
	},
}

type closeOptions struct {
	noShow, other, extra, short, work []string
	anew                              bool
	by, now, today                    *string
	json                              *bool
}

// closeAnswer is what close says as JSON.
type closeAnswer struct {
	Date     string       `json:"date"`
	By       string       `json:"by"`
	At       string       `json:"at"`
	AsPosted int          `json:"as_posted" about:"rides that were ridden as told"`
	Rides    []riddenRide `json:"rides" about:"that were ridden, in order of time"`
	NoShows  []riddenRide `json:"no_shows" about:"that were told, and not ridden"`
	Works    []riddenWork `json:"works" about:"other work besides what the folder plans"`
	Open     []string     `json:"open" about:"earlier dates that nobody has closed"`

	openWords []string

	date   model.Date
	toCome bool // some rides begin only after it was closed
}

type riddenRide struct {
	Start   string `json:"start" about:"24-hour clock"`
	End     string `json:"end"`
	Lesson  string `json:"lesson"`
	Rider   string `json:"rider" about:"first name, and a mark where two share it"`
	Horse   string `json:"horse,omitempty" about:"none: on the ground"`
	Differs string `json:"differs,omitempty" about:"in what it was not as told: other horse, extra ride, cut short"`

	start, end model.Minute
}

type riddenWork struct {
	Start string `json:"start"`
	End   string `json:"end"`
	Horse string `json:"horse"`
	Kind  string `json:"kind"`

	start, end model.Minute
}

func closeDate(c *call, o *closeOptions) error {
	f, k, at, err := c.around(c.args[0], c.args[1], *o.today, *o.now)
	if err != nil {
		return err
	}
	by, err := c.who(f.Centre, *o.by)
	if err != nil {
		return err
	}
	date, err := k.date(c.args[1])
	switch {
	case err != nil:
		return err
	case date > at.Date:
		return no("%s is still to come; what will change then is a note: tackwright help note", date.Words())
	}
	x := &model.Ridden{Date: date, By: by, At: at}
	if old := f.Centre.ClosedOn(date); old != nil && !o.anew {
		x.Differs, x.Works = slices.Clone(old.Differs), slices.Clone(old.Works)
	}
	s := &riddenSaying{centre: f.Centre, date: date, told: f.Centre.ToldOn(date)}
	if err := s.say(x, o); err != nil {
		return err
	}
	if err := s.onceAtATime(x); err != nil {
		return err
	}
	if err := f.Close(x); err != nil {
		return written(err)
	}
	after, err := folder.OpenAround(c.args[0], date)
	if err != nil {
		return fmt.Errorf("%s is closed, but cannot be shown: %w", date.Words(), err)
	}
	a := closedDay(after.Centre, date, at)
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(after.Centre))
}

// around opens the folder with the records around a date, and tells the time.
func (c *call) around(dir, date, today, now string) (*folder.Folder, clock, model.Instant, error) {
	f, err := c.open(dir)
	if err != nil {
		return nil, clock{}, model.Instant{}, err
	}
	k, err := c.clock(f.Centre, today)
	if err != nil {
		return nil, k, model.Instant{}, err
	}
	at, err := k.at(now)
	if err != nil {
		return nil, k, at, err
	}
	k.Today = at.Date
	d, err := k.date(date)
	if err == nil && d < k.Today {
		f, err = folder.OpenAround(dir, d)
	}
	return f, k, at, err
}

// closedDay is what is known of a date that is closed.
func closedDay(c *model.Centre, date model.Date, at model.Instant) *closeAnswer {
	record := c.ClosedOn(date)
	a := &closeAnswer{Date: date.String(), By: record.By.Name, At: record.At.String(), date: date}
	told, ridden := c.ToldOn(date), c.RiddenOn(date)
	slices.SortStableFunc(ridden, func(a, b model.Told) int { return int(a.Start - b.Start) })
	how := func(t model.Told) string {
		for _, d := range record.Differs {
			if d.Lesson == t.Lesson && d.Rider == t.Rider && (d.Start == 0 || d.Start == t.Start) && d.How != model.NoShow {
				return string(d.How)
			}
		}
		return ""
	}
	for _, t := range ridden {
		x := riddenOf(t)
		if x.Differs = how(t); x.Differs == "" && t.Turn != nil {
			a.AsPosted++
		}
		a.Rides = append(a.Rides, x)
		a.toCome = a.toCome || t.Turn != nil && at.Before(model.Instant{Date: date, Minute: t.Start})
	}
	for _, t := range told {
		for _, d := range record.Differs {
			if d.How == model.NoShow && d.Lesson == t.Lesson && d.Rider == t.Rider && (d.Start == 0 || d.Start == t.Start) {
				a.NoShows = append(a.NoShows, riddenOf(t))
			}
		}
	}
	for _, w := range record.Works {
		a.Works = append(a.Works, riddenWork{w.Start.String(), w.End.String(), w.Horse.Name, w.Kind, w.Start, w.End})
	}
	for _, x := range c.OpenDates(date) {
		a.Open, a.openWords = append(a.Open, x.Date.String()), append(a.openWords, x.Date.Words())
	}
	return a
}

func riddenOf(t model.Told) riddenRide {
	x := riddenRide{Start: t.Start.String(), End: t.End.String(), Lesson: t.LessonName, Rider: t.Rider.Called(), start: t.Start, end: t.End}
	if t.Turn != nil {
		x.Horse = t.Turn.Horse.Name
	}
	return x
}

func (a *closeAnswer) text(c *model.Centre) string {
	var b strings.Builder
	clock := func(start, end model.Minute) string {
		return start.Clock(c.House.TwelveHour) + " to " + end.Clock(c.House.TwelveHour)
	}
	fmt.Fprintf(&b, "%s is closed by %s: %s as posted", a.date.Words(), a.By, model.Count(a.AsPosted, "ride"))
	if n := len(a.NoShows); n > 0 {
		b.WriteString(", " + model.Count(n, "no-show"))
	}
	b.WriteString(".\n")
	line := func(x riddenRide, how string) {
		if how != "" {
			fmt.Fprintf(&b, "  %s  %s (%s), %s: %s\n", clock(x.start, x.end), x.Rider, x.Lesson, how, horseWords(x.Horse))
		}
	}
	for _, x := range a.NoShows {
		line(x, "no-show")
	}
	for _, x := range a.Rides {
		line(x, x.Differs)
	}
	for _, x := range a.Works {
		fmt.Fprintf(&b, "  %s  %s, %s besides\n", clock(x.start, x.end), x.Horse, x.Kind)
	}
	if a.toCome {
		b.WriteString("Rides that are still to come count as posted; close the date again when they are over.\n")
	}
	if len(a.Open) > 0 {
		b.WriteString(wrap("", "Not closed yet: "+strings.Join(a.openWords, ", ")+"."))
	}
	return b.String()
}

func horseWords(horse string) string {
	if horse == "" {
		return "on the ground"
	}
	return horse
}
