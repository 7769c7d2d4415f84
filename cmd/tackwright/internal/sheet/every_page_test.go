package sheet

import (
	"slices"
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// days are those on which nothing may be cut and nothing may overlap.
var days = map[string]func() (*fixtures.Barn, []*model.Turn){
	"ordinary": ordinary, "large": large, "european": european, "moving": moving,
	"nothing": func() (*fixtures.Barn, []*model.Turn) { return fixtures.New(), nil },
}

func TestNothingOnAPageOverlapsOrIsCut(t *testing.T) {
	for day, sheets := range onDays(t) {
		for _, x := range sheets {
			if wrong := clashes(x.sheet); len(wrong) > 0 {
				t.Errorf("%s, %s: %d clashes, the first %s", day, x.name, len(wrong), wrong[0])
			}
		}
	}
}

// What stands in the form of a sheet stands on its pages: the letters of every
// cell, in their order.
func TestEveryCellIsOnThePages(t *testing.T) {
	for day, sheets := range onDays(t) {
		for _, x := range sheets {
			var page strings.Builder
			for _, p := range paper.Pages(x.sheet) {
				for _, text := range p.Texts {
					if text.Y < p.H-margin-11 { // not the foot of a page
						page.WriteString(letters(text.Words))
					}
				}
			}
			for _, words := range wordsOf(x.sheet) {
				if !strings.Contains(page.String(), words) {
					t.Errorf("%s, %s: not on the pages in one piece: %s", day, x.name, words)
				}
			}
		}
	}
}

// wordsOf are the letters of each cell and line of a sheet, accents joined.
func wordsOf(s *paper.Sheet) (all []string) {
	add := func(words ...string) {
		for _, w := range words {
			for _, line := range strings.Split(w, "\n") {
				all = append(all, letters(norm(line)))
			}
		}
	}
	for _, f := range s.Facts {
		add(f.Words)
	}
	add(s.Cautions...)
	add(s.Deferral)
	for _, p := range s.Parts {
		add(p.Title)
		add(p.Says...)
		if len(p.Pictures) > 0 {
			continue // they stand for the table
		}
		for _, r := range p.Table.Rows {
			add(r.Over)
			add(r.Says...)
			add(r.Write...)
			for _, c := range r.Cells {
				add(c.Text)
				add(c.Lines...)
			}
		}
	}
	return all
}

// A picture says less than the table that stands for it in text, but no horse, rider
// or piece is missing on it.
func TestAPictureNamesEveryHorseRiderAndPiece(t *testing.T) {
	for day, make := range days {
		b, turns := make()
		for _, x := range every(t, b, turns...) {
			for _, part := range x.sheet.Parts {
				var drawn strings.Builder
				for _, p := range part.Pictures {
					for _, text := range p.Texts {
						drawn.WriteString(letters(text.Words))
					}
				}
				for _, r := range part.Table.Rows {
					for i, c := range r.Cells {
						named := slices.Contains([]string{"horse", "rider", "seat", "girth", "piece", "on", "tag", "date"}, part.Table.Columns[i].Head)
						if len(part.Pictures) > 0 && named && !strings.Contains(drawn.String(), letters(norm(c.Text))) {
							t.Errorf("%s, %s: not drawn: %s", day, x.name, c.Text)
						}
					}
				}
			}
		}
	}
}

func TestNothingPrintedIsSmallerThanTwelvePoints(t *testing.T) {
	b, turns := ordinary()
	for _, x := range every(t, b, turns...) {
		for _, p := range paper.Pages(x.sheet) {
			for _, text := range p.Texts {
				if text.Size < 12 {
					t.Errorf("%s: %q has %v points", x.name, text.Words, text.Size)
				}
			}
		}
	}
}

func TestEveryPageSaysOfWhatItIsAndWhenItWasPrinted(t *testing.T) {
	b, turns := large()
	for _, x := range every(t, b, turns...) {
		for i, p := range paper.Pages(x.sheet) {
			var words []string
			for _, text := range p.Texts {
				words = append(words, text.Words)
			}
			page := strings.Join(words, "\n")
			for _, want := range []string{x.sheet.Title, "printed Mon 23 Nov, 07:10", "page "} {
				if !strings.Contains(page, want) {
					t.Errorf("%s, page %d does not say %q", x.name, i+1, want)
				}
			}
		}
	}
}

func TestNoLineOfTextIsWiderThanItsPage(t *testing.T) {
	for day, sheets := range onDays(t) {
		for _, x := range sheets {
			wide := 80
			if x.sheet.Landscape {
				wide = 104
			}
			for _, line := range strings.FieldsFunc(paper.Written(x.sheet), func(r rune) bool { return r == '\n' || r == '\f' }) {
				if n := paper.Columns(line); n > wide {
					t.Errorf("%s, %s: %d columns: %s", day, x.name, n, line)
				}
			}
		}
	}
}

// The check of clashes itself finds each kind.
func TestAClashIsFound(t *testing.T) {
	text := func(x, y float64) paper.Text { return paper.Text{X: x, Y: y, Size: 12, Words: "words"} }
	for _, x := range []struct {
		name    string
		picture paper.Picture
		want    string
	}{
		{"none", paper.Picture{W: 100, H: 50, Texts: []paper.Text{text(10, 10), text(10, 20)}}, ""},
		{"overlap", paper.Picture{W: 100, H: 50, Texts: []paper.Text{text(10, 10), text(15, 11)}}, "stands on"},
		{"edge", paper.Picture{W: 100, H: 50, Texts: []paper.Text{text(180, 10)}}, "leaves the page"},
		{"line", paper.Picture{W: 100, H: 50, Texts: []paper.Text{text(10, 10)}, Lines: []paper.Line{{Points: [][2]float64{{0, 9}, {90, 9}}}}}, "a line goes through"},
	} {
		s := &paper.Sheet{Title: "Test", Paper: "A4", Parts: []paper.Part{{Pictures: []paper.Picture{x.picture}}}}
		if got := strings.Join(clashes(s), "; "); (x.want == "") != (got == "") || !strings.Contains(got, x.want) {
			t.Errorf("%s: %q", x.name, got)
		}
	}
}
