package sheet

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

func TestColumnsAreCountedAsATerminalSetsThem(t *testing.T) {
	// Widths: Unicode Standard Annex 11, East Asian Width; marks have none.
	for _, c := range []struct {
		text string
		want int
	}{
		{"Zoe", 3}, {"Zoë", 3}, {"Zoe\u0308", 3}, // one rune, or a letter and a combining diaeresis
		{"Любовь", 6}, {"Ελένη", 5}, {"さくら", 6}, {"王小明", 6}, {"ﾊﾅ", 2}, {"Ａ", 2},
		{"\u1112\u1161\u11ab", 2}, // Hangul in parts: han
		{"ש\u05c1", 1}, {"", 0},
	} {
		if got := paper.Columns(c.text); got != c.want {
			t.Errorf("%q takes %d columns, want %d", c.text, got, c.want)
		}
	}
}

func TestWrappingLosesNothingAndKeepsMarksOnTheirLetters(t *testing.T) {
	for _, c := range []struct {
		text string
		n    int
		want []string
	}{
		{"blue tape, left buckle new", 12, []string{"blue tape,", "left buckle", "new"}},
		{"Donaudampfschiff", 6, []string{"Donaud", "ampfsc", "hiff"}},
		{"Zoe\u0308e", 3, []string{"Zoe\u0308", "e"}},
		{"王小明", 3, []string{"王", "小", "明"}},
		{"two\nlines\tand\x1b[31m", 40, []string{"two lines and [31m"}},
		{"", 5, []string{""}},
	} {
		if got := paper.Wrap(c.text, c.n); !slices.Equal(got, c.want) {
			t.Errorf("%q in %d: %q, want %q", c.text, c.n, got, c.want)
		}
	}
}

// large is a day of 60 horses in 12 lessons, with names as long as people write
// them, in several scripts.
func large() (*fixtures.Barn, []*model.Turn) {
	b := bays(3)
	b.Name = "The Old Mill and Upper Meadow Association for Adaptive Riding and Driving of the Three Valleys"
	long := []string{"Sir Bartholomew of the Lower Water Meadows", "Любовь Орлова", "さくら", "Rindfleischetikettierungsgesetz", "Zoe\u0308"}
	var turns []*model.Turn
	var l *model.Lesson
	for i := range 60 {
		h := b.Horse(fmt.Sprintf("%s %d", long[i%len(long)], i))
		h.Looks, h.Kept = "dark bay with a star, a stripe and a snip, three white feet", "box 12 in the long barn behind the hay"
		s := b.Saddle(fmt.Sprintf("saddle tag %d of the upper room", i), h)
		s.Rack, s.Looks = fmt.Sprintf("upper room, wall %d, hook %d", i/10, i), "black, red thread on the left flap, scratch on the pommel"
		r := b.Rider(fmt.Sprintf("Wilhelmina-Alexandrine %02d", i))
		r.Mark, r.Sidewalkers, r.Wears = "Kr", 2, []string{"helmet, extra large, with the wide brim for sun"}
		r.Extras = []model.ExtraNeed{{Kind: "adapted reins with loops and a bar"}}
		x := b.Extra(fmt.Sprintf("reins-%d", i), r.Extras[0].Kind, "large")
		if i%5 == 0 {
			start := 8*60 + 30*model.Minute(i/5)
			l = b.Lesson(monday, start.String()+"-"+(start+45).String())
			l.Name, l.Instructor = fmt.Sprintf("%02d beginners with siblings and friends", i/5), b.Person(fmt.Sprintf("Maximiliana von und zu Hohenstein %d", i))
		}
		l.Places = append(l.Places, model.Place{Rider: r})
		turns = append(turns, b.Turn(h, s, x))
	}
	return b, turns
}

func TestALargeDayWithTheLongestNamesStaysOnThePageAndLosesNothing(t *testing.T) {
	b, turns := large()
	for _, twelve := range []bool{false, true} {
		b.House.TwelveHour = twelve
		l := pull(t, b, turns...)
		text := l.Text()
		for i, line := range strings.Split(text, "\n") {
			if n := paper.Columns(strings.TrimPrefix(line, "\f")); n > 80 {
				t.Errorf("line %d takes %d columns: %s", i+1, n, line)
			}
		}
		if n := strings.Count(text, "ON BY"); n != 60 {
			t.Errorf("%d tack-ups on the page", n)
		}
		tight := letters(text)
		for _, h := range b.Horses {
			if !strings.Contains(tight, letters(h.Name)) {
				t.Errorf("%s is not on the page in one piece", h.Name)
			}
		}
	}
}

// letters are the letters of a text with all space and line breaks out.
func letters(s string) string { return strings.Join(strings.Fields(s), "") }

func TestEveryThingToCarryHasOneBox(t *testing.T) {
	b, turns := ordinary()
	l := pull(t, b, turns...)
	boxes := 0
	for _, u := range l.TackUps {
		boxes++ // its bridle or halter
		for _, p := range u.Pieces {
			if !p.Travels && p.From == "" {
				boxes++
			}
		}
	}
	for _, c := range l.Changeovers {
		for _, p := range c.On {
			if !p.Travels {
				boxes++
			}
		}
	}
	for _, n := range l.BesideTheRing {
		boxes += len(n.Things)
	}
	boxes += len(l.PutAway)
	if got := strings.Count(l.Text(), "[ ]"); got != boxes {
		t.Errorf("%d boxes for %d things", got, boxes)
	}
}

func TestTheClockIsTheHouses(t *testing.T) {
	b := fixtures.New()
	b.Lesson(monday, "14:00-14:45", b.Mia)
	l := pull(t, b, b.Turn(b.Star, b.Oak))
	if !strings.Contains(l.Text(), "ON BY 13:50") {
		t.Error(l.Text())
	}
	b.House.TwelveHour = true
	l = pull(t, b, b.Turn(b.Star, b.Oak))
	if text := l.Text(); !strings.Contains(text, "ON BY 1:50 pm") || strings.Contains(text, "13:50") {
		t.Error(text)
	}
	if !strings.Contains(l.CSV(), "pull,13:50,Star,oak,") {
		t.Error(l.CSV())
	}
}

func TestTheSpreadsheetReadsBackWithARowForEachThing(t *testing.T) {
	b, turns := ordinary()
	l := pull(t, b, turns...)
	text := l.CSV()
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") {
		t.Error("a line does not end as RFC 4180 asks")
	}
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(rows[0], csvHead) {
		t.Errorf("heads %q", rows[0])
	}
	seen := map[string]int{}
	for _, r := range rows[1:] {
		seen[r[0]]++
	}
	// 4 bridles and 13 pieces, and none that comes over; a saddle, its pad and girth
	// go to Moss; a helmet, a belt, a helmet; every piece that was out goes back.
	for list, want := range map[string]int{"pull": 17, "changeover": 3, "changeover, off": 3, "beside the ring": 3, "put away": 10} {
		if seen[list] != want {
			t.Errorf("%s: %d rows, want %d", list, seen[list], want)
		}
	}
}

func TestNoCellOfTheSpreadsheetIsAFormula(t *testing.T) {
	// The characters that spreadsheets take for the start of a formula: OWASP, CSV
	// injection (from memory).
	for _, start := range []string{"=", "+", "-", "@", "\t", "\r"} {
		b := fixtures.New()
		b.Oak.Looks, b.Star.Name, b.Mia.Wears = start+"1+2", start+"Star", []string{start + "helmet"}
		b.Lesson(monday, "10:00-10:45", b.Mia).Name = start + `HYPERLINK("x","y")`
		rows, err := csv.NewReader(strings.NewReader(pull(t, b, b.Turn(b.Star, b.Oak)).CSV())).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		quoted := 0
		for _, r := range rows {
			for _, cell := range r {
				if cell != "" && strings.Contains("=+-@\t\r", cell[:1]) {
					t.Errorf("%q begins a formula", cell)
				}
				if strings.HasPrefix(cell, "'") {
					quoted++
				}
			}
		}
		if quoted < 4 {
			t.Errorf("%q: %d cells were held back", start, quoted)
		}
	}
}
