package sheet

import (
	"tackwright/cmd/tackwright/internal/sheet/paper"
)

// MovedSheet is the sheets of a repair for paper, a part a date: what to fetch,
// leave and return by time, with a box each, and who is to be told. There is one
// of them at least.
func MovedSheet(days []*Moved) *paper.Sheet {
	s := days[0].Header.sheet("What moved")
	for i, m := range days {
		part := paper.Part{NewPage: i > 0, Table: paper.Table{Columns: []paper.Column{
			{Head: "do"}, {Head: "tag", Bold: true}, {Head: "what"}, {Head: "where, when", Spread: true}, {Head: "pencil", Room: 14}}}}
		told := paper.Part{Title: "To be told", Table: paper.Table{Columns: []paper.Column{{Head: "who", Bold: true}, {Head: "what", Spread: true}}}}
		if len(days) > 1 {
			part.Title = m.Day
			told.Title += ", " + m.Day
		}
		for _, x := range m.Moves {
			part.Table.Rows = append(part.Table.Rows, m.moveRows(x)...)
		}
		for _, n := range m.People {
			for k, words := range n.Words {
				row := paper.Row{Stays: k > 0, Cells: []paper.Cell{{}, {Text: words}}}
				if k == 0 {
					row.Cells[0] = paper.Cell{Text: n.To, Box: true}
				}
				told.Table.Rows = append(told.Table.Rows, row)
			}
		}
		if len(m.Moves) == 0 {
			part.Says = []string{"Nothing moved."}
		}
		s.Parts = append(s.Parts, part)
		if len(told.Table.Rows) > 0 {
			s.Parts = append(s.Parts, told)
		}
	}
	return s
}

func (m *Moved) moveRows(x Move) []paper.Row {
	rows := []paper.Row{{Over: m.clock(x.Start) + "  " + m.words(x)}}
	add := func(do string, all []Piece, when func(Piece) string) {
		for _, p := range all {
			row := paper.Row{Stays: true, Cells: []paper.Cell{{Text: do, Box: !p.Travels}, {Text: p.Tag}, {Text: join(", ", p.Kind, p.Size)},
				{Text: join("\n", when(p), p.Looks)}, {}}}
			if p.Travels {
				row.Cells[0].Text = "+ " + do
			}
			rows = append(rows, row)
		}
	}
	spot := func(p Piece) string {
		if p.KeptAt != "" {
			return "kept with " + p.KeptAt
		}
		return p.Rack
	}
	add("fetch", x.Fetch, func(p Piece) string {
		if p.From != "" {
			return "from " + p.From + ", off at " + m.clock(p.OffAt)
		}
		return spot(p)
	})
	add("leave", x.Leave, func(p Piece) string { return join(", ", spot(p), "until "+m.clock(p.OnAgain)) })
	add("return", x.Return, func(p Piece) string {
		if p.OffAt == 0 {
			return join(", ", spot(p), "at once")
		}
		return join(", ", spot(p), "from "+m.clock(p.OffAt)+" on")
	})
	return rows
}
