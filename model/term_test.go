package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// twoTerms are of the same weeks, the second closed on Monday.
func twoTerms(b *fixtures.Barn) (open, shut *model.Term) {
	open = &model.Term{Name: "adults", First: fixtures.Monday - 7, Last: fixtures.Monday + 30}
	shut = &model.Term{Name: "school", First: open.First, Last: open.Last, Closures: []model.Period{{From: fixtures.Monday, Until: fixtures.Monday}}}
	b.Terms = []*model.Term{open, shut}
	return open, shut
}

func TestALessonOfNoTermIsClosedByEveryTermOfTheDate(t *testing.T) {
	for _, c := range []struct {
		own  bool // of the open term
		want model.RideState
	}{{false, model.Off}, {true, model.Open}} {
		b := fixtures.New()
		open, _ := twoTerms(b)
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		if c.own {
			l.Term = open
		}
		if got := b.Week().Rides[0].State; got != c.want {
			t.Errorf("in a term of its own %v: state %v", c.own, got)
		}
	}
}

func TestTheTermOfTheLessonIsAskedFirstForThePairing(t *testing.T) {
	for _, c := range []struct {
		own  int // index of the lesson's term; -1: none
		want string
	}{{-1, "Star"}, {0, "Star"}, {1, "Bay"}} {
		b := fixtures.New()
		open, shut := twoTerms(b)
		shut.Closures = nil
		open.Pairings = []model.Pairing{{Rider: b.Mia, Horse: b.Star}}
		shut.Pairings = []model.Pairing{{Rider: b.Mia, Horse: b.Horse("Bay")}}
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		if c.own >= 0 {
			l.Term = b.Terms[c.own]
		}
		w := b.Week()
		if h, _ := w.Usual(w.Rides[0]); h.Name != c.want {
			t.Errorf("in term %d: usually on %s", c.own, h.Name)
		}
	}
}

func TestAnotherTermOfTheDateIsAskedWhereTheLessonsOwnHasNoPairing(t *testing.T) {
	b := fixtures.New()
	open, shut := twoTerms(b)
	open.Pairings = []model.Pairing{{Rider: b.Mia, Horse: b.Star}}
	shut.Closures = nil
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia).Term = shut
	w := b.Week()
	if h, _ := w.Usual(w.Rides[0]); h != b.Star {
		t.Errorf("usually on %v", h)
	}
}

func TestAClosureOfHoursIsAskedOfEachPartOfALesson(t *testing.T) {
	b := fixtures.New()
	open, _ := twoTerms(b)
	b.Terms = []*model.Term{open}
	open.Closures = []model.Period{{From: fixtures.Monday, Until: fixtures.Monday, Start: fixtures.At("10:30"), End: fixtures.At("12:00"), Why: "fire drill"}}
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Rider("Noor"))
	b.Part(l, b.Mia, "10:00-10:30")
	b.Part(l, b.Rider("Zoe"), "10:30-11:00")
	b.Lesson(fixtures.Monday, "11:00-12:00", b.Mia)
	w := b.Week()
	turn := b.Turn(b.Star, b.Oak)
	for _, r := range w.Rides {
		p := fixtures.Plan(w)
		p.Turns[r.Index] = turn
		if r.Rider == b.Mia && r.Meeting.Lesson == l {
			wantTold(t, w.Audit(p))
			continue
		}
		wantTold(t, w.Audit(p), "centre open")
		if r.State != model.Off || r.OffWhy != "fire drill" {
			t.Errorf("%s: state %v, %s", r, r.State, r.OffWhy)
		}
	}
	if held := w.Meetings[0].NotHeld == "" && w.Meetings[1].NotHeld == "fire drill"; !held {
		t.Errorf("not held: %q, %q", w.Meetings[0].NotHeld, w.Meetings[1].NotHeld)
	}
}
