package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// A week's limit is broken on both dates, and told once, of the first; and of a
// date the morning comes first.
func TestWhatIsBrokenLaterIsToldInOrderOfTime(t *testing.T) {
	b := fixtures.New()
	noor := b.Rider("Noor")
	bay := b.Horse("Bay")
	elm := b.Saddle("elm", bay)
	for _, d := range []model.Date{1, 2} {
		b.Tell(b.Lesson(fixtures.Monday+d, "14:00-15:00", b.Mia), b.Mia, b.Turn(b.Star, b.Oak))
		b.Tell(b.Lesson(fixtures.Monday+d, "09:00-10:00", noor), noor, b.Turn(bay, elm))
	}
	b.Star.Out = []model.Out{{Why: model.Lame, From: monday("08:00")}}
	noor.Bans = []*model.Horse{bay}
	b.House.Limits.WeekDays = 1
	var rules []string
	for _, v := range b.Repair(fixtures.Monday, 1, model.Instant{}).LaterBroken(nil) {
		open := v.Stints[slices.IndexFunc(v.Stints, func(s *model.Stint) bool { return s.Open })]
		rules = append(rules, open.Date.String()[8:]+" "+open.Start.String()+" "+v.Rule.Name)
	}
	want := []string{"24 09:00 week's work", "24 09:00 horse suits rider", "24 14:00 horse at work", "25 09:00 horse suits rider", "25 14:00 horse at work"}
	if !slices.Equal(rules, want) {
		t.Errorf("%q, want %q", rules, want)
	}
}

// A horse that a repair spares today can do tomorrow what was posted for it.
func TestWhatARepairMendsOfLaterDatesIsNotBroken(t *testing.T) {
	b := fixtures.New()
	for _, d := range []model.Date{0, 1} {
		b.Tell(b.Lesson(fixtures.Monday+d, "10:00-10:45", b.Mia), b.Mia, b.Turn(b.Star, b.Oak))
	}
	b.House.Limits.WeekMinutes = 60
	w := b.Repair(fixtures.Monday, 1, model.Instant{})
	if later := w.LaterBroken(fixtures.Plan(w, b.Turn(b.Star, b.Oak))); len(later) != 1 || later[0].Rule.Name != "week's work" {
		t.Errorf("ridden on both dates: %v", later)
	}
	if later := w.LaterBroken(fixtures.Plan(w, nil)); len(later) != 0 {
		t.Errorf("on the ground on Monday: %v", later)
	}
}
