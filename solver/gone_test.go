package solver

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// without is a centre that a horse or a piece has left.
func without(c *model.Centre, h *model.Horse, p *model.Piece) {
	gone := func(x *model.Piece) bool { return p != nil && (x == p || x != nil && x.WithSeat == p) }
	c.Horses = slices.DeleteFunc(c.Horses, func(x *model.Horse) bool { return x == h })
	c.Pieces = slices.DeleteFunc(c.Pieces, gone)
	c.Works = slices.DeleteFunc(c.Works, func(x *model.Work) bool { return x.Horse == h || gone(x.Seat) || gone(x.Girth) })
	c.Chart = slices.DeleteFunc(c.Chart, func(x *model.FitRow) bool {
		return x.Horse == h || gone(x.Seat) || slices.ContainsFunc(x.Pads, gone) || slices.ContainsFunc(x.Girths, gone)
	})
}

func TestWhatHasLeftTheCentreStillCountsInWhatWasRidden(t *testing.T) {
	for seed := range uint64(*weeks) {
		g := rand.New(rand.NewPCG(seed, 97))
		before := random.Week(seed, 1000)
		if len(before.Rides) == 0 {
			continue
		}
		c := before.Centre
		before.House.Goals = append(model.DefaultGoals(), model.GoalBringIn)
		posted, err := Plan(context.Background(), before, Options{})
		if err != nil {
			t.Fatal(err)
		}
		fixtures.Post(before, posted)
		r := before.Rides[g.IntN(len(before.Rides))]
		if g.IntN(2) == 0 {
			without(c, c.Horses[g.IntN(len(c.Horses))], nil)
		} else {
			without(c, nil, c.Pieces[g.IntN(len(c.Pieces))])
		}
		w := c.Repair(before.From, int(before.Until-before.From)+1, model.Instant{Date: r.Date(), Minute: r.Start})
		if _, err := Plan(context.Background(), w, Options{}); err != nil {
			t.Fatalf("week %d (%s): %v", seed, c.Name, err)
		}
	}
}

func TestAPostedSeatThatHasLeftIsLikeNone(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Week()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	p.Turns[0].Seat = &model.Piece{Tag: "gone"} // as the folder reads a tag that it has no more
	fixtures.Post(w, p)
	w = b.Centre.Repair(fixtures.Monday, 1, model.Instant{})
	if p, err = Plan(context.Background(), w, Options{}); err != nil {
		t.Fatal(err)
	}
	if g := p.Proof.Goals[3]; g.Name != "keep b" || g.Value != 1 || !g.Proved {
		t.Errorf("%+v: the ride is in another seat than was posted", g)
	}
	if _, err := new(Session).Plan(context.Background(), w, Options{}); err != nil {
		t.Error(err)
	}
}

// Noor was added by a note, and version 1 told her that she is on the ground.
func TestWhoWasToldThatSheRidesIsNotStoodDownForOneToldThatSheDoesNot(t *testing.T) {
	b := fixtures.New()
	noor := b.Rider("Noor")
	noor.RideFirst = true
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Note(model.Note{Kind: model.NoteRiderAdded, Rider: noor, Lesson: l, Date: fixtures.Monday})
	w := b.Week()
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides))}
	for i, r := range w.Rides {
		if r.Rider == b.Mia {
			p.Turns[i] = b.Turn(b.Star, b.Oak)
		}
	}
	fixtures.Post(w, p)
	w = b.Centre.Repair(fixtures.Monday, 1, model.Instant{})
	mended, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range w.Rides {
		if rides := mended.Turns[i] != nil; rides != (r.Rider == b.Mia) {
			t.Errorf("%s rides: %v", r.Rider.Called(), rides)
		}
	}
}
