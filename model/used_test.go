package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// The sums are worked out by hand: 45 min, 10 min of a gap that is no rest, 45
// min; then a rest, and 20 min of lunging.
func TestWhatAHorseUsesOfItsLimitsIsWhatTheAuditCounts(t *testing.T) {
	b := fixtures.New()
	b.House.Limits = model.Limits{DayMinutes: 120, WeekMinutes: 400}
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-1, "10:00-10:45")
	b.Lesson(fixtures.Monday, "10:00-10:45", b.Mia)
	b.Lesson(fixtures.Monday, "10:55-11:40", b.Mia)
	b.Work(b.Star, fixtures.Monday, "14:00-14:20")
	b.Lesson(fixtures.Monday+2, "10:00-10:45", b.Mia)
	w := b.Week()
	turn := b.Turn(b.Star, b.Oak)
	u := w.Used(fixtures.Plan(w, turn, turn, turn), b.Star, fixtures.Monday)
	if model.InHours(u.Day) != "2 h 00" || u.Sessions != 3 || u.RunMinutes != 100 || u.RunSessions != 2 {
		t.Errorf("the date: %s in %d sessions, longest run %d min, %d sessions", model.InHours(u.Day), u.Sessions, u.RunMinutes, u.RunSessions)
	}
	// Monday begins the week, so that Sunday's ride counts in the row alone.
	if model.InHours(u.Week) != "2 h 35" || u.WeekDates != 2 || u.Row != 2 || u.WeekFrom != fixtures.Monday {
		t.Errorf("the week: %s on %d dates, %d in a row, from %s", model.InHours(u.Week), u.WeekDates, u.Row, u.WeekFrom)
	}
	if model.Minutes(u.Days[0]) != 120 || model.Minutes(u.Days[2]) != 45 || model.Minutes(u.Days[6]) != 0 {
		t.Errorf("the dates of the week: %v", u.Days)
	}
}
