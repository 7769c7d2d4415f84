package sheet

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// InstructorSheet is what each instructor has in hand: riders, horses, tack,
// cautions on file, and a box for each check of a girth. It is the only sheet
// that holds cautions. of is the instructor who is meant; nil: all who teach, and
// lessons that have none.
func InstructorSheet(w *model.Week, p *model.Plan, date model.Date, stamp Stamp, of *model.Person) (*paper.Sheet, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	s := d.newSheet("Instructor's sheet", stamp)
	var meetings []*model.Meeting
	for _, m := range d.meetings() {
		if m.NotHeld == "" && (of == nil || m.Instructor == of) {
			meetings = append(meetings, m)
		}
	}
	mounts := d.mounts()
	for _, who := range append(slices.Clone(w.Centre.Persons), nil) {
		part := paper.Part{Title: "No instructor", NewPage: true, Says: []string{forWhom}, Table: paper.Table{Columns: []paper.Column{
			{Head: "rider", Bold: true}, {Head: "horse", Bold: true}, {Head: "tack, mounting, helpers"}, {Head: "cautions on file", Spread: true, Room: 40},
			{Head: "girth before\nmounting"}, {Head: "girth after\nwalk"}}}}
		if who != nil {
			part.Title = who.Name
		}
		for _, m := range meetings {
			if m.Instructor == who {
				part.Table.Rows = append(part.Table.Rows, d.instructorRows(m, mounts)...)
			}
		}
		if len(part.Table.Rows) > 0 {
			s.Parts = append(s.Parts, part)
		}
	}
	if len(s.Parts) == 0 {
		s.Parts = []paper.Part{{Says: []string{"No lesson to teach on this date."}}}
	}
	return s, nil
}

// forWhom stands on each instructor's own page.
const forWhom = "For the instructor alone: it holds cautions on file. Not for the wall; hand it back to the office after the day."

func (d *day) instructorRows(m *model.Meeting, mounts map[*model.Stint]mount) []paper.Row {
	rows := []paper.Row{{Over: d.lessonWords(m), Says: d.helperWords(m)}}
	for _, s := range d.asTheyMount(m, mounts) {
		rows = append(rows, paper.Row{Stays: true, Cells: []paper.Cell{{Text: d.riderInColumn(s)}, {Text: s.Turn.Horse.Name},
			{Text: join("\n", tackWords(s.Turn), mounts[s].onOneLine(d), strings.ReplaceAll(hands(d.ride(s)), ", ", "\n"))},
			{Text: cautionsOf(s.Rider)}, {Box: true}, {Box: true}}})
	}
	for i, r := range d.week.Rides {
		if r.Meeting == m && d.isOnGround(i) {
			rows = append(rows, paper.Row{Stays: true, Cells: paper.Texts(r.Rider.Called(), "on the ground", "", cautionsOf(r.Rider), "", "")})
		}
	}
	return rows
}

func (m mount) onOneLine(d *day) string {
	if m.place == "" {
		return ""
	}
	return fmt.Sprintf("%s %s", m.place, d.clock(m.at))
}

func cautionsOf(r *model.Rider) string {
	if r == nil || len(r.Cautions) == 0 {
		return "none on file"
	}
	return strings.Join(r.Cautions, "\n") + "\ninstructor decides"
}
