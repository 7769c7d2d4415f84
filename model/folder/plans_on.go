package folder

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"

	"tackwright/model"
)

// planNames are the names that planName gives. Edited plans that were set aside
// are not among them.
var planNames = regexp.MustCompile(`^(\d{4}-\d\d-\d\d)(-day|-to-(\d{4}-\d\d-\d\d))?\.toml$`)

// PlansOn are the plans in plans/ of a centre's folder that cover a date, as
// [Folder.WritePlan] named them, in the order of those names.
func PlansOn(dir string, date model.Date) ([]string, error) {
	entries, err := os.ReadDir(filepath.Join(dir, "plans"))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("plans/ cannot be read: %w", err)
	}
	var found []string
	for _, e := range entries {
		if from, until, ok := planDates(e.Name()); ok && from <= date && date <= until {
			found = append(found, filepath.Join(dir, "plans", e.Name()))
		}
	}
	return found, nil
}

// planDates are the first and the last date of a plan, by its name.
func planDates(name string) (from, until model.Date, ok bool) {
	m := planNames.FindStringSubmatch(name)
	if m == nil {
		return 0, 0, false
	}
	from, err := model.ParseDate(m[1])
	switch {
	case err != nil:
		return 0, 0, false
	case m[2] == "":
		return from, from + 6, true
	case m[3] == "":
		return from, from, true
	}
	until, err = model.ParseDate(m[3])
	return from, until, err == nil
}

// PlanFile is where [Folder.WritePlan] pencils the plan of dates.
func PlanFile(dir string, from, until model.Date) string {
	return filepath.Join(dir, "plans", planName(&model.Week{From: from, Until: until})+".toml")
}

// IsEdited reports whether a plan was edited by hand since it was pencilled.
func IsEdited(file string) (bool, error) {
	data, err := os.ReadFile(file)
	return err == nil && !isAsWritten(data), err
}
