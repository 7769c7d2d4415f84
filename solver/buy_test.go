package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// datesOf a week.
func datesOf(w *model.Week) []Dates {
	return []Dates{{w.From, int(w.Until-w.From) + 1, w.Now}}
}

// leastGround is found by trying all plans; it gives up on weeks of too many.
func leastGround(w *model.Week, most int) (least int, ok bool) {
	judge := oracle.For(w)
	choices := judge.Choices()
	if choices.Raw() > most {
		return 0, false
	}
	least = len(w.Rides)
	choices.Each(func(p *model.Plan) bool {
		ground := 0
		for i, r := range w.Rides {
			if r.State != model.Off && p.Turns[i] == nil {
				ground++
			}
		}
		if ground < least && judge.Legal(p) {
			least = ground
		}
		return true
	})
	return least, true
}

// Every spare is tried by itself here, those that were passed over unsolved too:
// what is passed over brings nothing.
func TestWhatABuyBringsIsWhatTryingAllPlansWithItBrings(t *testing.T) {
	brings, nothing := 0, 0
	for seed := range uint64(*weeks) / 3 {
		w := random.Week(seed, 200)
		now, _ := leastGround(w, 200)
		if now == 0 {
			continue
		}
		b, err := Buy(context.Background(), w.Centre, datesOf(w), 5, nil)
		if err != nil {
			t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, err)
		}
		for _, x := range b.Bought {
			with, ok := leastGround(w.Centre.With(x.Spare).Week(w.From, int(w.Until-w.From)+1, w.Now), 5000)
			if !ok {
				continue
			}
			if !x.Proved || x.More != now-with {
				t.Errorf("week %d (%s): %+v brings %d to %d; trying all: %d", seed, w.Centre.Name, x.Spare, x.More, x.Most, now-with)
			}
			if now > with {
				brings++
			} else {
				nothing++
			}
		}
	}
	t.Logf("%d bring rides, %d nothing", brings, nothing)
	if brings < 20 || nothing < 100 {
		t.Errorf("%d spares brought rides and %d nothing: that shows little", brings, nothing)
	}
}

// A centre with more of something has every plan that it had, and rules and score
// see them the same.
func TestNothingIsLostByHavingMore(t *testing.T) {
	for seed := range uint64(*weeks) / 8 {
		w := random.Week(seed, 100)
		p, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		more := w.Centre.With(w.Centre.Spares()...).Week(w.From, int(w.Until-w.From)+1, w.Now)
		there := translator{nouns(more.Centre.Horses, func(h *model.Horse) string { return h.Name }),
			nouns(more.Centre.Pieces, func(x *model.Piece) string { return x.Tag })}
		q := &model.Plan{}
		for _, turn := range p.Turns {
			q.Turns = append(q.Turns, there.turn(turn))
		}
		if broken := model.Broken(more.Audit(q)); len(broken) > 0 {
			t.Errorf("week %d (%s): %s", seed, w.Centre.Name, broken[0].Words)
		}
		for i, g := range more.Score(q) {
			if was := w.Score(p)[i]; g.Value > was.Value {
				t.Errorf("week %d (%s): %s is %d with more, and was %d", seed, w.Centre.Name, g.Name, g.Value, was.Value)
			}
		}
	}
}

// Two horses with a saddle each, ridden at once, and one girth that goes with both.
func oneGirthTooFew() *fixtures.Barn {
	b := fixtures.New()
	luna := b.Horse("Luna")
	b.Saddle("elm", luna)
	b.Pieces = slices.DeleteFunc(b.Pieces, func(p *model.Piece) bool { return p.Tag == "elm girth" })
	l := b.Lesson(b.From, "10:00-10:45", b.Mia, b.Rider("Ida"))
	l.On, l.Weekday = 0, b.From.Weekday()
	return b
}

func TestOneGirthTooFewIsWhatToBuy(t *testing.T) {
	b := oneGirthTooFew()
	found, err := Buy(context.Background(), b.Centre, []Dates{{From: b.From, Days: 7}}, 5, nil)
	if err != nil {
		t.Fatal(err)
	}
	best := found.Bought[0]
	if best.Spare.Piece != b.Tag("oak girth") || best.More != 1 || !best.Proved || len(best.Plans) != 1 {
		t.Errorf("the best is %+v", best)
	}
	for _, x := range found.Bought[1:] {
		if x.More != 0 || !x.Proved || x.Plans != nil {
			t.Errorf("%+v brings %d", x.Spare, x.More)
		}
	}
}

func TestWeeksAreAddedUp(t *testing.T) {
	b := oneGirthTooFew()
	found, err := Buy(context.Background(), b.Centre, []Dates{{From: b.From, Days: 7}, {From: b.From + 7, Days: 7}}, 1, nil)
	if err != nil {
		t.Fatal(err)
	}
	if best := found.Bought[0]; best.More != 2 || !best.Proved || len(best.Plans) != 2 {
		t.Errorf("the best is %+v", best)
	}
}

func TestWhereTheTimeIsOverNothingIsCalledProved(t *testing.T) {
	b := oneGirthTooFew()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	found, err := Buy(ctx, b.Centre, []Dates{{From: b.From, Days: 7}}, 5, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range found.Bought {
		if x.Proved || x.More != 0 || x.Most != 2 || x.Plans != nil {
			t.Errorf("%+v", x)
		}
	}
}

func TestWhereAllRideNothingIsLookedFor(t *testing.T) {
	b := fixtures.New()
	b.Lesson(b.From, "10:00-10:45", b.Mia)
	found, err := Buy(context.Background(), b.Centre, []Dates{{From: b.From, Days: 7}}, 0, nil)
	if err != nil || found.Solved != 1 || slices.ContainsFunc(found.Bought, func(x *Bought) bool { return !x.Proved || x.Most != 0 }) {
		t.Errorf("%v, %+v", err, found)
	}
}
