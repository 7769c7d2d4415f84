package spreadsheet

import (
	"archive/zip"
	"bytes"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// book makes an XLSX file and reads it.
func book(t testing.TB, fill func(f *excelize.File)) ([]*Sheet, []Problem) {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	fill(f)
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return readXLSX("herd.xlsx", b.Bytes())
}

// Days are counted from 1 January 1900, with one too many in that February, or
// from 1 January 1904 (ISO/IEC 29500-1, 18.17.4.1): 46351 is 25 November 2026.
func TestANumberIsReadAsItsFormatShowsIt(t *testing.T) {
	code := func(s string) *string { return &s }
	for _, x := range []struct {
		n      float64
		number int
		custom *string
		want   string
	}{
		{472, 0, nil, "472"},
		{14.3, 0, nil, "14.3"},
		{14.1 + 0.2, 0, nil, "14.3"}, // 14.299999999999999
		{46351, 14, nil, "2026-11-25"},
		{46351, 0, code("dd/mm/yyyy"), "2026-11-25"},
		{46351, 0, code(`[$-809]d mmmm yyyy`), "2026-11-25"},
		{46351 + 7.0/24 + 40.0/1440, 22, nil, "2026-11-25T07:40"},
		{10.5 / 24, 20, nil, "10:30"},
		{14.5 / 24, 0, code("h:mm AM/PM"), "14:30"},
		{26.5 / 24, 46, nil, "26:30"},
		{0.75 / 24, 0, code("[h]:mm"), "0:45"},
		{0.2, 9, nil, "20 %"},
		{0.18, 0, code("0.0%"), "18 %"},
		{472, 0, code(`0" kg"`), "472 kg"},
		{15.2, 0, code(`0.0\ "hh"`), "15.2 hh"},
		{1040, 0, code(`#,##0 "lb";-#,##0`), "1040 lb"},
		{472, 3, nil, "472"},
		{-5, 14, nil, "-5"},
	} {
		f := formatOf(x.number, x.custom)
		if got := f.show(x.n, false); got != x.want {
			t.Errorf("%v as %d %v is %q, not %q", x.n, x.number, x.custom, got, x.want)
		}
	}
	if got := formatOf(14, nil).show(46351-1462, true); got != "2026-11-25" {
		t.Errorf("from 1904: %s", got)
	}
}

func TestASheetIsReadAsAPersonSeesIt(t *testing.T) {
	sheets, problems := book(t, func(f *excelize.File) {
		f.SetSheetName("Sheet1", "Lessons")
		f.SetSheetRow("Lessons", "A1", &[]any{"Day", "Time", "Open", "Riders"})
		f.SetSheetRow("Lessons", "A2", &[]any{"Tuesday", nil, true, "  Ada "})
		f.SetSheetRow("Lessons", "A3", &[]any{nil, nil, false, "Ben"})
		f.MergeCell("Lessons", "A2", "A3")
		f.MergeCell("Lessons", "A5", "D5") // across: a title, told once
		f.SetSheetRow("Lessons", "A5", &[]any{"The end"})
		f.NewSheet("Chart of nothing")
	})
	if len(problems) > 0 || len(sheets) != 1 {
		t.Fatal(sheets, problems)
	}
	want := [][]string{{"Day", "Time", "Open", "Riders"}, {"Tuesday", "", "yes", "Ada"}, {"Tuesday", "", "no", "Ben"}, nil, {"The end"}}
	for i, row := range sheets[0].Rows {
		if !slices.Equal(row, want[i]) {
			t.Errorf("row %d: %q", i+1, row)
		}
	}
}

func TestACellThatHoldsAnErrorIsNamed(t *testing.T) {
	_, problems := book(t, func(f *excelize.File) {
		f.SetSheetRow("Sheet1", "A1", &[]any{"name", "weight"})
		f.SetCellFormula("Sheet1", "B2", "A1*2.2")
	})
	if len(problems) != 1 || problems[0].At != "Sheet1!B2" || !strings.Contains(problems[0].Message, "formula") {
		t.Error(problems)
	}
}

// Files that are damaged, or made to do harm, are refused in words and at once.
func TestAFileThatIsNoSpreadsheetIsRefused(t *testing.T) {
	bomb := func() []byte { // 100 MB of noughts in 100 kB
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		w, err := z.Create("xl/worksheets/sheet1.xml")
		if err != nil {
			t.Fatal(err)
		}
		for range 100 {
			w.Write(make([]byte, 1<<20))
		}
		z.Close()
		return b.Bytes()
	}()
	for what, x := range map[string]struct {
		data []byte
		want string
	}{
		"text":        {[]byte("name,weight"), "it is no XLSX file, or is damaged"},
		"an old kind": {[]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"), "it is of the older kind .xls, or has a password"},
		"a bomb":      {bomb, "unpacked it has more than 64 MB, which no list of horses and riders has"},
		"half of one": {bomb[:len(bomb)/2], "it is no XLSX file, or is damaged"},
		"another zip": {emptyZip(t), "it is no XLSX file, or is damaged"},
		"nothing":     {nil, "it is no XLSX file, or is damaged"},
	} {
		sheets, problems := readXLSX("herd.xlsx", x.data)
		if len(sheets) > 0 || len(problems) != 1 || problems[0].Message != x.want {
			t.Errorf("%s: %v %+v", what, sheets, problems)
		}
	}
}

func emptyZip(t *testing.T) []byte {
	var b bytes.Buffer
	if err := zip.NewWriter(&b).Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestASheetWithoutEndIsRefused(t *testing.T) {
	_, problems := book(t, func(f *excelize.File) {
		f.SetCellStr("Sheet1", "A1", "name")
		f.SetCellStr("Sheet1", "A1048576", "x")
	})
	if len(problems) != 1 || problems[0].Message != "the sheet goes on below row 5000" {
		t.Error(problems)
	}
	_, problems = book(t, func(f *excelize.File) { f.SetCellStr("Sheet1", "XFD1", "x") })
	if len(problems) != 1 || problems[0].Message != "it goes on to the right of column 400" {
		t.Error(problems)
	}
}

func TestATableThatIsWrittenComesBack(t *testing.T) {
	table := &Table{Name: "Horses", Columns: []Column{{Head: "name", Note: "what it is called", Must: true}, {Head: "barrel", Choices: []string{"narrow", "wide"}, Strict: true},
		{Head: "apart", From: "Horses"}}, Rows: [][]string{{"Duke", "wide", "=Pepper"}, {"2026-11-25", "", "12"}}}
	var b bytes.Buffer
	if err := WriteXLSX(&b, "Read first", []string{"A spreadsheet"}, []*Table{table}); err != nil {
		t.Fatal(err)
	}
	sheets, problems := readXLSX("x.xlsx", b.Bytes())
	if len(problems) > 0 || len(sheets) != 2 || sheets[1].Name != "Horses" {
		t.Fatal(sheets, problems)
	}
	for i, row := range append([][]string{{"name", "barrel", "apart"}}, table.Rows...) {
		if !slices.Equal(sheets[1].Rows[i], row) {
			t.Errorf("%q", sheets[1].Rows[i])
		}
	}
	f, err := excelize.OpenReader(&b)
	if err != nil {
		t.Fatal(err)
	}
	if formula, err := f.GetCellFormula("Horses", "C2"); err != nil || formula != "" {
		t.Errorf("a text became a formula: %q %v", formula, err)
	}
}

// What is fuzzed is what is in the file; of the packing Go's own reader takes care.
func FuzzXLSX(f *testing.F) {
	whole, err := zip.OpenReader("testdata/fernhill.xlsx")
	if err != nil {
		f.Fatal(err)
	}
	defer whole.Close()
	parts := map[string][]byte{}
	for _, x := range whole.File {
		r, err := x.Open()
		if err != nil {
			f.Fatal(err)
		}
		if parts[x.Name], err = io.ReadAll(r); err != nil {
			f.Fatal(err)
		}
	}
	const sheet, styles, book = "xl/worksheets/sheet2.xml", "xl/styles.xml", "xl/workbook.xml"
	for _, n := range []string{"1", "3", "4", "6"} {
		f.Add(parts["xl/worksheets/sheet"+n+".xml"], parts[styles], parts[book])
	}
	f.Fuzz(func(t *testing.T, a, b, c []byte) {
		var packed bytes.Buffer
		z := zip.NewWriter(&packed)
		for _, name := range slices.Sorted(maps.Keys(parts)) {
			text := parts[name]
			switch name {
			case sheet:
				text = a
			case styles:
				text = b
			case book:
				text = c
			}
			w, err := z.Create(name)
			if err != nil {
				t.Fatal(err)
			}
			w.Write(text)
		}
		z.Close()
		sheets, _ := readXLSX("fuzz.xlsx", packed.Bytes())
		for _, s := range sheets {
			if len(s.Rows) > mostRows {
				t.Error(len(s.Rows))
			}
		}
	})
}
