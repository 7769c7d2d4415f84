package command

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/model/folder"
)

var pullCommand = &command{
	name: "pull", args: "FOLDER DATE",
	short: "print what to pull from the tack room for a day",
	about: `Prints, for the volunteers in the tack room, what each horse wears by when,
which tack goes from horse to horse between rides, and what goes back where.
DATE is 2026-11-25, today, tomorrow or a weekday (the next of that name, today
counted in).

The plan is the one that was posted for that date; where none was, the
pencilled one in plans/, or the one that --plan names. It is audited first: a
plan that breaks a rule is not printed, its broken rules are, and the status
is 1. What only facts break is a warning. Where notes for that date are later than
the posted plan, the sheet says up to which it goes by them; where a file cannot be
read, what was posted is printed all the same, and the sheet says so. It names
riders by first name, and never a weight.
`,
	example: "tackwright pull examples/sallowdene tomorrow",
	least:   2, most: 2, answer: sheet.PullList{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		asCSV := fs.Bool("csv", false, "print a row for each thing to carry, for a spreadsheet")
		asJSON := jsonFlag(fs)
		file := fs.String("plan", "", "pull for the plan in this `FILE`")
		today := todayFlag(fs)
		return func(c *call) error {
			if *asCSV && *asJSON {
				return wrongUse("--csv and --json do not go together")
			}
			l, err := pullList(c, *file, *today)
			switch {
			case err != nil:
				return err
			case *asJSON:
				return c.json(l)
			case *asCSV:
				return c.print(l.CSV())
			}
			return c.print(l.Text())
		}
	},
}

func pullList(c *call, file, today string) (*sheet.PullList, error) {
	f, err := folder.Open(c.args[0])
	if err != nil {
		return nil, err
	}
	k, err := c.clock(f.Centre, today)
	if err != nil {
		return nil, err
	}
	date, err := k.date(c.args[1])
	if err != nil {
		return nil, err
	}
	var p *kept
	if len(f.Mistakes()) > 0 {
		if file == "" {
			p, err = c.lastPosted(f, date, k)
		}
		if p != nil {
			c.goingOver(f)
		} else if err == nil {
			err = c.whole(f)
		}
	} else if file != "" {
		p, err = c.readPlan(f, file)
	} else if p, err = posted(f, date, k.begun()); p == nil && err == nil {
		p, err = c.planFor(f, date, "with --plan FILE")
	}
	if err != nil {
		return nil, err
	}
	found := p.week.Audit(p.plan) // the broken ones first
	broken := model.Broken(found)
	switch {
	case len(broken) > 0 && p.stamp.Version > 0:
		fmt.Fprint(c.err, violationsText(broken))
		return nil, no("version %d no longer keeps every rule, so it is not printed; mend the day: tackwright repair %s %s", p.stamp.Version, typed(f.Dir), date)
	case len(broken) > 0:
		fmt.Fprint(c.err, violationsText(broken))
		return nil, no("this plan breaks a rule, so it is not printed; mend it, or plan again")
	case len(found) > 0:
		fmt.Fprint(c.err, "Warning: what has been ridden or posted elsewhere breaks these, whatever the plan does.\n\n"+violationsText(found))
	}
	stamp := k.printed(p.stamp)
	if within, err := filepath.Rel(f.Dir, p.file); err == nil && p.file != "" {
		stamp.File = filepath.ToSlash(within)
	}
	return sheet.Pull(p.week, p.plan, date, stamp)
}
