package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// fingerprint is the fingerprint of a barn with a lesson, a plan and a past, after a
// change to the barn.
func fingerprint(change func(b *fixtures.Barn)) string {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, b.Rider("Noor"))
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-1, "10:00-11:00")
	b.House.Factors = map[string]model.Percent{"group": 100, "private": 80, "lunging": 50}
	w := b.Also(change).Week()
	return w.Fingerprint(fixtures.Plan(w, b.Turn(b.Star, b.Oak)))
}

func nothing(*fixtures.Barn) {}

func TestTheSameWeekAndPlanReadTheSameInEveryRun(t *testing.T) {
	first := fingerprint(nothing)
	if len(first) != 32 {
		t.Errorf("%q is not 32 digits", first)
	}
	for range 20 {
		if again := fingerprint(nothing); again != first {
			t.Fatalf("%s, then %s", first, again)
		}
	}
}

func TestTheFingerprintChangesWithWhateverDecidesThePlan(t *testing.T) {
	seen := map[string]string{fingerprint(nothing): "nothing"}
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn)
	}{
		{"a horse's weight, by a gram", func(b *fixtures.Barn) { b.Star.Weight++ }},
		{"a rider's weight, by a gram", func(b *fixtures.Barn) { b.Mia.Weight++ }},
		{"a limit", func(b *fixtures.Barn) { b.House.Limits.DayMinutes = 210 }},
		{"a factor", func(b *fixtures.Barn) { b.House.Factors["private"] = 81 }},
		{"a row's date", func(b *fixtures.Barn) { b.Chart[0].Until++ }},
		{"a row's girth", func(b *fixtures.Barn) { b.Chart[0].Girths = b.Pieces[2:] }},
		{"a ban", func(b *fixtures.Barn) { b.Mia.Bans = b.Horses }},
		{"a booking", func(b *fixtures.Barn) {
			b.Bookings = []*model.Booking{{Date: fixtures.Monday, Lesson: b.Lessons[0], Rider: b.Rider("guest")}}
		}},
		{"the hour of a lesson", func(b *fixtures.Barn) { b.Lessons[0].Start++ }},
		{"the size of a lesson", func(b *fixtures.Barn) { b.Lessons[0].Size = 4 }},
		{"the kind of a lesson", func(b *fixtures.Barn) { b.Lessons[0].Kind = model.Private }},
		{"the helpers of a lesson", func(b *fixtures.Barn) { b.Lessons[0].Hands.Leaders = 2 }},
		{"a note that keeps a rider on a horse", func(b *fixtures.Barn) { b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Horse: b.Star}) }},
		{"a note that keeps her off it", func(b *fixtures.Barn) { b.Note(model.Note{Kind: model.NoteNever, Rider: b.Mia, Horse: b.Star}) }},
		{"posted work around the week", func(b *fixtures.Barn) { b.Posted[0].Told[0].Work++ }},
		{"a rider stood down last time", func(b *fixtures.Barn) { b.Posted[0].Told[0].Turn = nil }},
		{"the usual horse of a rider on the ground, which no goal counts", func(b *fixtures.Barn) { b.Riders[1].Usual = b.Star }},
		{"a contact", func(b *fixtures.Barn) { b.Star.OwnTack = []model.Span{{From: ago(2), End: ago(0)}} }},
		{"a work", func(b *fixtures.Barn) { b.Work(b.Star, fixtures.Monday+1, "10:00-10:30") }},
		{"the dates planned", func(b *fixtures.Barn) { b.Days = 6 }},
		{"the hour now", func(b *fixtures.Barn) { b.Now = monday("06:00") }},
	} {
		got := fingerprint(c.change)
		if same, ok := seen[got]; ok {
			t.Errorf("%s: the same as after %s", c.name, same)
		}
		seen[got] = c.name
	}
}

func TestTheFingerprintChangesWithATurn(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Saddle("elm")
	w := b.Week()
	turn, other := b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)
	other.Girth = b.Tag("elm girth")
	a, c, none := w.Fingerprint(fixtures.Plan(w, turn)), w.Fingerprint(fixtures.Plan(w, other)), w.Fingerprint(fixtures.Plan(w))
	if a == c || a == none || c == none {
		t.Errorf("%s, %s and %s", a, c, none)
	}
}
