package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// alone reports whether the oracle allows a plan that seats nobody but the ride, on
// a horse.
func alone(w *model.Week, r *model.Ride, so func(*model.Turn) bool) bool {
	judge := oracle.For(w)
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides))}
	for i, x := range w.Rides {
		if x.State == model.Started {
			p.Turns[i] = x.Told
		}
	}
	return slices.ContainsFunc(judge.Choices().Good[r.Index], func(t *model.Turn) bool {
		p.Turns[r.Index] = t
		return t != nil && so(t) && judge.Legal(p)
	})
}

func TestWhyAPairingIsNotIsToldByTryingAllPlans(t *testing.T) {
	stopped, priced := 0, 0
	for seed := range uint64(*weeks) / 2 {
		w := random.Week(seed, 600)
		p, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range w.Rides {
			if r.State != model.Open {
				continue
			}
			for _, h := range w.Centre.Horses {
				if now := p.Turns[r.Index]; now != nil && now.Horse == h {
					continue
				}
				why, err := WhyPairing(context.Background(), w, p, r, h, nil)
				if err != nil {
					t.Fatal(err)
				}
				on := func(t *model.Turn) bool { return t != nil && t.Horse == h }
				if can := alone(w, r, on); can != (why.Alone == "") {
					t.Errorf("week %d (%s): %s on %s: %q, and by the oracle it can: %v", seed, w.Centre.Name, r, h.Name, why.Alone, can)
				}
				if why.Alone != "" {
					stopped++
					continue
				}
				priced++
				ground, _, best := tryAll(w, p, func(q *model.Plan) bool { return on(q.Turns[r.Index]) })
				switch c := why.Choice; {
				case c == nil || c.Price == nil:
					t.Errorf("week %d (%s): %s on %s has no price", seed, w.Centre.Name, r, h.Name)
				case c.With != ground || !slices.EqualFunc(c.Price.After, best, func(a, b model.GoalValue) bool { return a.Value == b.Value }):
					t.Errorf("week %d (%s): %s on %s: %d on the ground, %v; trying all: %d, %v", seed, w.Centre.Name, r, h.Name, c.With, c.Price.After, ground, best)
				}
			}
		}
	}
	t.Logf("%d stopped, %d priced", stopped, priced)
	if stopped < 20 || priced < 20 {
		t.Errorf("%d stopped, %d priced", stopped, priced)
	}
}

func TestASeatThatIsAskedForIsPricedByTryingAllPlans(t *testing.T) {
	priced := 0
	for seed := range uint64(*weeks) / 2 {
		w := random.Week(seed, 600)
		p, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range w.Rides {
			now := p.Turns[r.Index]
			if r.State != model.Open || now == nil {
				continue
			}
			for _, seat := range w.Centre.Pieces {
				if !seat.IsSeat() || w.Alike(seat) == w.Alike(now.Seat) {
					continue
				}
				why, err := WhyPairing(context.Background(), w, p, r, now.Horse, seat)
				if err != nil {
					t.Fatal(err)
				}
				has := func(t *model.Turn) bool {
					return t != nil && t.Horse == now.Horse && w.Alike(t.Seat) == w.Alike(seat)
				}
				if can := alone(w, r, has); can != (why.Alone == "") {
					t.Errorf("week %d (%s): %s in %s: %q, and by the oracle it can: %v", seed, w.Centre.Name, r, seat.Tag, why.Alone, can)
				}
				if why.Alone != "" {
					continue
				}
				priced++
				_, _, best := tryAll(w, p, func(q *model.Plan) bool { return has(q.Turns[r.Index]) })
				if c := why.Choice; c == nil || c.Price == nil || !slices.EqualFunc(c.Price.After, best, func(a, b model.GoalValue) bool { return a.Value == b.Value }) {
					t.Errorf("week %d (%s): %s in %s: %+v; trying all: %v", seed, w.Centre.Name, r, seat.Tag, c, best)
				}
			}
		}
	}
	if priced < 10 {
		t.Errorf("%d priced", priced)
	}
}

// Lessons of the random weeks are made open, so that there are others to ride in.
func TestAnotherLessonIsPricedByTryingAllPlans(t *testing.T) {
	refused, priced := 0, 0
	for seed := range uint64(*weeks) / 20 {
		w := random.Week(seed, 300)
		for _, l := range w.Centre.Lessons {
			l.Open = true
		}
		p, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range w.Rides {
			for _, m := range w.Meetings {
				if r.State != model.Open || m == r.Meeting {
					continue
				}
				why, err := WhyNotIn(context.Background(), w, p, r, m)
				if err != nil {
					t.Fatal(err)
				}
				if why.Refused != "" {
					refused++
					continue
				}
				has := func(t *model.Turn) bool { return t != nil }
				if can := alone(why.Week, why.There, has); can != (len(why.Alone) == 0) {
					t.Errorf("week %d (%s): %s in %s: %q, and by the oracle it can: %v", seed, w.Centre.Name, r, m.Name, why.Alone, can)
				}
				if len(why.Alone) > 0 || oracle.For(why.Week).Choices().Raw() > 3000 {
					continue
				}
				priced++
				ground, _, best := tryAll(why.Week, why.Was, func(q *model.Plan) bool { return has(q.Turns[why.There.Index]) })
				if c := why.Choice; c == nil || c.Price == nil || c.With != ground || c.Ground != onGround(w, p) ||
					!slices.EqualFunc(c.Price.After, best, func(a, b model.GoalValue) bool { return a.Value == b.Value }) {
					t.Errorf("week %d (%s): %s in %s: %+v; trying all: %d on the ground, %v", seed, w.Centre.Name, r, m.Name, c, ground, best)
				}
			}
		}
	}
	t.Logf("%d refused, %d priced", refused, priced)
	if refused < 5 || priced < 20 {
		t.Errorf("%d refused, %d priced", refused, priced)
	}
}
