package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// A note is tried on a copy: nothing of the centre changes, and what was not known to
// be out of use there is back in it here.
func TestAWeekWithANoteLeavesTheCentreAsItIs(t *testing.T) {
	b := fixtures.New()
	b.Oak.Out = []model.PieceOut{{Why: "tree"}}
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Week()
	with := w.With(&model.Note{Kind: model.NotePieceBack, Piece: b.Oak, Date: fixtures.Monday, By: b.Ann},
		&model.Note{Kind: model.NoteMoved, Lesson: l, Date: fixtures.Monday, From: fixtures.At("10:30"), Until: fixtures.At("11:30")})
	ride := with.Same(w.Rides[0])
	if ride == nil || ride.Start != fixtures.At("10:30") || ride.Rider == b.Mia {
		t.Fatalf("%+v", ride)
	}
	for _, p := range with.Centre.Pieces {
		if p.Tag == "oak" && with.NotInUse(p, fixtures.Monday, ride.Start, ride.End) != "" {
			t.Error("oak is not back")
		}
	}
	if len(b.Notes) != 0 || w.NotInUse(b.Oak, fixtures.Monday, ride.Start, ride.End) == "" || w.Rides[0].Start != fixtures.At("10:00") {
		t.Error("the centre has changed")
	}
}

func TestBesideAPlanTheRidesOfOtherDatesAreFacts(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Lesson(fixtures.Monday+1, "10:00-11:00", b.Mia)
	b.Star.Limits.WeekMinutes = 60
	w := b.Week()
	turn := b.Turn(b.Star, b.Oak)
	beside := w.Beside(fixtures.Plan(w, turn), fixtures.Monday+1)
	if r := beside.Rides[0]; r.State != model.Started || r.Told != turn || len(beside.Facts) != 1 || w.Rides[0].State != model.Open {
		t.Fatalf("%+v, %v", r, beside.Facts)
	}
	if _, free := beside.Alone(beside.Rides[1]); len(free) > 0 {
		t.Error("Star has worked all its week")
	}
}

func TestForOneDateAPlaceIsFreeWhereItsRiderIsAwayOrLeaves(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*fixtures.Barn, *model.Lesson)
		leaves bool
		want   string
	}{
		{"full", func(*fixtures.Barn, *model.Lesson) {}, false, "full"},
		{"its rider leaves", func(*fixtures.Barn, *model.Lesson) {}, true, ""},
		{"its rider is away", func(b *fixtures.Barn, _ *model.Lesson) { b.Mia.Away = []model.Period{{}} }, false, ""},
		{"closed, whoever leaves", func(_ *fixtures.Barn, l *model.Lesson) { l.Open = false }, true, "closed to others"},
		{"she is away herself", func(b *fixtures.Barn, _ *model.Lesson) { b.Riders[1].Away = []model.Period{{}} }, true, "the rider is away then"},
		{"outside her hours", func(b *fixtures.Barn, _ *model.Lesson) {
			b.Riders[1].Free = []model.Period{{Start: fixtures.At("10:15"), End: fixtures.At("12:00")}}
		}, true, model.OutsideHours},
	} {
		b := fixtures.New()
		leo := b.Rider("Leo")
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		l.Open, l.Size = true, 1
		c.change(b, l)
		w := b.Week()
		var leaves *model.Rider
		if c.leaves {
			leaves = b.Mia
		}
		if got := w.NoPlace(model.Ask{Rider: leo, Meeting: w.Meetings[0]}, leaves); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
