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
	for _, v := range b.Repair(fixtures.Monday, 1, model.Instant{}).LaterBroken() {
		open := v.Stints[slices.IndexFunc(v.Stints, func(s *model.Stint) bool { return s.Open })]
		rules = append(rules, open.Date.String()[8:]+" "+open.Start.String()+" "+v.Rule.Name)
	}
	want := []string{"24 09:00 week's work", "24 09:00 horse suits rider", "24 14:00 horse at work", "25 09:00 horse suits rider", "25 14:00 horse at work"}
	if !slices.Equal(rules, want) {
		t.Errorf("%q, want %q", rules, want)
	}
}
