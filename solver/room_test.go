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

// asksOf a week: each rider for each meeting to come that she is not in, up to so many.
func asksOf(w *model.Week, most int) (asks []model.Ask) {
	for _, m := range w.Meetings {
		for _, r := range w.Centre.Riders {
			in := slices.ContainsFunc(w.Rides, func(x *model.Ride) bool { return x.Meeting == m && x.Rider == r })
			past := !w.Now.Before(model.Instant{Date: m.Date, Minute: m.Start})
			if !in && !past && m.NotHeld == "" && len(asks) < most {
				asks = append(asks, model.Ask{Rider: r, Meeting: m})
			}
		}
	}
	return asks
}

// beside calls f with every legal plan of a week with the asks in which all others
// are seated or not as in a plan: with the rides that are placed, and how many
// others have another horse, or other tack. It gives up on weeks of too many plans.
func beside(w *model.Week, p *model.Plan, asks []model.Ask, f func(placed []int, horse, tack int)) bool {
	more, rides := w.WithRides(asks)
	judge := oracle.For(more)
	choices := judge.Choices()
	before := make([]*model.Turn, len(more.Rides))
	for i, r := range more.Rides {
		if slices.Contains(rides, r) {
			continue
		}
		k := slices.IndexFunc(w.Rides, func(x *model.Ride) bool {
			return x.Rider == r.Rider && x.Meeting.Name == r.Meeting.Name && x.Date() == r.Date() && x.Start == r.Start
		})
		before[i] = p.Turns[k]
		choices.Good[i] = slices.DeleteFunc(slices.Clone(choices.Good[i]), func(t *model.Turn) bool { return (t == nil) != (before[i] == nil) })
	}
	if choices.Raw() > 4000 {
		return false
	}
	choices.Each(func(q *model.Plan) bool {
		if !judge.Legal(q) {
			return true
		}
		var placed []int
		horse, tack := 0, 0
		for i, r := range more.Rides {
			switch now := q.Turns[i]; {
			case slices.Contains(rides, r):
				if now != nil {
					placed = append(placed, slices.Index(rides, r))
				}
			case now == nil || r.State != model.Open:
			case now.Horse != before[i].Horse:
				horse++
			case !more.AlikeTack(now, before[i]):
				tack++
			}
		}
		f(placed, horse, tack)
		return true
	})
	return true
}

func TestRoomIsFoundWhereTryingAllPlansFindsItWithAsFewChanged(t *testing.T) {
	free, moved, full := 0, 0, 0
	for seed := range uint64(*weeks) / 2 {
		w := random.Week(seed, 100)
		p, err := Plan(context.Background(), w, Options{Goals: 1})
		if err != nil {
			t.Fatal(err)
		}
		asks := asksOf(w, 4)
		rooms, err := RoomFor(context.Background(), w, p, asks)
		if err != nil {
			t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, err)
		}
		for i, a := range asks {
			best := []int{99, 99}
			if !beside(w, p, asks[i:i+1], func(placed []int, horse, tack int) {
				if now := []int{horse, tack}; len(placed) == 1 && slices.Compare(now, best) < 0 {
					best = now
				}
			}) {
				continue
			}
			r := rooms[i]
			switch {
			case best[0] == 99:
				full++
				if r.With != nil || !r.Full && len(r.Alone) == 0 {
					t.Errorf("week %d (%s): %s in %s: room, and trying all finds none", seed, w.Centre.Name, a.Rider.Name, a.Meeting.Name)
				}
			case r.With == nil || !r.With.Fewest || len(r.With.Horse) != best[0] || len(r.With.Tack) != best[1]:
				t.Errorf("week %d (%s): %s in %s: %+v, and trying all: %v", seed, w.Centre.Name, a.Rider.Name, a.Meeting.Name, r, best)
			case best[0] > 0:
				moved++
			default:
				free++
			}
		}
	}
	t.Logf("%d disturb no pairing, %d do, %d have no room", free, moved, full)
	if free < 20 || moved < 2 || full < 20 {
		t.Errorf("%d, %d and %d: that shows little", free, moved, full)
	}
}

func TestTheMostThatArePlacedAtOnceAreWhatTryingAllPlansPlaces(t *testing.T) {
	tried, some := 0, 0
	for seed := range uint64(*weeks) / 2 {
		w := random.Week(seed, 60)
		p, err := Plan(context.Background(), w, Options{Goals: 1})
		if err != nil {
			t.Fatal(err)
		}
		asks := asksOf(w, 3)
		var riders []*model.Rider
		for _, a := range asks {
			if !slices.Contains(riders, a.Rider) {
				riders = append(riders, a.Rider)
			}
		}
		if len(riders) < 2 {
			continue
		}
		placed, most, err := RoomForAll(context.Background(), w, p, asks)
		if err != nil {
			t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, err)
		}
		best, who := 0, []bool{}
		if !beside(w, p, asks, func(placed []int, _, _ int) {
			has := make([]bool, len(riders))
			for _, i := range placed {
				k := slices.Index(riders, asks[i].Rider)
				if has[k] {
					return
				}
				has[k] = true
			}
			if len(placed) > best || len(placed) == best && earlier(has, who) {
				best, who = len(placed), has
			}
		}) {
			continue
		}
		tried++
		if 0 < best {
			some++
		}
		if placed == nil || most != best || len(placed.Rides) != best {
			t.Fatalf("week %d (%s): %+v, at most %d; trying all: %d", seed, w.Centre.Name, placed, most, best)
		}
		for k, r := range riders {
			if best > 0 && who[k] != slices.ContainsFunc(placed.Rides, func(x *model.Ride) bool { return x.Rider.Name == r.Name }) {
				t.Errorf("week %d (%s): who asks earlier is not first: %v", seed, w.Centre.Name, who)
			}
		}
	}
	t.Logf("%d weeks, in %d somebody has a place", tried, some)
	if tried < 50 || some < 8 {
		t.Errorf("%d weeks, in %d somebody has a place: that shows little", tried, some)
	}
}

// earlier reports whether the first of two that differ is true in the one.
func earlier(one, other []bool) bool {
	for i := range one {
		if i >= len(other) || one[i] != other[i] {
			return one[i]
		}
	}
	return false
}

func TestWhereThereIsNoTimeNothingIsSaidOfARoom(t *testing.T) {
	b := fixtures.New()
	b.Lesson(b.From, "10:00-10:45", b.Mia)
	b.Lesson(b.From, "12:00-12:45")
	b.Rider("Leo")
	w := b.Week()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	rooms, err := RoomFor(ctx, w, p, asksOf(w, 9))
	if err != nil || len(rooms) != 3 {
		t.Fatalf("%v, %v", rooms, err)
	}
	for _, r := range rooms {
		if r.Full || r.With != nil || r.Alone != nil {
			t.Errorf("%+v", r)
		}
	}
	if placed, most, err := RoomForAll(ctx, w, p, asksOf(w, 9)); placed != nil || most != 2 || err != nil {
		t.Errorf("%v, %d, %v", placed, most, err)
	}
}

// Mia rides Star, which is the only horse wide enough for Noor; Luna would do for Mia.
func TestWhoMustMoveForAnotherIsNamed(t *testing.T) {
	b := fixtures.New()
	luna := b.Horse("Luna")
	b.Saddle("elm", luna)
	b.Star.Barrel, luna.Barrel = model.Wide, model.Narrow
	l := b.Lesson(b.From, "10:00-10:45", b.Mia)
	b.Mia.Usual = b.Star
	noor := b.Rider("Noor")
	noor.Barrels = []model.Barrel{model.Wide}
	w := b.Week()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	rooms, err := RoomFor(context.Background(), w, p, []model.Ask{{Rider: noor, Meeting: w.Meetings[0]}})
	if err != nil {
		t.Fatal(err)
	}
	x := rooms[0].With
	if x == nil || !x.Disturbs() || !x.Fewest || len(x.Horse) != 1 || x.Horse[0].Rider != b.Mia || x.Plan.Turns[x.Horse[0].Index].Horse != luna || len(x.Tack) != 0 {
		t.Errorf("%+v", x)
	}
	l.Size = 1
	if rooms, err = RoomFor(context.Background(), w, p, []model.Ask{{Rider: noor, Meeting: w.Meetings[0]}}); err != nil || rooms[0].With != nil || !rooms[0].Full {
		t.Errorf("%v, %+v", err, rooms[0])
	}
}

// Two wait for one horse that is free.
func TestOfTwoWhoWaitForOneHorseTheFirstHasThePlace(t *testing.T) {
	b := fixtures.New()
	b.Lesson(b.From, "10:00-10:45")
	w := b.Week()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	noor, leo := b.Rider("Noor"), b.Rider("Leo")
	placed, most, err := RoomForAll(context.Background(), w, p, []model.Ask{{Rider: leo, Meeting: w.Meetings[0]}, {Rider: noor, Meeting: w.Meetings[0]}})
	if err != nil || most != 1 || len(placed.Rides) != 1 || placed.Rides[0].Rider != leo {
		t.Errorf("%v, at most %d: %+v", err, most, placed)
	}
}

// Star works at half: 20 minutes of lunging, a gap of 40 and half an hour are 65, and with half an
// hour of Leo's in the gap they are 50, which is its limit.
func TestThereIsRoomBetweenRidesThatAHorseMayNotRestBetween(t *testing.T) {
	b := fixtures.New()
	b.House.Stay, b.House.Same, b.House.Other, b.House.Rest = 0, 0, 0, 45
	b.Star.Factor, b.Star.Limits.DayMinutes = 50, 50
	b.Work(b.Star, b.From, "10:00-10:20")
	b.Lesson(b.From, "10:20-10:50", b.Rider("Leo"))
	b.Lesson(b.From, "11:00-11:30")
	w := b.Week()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil || p.Turns[0] == nil {
		t.Fatalf("%v, %+v", err, p)
	}
	rooms, err := RoomFor(context.Background(), w, p, []model.Ask{{Rider: b.Mia, Meeting: w.Meetings[1]}})
	if err != nil || rooms[0].With == nil {
		t.Errorf("%v, %+v", err, rooms[0])
	}
}
