package command

import (
	"fmt"
	"path/filepath"

	"tackwright/model"
	"tackwright/model/folder"
)

// dayPlan is the plan that sheets of one date are made from.
type dayPlan struct {
	*kept
	folder *folder.Folder
	date   model.Date
}

// dayPlan reads the plan of the date that was typed: what was posted for it, else
// what is pencilled, or the file that is named. A plan that breaks a rule is no
// plan to print: its broken rules are told, and are the error.
func (c *call) dayPlan(when, file, today string) (*dayPlan, error) {
	f, err := folder.Open(c.args[0])
	if err != nil {
		return nil, err
	}
	k, err := c.clock(f.Centre, today)
	if err != nil {
		return nil, err
	}
	date, err := k.date(when)
	if err != nil {
		return nil, err
	}
	p, err := c.planOn(f, k, date, file)
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
	p.stamp = k.printed(p.stamp)
	if within, err := filepath.Rel(f.Dir, p.file); err == nil && p.file != "" {
		p.stamp.File = filepath.ToSlash(within)
	}
	return &dayPlan{p, f, date}, nil
}

// planOn finds the plan of a date. Over a mistake in the folder what was posted
// is read all the same.
func (c *call) planOn(f *folder.Folder, k clock, date model.Date, file string) (*kept, error) {
	switch {
	case len(f.Mistakes()) > 0 && file != "":
		return nil, c.whole(f)
	case len(f.Mistakes()) > 0:
		p, err := c.lastPosted(f, date, k)
		if p == nil && err == nil {
			err = c.whole(f)
		}
		if err != nil {
			return nil, err
		}
		c.goingOver(f)
		return p, nil
	case file != "":
		return c.readPlan(f, file)
	}
	p, err := posted(f, date, k.Begun())
	if p == nil && err == nil {
		p, err = c.planFor(f, date, "with --plan FILE")
	}
	return p, err
}
