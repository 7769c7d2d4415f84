package model_test

import (
	"math/bits"
	"math/rand/v2"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// mess is a barn of two horses and three saddles with one ride on Thursday, of
// which things have run out at random.
func mess(random *rand.Rand) *fixtures.Barn {
	b := fixtures.New()
	bay := b.Horse("Bay")
	b.Row(bay, b.Oak)
	b.Saddle("elm", b.Star)
	b.Bareback("fleece", bay)
	b.Extra("X1", "hand hold", "")
	b.Extra("X2", "hand hold", "")
	b.Mia.Extras = []model.ExtraNeed{{Kind: "hand hold"}}
	b.Lesson(fixtures.Monday+3, "10:00-11:00", b.Mia)
	over := func() bool { return random.IntN(3) == 0 }
	if over() {
		b.Mia.FormUntil = fixtures.Monday
	}
	for _, r := range b.Chart {
		if over() {
			r.Until = fixtures.Monday + 1
		}
	}
	for _, p := range b.Pieces {
		if over() {
			p.CheckDue = fixtures.Monday + 2
		}
	}
	for _, h := range b.Horses {
		if over() {
			h.Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: fixtures.Monday}, Review: fixtures.Monday + 9}}
		}
	}
	return b
}

// goes reports whether the ride goes where those things are renewed, and puts
// them back as they were.
func goes(b *fixtures.Barn, due []*model.Due, which uint) bool {
	for i, x := range due {
		if which>>i&1 == 0 {
			continue
		}
		switch x.Kind {
		case model.DueForm:
			defer func(was model.Date) { x.Rider.FormUntil = was }(x.Rider.FormUntil)
			x.Rider.FormUntil = fixtures.Monday + 100
		case model.DueFit:
			for _, r := range b.Chart {
				if r.Horse == x.Horse && r.Seat == x.Piece {
					defer func(was model.Date) { r.Until = was }(r.Until)
					r.Until = fixtures.Monday + 100
				}
			}
		case model.DueCheck:
			defer func(was model.Date) { x.Piece.CheckDue = was }(x.Piece.CheckDue)
			x.Piece.CheckDue = fixtures.Monday + 100
		case model.DueReview:
			defer func(was []model.Out) { x.Horse.Out = was }(x.Horse.Out)
			x.Horse.Out = nil
		}
	}
	w := b.Centre.Week(fixtures.Monday, 7, model.Instant{})
	_, free := w.Alone(w.Rides[0])
	return len(free) > 0
}

// The audit is asked of every set of renewals, fewest first: a set that lets the
// ride go, and holds no smaller one that does, is one that it waits for.
func TestARideWaitsForWhatTheAuditOfEverySetOfRenewalsSays(t *testing.T) {
	random, waiting := rand.New(rand.NewPCG(11, 25)), 0
	for n := range 150 {
		b := mess(random)
		due := b.Due(fixtures.Monday, 60)
		if len(due) > 8 {
			continue // too many sets to try
		}
		var least []uint
		want := uint(0)
		for size := range len(due) + 1 {
			for set := range uint(1) << len(due) {
				if bits.OnesCount(set) != size || holdsOneOf(set, least) {
					continue
				}
				if goes(b, due, set) {
					least = append(least, set)
					want |= set
				}
			}
		}
		got := uint(0)
		for i, x := range due {
			if len(x.Waits) > 0 {
				got |= 1 << i
			}
		}
		if got != want {
			t.Fatalf("case %d: waits for %b of %d, want %b", n, got, len(due), want)
		}
		if want != 0 {
			waiting++
		}
	}
	if waiting < 40 {
		t.Errorf("only in %d cases does anything wait", waiting)
	}
}

func holdsOneOf(set uint, sets []uint) bool {
	for _, s := range sets {
		if s&set == s {
			return true
		}
	}
	return false
}
