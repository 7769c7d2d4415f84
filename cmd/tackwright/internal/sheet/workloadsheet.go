package sheet

import (
	"strconv"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Sheet is the record for paper, a part a horse.
func (w *WorkRecord) Sheet() *paper.Sheet {
	t := &workText{WorkRecord: w}
	s := &paper.Sheet{Title: "Work of horses", Facts: []paper.Fact{{Words: t.dates()}, {Words: w.Centre}},
		Short: w.Centre + ", " + t.dates(), Printed: w.printed, PrintedAt: w.Printed, Date: w.From, Deferral: w.Deferral, Paper: w.house.Paper, Landscape: true}
	for _, words := range t.explained() {
		s.Facts = append(s.Facts, paper.Fact{Name: "note", Words: words})
	}
	var idle []string
	for i := range w.Horses {
		if h := &w.Horses[i]; len(h.Dates) > 0 {
			s.Parts = append(s.Parts, t.part(h))
		} else {
			idle = append(idle, h.Horse)
		}
	}
	if len(idle) > 0 {
		s.Parts = append(s.Parts, paper.Part{Says: []string{"No work planned or done on these dates: " + strings.Join(idle, ", ")}})
	}
	s.Parts = append(s.Parts, paper.Part{Table: paper.Table{Columns: []paper.Column{{}}, Rows: []paper.Row{{Write: []string{"seen by", "on"}}}}})
	return s
}

func (t *workText) part(h *HorseWork) paper.Part {
	part := paper.Part{Title: h.Horse, Says: []string{"limits: " + h.limits()}, Table: paper.Table{Columns: []paper.Column{{Head: "date"}, {Head: "planned"}, {Head: "ridden"},
		{Head: "sessions"}, {Head: "run"}, {Head: "in a row"}, {Head: "what", Spread: true, Room: 80}, {Head: "closed"}}}}
	for _, words := range h.Over {
		part.Says = append(part.Says, "! "+words)
	}
	for i := range h.Dates {
		d, of := &h.Dates[i], h.work.Dates[i]
		cells := t.dateCells(h, d, of)
		what := t.spans(d.Rode)
		if plan := t.spans(d.Plan); plan != what {
			what = "planned: " + plan + "\nridden: " + what
		}
		part.Table.Rows = append(part.Table.Rows, paper.Row{Cells: paper.Texts(cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], what, cells[6])})
		week := of.Date.WeekStart(t.house.WeekStarts)
		if i+1 < len(h.Dates) && h.work.Dates[i+1].Date < week+7 {
			continue
		}
		for _, k := range h.work.Weeks {
			if k.From == week {
				part.Table.Rows = append(part.Table.Rows, paper.Row{Stays: true, Over: "week from " + k.From.Words() + ": " + h.weekWords(k)})
			}
		}
	}
	return part
}

// dateCells are the figures of a date: date, planned, ridden, sessions, longest run,
// dates in a row, and whether it is closed.
func (t *workText) dateCells(h *HorseWork, d *DateWork, of model.WorkDate) []string {
	confirmed := "NOT CONFIRMED"
	switch {
	case d.Confirmed:
		confirmed = "closed"
	case d.ToCome:
		confirmed = "to come"
	}
	l := h.Limits
	minutes, sessions := d.longest()
	return []string{of.Date.Words(), model.InHours(of.PlannedWork), model.InHours(of.Work) + mark(h.work.OverDay(of)),
		strconv.Itoa(d.Sessions) + mark(exceeds(d.Sessions, l.DaySessions)),
		hours(minutes) + mark(exceeds(minutes, l.RunMinutes) || exceeds(sessions, l.RunSessions)),
		strconv.Itoa(d.Row) + mark(exceeds(d.Row, l.Row)), confirmed}
}
