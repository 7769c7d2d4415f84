package spreadsheet

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// readText reads a CSV file of that content.
func readText(t *testing.T, text string) (*Sheet, []Problem) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "herd.csv")
	if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	sheets, problems := Read(file)
	if len(sheets) == 0 {
		return nil, problems
	}
	return sheets[0], problems
}

// The ways in which spreadsheets write CSV: common practice; quoting is RFC 4180's.
func TestCSVIsReadAsSpreadsheetsWriteIt(t *testing.T) {
	want := [][]string{{"name", "looks"}, {"Duke", `bay, 15" cob`}, nil, {"Zoë", ""}}
	for what, text := range map[string]string{
		"commas":     "name,looks\nDuke,\"bay, 15\"\" cob\"\n\nZoë,\n",
		"semicolons": "name;looks\r\nDuke;\"bay, 15\"\" cob\"\r\n\r\nZoë;\r\n",
		"tabs":       "name\tlooks\nDuke\t\"bay, 15\"\" cob\"\n\nZoë\t",
		"old Macs":   "name,looks\rDuke,\"bay, 15\"\" cob\"\r\rZoë,\r",
		"a mark":     "\ufeffname,looks\nDuke,\"bay, 15\"\" cob\"\n,\nZoë,\n\n,,\n",
	} {
		s, problems := readText(t, text)
		if len(problems) > 0 || len(s.Rows) != len(want) {
			t.Errorf("%s: %v %q", what, problems, s.Rows)
			continue
		}
		for i, row := range s.Rows {
			if !slices.Equal(row, trimmed(want[i])) {
				t.Errorf("%s, row %d: %q", what, i, row)
			}
		}
	}
}

func trimmed(row []string) []string {
	for len(row) > 0 && row[len(row)-1] == "" {
		row = row[:len(row)-1]
	}
	return row
}

// A cell that goes over several lines is one row, as in the spreadsheet.
func TestARowIsCountedAsTheSpreadsheetCountsIt(t *testing.T) {
	s, _ := readText(t, "name,looks\n\"Duke\",\"bay\nwhite sock\"\nPepper,grey\n")
	if len(s.Rows) != 3 || s.At(2, 1) != "herd.csv!B3" || s.Rows[2][1] != "grey" {
		t.Errorf("%q", s.Rows)
	}
}

func TestWhatCannotBeReadOfACSVFileIsToldInWords(t *testing.T) {
	for text, want := range map[string]Problem{
		"name\nZo\xeb,bay\n":                    {"herd.csv!line 2", `the file is not saved as UTF-8: of "Zo�" a letter cannot be read`, `save it as "CSV UTF-8", or as .xlsx`},
		"\xff\xfen\x00a\x00":                    {"herd.csv", "it is saved as UTF-16", `save it as "CSV UTF-8", or as .xlsx`},
		"PK\x03\x04\x00\x00":                    {"herd.csv", "it is no CSV file: there are signs in it that no text has", "save the spreadsheet as CSV UTF-8, or as .xlsx"},
		"name\nDuke, \"15\" cob\"\n":            {"herd.csv!line 2", "a quotation mark is not closed, or stands within a text", `put the whole cell between quotation marks, and write each one in it twice: "15"" seat"`},
		"name\n" + strings.Repeat("x\n", 5_000): {"herd.csv", "it has more than 5000 rows", "leave out what is no horse, rider, lesson or piece of tack, and empty rows"},
		strings.Repeat("\n", 1_000_000) + "x\n": {"herd.csv", "it has more than 5000 rows", "leave out what is no horse, rider, lesson or piece of tack, and empty rows"},
		"a" + strings.Repeat(",", 400) + "b":    {"herd.csv!row 1", "it has more than 400 columns", "delete the columns that hold nothing"},
		"name\n" + strings.Repeat("x", 4_001):   {"herd.csv!A2", "the cell has 4001 letters", "a cell here has some words"},
	} {
		_, problems := readText(t, text)
		if len(problems) != 1 || problems[0] != want {
			t.Errorf("%.20q: %+v", text, problems)
		}
	}
}

func TestADirectoryIsItsCSVFiles(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"horses.csv", "riders.CSV", "notes.txt", ".hidden.csv"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("name\n"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	sheets, problems := Read(dir)
	if len(sheets) != 2 || sheets[0].Name != "horses" || sheets[1].Name != "riders" || len(problems) > 0 {
		t.Error(sheets, problems)
	}
	if _, problems = Read(t.TempDir(), filepath.Join(dir, "none.csv")); len(problems) != 2 {
		t.Error(problems)
	}
}

// What spreadsheets take for a formula begins with one of these signs (OWASP, CSV
// injection; from memory).
func TestNoCellThatIsWrittenIsAFormula(t *testing.T) {
	texts := []string{"=1+1", "+44 1632 960001", "-", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "＝1", "plain", "'quoted'", ""}
	table := &Table{Name: "x", Columns: []Column{{Head: "=HYPERLINK(\"http://x\")"}}}
	for _, text := range texts {
		table.Rows = append(table.Rows, []string{text})
	}
	text := table.CSV()
	rows, err := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff")))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if strings.IndexAny(row[0], "=+-@\t\r\n＝") == 0 {
			t.Errorf("a cell begins with a sign of formulas: %q", row[0])
		}
	}
	s, problems := readText(t, string(text))
	if len(problems) > 0 || s.Rows[1][0] != "=1+1" || s.Rows[2][0] != "+44 1632 960001" || s.Rows[3][0] != "-" {
		t.Errorf("it does not come back: %q %v", s.Rows, problems)
	}
}

func FuzzCSV(f *testing.F) {
	f.Add([]byte("name,looks\nDuke,\"bay\"\n"))
	f.Add([]byte("\xef\xbb\xbfa;b\r\n1,5;x\r"))
	f.Add([]byte("a\tb\n\"\n\n\",\xff"))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, problems := readCSV("fuzz.csv", data)
		if s == nil && len(problems) == 0 {
			t.Error("neither a sheet nor a problem")
		}
		if s != nil && len(s.Rows) > mostRows {
			t.Error(len(s.Rows))
		}
	})
}
