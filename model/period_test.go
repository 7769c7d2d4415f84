package model_test

import (
	"slices"
	"testing"
	"time"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestAPeriodHoldsOnItsDatesItsWeekdaysAndItsHours(t *testing.T) {
	day := fixtures.Monday
	for _, c := range []struct {
		name          string
		p             model.Period
		start, end    string
		meets, covers bool
	}{
		{"open on all sides", model.Period{}, "10:00", "11:00", true, true},
		{"its first date", model.Period{From: day}, "10:00", "11:00", true, true},
		{"the date before its first", model.Period{From: day + 1}, "10:00", "11:00", false, false},
		{"its last date", model.Period{Until: day}, "10:00", "11:00", true, true},
		{"the date after its last", model.Period{Until: day - 1}, "10:00", "11:00", false, false},
		{"its weekday", model.Period{Weekdays: []time.Weekday{time.Friday, time.Monday}}, "10:00", "11:00", true, true},
		{"another weekday", model.Period{Weekdays: []time.Weekday{time.Friday}}, "10:00", "11:00", false, false},
		{"its very hours", model.Period{Start: 600, End: 660}, "10:00", "11:00", true, true},
		{"a minute before and after", model.Period{Start: 600, End: 660}, "09:59", "11:01", true, false},
		{"a minute before", model.Period{Start: 600, End: 660}, "09:59", "11:00", true, false},
		{"a minute after", model.Period{Start: 600, End: 660}, "10:00", "11:01", true, false},
		{"until it begins", model.Period{Start: 600, End: 660}, "09:00", "10:00", false, false},
		{"from its end on", model.Period{Start: 600, End: 660}, "11:00", "12:00", false, false},
		{"its last minute", model.Period{Start: 600, End: 660}, "10:59", "11:30", true, false},
		{"its hours on another date", model.Period{From: day + 1, Start: 600, End: 660}, "10:00", "11:00", false, false},
	} {
		start, end := fixtures.At(c.start), fixtures.At(c.end)
		if got := c.p.Meets(day, start, end); got != c.meets {
			t.Errorf("%s: meets %v", c.name, got)
		}
		if got := c.p.Covers(day, start, end); got != c.covers {
			t.Errorf("%s: covers %v", c.name, got)
		}
	}
}

func TestANoteForATimeOfDayLeavesTheRestOfItOpen(t *testing.T) {
	for _, c := range []struct {
		name        string
		from, until model.Minute
		want        []string // starts of the rides that the closed arena leaves
	}{
		{"the whole date", 0, 0, nil},
		{"to noon", 0, 720, []string{"12:00", "15:00"}},
		{"from noon on", 720, 0, []string{"09:00"}},
		{"from noon to three", 720, 900, []string{"09:00", "15:00"}},
	} {
		b := fixtures.New()
		for _, hours := range []string{"09:00-10:00", "12:00-13:00", "15:00-16:00"} {
			b.Lesson(fixtures.Monday, hours, b.Mia)
		}
		b.Note(model.Note{Kind: model.NoteArenaClosed, Arena: b.Ring, From: c.from, Until: c.until})
		var left []string
		for _, r := range b.Week().Rides {
			if model.NotOpen(r) == "" {
				left = append(left, r.Start.String())
			}
		}
		if !slices.Equal(left, c.want) {
			t.Errorf("%s: leaves %q", c.name, left)
		}
	}
}

func TestClocksRead24HoursOr12(t *testing.T) {
	for m, want := range map[model.Minute]string{0: "12:00 am", 5: "12:05 am", 540: "9:00 am", 719: "11:59 am", 720: "12:00 pm", 870: "2:30 pm"} {
		if got := m.Clock(true); got != want {
			t.Errorf("%s: %s, want %s", m.Clock(false), got, want)
		}
	}
	if got := model.Minute(545).Clock(false); got != "09:05" {
		t.Error(got)
	}
}
