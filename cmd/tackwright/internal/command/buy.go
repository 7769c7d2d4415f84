package command

import (
	"context"
	"fmt"
	"time"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/solver"
)

// mostFew is how many of the best are planned whole.
const mostFew = 5

var buyCommand = &command{
	name: "buy", args: "FOLDER [WHEN]",
	short: "say what one more piece, girth size or horse would bring",
	about: `Says how many more could ride with one more of each piece, of each girth size that
the fit chart names, and with a horse like each of the herd, each by itself: the
most that any plan seats with it, against the most without. Of the five best it
plans the whole week and says what becomes of wishes and changeovers. It writes
nothing.

Each counts only if it fits, and that is not for this program to say. A copy is
taken to be approved wherever the piece that it copies is, new and in use, with
the pieces kept with it; a horse to be sound, rested, past its quarantine, and
approved, kept apart and ridden as the one is that it is like. Before a piece is
used a saddle fitter approves it for the horse; before a horse is, a vet sees it,
and a fitter its tack.

WHEN is any date of the week that is meant, as in tackwright plan. --weeks adds up
as many weeks from that one on, each planned by itself from what the folder says
now. Nothing is called proved that was not proved. When --limit is over, or at
Ctrl-C, it says how far it came.
`,
	example: "tackwright buy examples/sallowdene 2026-10-14 --weeks 2",
	least:   1, most: 2, answer: buyAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o buyOptions
		fs.IntVar(&o.weeks, "weeks", 1, "over this `NUMBER` of weeks, 1 to 26; 1 if not said")
		fs.DurationVar(&o.limit, "limit", 30*time.Second, "search no longer than this `TIME`, for all of it; 30s if not said")
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error { return buy(c, &o) }
	},
}

type buyOptions struct {
	weeks int
	limit time.Duration
	today *string
	json  *bool
}

func buy(c *call, o *buyOptions) error {
	switch {
	case o.limit <= 0:
		return wrongUse("--limit: a search takes some time, such as 30s")
	case o.weeks < 1 || o.weeks > 26:
		return wrongUse("--weeks: a number from 1 to 26")
	}
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	from, _, err := (&planOptions{}).dates(c, k, f.Centre.House.WeekStarts)
	if err != nil {
		return err
	}
	var weeks []solver.Dates
	for i := range o.weeks {
		d := solver.Dates{From: from + model.Date(7*i), Days: 7}
		if k.Real && d.From <= k.Today && k.Today < d.From+7 {
			d.Now = k.Now
		}
		weeks = append(weeks, d)
	}
	ctx, cancel := context.WithTimeout(c.ctx, o.limit)
	defer cancel()
	told, end := c.showCount("looked at so far")
	found, err := solver.Buy(ctx, f.Centre, weeks, mostFew, told)
	end()
	if err != nil {
		return err
	}
	c.tellEnd(ctx, o.limit, "this is what was found so far")
	a := buyOf(found)
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(found))
}

// showCount shows on a terminal how many of all are done, until end.
func (c *call) showCount(what string) (told func(done, all int), end func()) {
	if !c.env.Terminal {
		return nil, func() {}
	}
	line := &progress{to: c.err}
	return func(done, all int) { line.over(fmt.Sprintf("%s: %d of %d", what, done, all)) },
		func() {
			line.over("")
			fmt.Fprint(c.err, "\r")
		}
}
