package paper

// Answer is a sheet for machines: its tables, as text.
type Answer struct {
	Title    string       `json:"title"`
	Date     string       `json:"date,omitempty" about:"such as 2026-11-26; none: of no date"`
	Plan     string       `json:"plan,omitempty" about:"\"pencilled in ...\", or \"version 3, posted by ...\""`
	Printed  string       `json:"printed" about:"\"2026-11-26 07:10\""`
	Facts    []string     `json:"facts" about:"beneath the title, in words"`
	Parts    []AnswerPart `json:"parts"`
	Cautions []string     `json:"cautions" about:"that every sheet for the barn carries"`
	Deferral string       `json:"deferral" about:"who decides what the program does not"`
}

// AnswerPart is a part of a sheet.
type AnswerPart struct {
	Title string      `json:"title,omitempty"`
	Says  []string    `json:"says" about:"above the table, in words"`
	Heads []string    `json:"heads" about:"of the table's columns; empty: a column of boxes, or to write in"`
	Rows  []AnswerRow `json:"rows"`
}

// AnswerRow is a row of a table.
type AnswerRow struct {
	Over  string   `json:"over,omitempty" about:"what stands above it across the table, for it and those that follow"`
	Says  []string `json:"says" about:"beneath that"`
	Cells []string `json:"cells" about:"one a column, lines parted by semicolons; none: it has only what stands above"`
}

// Answered is the sheet for machines.
func Answered(s *Sheet) *Answer {
	a := &Answer{Title: s.Title, Date: s.Date, Plan: s.Plan, Printed: s.PrintedAt, Cautions: s.Cautions, Deferral: s.Deferral}
	for _, f := range s.Facts {
		words := f.Words
		if f.Name != "" {
			words = f.Name + ": " + words
		}
		a.Facts = append(a.Facts, words)
	}
	for _, p := range s.Parts {
		x := AnswerPart{Title: p.Title, Says: p.Says, Heads: p.Table.heads()}
		for _, r := range p.Table.Rows {
			row := AnswerRow{Over: r.Over, Says: r.Says}
			for _, c := range r.Cells {
				row.Cells = append(row.Cells, c.flat())
			}
			x.Rows = append(x.Rows, row)
		}
		a.Parts = append(a.Parts, x)
	}
	return a
}
