package spreadsheet

import (
	"archive/zip"
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// readXLSX reads the sheets of an XLSX file (ISO/IEC 29500).
func readXLSX(name string, data []byte) (sheets []*Sheet, problems []Problem) {
	one := func(at, message, mend string) []Problem { return []Problem{{at, message, mend}} }
	if bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")) {
		return nil, one(name, "it is of the older kind .xls, or has a password", "save it as .xlsx, without a password")
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, one(name, "it is no XLSX file, or is damaged", "open it in the spreadsheet program and save it again as .xlsx")
	}
	var size uint64
	for _, f := range z.File {
		size += min(f.UncompressedSize64, mostUnzipped+1)
	}
	if size > mostUnzipped {
		return nil, one(name, fmt.Sprintf("unpacked it has more than %d MB, which no list of horses and riders has", mostUnzipped>>20),
			"copy its tables into a new file, and import that")
	}
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{UnzipSizeLimit: mostUnzipped, UnzipXMLSizeLimit: mostUnzipped, RawCellValue: true})
	if err != nil {
		return nil, one(name, "it is no XLSX file, or is damaged", "open it in the spreadsheet program and save it again as .xlsx")
	}
	defer f.Close()
	b := &xlsxBook{File: f, formats: map[int]format{}}
	if p, err := f.GetWorkbookProps(); err == nil && p.Date1904 != nil {
		b.from1904 = *p.Date1904
	}
	for _, tab := range f.GetSheetList() {
		s, p := b.sheet(tab)
		problems = append(problems, p...)
		if s != nil {
			sheets = append(sheets, s)
		}
	}
	return sheets, problems
}

type xlsxBook struct {
	*excelize.File
	formats  map[int]format // by style
	from1904 bool
}

// sheet reads one sheet; nil is that it has no cells, such as a chart.
func (b *xlsxBook) sheet(tab string) (*Sheet, []Problem) {
	s := &Sheet{Name: tab, Title: tab}
	problems := b.texts(s)
	if len(problems) > 0 || len(s.Rows) == 0 {
		return nil, problems
	}
	// Only now, when it is known to be of a size, is the sheet loaded whole.
	for r, row := range s.Rows {
		for c := range row {
			text, p := b.cell(s, r, c, row[c])
			row[c] = text
			problems = append(problems, p...)
		}
	}
	b.spread(s)
	return s, append(problems, s.clean()...)
}

// texts streams the cells as they are stored.
func (b *xlsxBook) texts(s *Sheet) []Problem {
	one := func(at, message, mend string) []Problem { return []Problem{{at, message, mend}} }
	damaged := one(s.Title, "the sheet is damaged", "open the file in the spreadsheet program and save it again as .xlsx")
	rows, err := b.Rows(s.Name)
	if err != nil {
		return nil // a sheet of another kind
	}
	defer rows.Close()
	for rows.Next() {
		row, err := rows.Columns()
		if err != nil {
			return damaged
		}
		if len(s.Rows) >= mostRows {
			return one(s.Title, fmt.Sprintf("the sheet goes on below row %d", mostRows),
				"delete the rows below the last one that holds something, even if they look empty: mark them and delete them")
		}
		if len(row) > mostColumns {
			return one(s.Row(len(s.Rows)), fmt.Sprintf("it goes on to the right of column %d", mostColumns),
				"delete the columns to the right of the last one that holds something")
		}
		s.Rows = append(s.Rows, row)
	}
	if rows.Error() != nil {
		return damaged
	}
	return nil
}

// cell is what a person reads in a cell, given what is stored.
func (b *xlsxBook) cell(s *Sheet, r, c int, stored string) (string, []Problem) {
	name, err := excelize.CoordinatesToCellName(c+1, r+1)
	if err != nil {
		return "", nil
	}
	kind, err := b.GetCellType(s.Name, name)
	if err != nil {
		return stored, nil
	}
	if stored == "" {
		if formula, err := b.GetCellFormula(s.Name, name); err == nil && formula != "" {
			return "", []Problem{{s.At(r, c), "there is a formula here, without what comes out of it", "open the file in the spreadsheet program and save it; or write what comes out"}}
		}
		return "", nil
	}
	switch kind {
	case excelize.CellTypeBool:
		if stored == "1" || strings.EqualFold(stored, "true") {
			return "yes", nil
		}
		return "no", nil
	case excelize.CellTypeError:
		return "", []Problem{{s.At(r, c), "the cell holds the error " + stored, "mend the formula, or write what belongs there"}}
	case excelize.CellTypeDate: // as ISO 8601 has it, which few programs write
		return strings.TrimSuffix(strings.TrimSuffix(stored, "T00:00:00"), ":00"), nil
	case excelize.CellTypeUnset, excelize.CellTypeNumber, excelize.CellTypeFormula:
		n, err := strconv.ParseFloat(stored, 64)
		if err != nil || math.IsNaN(n) || math.IsInf(n, 0) {
			return stored, nil
		}
		style, err := b.GetCellStyle(s.Name, name)
		if err != nil {
			return plainNumber(n), nil
		}
		return b.format(style).show(n, b.from1904), nil
	}
	return stored, nil
}

// spread gives each cell of a merged one what the whole holds, where it goes down
// a column: a weekday written once beside several lessons.
func (b *xlsxBook) spread(s *Sheet) {
	merged, err := b.GetMergeCells(s.Name)
	if err != nil {
		return
	}
	for _, m := range merged {
		c1, r1, err1 := excelize.CellNameToCoordinates(m.GetStartAxis())
		c2, r2, err2 := excelize.CellNameToCoordinates(m.GetEndAxis())
		if err1 != nil || err2 != nil || c1 != c2 || r1 > len(s.Rows) || c1 > len(s.Rows[r1-1]) {
			continue
		}
		for r := r1; r < min(r2, len(s.Rows)); r++ {
			for len(s.Rows[r]) < c1 {
				s.Rows[r] = append(s.Rows[r], "")
			}
			s.Rows[r][c1-1] = s.Rows[r1-1][c1-1]
		}
	}
}

// plainNumber is a number as a person writes it, without what counting in twos
// leaves behind its last digits.
func plainNumber(n float64) string {
	text := strconv.FormatFloat(n, 'g', 12, 64)
	if n, err := strconv.ParseFloat(text, 64); err == nil {
		return strconv.FormatFloat(n, 'f', -1, 64)
	}
	return text
}
