package solver

import (
	"context"
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// Two horses that work at most 100 minutes in a week, and rides of 60: one each. A
// third is more than they can work, and no hour of any date is to blame.
func TestWorkThatDoesNotFitIsCountedBeforeALongSearch(t *testing.T) {
	b := fixtures.New()
	duke := b.Horse("Duke")
	b.Row(duke, b.Oak)
	b.House.Limits.WeekMinutes = 100
	for i, hours := range []string{"10:00-11:00", "12:00-13:00", "14:00-15:00"} {
		b.Lesson(fixtures.Monday+model.Date(i), hours, b.Mia)
	}
	w := b.Week()
	last := w.Rides[2]
	reason := tooMuchWork(w, last)
	if reason == nil || reason.Work.Needs != 180 || reason.Work.Left != 120 || len(reason.Work.Horses) != 2 || len(reason.Rides) != 2 {
		t.Fatalf("%+v", reason)
	}
	said := strings.Join(reason.Sentences(w), " ")
	for _, want := range []string{"come to 180 minutes of work from Mon 23 Nov to Wed 25 Nov", "All 2 horses can work 120 of that together"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
	w.Rides[0].State = model.Off
	if reason := tooMuchWork(w, last); reason != nil {
		t.Errorf("two rides fit: %+v", reason.Work)
	}
}

func TestWorkIsNeverCountedAsTooMuchWhereAPlanSeatsAll(t *testing.T) {
	counted := 0
	for seed := range uint64(*weeks) / 2 {
		w := random.Week(seed, 600)
		open := slices.IndexFunc(w.Rides, func(r *model.Ride) bool { return r.State == model.Open })
		if open < 0 || tooMuchWork(w, w.Rides[open]) == nil {
			continue
		}
		counted++
		judge := oracle.For(w)
		judge.Choices().Each(func(p *model.Plan) bool {
			for i, r := range w.Rides {
				if r.State == model.Open && p.Turns[i] == nil {
					return true
				}
			}
			if judge.Legal(p) {
				t.Errorf("week %d (%s): a plan seats all", seed, w.Centre.Name)
				return false
			}
			return true
		})
	}
	t.Logf("counted in %d weeks", counted)
	if counted < 10 {
		t.Errorf("counted in %d weeks", counted)
	}
}

// The same plan is asked about twice, once with its proof that no plan seats more.
func TestAProofThatThePlanSeatsTheMostIsLeanedOn(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, b.Rider("Leo"))
	w := b.Week()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := groundProved(w, p); got != 1 {
		t.Errorf("%d by the proof", got)
	}
	p.Proof.Hash = ""
	if got := groundProved(w, p); got != 0 {
		t.Errorf("%d with no proof of this plan", got)
	}
}
