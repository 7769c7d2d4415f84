// Package spreadsheet reads and writes tables as XLSX and CSV. It knows no trade:
// a cell is a text, as a person who looks at it reads it, with its place.
package spreadsheet

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Sheet is one table of a spreadsheet.
type Sheet struct {
	Name  string // of the tab; of a CSV file its name without .csv
	Title string // what its cells are called by: "Horses", "horses.csv"
	// Rows and their cells from A1 on. Dates are 2026-11-25, times of day 14:30 and
	// lengths of time 2:30, both together 2026-11-25T14:30, numbers plain with a
	// point; a percentage or a unit that only the format shows stands behind.
	Rows         [][]string
	DecimalComma bool // numbers typed as text may have a comma for the point
}

// At is the place of a cell, counted from 0: "Horses!C7".
func (s *Sheet) At(row, col int) string {
	name, err := excelize.CoordinatesToCellName(col+1, row+1)
	if err != nil {
		return fmt.Sprintf("%s!row %d", s.Title, row+1)
	}
	return s.Title + "!" + name
}

// Row is the place of a row, counted from 0.
func (s *Sheet) Row(row int) string { return fmt.Sprintf("%s!row %d", s.Title, row+1) }

// Problem is why a file, or a part of it, cannot be read.
type Problem struct {
	At      string // "Horses!C7", or the file
	Message string
	Mend    string
}

// Limits keep a file that is damaged, or made to do harm, from eating the computer.
// A large centre has some hundreds of rows.
const (
	mostBytes    = 16 << 20 // of a file
	mostUnzipped = 64 << 20 // of an XLSX file, its parts unpacked
	mostRows     = 5_000
	mostColumns  = 400
	mostText     = 4_000 // bytes in a cell
)

// Read reads XLSX and CSV files, and the CSV files of directories. What cannot be
// read is a problem, and the rest is there all the same.
func Read(paths ...string) ([]*Sheet, []Problem) {
	var sheets []*Sheet
	var problems []Problem
	for _, path := range paths {
		info, err := os.Stat(path)
		if err != nil {
			problems = append(problems, Problem{path, "it cannot be read: " + plainError(err), "look whether it is named right"})
			continue
		}
		files := []string{path}
		if info.IsDir() {
			if files, err = csvIn(path); err != nil || len(files) == 0 {
				problems = append(problems, Problem{path, "there is no CSV file in this directory", "name an XLSX file, CSV files, or a directory of CSV files"})
			}
		}
		for _, file := range files {
			s, p := readFile(file)
			sheets, problems = append(sheets, s...), append(problems, p...)
		}
	}
	return sheets, problems
}

func csvIn(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	var files []string
	for _, e := range entries {
		if strings.EqualFold(filepath.Ext(e.Name()), ".csv") && !strings.HasPrefix(e.Name(), ".") {
			files = append(files, filepath.Join(dir, e.Name()))
		}
	}
	slices.Sort(files)
	return files, err
}

func readFile(file string) ([]*Sheet, []Problem) {
	name := filepath.Base(file)
	one := func(message, mend string) ([]*Sheet, []Problem) { return nil, []Problem{{name, message, mend}} }
	if info, err := os.Stat(file); err == nil && info.Size() > mostBytes {
		return one(fmt.Sprintf("it has %d MB, and no more than %d are read", info.Size()>>20, mostBytes>>20), "leave pictures and whatever is no table out of it")
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return one("it cannot be read: "+plainError(err), "look whether it is named right")
	}
	switch ext := strings.ToLower(filepath.Ext(name)); ext {
	case ".xlsx", ".xlsm":
		return readXLSX(name, data)
	case ".csv", ".txt", ".tsv":
		s, p := readCSV(name, data)
		if s == nil {
			return nil, p
		}
		return []*Sheet{s}, p
	default:
		return one(fmt.Sprintf("files that end in %q are not read", ext), "save it as .xlsx, or each sheet as .csv")
	}
}

// plainError is an error of the system without the name of the file.
func plainError(err error) string {
	if p, ok := err.(*os.PathError); ok {
		return p.Err.Error()
	}
	return err.Error()
}

// clean drops what is empty at the ends of rows and of the sheet, and reports
// cells that are too long.
func (s *Sheet) clean() []Problem {
	var problems []Problem
	for r, row := range s.Rows {
		for c, text := range row {
			row[c] = strings.TrimSpace(strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\u00a0", " "))
			if len(text) > mostText {
				problems = append(problems, Problem{s.At(r, c), fmt.Sprintf("the cell has %d letters", len(text)), "a cell here has some words"})
				row[c] = ""
			}
		}
		for len(row) > 0 && row[len(row)-1] == "" {
			row = row[:len(row)-1]
		}
		s.Rows[r] = row
	}
	for len(s.Rows) > 0 && len(s.Rows[len(s.Rows)-1]) == 0 {
		s.Rows = s.Rows[:len(s.Rows)-1]
	}
	return problems
}
