package importing

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model"
	"tackwright/model/folder"
)

var update = flag.Bool("update", false, "write what is expected anew")

// The spreadsheet of an invented centre, as one grows over the years: heads of its
// own, a title above, a weekday written once for many lessons, a lesson a row for
// each rider, units in formats and in texts. The file was written by openpyxl
// 3.0.9, and saved again by LibreOffice 7.4.7: both are read the same.
func TestACentresOwnSpreadsheetBecomesItsFolder(t *testing.T) {
	for _, file := range []string{"fernhill.xlsx", "fernhill-resaved.xlsx"} {
		m, wrong := ReadMapping("testdata/fernhill.toml")
		if len(wrong) > 0 {
			t.Fatal(wrong)
		}
		dir := filepath.Join(t.TempDir(), "fernhill")
		f, err := folder.Begin(dir, "Fernhill")
		if err != nil {
			t.Fatal(err)
		}
		sheets, problems := spreadsheet.Read("../spreadsheet/testdata/" + file)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		read, wrong := Read(sheets, m, f)
		i, mistakes, err := f.Import(read.Entries, nil)
		if wrong = append(wrong, read.Wrong(mistakes)...); len(wrong) > 0 || err != nil {
			t.Fatal(err, wrong)
		}
		if _, err := i.Write(i.After.Centre.Persons[0], model.Instant{Date: model.On(2026, 11, 25)}); err != nil {
			t.Fatal(err)
		}
		for _, name := range i.Files() {
			got, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil {
				t.Fatal(err)
			}
			golden := filepath.Join("testdata", "fernhill", name)
			if *update {
				if err := os.MkdirAll(filepath.Dir(golden), 0o777); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(golden, got, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			if want, err := os.ReadFile(golden); err != nil || !bytes.Equal(got, want) {
				t.Errorf("%s: %s is\n%s", file, name, got)
			}
		}
	}
}
