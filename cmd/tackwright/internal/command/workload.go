package command

import (
	"slices"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
)

var workloadCommand = &command{
	name: "workload", args: "FOLDER",
	short: "print each horse's daily record of work, against its limits",
	about: `Prints the written record of each horse's daily work (in England a duty: SI
2018/486, Schedule 5, paragraph 6(3)), planned and ridden, against its limits of
a day, a run with no rest, a week and dates in a row. What is over is marked, and
said in words as audit says it: the sums are the same.

Planned is as last posted, with the works of the folder. Ridden is as posted and
noted and, where the date was closed, as recorded then. A date that is not closed
counts as posted and is marked not confirmed, one that is to come as such. Pencilled
plans do not count. The record names no rider.

Without dates it is of the calendar week that today is in.
`,
	example: "tackwright workload examples/sallowdene --from 2026-10-05 --until 2026-10-10",
	least:   1, most: 1, answer: sheet.WorkRecord{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o workloadOptions
		fs.StringVar(&o.from, "from", "", "first `DATE`")
		fs.StringVar(&o.until, "until", "", "last `DATE`, which counts; the first where only that is said")
		fs.StringVar(&o.horse, "horse", "", "of the horse of this `NAME` alone")
		o.to, o.paper = toFlags(fs)
		o.csv = fs.Bool("csv", false, "print a row for each date of a horse, for a spreadsheet")
		o.json = jsonFlag(fs)
		o.today = todayFlag(fs)
		return func(c *call) error { return workload(c, &o) }
	},
}

type workloadOptions struct {
	from, until, horse string
	today              *string
	putOptions
}

func workload(c *call, o *workloadOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	switch {
	case o.until != "" && o.from == "":
		return wrongUse("--until: say the first date too: --from DATE")
	}
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	from, until, err := o.dates(k, f.Centre)
	if err != nil {
		return err
	}
	now := model.Instant{Date: k.Today}
	if k.Real {
		now = k.Now
	}
	records := f.Centre.Workloads(from, until, now)
	if o.horse != "" {
		h, err := horseNamed(f.Centre, o.horse)
		if err != nil {
			return err
		}
		records = slices.DeleteFunc(records, func(r *model.Workload) bool { return r.Horse != h })
	}
	w := sheet.Work(f.Centre, records, from, until, k.printed(sheet.Stamp{}))
	switch {
	case *o.json:
		return c.json(w)
	case *o.csv:
		return c.print(w.CSV())
	case *o.to != "":
		return c.put(w.Sheet(), o.putOptions)
	}
	return c.print(w.Text())
}

// dates are the first and the last date of the record.
func (o *workloadOptions) dates(k clock, c *model.Centre) (from, until model.Date, err error) {
	if o.from == "" {
		from = k.Today.WeekStart(c.House.WeekStarts)
		return from, from + 6, nil
	}
	if from, err = k.date(o.from); err != nil || o.until == "" {
		return from, from, err
	}
	if until, err = k.date(o.until); err == nil && until < from {
		err = wrongUse("--until: %s is before %s", until, from)
	}
	return from, until, err
}
