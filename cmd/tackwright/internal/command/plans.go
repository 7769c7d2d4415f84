package command

import (
	"fmt"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/model/folder"
)

// kept is a plan that was kept, with the week it is for.
type kept struct {
	week  *model.Week
	plan  *model.Plan
	stamp sheet.Stamp
	file  string // "" for a posted plan
}

// planFor reads the one plan in plans/ that covers a date.
func (c *call) planFor(f *folder.Folder, date model.Date, flag string) (*kept, error) {
	found, err := folder.PlansOn(f.Dir, date)
	switch {
	case err != nil:
		return nil, err
	case len(found) == 0:
		return nil, fmt.Errorf("there is no plan of %s yet; make it with: tackwright plan %s %s", date.Words(), typed(f.Dir), date)
	case len(found) > 1:
		return nil, wrongUse("there is more than one plan of %s: %s; name the one that is meant %s, or delete the others",
			date.Words(), strings.Join(found, ", "), flag)
	}
	return c.readPlan(f, found[0])
}

// readPlan reads a plan from a file. What is wrong in it is told, all at once.
func (c *call) readPlan(f *folder.Folder, file string) (*kept, error) {
	w, p, wrong, err := f.ReadPlan(file)
	if err != nil {
		return nil, err
	}
	if len(wrong) > 0 {
		if err := c.complain(wrong); err != nil {
			return nil, err
		}
		return nil, no("%s in the plan: mend it, or plan again", model.Count(len(wrong), "mistake"))
	}
	return &kept{week: w, plan: p, file: file}, nil
}

// posted is the last posted plan of a date as a plan of that date alone, with what
// has started by now as facts; nil is that none was posted.
func posted(f *folder.Folder, date model.Date, now model.Instant) (*kept, error) {
	p, w, plan, gone := f.Centre.PostedAt(date, now)
	switch {
	case p == nil:
		return nil, nil
	case len(gone) > 0:
		return nil, no("version %d, posted for %s, has a ride at %s in %s that the folder no longer has; mend the day: tackwright repair %s %s",
			p.Version, date.Words(), gone[0].Start.Clock(f.Centre.House.TwelveHour), gone[0].LessonName, typed(f.Dir), date)
	}
	k := &kept{week: w, plan: plan, stamp: sheet.Stamp{Version: p.Version, At: p.At, Notes: f.Centre.NotesSince(p, date)}}
	if p.By != nil {
		k.stamp.By = p.By.Name
	}
	return k, nil
}
