package sheet

import (
	"strings"
	"testing"
)

// A4 is 297 mm high (ISO 216), Letter 11 in (ANSI Y14.1: from memory); at six
// lines to the inch that is 70 and 66 lines, of which half an inch above and
// below is left free.
func TestPagesAreAsLongAsThePaperAndSayWhatTheyAreOf(t *testing.T) {
	for paper, lines := range map[string]int{"A4": 64, "Letter": 60} {
		b, turns := large()
		b.House.Paper = paper
		l := pull(t, b, turns...)
		pages := strings.Split(l.Text(), "\f")
		if len(pages) < 10 {
			t.Fatalf("%d pages", len(pages))
		}
		for i, page := range pages {
			if n := strings.Count(page, "\n"); n > lines {
				t.Errorf("%s, page %d: %d lines", paper, i+1, n)
			}
			head := strings.Join(strings.Fields(strings.Join(strings.SplitN(page, "\n", 6)[:5], " ")), " ")
			for _, want := range []string{"PULL LIST", pageOf(i+1, len(pages)), "Old Mill", "23 Nov"} {
				if !strings.Contains(head, want) {
					t.Errorf("%s, page %d does not say %q: %s", paper, i+1, want, head)
				}
			}
			if i > 0 && (!strings.Contains(head, "version 3") || !strings.Contains(head, "printed Mon 23 Nov, 07:10")) {
				t.Errorf("page %d: %s", i+1, head)
			}
		}
	}
}
