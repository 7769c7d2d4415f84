package model

import (
	"testing"
	"time"
)

func TestDatesAgreeWithTheStandardLibrary(t *testing.T) {
	day := time.Date(1999, 12, 1, 0, 0, 0, 0, time.UTC)
	for range 20000 {
		d := DateOf(day)
		if d.String() != day.Format(time.DateOnly) || d.Weekday() != day.Weekday() {
			t.Fatalf("%v: got %v, a %v", day, d, d.Weekday())
		}
		if back, err := ParseDate(d.String()); err != nil || back != d {
			t.Fatalf("%v read back as %v, %v", d, back, err)
		}
		day = day.AddDate(0, 0, 1)
	}
}

func TestAWeekStartsOnTheHousesFirstDay(t *testing.T) {
	wednesday := On(2026, 11, 25)
	if got := wednesday.WeekStart(time.Monday); got != On(2026, 11, 23) {
		t.Errorf("from Monday: %v", got)
	}
	if got := wednesday.WeekStart(time.Thursday); got != On(2026, 11, 19) {
		t.Errorf("from Thursday: %v", got)
	}
	if got := wednesday.WeekStart(time.Wednesday); got != wednesday {
		t.Errorf("from Wednesday: %v", got)
	}
}
