package desk

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// weekView is a calendar week: its lessons by day, with what is seated.
type weekView struct {
	From, Until   model.Date
	Before, After model.Date
	Days          []weekDay
	State         string // what people go by, in words
	Pencilled     bool   // a plan of the whole week is, whatever is posted
	Summary       string // of the pencilled one
	Proof         string // what is known of that
	Stands        bool   // it is what is posted
	Over          bool   // the week is, so that nothing of it is planned
	Office        bool   // who looks may plan
}

type weekDay struct {
	Date     model.Date
	Name     string
	Today    bool
	Plan     string // "version 3", "pencilled", "no plan yet"
	Broken   int
	Wrong    string // why its plan cannot be shown
	Lessons  []lessonView
	None     bool // there is no plan
	Rides    int  // that are to have a horse
	Seated   int
	OnGround int
}

func showWeek(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	first := v.date().WeekStart(r.Centre.House.WeekStarts)
	x := &weekView{From: first, Until: first + 6, Before: first - 7, After: first + 7, Over: first+6 < r.Today, Office: v.role == model.Office}
	for d := first; d <= first+6; d++ {
		day := r.weekDay(d)
		x.Days = append(x.Days, day)
	}
	if p, err := r.pencilledOn(first); err == nil && p != nil && p.week.From == first && p.week.Until == first+6 {
		x.Pencilled, x.Summary, x.Proof = true, summary(p.week, p.plan), p.proof()
		x.Stands = r.Stands(p.week, p.plan)
	}
	return v.show("week", "Week of "+first.Words()+r.year(first), x)
}

// weekDay is one date of a week.
func (r *reading) weekDay(d model.Date) weekDay {
	day := weekDay{Date: d, Name: d.Words(), Today: d == r.Today, Plan: "no plan yet"}
	s, err := r.on(d)
	switch {
	case err != nil:
		day.Wrong = model.Sentence(err.Error())
		s = nil
	case s == nil:
	case s.posted():
		day.Plan = fmt.Sprintf("version %d", s.stamp.Version)
	default:
		day.Plan = "pencilled"
	}
	if s == nil {
		s, day.None = r.bare(d), true
	} else {
		day.Broken = len(s.broken())
	}
	day.Lessons = lessonsOf(s, d)
	for _, x := range s.week.Rides {
		switch {
		case x.Date() != d || x.State == model.Off:
			continue
		case s.turn(x) != nil:
			day.Seated++
		default:
			day.OnGround++
		}
		day.Rides++
	}
	if len(day.Lessons) == 0 || day.None && day.Rides == 0 {
		day.Plan = ""
	}
	return day
}

// bare is a date for which there is no plan.
func (r *reading) bare(d model.Date) *standing {
	s, _ := once(r, "bare "+d.String(), func() (*standing, error) {
		w := r.Centre.Week(d, 1, r.Begun())
		return &standing{none: true, week: w, plan: &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}}, nil
	})
	return s
}

// summary is what a coordinator asks of a plan first.
func summary(w *model.Week, p *model.Plan) string {
	open, seated := 0, 0
	for i, r := range w.Rides {
		if r.State == model.Open {
			open++
			if p.Turns[i] != nil {
				seated++
			}
		}
	}
	words := fmt.Sprintf("%d of %s with a horse", seated, model.Count(open, "ride"))
	if on, have := w.OnUsual(p); have > 0 {
		words += fmt.Sprintf("; %d of %d on their usual horse", on, have)
	}
	words += "; " + model.Count(len(w.Moves(p)), "changeover")
	if h, percent := w.Busiest(p); h != nil {
		words += fmt.Sprintf("; busiest: %s at %d %% of its week", h.Name, percent)
	}
	return words
}

// showCheck lists what is wrong in the folder, and what to measure or renew.
func showCheck(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	type trouble struct{ Where, Words, Mend, Path string }
	var x struct{ Mistakes, Findings []trouble }
	for _, t := range r.Mistakes() {
		x.Mistakes = append(x.Mistakes, trouble{Where: t.Span.String(), Words: model.Sentence(t.Message), Mend: t.Mend})
	}
	found, err := once(r, "findings", func() ([]trouble, error) {
		var all []trouble
		for _, t := range r.Findings(r.Today) {
			x := trouble{Words: model.Sentence(t.Message), Mend: t.Mend}
			if t.Span.File != "" {
				x.Where = t.Span.String()
			}
			if open, ok := t.Noun.(*model.OpenDate); ok { // here it is a page
				x.Mend, x.Path = "confirm what was ridden", "/day/"+open.Date.String()+"/close"
			}
			all = append(all, x)
		}
		return all, nil
	})
	x.Findings = slices.Clone(found)
	if err != nil {
		return err
	}
	return v.show("check", "What to mend", x)
}
