package sheet

import (
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// LessonChart is the sheet for the wall: for each lesson who rides which horse in
// what, where each mounts and when, and lines to write helpers' names on.
func LessonChart(w *model.Week, p *model.Plan, date model.Date, stamp Stamp) (*paper.Sheet, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	s := d.newSheet("Lesson chart", stamp)
	mounts := d.mounts()
	for _, c := range crews(d.house, d.meetings(), func(m *model.Meeting) model.Minute { return m.Start }) {
		part := paper.Part{Title: c.title, Table: paper.Table{Columns: chartColumns()}}
		for _, m := range c.of {
			part.Table.Rows = append(part.Table.Rows, d.chartRows(m, mounts)...)
		}
		if len(c.of) > 0 {
			s.Parts = append(s.Parts, part)
		}
	}
	if len(s.Parts) == 0 {
		s.Parts = []paper.Part{{Says: []string{"No lesson falls on this date."}}}
	}
	if slices.ContainsFunc(d.stints, func(s *model.Stint) bool { return mounts[s].assumed && mounts[s].place != "" }) {
		s.Facts = append(s.Facts, paper.Fact{Name: "mounting", Words: "\"about\" is our guess where nobody recorded how long it takes; the instructor settles the order"})
	}
	return s, nil
}

// chartColumns are those of the chart, filled or blank.
func chartColumns() []paper.Column {
	return []paper.Column{{Head: "mounts"}, {Head: "rider", Bold: true}, {Head: "horse", Bold: true}, {Head: "tack"},
		{Head: "helpers", Spread: true}, {Head: "pencil", Room: 14}}
}

func (d *day) chartRows(m *model.Meeting, mounts map[*model.Stint]mount) []paper.Row {
	if m.NotHeld != "" {
		return []paper.Row{{Over: d.lessonWords(m), Says: []string{"NOT HELD"}}}
	}
	rows := []paper.Row{{Over: d.lessonWords(m), Says: d.helperWords(m)}}
	for _, s := range d.asTheyMount(m, mounts) {
		rows = append(rows, paper.Row{Stays: true, Cells: []paper.Cell{
			{Text: mounts[s].words(d)}, {Text: d.riderInColumn(s)}, {Text: s.Turn.Horse.Name}, {Text: tackInColumn(s.Turn)},
			helperCell(s.Hands()), {}}})
	}
	if on := d.groundedIn(m); len(on) > 0 {
		rows[0].Says = append(rows[0].Says, "on the ground: "+strings.Join(on, ", "))
	}
	return rows
}

// helperCell has a line for each name.
func helperCell(need model.Hands) paper.Cell {
	lines := slices.Concat(slices.Repeat([]string{"leader"}, need.Leaders), slices.Repeat([]string{"sidewalker"}, need.Sidewalkers))
	if len(lines) == 0 {
		return paper.Cell{Text: "none"}
	}
	return paper.Cell{Lines: lines}
}
