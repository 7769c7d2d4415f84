// Package paper turns one small form, a sheet of tables and pictures, into what
// people hold: a PDF, a page that prints the same, text, a spreadsheet's rows.
//
// A [Sheet] says what stands on it and what stays together; it knows no
// millimetres but those of its pictures. A new sheet is a function that makes
// one, a new format is a function that reads one. All are pure: the same sheet
// gives the same bytes.
package paper

import "strings"

// Sheet is what is printed as one.
type Sheet struct {
	Title     string
	Facts     []Fact // beneath the title
	Parts     []Part
	Cautions  []string // at the end, in a frame
	Deferral  string   // who decides what the program does not, below them
	Short     string   // what tells an old sheet from a new one, on every page
	Printed   string   // when, on every page
	Date      string   // for machines: such as 2026-11-26; "" of no date
	Plan      string   // for machines: which plan it is made from
	PrintedAt string   // for machines: such as 2026-11-26 07:10
	Paper     string   // "A4" or "Letter"
	Landscape bool
}

// Fact is a line beneath a title: what it is of, and that.
type Fact struct{ Name, Words string }

// Part of a sheet.
type Part struct {
	Title    string // "" none
	NewPage  bool   // it begins a page
	Says     []string
	Table    Table
	Pictures []Picture // where there are any, they stand for the table, which text and spreadsheets have instead
}

// Table of cells. A row under a head of its own is a group.
type Table struct {
	Columns []Column
	Rows    []Row
}

// Column of a table.
type Column struct {
	Head   string
	Room   float64 // least width in mm, for a column to write in
	Spread bool    // takes what is left of the page's width
	Bold   bool
}

// Row of a table. Over stands above it across the whole width, and begins a group.
type Row struct {
	Over  string
	Says  []string // beneath Over
	Stays bool     // on the page of the row before
	Write []string // what is to be written, each on a line of its own, side by side across the table
	Room  float64  // least height in mm, for a row to write in
	Cells []Cell   // as many as columns, or none where there is but Over
}

// Cell of a row.
type Cell struct {
	Text  string   // its lines are parted by \n
	Box   bool     // an empty box to tick stands before it
	Lines []string // empty lines to write on, below it, each behind what is to be written
}

// Texts are cells of plain text.
func Texts(texts ...string) []Cell {
	cells := make([]Cell, len(texts))
	for i, t := range texts {
		cells[i] = Cell{Text: t}
	}
	return cells
}

// flat is the text of a cell on one line.
func (c Cell) flat() string {
	lines := c.Lines
	if c.Text != "" {
		lines = append(strings.Split(c.Text, "\n"), lines...)
	}
	return Plain(strings.Join(lines, "; "))
}

// heads name the columns.
func (t *Table) heads() (heads []string) {
	for _, c := range t.Columns {
		heads = append(heads, Plain(c.Head))
	}
	return heads
}

// blocks are the rows that are kept on one page: a row, and those that stay
// with it.
func (t *Table) blocks() (blocks [][]Row) {
	for _, r := range t.Rows {
		if r.Stays && len(blocks) > 0 {
			blocks[len(blocks)-1] = append(blocks[len(blocks)-1], r)
			continue
		}
		blocks = append(blocks, []Row{r})
	}
	return blocks
}
