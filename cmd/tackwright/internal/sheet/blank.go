package sheet

import (
	"slices"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Rides of a lesson and pieces of a horse on a blank copy.
const (
	blankRides  = 3
	blankPieces = 5
)

// BlankChart is a lesson chart to fill in by hand, for the day when the printer
// fails.
func BlankChart(c *model.Centre, today model.Date, stamp Stamp) *paper.Sheet {
	rows := []paper.Row{{Write: []string{"lesson", "from", "to"}}, {Stays: true, Write: []string{"arena", "instructor", "helpers"}}}
	for range blankRides {
		rows = append(rows, paper.Row{Stays: true, Cells: []paper.Cell{
			{}, {}, {}, {}, {Lines: []string{"leader", "sidewalker", "sidewalker"}}, {}}})
	}
	return twoPages(blank(c, "Lesson chart, blank", today, stamp), wide(chartColumns(), 24, 26, 26, 24), rows)
}

// BlankPull is a pull list to fill in by hand.
func BlankPull(c *model.Centre, today model.Date, stamp Stamp) *paper.Sheet {
	columns := wide(pullColumns(), 45, 26, 22, 30)
	rows := []paper.Row{{Write: []string{"on by", "horse"}}, {Stays: true, Write: []string{"rides"}}}
	for range blankPieces {
		cells := append([]paper.Cell{{Box: true}}, slices.Repeat([]paper.Cell{{}}, len(columns)-1)...)
		rows = append(rows, paper.Row{Stays: true, Room: 9, Cells: cells})
	}
	rows = append(rows, paper.Row{Stays: true, Write: []string{"tacked up by", "untacked by"}})
	return twoPages(blank(c, "Pull list, blank", today, stamp), columns, rows)
}

// twoPages repeats the rows as often as two pages hold them, the two sides of a sheet.
func twoPages(s *paper.Sheet, columns []paper.Column, rows []paper.Row) *paper.Sheet {
	s.Parts = []paper.Part{{Table: paper.Table{Columns: columns, Rows: rows}}}
	table := &s.Parts[0].Table
	for n := len(rows); len(paper.Pages(s)) <= 2; n += len(rows) {
		table.Rows = append(table.Rows, rows...)
	}
	table.Rows = table.Rows[:len(table.Rows)-len(rows)]
	return s
}

// wide makes the first columns at least so many mm wide, to write in.
func wide(columns []paper.Column, mm ...float64) []paper.Column {
	for i, room := range mm {
		columns[i].Room = room
	}
	return columns
}

func blank(c *model.Centre, title string, today model.Date, stamp Stamp) *paper.Sheet {
	s := plainSheet(c, title, today, stamp)
	s.Facts = []paper.Fact{{Words: c.Name}, {Words: "day ______________________________"}, {Name: "written by", Words: "____________________   at ____________"}}
	s.Short = c.Name
	return s
}
