package command

import (
	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
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
		to, size := toFlags(fs)
		file := fs.String("plan", "", "pull for the plan in this `FILE`")
		today := todayFlag(fs)
		return func(c *call) error {
			o := putOptions{to, size, asCSV, asJSON}
			if err := o.check(); err != nil {
				return err
			}
			l, err := pullList(c, *file, *today)
			switch {
			case err != nil:
				return err
			case *asJSON:
				return c.json(l)
			case *asCSV:
				return c.print(l.CSV())
			case *to != "":
				return c.put(l.Sheet(), o)
			}
			return c.print(l.Text())
		}
	},
}

func pullList(c *call, file, today string) (*sheet.PullList, error) {
	d, err := c.dayPlan(c.args[1], file, today)
	if err != nil {
		return nil, err
	}
	return sheet.Pull(d.week, d.plan, d.date, d.stamp)
}
