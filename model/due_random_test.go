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
	if random.IntN(4) == 0 {
		b.Mia.Extras = append(b.Mia.Extras, b.Mia.Extras[0]) // one for each hand
	}
	b.Oak.Weight, b.Tag("X1").Weight = model.Grams(random.IntN(15))*model.Kilogram, model.Grams(1+random.IntN(5))*model.Kilogram
	b.Mia.Weight = model.Grams(80+random.IntN(10)) * model.Kilogram // near the 100 kg that 500 kg may carry
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

// The audit is asked of every set of renewals, smallest first: the ride waits for
// all that is in any of the smallest that let it go.
func TestARideWaitsForWhatTheAuditOfEverySetOfRenewalsSays(t *testing.T) {
	random, waiting := rand.New(rand.NewPCG(11, 25)), 0
	for n := range 300 {
		b := mess(random)
		due := b.Due(fixtures.Monday, 60)
		if len(due) > 8 {
			continue // too many sets to try
		}
		want, found := uint(0), false
		for size := 0; size <= len(due) && !found; size++ {
			for set := range uint(1) << len(due) {
				if bits.OnesCount(set) == size && goes(b, due, set) {
					want, found = want|set, true
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
