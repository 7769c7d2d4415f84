package sheet

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestADateOutsideThePlanIsRefused(t *testing.T) {
	w := fixtures.New().Week()
	for _, d := range []model.Date{monday - 1, monday + 7} {
		if l, err := Pull(w, fixtures.Plan(w), d, posted); err == nil {
			t.Errorf("%v: no error, %d rides", d, l.Rides)
		}
	}
}

func TestOnlyTheDateAskedForIsOnTheSheet(t *testing.T) {
	b := fixtures.New()
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday+1, "10:00-10:45", b.Mia)
	if l := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)); l.Rides != 1 || len(l.TackUps) != 1 {
		t.Errorf("%d rides, %d tack-ups", l.Rides, len(l.TackUps))
	}
}

func TestAStartedRideIsAsItWasToldWhateverThePlanSays(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	first, second := b.Lesson(monday, "10:00-10:45", b.Mia), b.Lesson(monday, "11:30-12:15", b.Mia)
	b.Tell(first, b.Mia, b.Turn(b.Star, b.Oak))
	b.Tell(second, b.Mia, b.Turn(b.Star, b.Oak))
	b.Now = model.Instant{Date: monday, Minute: hm("11:00")}
	w := b.Week()
	l, err := Pull(w, fixtures.Plan(w, b.Turn(moss, b.Oak), b.Turn(moss, b.Oak)), monday, posted)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, u := range l.TackUps {
		got = append(got, u.Horse)
	}
	if !slices.Equal(got, []string{"Star", "Moss"}) {
		t.Errorf("tack-ups of %v", got)
	}
}

func TestAStartedRideThatWasToldOnTheGroundIsOnTheGround(t *testing.T) {
	b := fixtures.New()
	l := b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Tell(l, b.Mia, nil)
	b.Now = model.Instant{Date: monday, Minute: hm("11:00")}
	got := pull(t, b)
	if len(got.Ground) != 1 || got.Rides != 0 {
		t.Errorf("%d rides, on the ground %+v", got.Rides, got.Ground)
	}
	if text := got.Text(); !strings.Contains(text, "no ride has a horse on Monday 23 November\n") {
		t.Error(text)
	}
}

func TestARiderWhoIsAwayIsNotOnTheSheet(t *testing.T) {
	b := fixtures.New()
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, Words: "chickenpox"})
	if text := pull(t, b).Text(); strings.Contains(text, "Mia") || strings.Contains(text, "chickenpox") {
		t.Error(text)
	}
}

func TestThePlansVersionAndThePrintTimeTellAnOldSheetFromANewOne(t *testing.T) {
	w := fixtures.New().Week()
	for _, c := range []struct {
		stamp Stamp
		plan  string
	}{
		// The first bytes of the SHA-256 of nothing (FIPS 180-4 examples: from memory): no ride.
		{Stamp{File: "plans/2026-11-23.toml"}, "pencilled in plans/2026-11-23.toml, as of e3b0c4"},
		{posted, "version 3, posted by Ana Reyes on Fri 20 Nov, 17:05"},
	} {
		c.stamp.Printed = posted.Printed
		l, err := Pull(w, fixtures.Plan(w), monday, c.stamp)
		if err != nil || l.Plan != c.plan || l.Header.Printed != "2026-11-23 07:10" {
			t.Errorf("%q, printed %q, %v", l.Plan, l.Header.Printed, err)
		}
		if text := l.Text(); !strings.Contains(text, c.plan) || !strings.Contains(text, "Mon 23 Nov, 07:10") {
			t.Errorf("%s", text)
		}
	}
}

func TestAPencilledPlanThatChangedHasAnotherHash(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Saddle("ash", moss, b.Star)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	w := b.Week()
	seen := map[string]bool{}
	for _, turn := range []*model.Turn{nil, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Tag("ash")), b.Turn(moss, b.Tag("ash")), b.Turn(b.Star, b.Oak)} {
		l, err := Pull(w, fixtures.Plan(w, turn), monday, Stamp{})
		if err != nil || len(l.Hash) != 6 || !l.Pencil || !strings.Contains(l.Text(), "Mon 23 Nov, pencilled "+l.Hash) {
			t.Errorf("%q %v %v", l.Hash, l.Pencil, err)
		}
		seen[l.Hash] = true
	}
	if len(seen) != 4 {
		t.Errorf("%v", seen)
	}
}

// The cautions of the trade's paper for the barn: common practice, all.
func TestEverySheetCarriesTheCautions(t *testing.T) {
	b, turns := ordinary()
	for name, text := range map[string]string{"a day": pull(t, b, turns...).Text(), "nothing": pull(t, fixtures.New()).Text()} {
		text = strings.Join(strings.Fields(text), " ")
		for _, want := range []string{
			"Girths are re-checked by the instructor before anyone mounts and again after a few minutes of walk.",
			"A pad never stays on a horse without the saddle.",
			"Stay where the horse can see you or keep a hand on it, and never go under its belly.",
			"Tighten a girth in steps: snug enough that nothing slips, no more until the instructor's check.",
			"A fit is for a saddle fitter, lameness for a vet, a rider's health for a physician, and the go-ahead for the instructor; local codes come first.",
		} {
			if !strings.Contains(strings.ReplaceAll(text, "! ", ""), want) {
				t.Errorf("%s: not on it: %s", name, want)
			}
		}
	}
}

func TestNoLayoutTellsASurnameAWeightOrAnythingOfHealth(t *testing.T) {
	b, turns := ordinary()
	b.Riders[0].Weight, b.Riders[0].Cautions = 54321, []string{"seizures"}
	b.Riders[0].Height, b.Riders[0].Level = 16789, "beginner"
	b.Horses[4].Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: monday - 5}}}
	b.Horses[0].Weight = 612345
	l := pull(t, b, turns...)
	out, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"text": l.Text(), "CSV": l.CSV(), "JSON": string(out)} {
		text = strings.ReplaceAll(strings.ToLower(text), "lameness for a vet", "")
		for _, secret := range []string{"secret", "hidden", "54321", "54.3", "119.7", "612345", "1678", "seizure", "lame", "beginner", "kg"} {
			if strings.Contains(text, secret) {
				t.Errorf("%s tells %q", name, secret)
			}
		}
	}
	if !slices.Contains(l.NotWorking, "Old Clover") {
		t.Errorf("not working: %v", l.NotWorking)
	}
}

func TestWhatNobodyRecordedIsNamedAsNotChecked(t *testing.T) {
	b := fixtures.New()
	b.Star.Height, b.Star.Barrel, b.Star.Levels = 0, "", []string{"novice"}
	b.House.Levels = []string{"novice"}
	b.Mia.HorseMax, b.Mia.Barrels, b.Mia.Sidewalkers = 16*model.Hand, []model.Barrel{model.Wide}, 1
	b.Mia.Extras = []model.ExtraNeed{{Kind: "hand hold", Size: "small"}}
	hold := b.Extra("H1", "hand hold", "")
	for _, p := range b.Pieces {
		p.CheckDue = monday
	}
	b.Oak.CheckDue = 0
	moss := b.Horse("Moss")
	ash := b.Saddle("ash", moss)
	ash.Label = 0
	for _, tag := range []string{"ash", "ash pad", "ash girth"} {
		b.Tag(tag).CheckDue = monday
	}
	leo := b.Rider("Leo")
	leo.SeatMin, leo.SeatMax = 170, 170
	b.Lesson(monday, "10:00-10:45", b.Mia).Name = "Heron"
	b.Lesson(monday, "11:00-11:45", leo)
	got := map[string][]string{}
	for _, n := range pull(t, b, b.Turn(b.Star, b.Oak, hold), b.Turn(moss, ash)).NotChecked {
		got[n.What] = n.Of
	}
	for what, of := range map[string]string{
		"height of horse": "Star", "barrel of horse": "Star", "level, on a horse that takes only some": "Star",
		"rider's size of seat, for the seat": "oak", "size of seat": "ash", "size of an extra": "H1", "date of the tack check": "oak",
		"helpers that the lesson can count on": "Heron",
	} {
		if !slices.Equal(got[what], []string{of}) {
			t.Errorf("%s: %v, want %s", what, got[what], of)
		}
	}
	if len(got) != 8 {
		t.Errorf("%v", got)
	}
}

func TestWhatIsKnownIsNotNamedAsNotChecked(t *testing.T) {
	b := fixtures.New()
	b.Mia.HorseMax, b.Mia.Barrels, b.Mia.SeatMin, b.Mia.SeatMax = 16*model.Hand, []model.Barrel{model.Medium}, 170, 170
	for _, p := range b.Pieces {
		p.CheckDue = monday
	}
	b.Lesson(monday, "10:00-10:45", b.Mia)
	if l := pull(t, b, b.Turn(b.Star, b.Oak)); len(l.NotChecked)+len(l.NotCheckedHere) > 0 {
		t.Errorf("%+v, here %v", l.NotChecked, l.NotCheckedHere)
	}
}

func TestRecordsKeptElsewhereAreNamedAsNotCheckedHere(t *testing.T) {
	b := fixtures.New()
	b.House.Elsewhere = model.Elsewhere{Forms: true, FitDates: true, TackChecks: true}
	b.Mia.SeatMin, b.Mia.SeatMax = 170, 170
	b.Lesson(monday, "10:00-10:45", b.Mia)
	l := pull(t, b, b.Turn(b.Star, b.Oak))
	if want := []string{"riders' forms", "dates of fit approvals", "dates of tack checks"}; !slices.Equal(l.NotCheckedHere, want) {
		t.Errorf("got %q, want %q", l.NotCheckedHere, want)
	}
	if len(l.NotChecked) > 0 {
		t.Errorf("not checked: %+v", l.NotChecked)
	}
}

func TestTheSamePlanGivesTheSameBytes(t *testing.T) {
	first := ""
	for range 30 {
		b, turns := ordinary()
		l := pull(t, b, turns...)
		out, err := json.Marshal(l)
		if err != nil {
			t.Fatal(err)
		}
		all := l.Text() + l.CSV() + string(out)
		if first == "" {
			first = all
		}
		if all != first {
			t.Fatal("two runs differ")
		}
	}
}
