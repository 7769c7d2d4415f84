package model_test

import (
	"fmt"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// due is what runs out in 60 days from Monday, a line each: the kind, what it is
// of, the days from Monday, the rides that wait for it, and the posted ones.
func due(change ...func(*fixtures.Barn)) string {
	b := fixtures.New()
	b.Lesson(fixtures.Monday+3, "10:00-11:00", b.Mia)
	b.Also(change...).Obey()
	var lines []string
	for _, x := range b.Due(fixtures.Monday, 60) {
		of := ""
		switch {
		case x.Rider != nil:
			of = x.Rider.Name
		case x.Piece != nil:
			of = x.Piece.Tag
		default:
			of = x.Horse.Name
		}
		on := "no date"
		if x.On != 0 {
			on = fmt.Sprint(int(x.On - fixtures.Monday))
		}
		lines = append(lines, fmt.Sprintf("%s of %s, %s: %d, %d posted", x.Kind, of, on, len(x.Waits), x.Posted))
	}
	return strings.Join(lines, "\n")
}

func TestARideWaitsForWhatRunsOutBeforeIt(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*fixtures.Barn)
		want   string
	}{
		{"nothing runs out", func(b *fixtures.Barn) {}, ""},
		{"form", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday + 2 }, "form of Mia, 2: 1, 0 posted"},
		{"form that is still valid on the date of the ride", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday + 3 }, "form of Mia, 3: 0, 0 posted"},
		{"form that has run out", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday - 40 }, "form of Mia, -40: 1, 0 posted"},
		{"form of a rider in no lesson", func(b *fixtures.Barn) { b.Rider("Leo").FormUntil = fixtures.Monday + 60 }, "form of Leo, 60: 0, 0 posted"},
		{"form later than the last date", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday + 61 }, ""},
		{"form kept elsewhere", func(b *fixtures.Barn) { b.Mia.FormUntil, b.House.Elsewhere.Forms = fixtures.Monday, true }, ""},
		{"form extended by a note", func(b *fixtures.Barn) {
			b.Mia.FormUntil = fixtures.Monday + 2
			b.Note(model.Note{Kind: model.NoteForm, Rider: b.Mia, Through: fixtures.Monday + 5})
		}, "form of Mia, 5: 0, 0 posted"},
		{"fit", func(b *fixtures.Barn) { b.Chart[0].Until = fixtures.Monday + 2 }, "fit of oak, 2: 1, 0 posted"},
		{"fit of one of two seats", func(b *fixtures.Barn) {
			b.Chart[0].Until = fixtures.Monday + 2
			b.Saddle("elm", b.Star)
		}, "fit of oak, 2: 0, 0 posted"},
		{"fit that was renewed in a row of its own", func(b *fixtures.Barn) {
			b.Chart[0].Until = fixtures.Monday + 2
			b.Row(b.Star, b.Oak)
		}, ""},
		{"check of the seat", func(b *fixtures.Barn) { b.Oak.CheckDue = fixtures.Monday + 2 }, "tack check of oak, 2: 1, 0 posted"},
		{"check of one of two girths", func(b *fixtures.Barn) {
			b.Tag("oak girth").CheckDue = fixtures.Monday + 2
			b.Saddle("elm")
		}, "tack check of oak girth, 2: 0, 0 posted"},
		{"check of the only extra", func(b *fixtures.Barn) {
			b.Extra("X1", "hand hold", "").CheckDue = fixtures.Monday + 2
			b.Mia.Extras = []model.ExtraNeed{{Kind: "hand hold"}}
		}, "tack check of X1, 2: 1, 0 posted"},
		{"horse out", func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, Review: fixtures.Monday + 9})
		}, "review of Star, 9: 1, 0 posted"},
		{"horse out with another for the ride", func(b *fixtures.Barn) {
			b.Star.Out = []model.Out{{Why: model.VetStop, From: model.Instant{Date: fixtures.Monday - 9}}}
			b.Row(b.Horse("Bay"), b.Oak)
		}, "review of Star, no date: 0, 0 posted"},
		{"ride that another rule stops anyway", func(b *fixtures.Barn) {
			b.Mia.FormUntil, b.Mia.Bans = fixtures.Monday, []*model.Horse{b.Star}
		}, "form of Mia, 0: 0, 0 posted"},
		{"rider away", func(b *fixtures.Barn) {
			b.Mia.FormUntil = fixtures.Monday
			b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, Date: fixtures.Monday + 3})
		}, "form of Mia, 0: 0, 0 posted"},
	} {
		if got := due(c.change); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestARideThatNeedsTwoRenewalsOrEitherOfTwoWaitsForBoth(t *testing.T) {
	both := due(func(b *fixtures.Barn) { b.Mia.FormUntil, b.Chart[0].Until = fixtures.Monday, fixtures.Monday+1 })
	if want := "form of Mia, 0: 1, 0 posted\nfit of oak, 1: 1, 0 posted"; both != want {
		t.Error(both)
	}
	either := due(func(b *fixtures.Barn) {
		b.Chart[0].Until = fixtures.Monday
		b.Saddle("elm", b.Star)
		b.Chart[1].Until = fixtures.Monday
	})
	if want := "fit of oak, 0: 1, 0 posted\nfit of elm, 0: 1, 0 posted"; either != want {
		t.Error(either)
	}
}

// The girth's check is over as well, but another girth would do: renewing it
// changes nothing.
func TestWhatWouldChangeNothingHasNoRideWaiting(t *testing.T) {
	got := due(func(b *fixtures.Barn) {
		b.Saddle("elm")
		b.Oak.CheckDue, b.Tag("oak girth").CheckDue = fixtures.Monday, fixtures.Monday
	})
	if want := "tack check of oak, 0: 1, 0 posted\ntack check of oak girth, 0: 0, 0 posted"; got != want {
		t.Error(got)
	}
}

func TestPostedRidesCountThatWereToldToGoByWhatRunsOut(t *testing.T) {
	got := due(func(b *fixtures.Barn) {
		b.Tell(b.Lessons[0], b.Mia, b.Turn(b.Star, b.Oak))
		b.Saddle("elm", b.Star)
		b.Mia.FormUntil, b.Chart[0].Until = fixtures.Monday+2, fixtures.Monday+2
		b.Oak.CheckDue, b.Tag("elm").CheckDue = fixtures.Monday+2, fixtures.Monday+2
		b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Ill, Date: fixtures.Monday + 3})
	})
	// elm's check alone lets her ride; for oak it takes two renewals
	want := "form of Mia, 2: 1, 1 posted\nfit of oak, 2: 0, 1 posted\ntack check of oak, 2: 0, 1 posted\n" +
		"tack check of elm, 2: 1, 0 posted\nreview of Star, 4: 1, 1 posted"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestAWeighingIsDueWhereTheCentreSaysHowOftenAndStopsNoRide(t *testing.T) {
	for _, c := range []struct {
		every   int
		weighed model.Date
		want    string
	}{{0, fixtures.Monday - 90, ""}, {90, fixtures.Monday - 80, "weighing of Star, 10: 0, 0 posted"}, {90, 0, "weighing of Star, no date: 0, 0 posted"}} {
		got := due(func(b *fixtures.Barn) { b.WeighAge, b.Star.Weighed = c.every, c.weighed })
		if got != c.want {
			t.Errorf("every %d days: %q, want %q", c.every, got, c.want)
		}
	}
}

func TestADateIsOpenThatWasPostedAndIsOverAndThatNobodyClosed(t *testing.T) {
	b := fixtures.New()
	turn := b.Turn(b.Star, b.Oak)
	for d := range model.Date(5) {
		b.Rode(turn, fixtures.Monday+d, "10:00-11:00")
	}
	b.Ridden = []*model.Ridden{{Date: fixtures.Monday + 1}}
	b.Posted = append(b.Posted, &model.Posted{Version: 6, From: fixtures.Monday + 2, Until: fixtures.Monday + 2}) // nobody rides after all
	got := b.OpenDates(fixtures.Monday + 4)
	if len(got) != 2 || got[0] != (model.OpenDate{Date: fixtures.Monday, Rides: 1}) || got[1].Date != fixtures.Monday+3 {
		t.Errorf("%+v", got)
	}
}
