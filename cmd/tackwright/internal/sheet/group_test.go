package sheet

import (
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
)

// A horse with many seats goes on on the next page, which says whose rows they are.
func TestAFitChartFillsItsPagesAndSaysWhoseRowsGoOn(t *testing.T) {
	b := fixtures.New()
	for i := range 30 {
		b.Row(b.Star, b.Saddle("S"+string(rune('A'+i%26))+string(rune('0'+i/26))))
	}
	pages := paper.Pages(FitChart(b.Centre, monday, posted, nil))
	for i, p := range pages {
		lowest, words := 0.0, []string(nil)
		for _, text := range p.Texts {
			words = append(words, text.Words)
			if text.Y < p.H-margin-15 {
				lowest = max(lowest, text.Y)
			}
		}
		if i > 0 && !strings.Contains(strings.Join(words, "\n"), "Star, continued") {
			t.Errorf("page %d does not say whose rows go on", i+1)
		}
		if i < len(pages)-1 && lowest < 0.85*(p.H-margin-15) {
			t.Errorf("page %d ends at %.0f mm of %.0f", i+1, lowest, p.H)
		}
	}
}

// A sheet of several pages, of which the first may be all that is looked at, begins
// with its cautions.
func TestTablesOfSeveralPagesBeginWithTheCautions(t *testing.T) {
	b, turns := large()
	for _, x := range every(t, b, turns...) {
		pages := paper.Pages(x.sheet)
		if len(pages) == 1 || len(x.sheet.Parts[0].Pictures) > 0 {
			continue
		}
		first := ""
		for _, text := range pages[0].Texts {
			first += text.Words
		}
		if !strings.Contains(letters(first), letters(Cautions[0])) {
			t.Errorf("%s does not begin with the cautions", x.name)
		}
	}
}

// A blank copy is the two sides of one sheet, on either paper.
func TestABlankCopyFillsTwoPages(t *testing.T) {
	for _, size := range []string{"A4", "Letter"} {
		b := fixtures.New()
		b.House.Paper = size
		for _, s := range []*paper.Sheet{BlankChart(b.Centre, monday, posted), BlankPull(b.Centre, monday, posted)} {
			if n := len(paper.Pages(s)); n != 2 {
				t.Errorf("%s on %s has %d pages", s.Title, size, n)
			}
		}
	}
}
