package spreadsheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Table is a sheet to be written: heads, and rows of texts beneath them.
type Table struct {
	Name    string
	Columns []Column
	Rows    [][]string
	Example bool // the first row is one, set apart, and is on no list
}

// Column is one of its columns.
type Column struct {
	Head    string
	Note    string   // a remark on the head
	Must    bool     // the head is marked
	Choices []string // a list to choose from
	From    string   // in place of Choices: another table, whose first column is the list
	Strict  bool     // nothing but what is on the list
	Typed   bool     // dates and times, which the spreadsheet knows when they are typed
}

// CSV is the table as RFC 4180 has it, with the mark by which spreadsheets know
// UTF-8. No cell is taken for a formula.
func (t *Table) CSV() []byte {
	var b bytes.Buffer
	b.WriteString("\ufeff")
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	write := func(row []string) {
		var cells []string
		for _, text := range row {
			cells = append(cells, Harmless(text))
		}
		w.Write(cells) // a buffer takes everything
	}
	var heads []string
	for _, c := range t.Columns {
		heads = append(heads, c.Head)
	}
	write(heads)
	for _, row := range t.Rows {
		write(row)
	}
	w.Flush()
	return b.Bytes()
}

// lineWidth is how many signs a line of the first sheet takes.
const lineWidth = 78

// onePageWide lets a sheet be printed as wide as one page.
func (x *writer) onePageWide(sheet, orientation string) {
	fit, wide, high := true, 1, 0
	x.wrong(x.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}))
	x.wrong(x.SetPageLayout(sheet, &excelize.PageLayoutOptions{Orientation: &orientation, FitToWidth: &wide, FitToHeight: &high}))
}

// listRows is how far down a column offers its list.
const listRows = 500

// WriteXLSX writes tables, a sheet each, behind a sheet of lines to read first.
// Cells are texts: none is a formula, and none is turned into a date.
func WriteXLSX(w io.Writer, readFirst string, lines []string, tables []*Table) error {
	f := excelize.NewFile()
	defer f.Close()
	x := &writer{File: f}
	x.styles()
	x.wrong(f.SetSheetName("Sheet1", readFirst))
	x.wrong(f.SetColWidth(readFirst, "A", "A", lineWidth))
	x.onePageWide(readFirst, "portrait")
	for i, line := range lines {
		cell := fmt.Sprintf("A%d", i+1)
		x.wrong(f.SetCellStr(readFirst, cell, line))
		style := x.plain
		if i == 0 {
			style = x.head
		}
		x.wrong(f.SetCellStyle(readFirst, cell, cell, style))
		x.wrong(f.SetRowHeight(readFirst, i+1, float64(16*(1+len([]rune(line))/lineWidth))))
	}
	for _, t := range tables {
		x.table(t, tables)
	}
	_, err := f.WriteTo(w)
	x.wrong(err)
	return errors.Join(x.errs...)
}

type writer struct {
	*excelize.File
	errs                       []error
	head, must, plain, example int // styles
}

func (x *writer) wrong(err error) {
	if err != nil {
		x.errs = append(x.errs, err)
	}
}

func (x *writer) styles() {
	style := func(s excelize.Style) int {
		n, err := x.NewStyle(&s)
		x.wrong(err)
		return n
	}
	line := []excelize.Border{{Type: "bottom", Color: "404040", Style: 1}}
	x.head = style(excelize.Style{Font: &excelize.Font{Bold: true}, Border: line})
	x.must = style(excelize.Style{Font: &excelize.Font{Bold: true, Underline: "single"}, Border: line,
		Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E6E6E6"}}})
	x.plain = style(excelize.Style{NumFmt: 49, Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}}) // 49: text
	x.example = style(excelize.Style{NumFmt: 49, Font: &excelize.Font{Italic: true, Color: "606060"}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
}

func (x *writer) table(t *Table, all []*Table) {
	_, err := x.NewSheet(t.Name)
	x.wrong(err)
	for c, col := range t.Columns {
		letter, err := excelize.ColumnNumberToName(c + 1)
		x.wrong(err)
		x.wrong(x.SetColWidth(t.Name, letter, letter, t.width(c)))
		if !col.Typed {
			x.wrong(x.SetColStyle(t.Name, letter, x.plain))
		}
		head := letter + "1"
		x.wrong(x.SetCellStr(t.Name, head, col.Head))
		style := x.head
		if col.Must {
			style = x.must
		}
		x.wrong(x.SetCellStyle(t.Name, head, head, style))
		if col.Note != "" {
			x.wrong(x.AddComment(t.Name, excelize.Comment{Cell: head, Text: col.Note, Width: 300, Height: uint(40 + 18*(len(col.Note)/40))}))
		}
		x.list(t, letter, col, all)
	}
	for r, row := range t.Rows {
		for c, text := range row {
			cell, err := excelize.CoordinatesToCellName(c+1, r+2)
			x.wrong(err)
			style := x.plain
			if r == 0 && t.Example {
				style = x.example
			}
			if text != "" {
				x.wrong(x.SetCellStr(t.Name, cell, text))
				x.wrong(x.SetCellStyle(t.Name, cell, cell, style))
			}
		}
	}
	x.onePageWide(t.Name, "landscape")
	x.wrong(x.SetPanes(t.Name, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"}))
}

// list lets a column offer what can stand in it.
func (x *writer) list(t *Table, letter string, col Column, all []*Table) {
	v := excelize.NewDataValidation(true)
	v.Sqref = fmt.Sprintf("%s2:%s%d", letter, letter, listRows)
	switch {
	case col.From != "":
		for _, other := range all {
			if other.Name == col.From {
				first := 2
				if other.Example {
					first = 3
				}
				v.SetSqrefDropList(fmt.Sprintf("'%s'!$A$%d:$A$%d", strings.ReplaceAll(col.From, "'", "''"), first, listRows))
			}
		}
	case len(col.Choices) > 0:
		x.wrong(v.SetDropList(col.Choices))
	}
	if v.Formula1 == "" {
		return
	}
	if col.Strict {
		v.SetError(excelize.DataValidationErrorStyleStop, col.Head, "Choose from the list, or leave it empty.")
	} else {
		v.ShowErrorMessage = false // it takes others too, or several with commas between them
	}
	x.wrong(x.AddDataValidation(t.Name, v))
}

// width of a column, in signs.
func (t *Table) width(c int) float64 {
	w := len(t.Columns[c].Head) + 3
	for _, row := range t.Rows {
		if c < len(row) {
			w = max(w, len([]rune(row[c]))+1)
		}
	}
	return float64(min(max(w, 9), 40))
}
