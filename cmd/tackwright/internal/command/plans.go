package command

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
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

// planNames are the names that plans are written under: a week by its first
// date, a day, a run of dates. Edited ones that were set aside are not among
// them.
var planNames = regexp.MustCompile(`^(\d{4}-\d\d-\d\d)(-day|-to-(\d{4}-\d\d-\d\d))?\.toml$`)

// pencilled finds the plans in plans/ that cover a date, by their names.
func pencilled(f *folder.Folder, date model.Date) ([]string, error) {
	entries, err := os.ReadDir(filepath.Join(f.Dir, "plans"))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("plans/ cannot be read: %w", err)
	}
	var found []string
	for _, e := range entries {
		m := planNames.FindStringSubmatch(e.Name())
		if m == nil {
			continue
		}
		from, err := model.ParseDate(m[1])
		until := from + 6
		if m[2] == "-day" {
			until = from
		}
		if m[3] != "" && err == nil {
			until, err = model.ParseDate(m[3])
		}
		if err == nil && from <= date && date <= until {
			found = append(found, filepath.Join(f.Dir, "plans", e.Name()))
		}
	}
	return found, nil
}

// planFor reads the one plan in plans/ that covers a date.
func (c *call) planFor(f *folder.Folder, date model.Date, flag string) (*kept, error) {
	found, err := pencilled(f, date)
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
		c.complain(wrong)
		return nil, no("%s in the plan: mend it, or plan again", count(len(wrong), "mistake"))
	}
	return &kept{week: w, plan: p, file: file}, nil
}

// posted is the last posted plan of a date as a plan of that date alone; nil is
// that none was posted.
func posted(c *model.Centre, date model.Date) (*kept, error) {
	i := len(c.Posted) - 1
	for i >= 0 && (date < c.Posted[i].From || c.Posted[i].Until < date) {
		i--
	}
	if i < 0 {
		return nil, nil
	}
	p, w := c.Posted[i], c.Week(date, 1, model.Instant{})
	plan := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for _, t := range p.Told {
		if t.Date != date || t.Turn == nil {
			continue
		}
		at := slices.IndexFunc(w.Rides, func(r *model.Ride) bool {
			return r.Meeting.Lesson == t.Lesson && r.Rider == t.Rider && r.Start == t.Start && r.End == t.End
		})
		switch {
		case at < 0:
			return nil, no("version %d, posted for %s, has a ride at %s in %s that the folder no longer has; plan again, and post that",
				p.Version, date.Words(), t.Start, t.LessonName)
		case w.Rides[at].State == model.Open:
			plan.Turns[at] = t.Turn
		}
	}
	k := &kept{week: w, plan: plan, stamp: sheet.Stamp{Version: p.Version, At: p.At}}
	if p.By != nil {
		k.stamp.By = p.By.Name
	}
	return k, nil
}
