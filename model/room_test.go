package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// lessonWithRoom is a barn with one open lesson of size 3 with two riders, Mia and
// Leo, and Noor, who waits.
func lessonWithRoom() (*fixtures.Barn, *model.Lesson, *model.Rider) {
	b := fixtures.New()
	b.House.Levels = []string{"beginner", "novice"}
	l := b.Lesson(b.From, "10:00-10:45", b.Mia, b.Rider("Leo"))
	l.On, l.Weekday = 0, b.From.Weekday()
	l.Open, l.Size, l.Level = true, 3, "beginner"
	noor := b.Rider("Noor")
	noor.Level, noor.WaitingSince = "beginner", b.From-30
	noor.Free = []model.Period{{Start: fixtures.At("10:00"), End: fixtures.At("12:00")}}
	return b, l, noor
}

func TestALessonTakesARiderInByKindLevelSizeAndHours(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*fixtures.Barn, *model.Lesson, *model.Rider)
		why    string
		not    []string // checked
	}{
		{"as it is", func(*fixtures.Barn, *model.Lesson, *model.Rider) {}, "", nil},
		{"closed", func(_ *fixtures.Barn, l *model.Lesson, _ *model.Rider) { l.Open = false }, "closed to others", nil},
		{"private", func(_ *fixtures.Barn, l *model.Lesson, _ *model.Rider) { l.Kind = model.Private }, "private, and so takes nobody in", nil},
		{"semi-private", func(_ *fixtures.Barn, l *model.Lesson, _ *model.Rider) { l.Kind = model.SemiPrivate }, "", nil},
		{"another level", func(_ *fixtures.Barn, _ *model.Lesson, r *model.Rider) { r.Level = "novice" }, "for riders of another level", nil},
		{"level unknown", func(_ *fixtures.Barn, _ *model.Lesson, r *model.Rider) { r.Level = "" }, "", []string{"the rider's level"}},
		{"hours not stated", func(_ *fixtures.Barn, _ *model.Lesson, r *model.Rider) { r.Free = nil }, "", []string{"the rider's free hours"}},
		{"helpers not stated", func(_ *fixtures.Barn, _ *model.Lesson, r *model.Rider) { r.Leader = true }, "", []string{"helpers of the lesson"}},
		{"free a minute too short", func(_ *fixtures.Barn, _ *model.Lesson, r *model.Rider) { r.Free[0].End = fixtures.At("10:44") }, model.OutsideHours, nil},
		{"free to the minute", func(_ *fixtures.Barn, _ *model.Lesson, r *model.Rider) { r.Free[0].End = fixtures.At("10:45") }, "", nil},
		{"two places", func(_ *fixtures.Barn, l *model.Lesson, _ *model.Rider) { l.Size = 2 }, "full", nil},
		{"no size stated", func(_ *fixtures.Barn, l *model.Lesson, _ *model.Rider) { l.Size = 0 }, "", nil},
		{"a guest has the place", func(b *fixtures.Barn, l *model.Lesson, _ *model.Rider) {
			b.Bookings = append(b.Bookings, &model.Booking{Date: b.From, Lesson: l, Rider: b.Rider("Guest")})
		}, "full", nil},
		{"who is away keeps her place", func(b *fixtures.Barn, l *model.Lesson, _ *model.Rider) {
			l.Size = 2
			b.Mia.Away = []model.Period{{From: b.From, Until: b.From}}
		}, "full", nil},
		{"who comes every other week keeps it", func(b *fixtures.Barn, l *model.Lesson, _ *model.Rider) {
			l.Places = append(l.Places, model.Place{Rider: b.Rider("Odd"), From: b.From - 7, EveryOther: true})
		}, "full", nil},
		{"two share a place in turn", func(b *fixtures.Barn, l *model.Lesson, _ *model.Rider) {
			l.Places = nil
			b.Part(l, b.Mia, "10:00-10:20")
			b.Part(l, b.Riders[1], "10:20-10:45")
			l.Size = 2
		}, "", nil},
		{"in it already", func(_ *fixtures.Barn, l *model.Lesson, r *model.Rider) {
			l.Places = append(l.Places, model.Place{Rider: r})
		}, "the rider is in it already", nil},
		{"not held", func(b *fixtures.Barn, l *model.Lesson, _ *model.Rider) {
			b.Note(model.Note{Kind: model.NoteCancelled, Date: b.From, Lesson: l})
		}, "not held on that date", nil},
	} {
		b, l, noor := lessonWithRoom()
		c.change(b, l, noor)
		w := b.Week()
		why, not := w.TakesIn(model.Ask{Rider: noor, Meeting: w.Meetings[0]})
		if why != c.why || !slices.Equal(not, c.not) {
			t.Errorf("%s: %q, not checked %q", c.name, why, not)
		}
	}
}

func TestAWeekWithAnAskHasThatRideAndAllOthers(t *testing.T) {
	b, _, noor := lessonWithRoom()
	w := b.Week()
	more, rides := w.WithRides([]model.Ask{{Rider: noor, Meeting: w.Meetings[0]}})
	if len(more.Rides) != 3 || len(w.Rides) != 2 || len(rides) != 1 || rides[0].Rider != noor || rides[0].State != model.Open || len(b.Bookings) != 0 {
		t.Errorf("%v, asked for %v", more.Rides, rides)
	}
}
