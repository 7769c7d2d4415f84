package sheet

import (
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// months is the record of Star, who works each date for so many.
func months(dates model.Date) *WorkRecord {
	b := fixtures.New()
	b.House.Limits.DayMinutes = 50
	b.Horse("Bay")
	b.Mia.First, b.Mia.Name = "Mia", "Mia Surname"
	for d := range dates {
		b.Rode(b.Turn(b.Star, b.Oak), monday+d, "10:00-11:00")
	}
	last := monday + dates - 1
	return Work(b.Centre, b.Workloads(monday, last, model.Instant{Date: last + 1}), monday, last, Stamp{})
}

func TestEveryPageOfARecordSaysOfWhichDatesAndOfWhichHorse(t *testing.T) {
	pages := strings.Split(months(60).Text(), "\f")
	if len(pages) < 3 {
		t.Fatalf("%d pages", len(pages))
	}
	for i, p := range pages {
		want := "\nSTAR, continued\n"
		if i == 0 {
			want = "\nSTAR\nlimits: a day 0 h 50\n"
		}
		if !strings.Contains(p, want) || !strings.Contains(p, "Mon 23 Nov 2026 to Thu 21 Jan 2027") || strings.Count(p, "\n") > paper.LinesOn("A4") {
			t.Errorf("page %d:\n%s", i+1, p)
		}
	}
}

func TestARecordNamesNoRider(t *testing.T) {
	w := months(2)
	if text := w.Text() + w.CSV(); strings.Contains(text, "Mia") {
		t.Error(text)
	}
}

func TestAHorseThatDidNotWorkIsNamedAtTheEnd(t *testing.T) {
	if text := months(2).Text(); !strings.Contains(text, "No work planned or done on these dates: Bay\n") || strings.Contains(text, "BAY") {
		t.Error(text)
	}
}

func TestARecordMarksWhatIsOverALimitAndWhatIsNotConfirmed(t *testing.T) {
	text := months(2).Text()
	for _, want := range []string{"Mon 23 Nov  1 h 00     1 h 00!    1 ", "NOT CONFIRMED\n", "\n  ! Star: 60 min of work on Tue 24 Nov, and 50 are its limit\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q:\n%s", want, text)
		}
	}
}
