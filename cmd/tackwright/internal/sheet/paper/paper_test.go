package paper

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"testing"
)

// table is a sheet of one table.
func table(t Table) *Sheet {
	return &Sheet{Title: "Test", Short: "short", Printed: "now", Paper: "A4", Parts: []Part{{Title: "Part", Table: t}}}
}

// texts are those of each page.
func texts(s *Sheet) (pages [][]string) {
	for _, p := range Pages(s) {
		var words []string
		for _, t := range p.Texts {
			words = append(words, t.Words)
		}
		pages = append(pages, words)
	}
	return pages
}

func count(page []string, words string) (n int) {
	for _, w := range page {
		if w == words {
			n++
		}
	}
	return n
}

func TestAGroupIsKeptOnOnePageAndTheHeadsAreOnEach(t *testing.T) {
	x := Table{Columns: []Column{{Head: "horse"}}}
	for g := range 5 {
		x.Rows = append(x.Rows, Row{Over: fmt.Sprintf("group %d", g)})
		for i := range 12 {
			x.Rows = append(x.Rows, Row{Stays: true, Cells: Texts(fmt.Sprintf("%d-%d", g, i))})
		}
	}
	pages := texts(table(x))
	if len(pages) < 3 {
		t.Fatalf("%d pages", len(pages))
	}
	for n, page := range pages {
		if count(page, "horse") != 1 || n > 0 && count(page, "Part, continued") != 1 {
			t.Errorf("page %d: %v", n+1, page)
		}
		for g := range 5 {
			if is := count(page, fmt.Sprintf("group %d", g)); is != count(page, fmt.Sprintf("%d-0", g)) || is != count(page, fmt.Sprintf("%d-11", g)) {
				t.Errorf("page %d: group %d is torn", n+1, g)
			}
		}
	}
}

func TestAGroupThatNoPageHoldsGoesOnUnderItsName(t *testing.T) {
	x := Table{Columns: []Column{{}}, Rows: []Row{{Over: "group"}}}
	for i := range 80 {
		x.Rows = append(x.Rows, Row{Stays: true, Cells: Texts(fmt.Sprint(i))})
	}
	pages := texts(table(x))
	rows := 0
	for n, page := range pages {
		for i := range 80 {
			rows += count(page, fmt.Sprint(i))
		}
		if n > 0 && count(page, "group, continued") != 1 {
			t.Errorf("page %d: %v", n+1, page)
		}
	}
	if len(pages) < 2 || rows != 80 {
		t.Errorf("%d rows on %d pages", rows, len(pages))
	}
}

func TestAColumnHasWhatItAsksForAndALongOneTheRest(t *testing.T) {
	letters := scale{text: func(s string, _ bool) float64 { return float64(len(s)) }, head: func(s string) float64 { return float64(len(s)) },
		room: func(mm float64) float64 { return mm }, line: func(string) float64 { return 10 }, edge: 0, box: 2}
	for _, x := range []struct {
		name  string
		width float64
		cells []Cell
		cols  []Column
		want  string
	}{
		{"all fit, and the spread one has the rest", 30, Texts("abc", "de fg"), []Column{{}, {Spread: true}}, "[3 27]"},
		{"all fit, and the last has the rest", 30, Texts("abc", "de"), []Column{{}, {}}, "[3 27]"},
		{"the long one wraps", 20, Texts("abcd", "some words that go on and on"), []Column{{}, {}}, "[4 16]"},
		{"none is narrower than its longest word", 14, Texts("some words that go on", "somewhat longer"), []Column{{}, {}}, "[6 8]"},
		{"room to write in", 20, Texts("abc", ""), []Column{{Room: 12}, {}}, "[12 8]"},
		{"a box, and a line", 30, []Cell{{Text: "abc", Box: true}, {Lines: []string{"leader"}}}, []Column{{}, {}}, "[5 25]"},
		{"words are broken where they must be", 10, Texts("abcdefghijklmnop", "ab"), []Column{{}, {}}, "[8 2]"},
	} {
		table := Table{Columns: x.cols, Rows: []Row{{Cells: x.cells}}}
		got := table.share(x.width, letters)
		for i := range got {
			got[i] = float64(int(got[i]*1000+0.5)) / 1000
		}
		if fmt.Sprint(got) != x.want {
			t.Errorf("%s: %v, want %s", x.name, got, x.want)
		}
	}
}

func TestATextIsBrokenBetweenWordsAndLosesNothing(t *testing.T) {
	for _, s := range []string{"one two three", "Rindfleischetikettierungsüberwachung", "e\u0301e\u0301e\u0301e\u0301", "a\nb c\n\nd"} {
		for _, width := range []float64{1, 8, 20, 200} {
			lines := Broken(s, 12, false, width)
			if got, want := strings.Join(strings.Fields(strings.Join(lines, "")), ""), strings.Join(strings.Fields(printable(s)), ""); got != want {
				t.Errorf("%q in %v mm: %q", s, width, lines)
			}
			for _, line := range lines {
				if len([]rune(line)) > 1 && Width(line, 12, false) > width {
					t.Errorf("%q is wider than %v mm", line, width)
				}
			}
		}
	}
}

// What people write is text everywhere: no tag, no attribute, no broken page.
func TestWhatPeopleWriteIsNoMarkup(t *testing.T) {
	hostile := `<script>alert("x")</script> & 'quoted' ]]> 🐴 ` + "\x00\u202e"
	s := table(Table{Columns: []Column{{Head: hostile}}, Rows: []Row{{Over: hostile, Says: []string{hostile}, Cells: []Cell{{Text: hostile, Lines: []string{hostile}}}}}})
	s.Title, s.Short, s.Facts, s.Cautions = hostile, hostile, []Fact{{hostile, hostile}}, []string{hostile}
	s.Parts[0].Pictures = []Picture{{About: hostile, W: 100, H: 20, Texts: []Text{{1, 5, 12, false, printable(hostile)}}}}
	page, svg := HTML(s), SVG(s)
	if strings.Contains(page, "<script") || strings.Contains(svg, "<script") {
		t.Error("a tag came through")
	}
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("the picture is no XML: %v", err)
		}
	}
	if strings.ContainsAny(Written(s)+CSV(s), "\x00\u202e") {
		t.Error("a control character came through")
	}
}

func TestAHatchStaysInItsBox(t *testing.T) {
	var p Picture
	p.Hatch(10, 20, 30, 5, 2)
	if len(p.Lines) < 10 {
		t.Fatalf("%d lines", len(p.Lines))
	}
	for _, l := range p.Lines {
		for _, at := range l.Points {
			if at[0] < 10-1e-9 || at[0] > 40+1e-9 || at[1] < 20-1e-9 || at[1] > 25+1e-9 {
				t.Errorf("%v is outside", at)
			}
		}
	}
}
