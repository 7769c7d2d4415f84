package command

import (
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
	"tackwright/solver"
)

var whyCommand = &command{
	name: "why", args: "FOLDER RIDER",
	short: "say why a ride is on the ground",
	about: `Says why a ride is on the ground in the plan that was posted for its date, else
in the pencilled one. It asks three things, and stops at the first that tells:

  could it ride alone, with every other open ride on the ground?
  could it ride with all that ride now? Where not, it names rules, facts and
    rides that forbid it, none of which could be left out
  could as many ride with it among them? Then it was a choice: the fewest that
    it would displace are named, and the goal that decided, or that it is a tie

It says too how often she has been on the ground in the term (tackwright grounded).
Where the plan was not proved to seat the most and a better one is found, that is
told, and tackwright take takes it.

RIDER is the rider's name, or its beginning. Where more than one of her rides is
on the ground, say the date, and the time where she has two on it.
`,
	example: "tackwright why examples/sallowdene Clemency --date 2026-10-17",
	least:   2, most: 2, answer: whyAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o rideOptions
		o.flags(fs)
		return func(c *call) error { return why(c, &o) }
	},
}

// rideOptions say which ride is meant, in which plan.
type rideOptions struct {
	date, time, plan string
	limit            time.Duration
	today            *string
	json             *bool
}

func (o *rideOptions) flags(fs *pflag.FlagSet) {
	fs.StringVar(&o.date, "date", "", "the ride on this `DATE`: 2026-11-25, today, tomorrow or a weekday")
	fs.StringVar(&o.time, "time", "", "the ride that starts at this `TIME`, such as 10:30")
	fs.StringVar(&o.plan, "plan", "", "in the plan in this `FILE`")
	fs.DurationVar(&o.limit, "limit", 10*time.Second, "search no longer than this `TIME`; 10s if not said")
	o.json = jsonFlag(fs)
	o.today = todayFlag(fs)
}

// asked is a ride that is asked about, in its plan.
type asked struct {
	*kept
	ride   *model.Ride
	folder *folder.Folder
	clock  clock
}

// daysAhead is how many dates are looked at where none is named.
const daysAhead = 14

// ask finds the ride that is meant, among those that a question can be about.
func (o *rideOptions) ask(c *call, about string, can func(*model.Ride, *model.Plan) bool) (*asked, error) {
	if o.limit <= 0 {
		return nil, wrongUse("--limit: a search takes some time, such as 10s")
	}
	f, err := c.open(c.args[0])
	if err != nil {
		return nil, err
	}
	rider, err := riderNamed(f.Centre, c.args[1])
	if err != nil {
		return nil, err
	}
	at := model.Minute(-1)
	if o.time != "" {
		if at, err = timeOfDay(o.time); err != nil {
			return nil, err
		}
	}
	k, err := c.clock(f.Centre, *o.today)
	if err != nil {
		return nil, err
	}
	var found, others []*asked
	err = o.plans(c, f, func(p *kept, d model.Date) {
		for _, r := range p.week.Rides {
			switch {
			case r.Rider.Name != rider.Name || r.Date() != d || at >= 0 && r.Start != at:
			case can(r, p.plan):
				found = append(found, &asked{p, r, f, k})
			default:
				others = append(others, &asked{p, r, f, k})
			}
		}
	})
	switch {
	case err != nil:
		return nil, err
	case len(found) > 1:
		return nil, no("%s has %s %s: %s; say which with --date and --time", rider.Called(), model.Count(len(found), "ride"), about, ridesOf(found))
	case len(found) == 0 && len(others) > 0:
		return nil, no("%s has no ride %s: %s", rider.Called(), about, ridesOf(others))
	case len(found) == 0:
		return nil, no("%s has no ride then in a plan", rider.Called())
	}
	if broken := model.Broken(found[0].week.Audit(found[0].plan)); len(broken) > 0 {
		return nil, no("the plan is not as the folder is now: %s; plan again or repair, then ask", broken[0].Words)
	}
	return found[0], nil
}

// plans gives each date that is asked about with its plan: the posted one, else
// the pencilled one. A date that has none is an error only where it is named.
func (o *rideOptions) plans(c *call, f *folder.Folder, give func(*kept, model.Date)) error {
	k, err := c.clock(f.Centre, *o.today)
	if err != nil {
		return err
	}
	first, last := k.Today, k.Today+daysAhead-1
	if o.date != "" {
		if first, err = k.date(o.date); err != nil {
			return err
		}
		last = first
	}
	read := map[string]*kept{}
	readOnce := func(file string) (*kept, error) {
		if read[file] == nil {
			p, err := c.readPlan(f, file)
			if err != nil {
				return nil, err
			}
			read[file] = p
		}
		return read[file], nil
	}
	if o.plan != "" {
		p, err := readOnce(o.plan)
		if err != nil {
			return err
		}
		for _, d := range p.week.Dates() {
			if o.date == "" || d == first {
				give(p, d)
			}
		}
		return nil
	}
	for d := first; d <= last; d++ {
		p, err := posted(f, d, k.Begun())
		if err == nil && p == nil {
			var files []string
			files, err = folder.PlansOn(f.Dir, d)
			switch {
			case err != nil:
			case len(files) == 1:
				p, err = readOnce(files[0])
			case len(files) > 1 || o.date != "":
				_, err = c.planFor(f, d, "with --plan FILE") // says what is wrong
			}
		}
		if err != nil {
			return err
		}
		if p != nil {
			give(p, d)
		}
	}
	return nil
}

func ridesOf(all []*asked) string {
	var names []string
	for _, x := range all {
		on := "on the ground"
		if t := x.plan.Turns[x.ride.Index]; t != nil {
			on = "on " + t.Horse.Name
		} else if x.ride.State == model.Off {
			on = "not counted: " + offWhy(x.week, x.ride)
		}
		names = append(names, fmt.Sprintf("%s (%s), %s", x.ride, x.ride.Meeting.Name, on))
	}
	return strings.Join(names, "; ")
}

func why(c *call, o *rideOptions) error {
	q, err := o.ask(c, "on the ground", func(r *model.Ride, p *model.Plan) bool { return r.State != model.Off && p.Turns[r.Index] == nil })
	if err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(c.ctx, o.limit)
	defer cancel()
	found, err := solver.WhyGround(ctx, q.week, q.plan, q.ride)
	if err != nil {
		return err
	}
	a := whyOf(q, found)
	if before := q.before(); before != "" {
		a.Said = append(a.Said, before)
	}
	a.Next = o.ways(c, q)
	if found.Better != nil {
		a.Next = o.line(c, q, "take").typed(byName...)
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(q))
}
