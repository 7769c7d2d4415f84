package command

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"time"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/solver"
)

var planCommand = &command{
	name: "plan", args: "FOLDER [WHEN]",
	short: "plan a week, a day, or from a date on",
	about: `Finds a plan that keeps every rule and seats as many rides as can be, writes it
into plans/ of the folder, and prints who rides what, who is on the ground and
what stands in the way, what differs from the term's standing pairings and why,
and what was proved. Nothing is called best that was not proved to be.

WHEN is any date of the week that is meant: 2026-11-25, today, tomorrow or a
weekday (the next of that name, today counted in). Left out, it is the calendar
week that today is in. --day plans one date alone, --from the rest of its week.

Rides that have started are facts. Where the dates planned have today among
them, and today is the computer's own, those are the rides up to now; --now says
another time, and where neither holds none has started.

When --limit is over, or at Ctrl-C, the plan found so far is audited and kept,
and it says how many more could ride at most. A plan in plans/ is pencilled: no
other plan takes notice of it.
`,
	example: "tackwright plan examples/sallowdene 2026-10-14",
	least:   1, most: 2, answer: planAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o planOptions
		fs.StringVar(&o.day, "day", "", "plan this `DATE` alone")
		fs.StringVar(&o.from, "from", "", "plan from this `DATE` to the end of its week")
		fs.DurationVar(&o.limit, "limit", time.Minute, "search no longer than this `TIME`, such as 90s or 5m; 60s if not said")
		fs.StringVar(&o.now, "now", "", "rides up to this `TIME`, such as 10:30 or 2026-11-25T10:30, have started")
		o.today = todayFlag(fs)
		fs.BoolVar(&o.allRide, "all-ride", false, "end with status 1 where a ride is on the ground")
		o.json = jsonFlag(fs)
		return func(c *call) error { return plan(c, &o) }
	},
}

type planOptions struct {
	day, from, now string
	today          *string
	limit          time.Duration
	allRide        bool
	json           *bool
}

func plan(c *call, o *planOptions) error {
	if o.limit <= 0 {
		return wrongUse("--limit: a search takes some time, such as 60s")
	}
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	from, until, err := o.dates(c, k, f.Centre.House.WeekStarts)
	if err != nil {
		return err
	}
	var now model.Instant
	if o.now != "" {
		if now, err = k.instant(o.now); err != nil {
			return err
		}
	} else if k.Real && from <= k.Today && k.Today <= until {
		now = k.Now
	}
	w := f.Centre.Week(from, int(until-from)+1, now)
	p, err := c.solve(w, o.limit)
	if err != nil {
		return err
	}
	path, old, err := f.WritePlan(w, p)
	if err != nil {
		return err
	}
	a := planOf(w, p)
	a.File, a.Kept = filepath.ToSlash(path), filepath.ToSlash(old)
	if *o.json {
		err = c.json(a)
	} else {
		err = c.print(a.text(w))
	}
	if err == nil && o.allRide && a.Seated < a.Open {
		return exit{No, ""}
	}
	return err
}

// dates are the first and the last date to plan.
func (o *planOptions) dates(c *call, k clock, weekStarts time.Weekday) (from, until model.Date, err error) {
	given := 0
	for _, s := range []string{o.day, o.from} {
		if s != "" {
			given++
		}
	}
	if given+len(c.args)-1 > 1 {
		return 0, 0, wrongUse("WHEN, --day and --from do not go together: say one of them")
	}
	word := "today"
	if len(c.args) > 1 {
		word = c.args[1]
	}
	d, err := k.date(cmp.Or(o.day, o.from, word))
	first := d.WeekStart(weekStarts)
	switch {
	case o.day != "":
		return d, d, err
	case o.from != "":
		return d, first + 6, err
	}
	return first, first + 6, err
}

// solve searches for a plan and tells how long it took. On a terminal it shows
// how far it is.
func (c *call) solve(w *model.Week, limit time.Duration) (*model.Plan, error) {
	ctx, cancel := context.WithTimeout(c.ctx, limit)
	defer cancel()
	begun := c.env.Now()
	var opts solver.Options
	end := func() {}
	if c.env.Terminal {
		line := showProgress(c.err, w, c.env.Now)
		opts.Progress, end = line.tell, line.end
	}
	p, err := solver.Plan(ctx, w, opts)
	end()
	if err != nil {
		return nil, err
	}
	c.tellEnd(ctx, limit, "this is the plan found so far")
	fmt.Fprintf(c.err, "planned in %.1f s\n", c.env.Now().Sub(begun).Seconds())
	return p, nil
}

// tellEnd says that a search was ended before it was done: stopped, or at its limit.
func (c *call) tellEnd(ctx context.Context, limit time.Duration, what string) {
	switch {
	case c.ctx.Err() != nil:
		fmt.Fprintln(c.err, "stopped; "+what)
	case ctx.Err() != nil:
		fmt.Fprintf(c.err, "the limit of %s is over; %s\n", limit, what)
	}
}
