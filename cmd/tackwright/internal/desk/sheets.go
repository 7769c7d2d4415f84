package desk

import (
	"bytes"
	"fmt"
	"net/http"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// sheetView is a page of its own for a sheet.
type sheetView struct {
	Name          string
	Date          model.Date
	Before, After model.Date
	Path          string // of the same for another date, before the date
	None          bool
	Sheet         *paper.Sheet
	Print         string
}

// mustOn is the plan of a date that keeps every rule: what breaks one is not
// printed.
func (r *reading) mustOn(d model.Date) (*standing, error) {
	s, err := r.on(d)
	switch {
	case err != nil:
		return nil, err
	case s == nil:
		return nil, no("there is no plan of %s yet", d.Words())
	case len(s.broken()) > 0 && s.posted():
		return nil, no("what is posted for %s no longer keeps every rule, so it is not printed; mend the day first", d.Words())
	case len(s.broken()) > 0:
		return nil, no("what is pencilled for %s breaks a rule, so it is not printed; plan again", d.Words())
	}
	return s, nil
}

// showTack is where each piece is when.
func showTack(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	d := v.date()
	x := &sheetView{Name: r.dayName(d), Date: d, Before: d - 1, After: d + 1, Path: "/tack/", Print: "tack"}
	s, err := r.on(d)
	if err != nil {
		return err
	}
	if s == nil {
		x.None = true
	} else if x.Sheet, err = once(r, "tack "+d.String(), func() (*paper.Sheet, error) {
		return sheet.TackDay(s.week, s.plan, d, s.stamp)
	}); err != nil {
		return err
	}
	return v.show("tack", "Tack room, "+x.Name, x)
}

// printed are the sheets that can be printed, and by whom.
var printed = map[string]struct {
	least model.Role
	make  func(*standing, model.Date) (*paper.Sheet, error)
}{
	"chart": {model.Barn, func(s *standing, d model.Date) (*paper.Sheet, error) {
		return sheet.LessonChart(s.week, s.plan, d, s.stamp)
	}},
	"wall": {model.Barn, func(s *standing, d model.Date) (*paper.Sheet, error) {
		return sheet.WallChart(s.week, s.plan, d, s.stamp)
	}},
	"tack": {model.Barn, func(s *standing, d model.Date) (*paper.Sheet, error) {
		return sheet.TackDay(s.week, s.plan, d, s.stamp)
	}},
	"cards": {model.Barn, func(s *standing, d model.Date) (*paper.Sheet, error) {
		return sheet.HorseCards(s.week, s.plan, d, s.stamp, nil)
	}},
	"pull": {model.Barn, func(s *standing, d model.Date) (*paper.Sheet, error) {
		l, err := sheet.Pull(s.week, s.plan, d, s.stamp)
		if err != nil {
			return nil, err
		}
		return l.Sheet(), nil
	}},
	"rack": {model.Barn, func(s *standing, d model.Date) (*paper.Sheet, error) {
		l, err := sheet.Pull(s.week, s.plan, d, s.stamp)
		if err != nil {
			return nil, err
		}
		return l.RackSheet(), nil
	}},
	"instructor": {model.Instructor, func(s *standing, d model.Date) (*paper.Sheet, error) {
		return sheet.InstructorSheet(s.week, s.plan, d, s.stamp, nil)
	}},
}

// printSheet gives a sheet as PDF.
func printSheet(v *visit) error {
	name, ok := strings.CutSuffix(v.r.PathValue("file"), ".pdf")
	kind, known := printed[name]
	if !ok || !known {
		return notThere("there is no such sheet")
	}
	if err := v.may(route{least: kind.least}); err != nil {
		return err
	}
	v.reading.Lock()
	defer v.reading.Unlock()
	s, err := v.reading.mustOn(v.date())
	if err != nil {
		return err
	}
	made, err := kind.make(s, v.date())
	if err != nil {
		return err
	}
	return v.pdf(made, name+"-"+v.date().String())
}

// pdf gives a sheet for the printer.
func (v *visit) pdf(s *paper.Sheet, name string) error {
	data, err := paper.PDF(s, v.Now())
	if err != nil {
		return err
	}
	v.w.Header().Set("Content-Type", "application/pdf")
	v.w.Header().Set("Content-Disposition", fmt.Sprintf("inline; filename=%q", name+".pdf"))
	http.ServeContent(v.w, v.r, "", v.Now(), bytes.NewReader(data))
	return nil
}
