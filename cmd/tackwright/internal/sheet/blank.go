package sheet

import (
	"slices"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Sizes of a blank copy: what fits on a page or two.
const (
	blankLessons = 3
	blankRides   = 3
	blankHorses  = 5
	blankPieces  = 5
)

// BlankChart is a lesson chart to fill in by hand, for the day when the printer
// fails.
func BlankChart(c *model.Centre, today model.Date, stamp Stamp) *paper.Sheet {
	s := blank(c, "Lesson chart, blank", today, stamp)
	table := paper.Table{Columns: wide(chartColumns(), 24, 26, 26, 24)}
	for range blankLessons {
		table.Rows = append(table.Rows, paper.Row{Write: []string{"lesson", "from", "to"}},
			paper.Row{Stays: true, Write: []string{"arena", "instructor", "helpers"}})
		for range blankRides {
			table.Rows = append(table.Rows, paper.Row{Stays: true, Cells: []paper.Cell{
				{}, {}, {}, {}, {Lines: []string{"leader", "sidewalker", "sidewalker"}}, {}}})
		}
	}
	s.Parts = []paper.Part{{Table: table}}
	return s
}

// BlankPull is a pull list to fill in by hand.
func BlankPull(c *model.Centre, today model.Date, stamp Stamp) *paper.Sheet {
	s := blank(c, "Pull list, blank", today, stamp)
	table := paper.Table{Columns: wide(pullColumns(), 45, 26, 22, 30)}
	for range blankHorses {
		table.Rows = append(table.Rows, paper.Row{Write: []string{"on by", "horse"}}, paper.Row{Stays: true, Write: []string{"rides"}})
		for range blankPieces {
			cells := append([]paper.Cell{{Box: true}}, slices.Repeat([]paper.Cell{{}}, len(table.Columns)-1)...)
			table.Rows = append(table.Rows, paper.Row{Stays: true, Room: 9, Cells: cells})
		}
		table.Rows = append(table.Rows, paper.Row{Stays: true, Write: []string{"tacked up by", "untacked by"}})
	}
	s.Parts = []paper.Part{{Table: table}}
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
