package solver

import (
	"context"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
	"tackwright/solver/sat"
)

// Star goes from one lesson to the next with all that the riders of both need, of which there is one
// each: both ride, and no bound says otherwise.
func TestAHorseGoesOnWithTwoExtrasAtOnce(t *testing.T) {
	b := fixtures.New()
	b.House.Stay, b.House.Same, b.House.Other, b.House.Move = 0, 0, 5, 10
	leo := b.Rider("Leo")
	b.Mia.Extras = []model.ExtraNeed{{Kind: "reins"}, {Kind: "hand hold"}}
	leo.Extras = b.Mia.Extras
	b.Extra("rainbow", "reins", "")
	b.Extra("strap", "hand hold", "")
	b.Lesson(b.From, "10:00-10:30", b.Mia)
	b.Lesson(b.From, "10:30-11:00", leo)
	w := b.Week()
	plan, err := Plan(context.Background(), w, Options{})
	if err != nil || plan.Turns[0] == nil || plan.Turns[1] == nil {
		t.Fatalf("%v, %+v", err, plan)
	}
	e := encode(w)
	if e.s.Solve(context.Background(), e.s.Root()) != sat.Sat {
		t.Fatal("no plan")
	}
	if got := e.goals()[0].Beside(e.s.Model(), 2, nil)(context.Background()).Least; got > 0 {
		t.Errorf("at least %d on the ground, and both ride", got)
	}
}
