package sheet

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/sheet/paper"
)

func TestEverySheetOfAMondayAsText(t *testing.T) {
	b, turns := ordinary()
	b.House.AfternoonAt = 11 * 60
	b.Lessons[1].Hands.Leaders, b.Lessons[1].Hands.Sidewalkers = 1, 0
	b.Mia.MountMinutes, b.Mia.Cautions = 6, []string{"startles at loud noise"}
	for _, x := range append(every(t, b, turns...), beside(t)...) {
		golden(t, "sheets/"+x.name+".txt", paper.Written(x.sheet))
	}
}

func TestTheLessonChartAsPageSpreadsheetAndPicture(t *testing.T) {
	b, turns := ordinary()
	s := every(t, b, turns...)[0].sheet
	golden(t, "sheets/chart.html", paper.HTML(s))
	golden(t, "sheets/chart.csv", paper.CSV(s))
	golden(t, "sheets/chart.svg", paper.Pages(s)[0].SVG())
}

func TestTheSameSheetGivesTheSamePDF(t *testing.T) {
	made := time.Date(2026, time.November, 23, 7, 10, 0, 0, time.UTC)
	var first []byte
	for range 3 {
		b, turns := ordinary()
		pdf, err := paper.PDF(every(t, b, turns...)[0].sheet, made)
		switch {
		case err != nil:
			t.Fatal(err)
		case first != nil && !bytes.Equal(first, pdf):
			t.Fatal("it differs")
		}
		first = pdf
	}
}

func TestEverySpreadsheetReadsBackWithRowsOfOneLength(t *testing.T) {
	for day, make := range days {
		b, turns := make()
		for _, x := range every(t, b, turns...) {
			rows, err := csv.NewReader(strings.NewReader(paper.CSV(x.sheet))).ReadAll() // refuses rows of other lengths
			if err != nil || len(rows) < 1 {
				t.Errorf("%s, %s: %d rows, %v", day, x.name, len(rows), err)
			}
			for _, r := range rows {
				for _, cell := range r {
					if cell != "" && strings.ContainsAny(cell[:1], "=+-@\t\r") {
						t.Errorf("%s, %s: %q begins a formula", day, x.name, cell)
					}
				}
			}
		}
	}
}
