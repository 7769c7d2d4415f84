package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// rules.md: a violation is broken only if an open seated ride takes part in it,
// else inherited; so what a started ride breaks by itself is told too.
func TestWhatAStartedRideBreaksByItselfIsInherited(t *testing.T) {
	for _, c := range []struct {
		rule  string
		stage func(b *fixtures.Barn)
	}{
		{"load", func(b *fixtures.Barn) { b.Mia.Weight = 150 * model.Kilogram }},
		{"seat fits horse", func(b *fixtures.Barn) { b.Chart[0].Until = fixtures.Monday - 1 }},
		{"seat fits rider", func(b *fixtures.Barn) { b.Mia.Styles = []string{"western"} }},
		{"girth fits", func(b *fixtures.Barn) { b.Tag("oak girth").Family = model.LongGirth }},
		{"extras fit", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins, Size: "long"}}
			b.Posted[0].Told[0].Turn.Extras = []*model.Piece{b.Extra("R1", reins, "short")}
		}},
		{"horse suits rider", func(b *fixtures.Barn) { b.Mia.Bans = []*model.Horse{b.Star} }},
		{"piece in use", func(b *fixtures.Barn) { b.Oak.CheckDue = fixtures.Monday - 1 }},
		{"form in date", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday - 1 }},
		{"whole set", func(b *fixtures.Barn) { b.Posted[0].Told[0].Turn.Girth = nil }},
	} {
		t.Run(c.rule, func(t *testing.T) {
			b := fixtures.New()
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday, "10:00-11:00")
			b.Now = monday("10:30")
			w := b.Also(c.stage).Week()
			p := fixtures.Plan(w, w.Rides[0].Told)
			wantTold(t, w.Audit(p), "("+c.rule+")")
		})
	}
}

func TestABanHoldsForAStartedRideOfARiderWhoHasLeftTheLesson(t *testing.T) {
	b := fixtures.New()
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday, "10:00-11:00")
	b.Now, b.Mia.Bans, b.Lessons[0].Places = monday("10:30"), []*model.Horse{b.Star}, nil
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w)), "(horse suits rider)")
}
