package bound_test

import (
	"context"
	"slices"
	"testing"

	"tackwright/solver/bound"
)

// herd of horses that can each carry any ride of one lesson, in a saddle of which there are so many.
func herd(horses, rides, saddles int, cost func(horse, ride int) int) *bound.Problem {
	p := &bound.Problem{Rides: rides, Pairs: horses * rides, OnGround: slices.Repeat([]int{1}, rides), Room: []int{saddles}}
	for h := range horses {
		var riders []bound.Rider
		for r := range rides {
			riders = append(riders, bound.Rider{Pair: h*rides + r, Ride: r, Cost: cost(h, r), Ways: []bound.Suits{{Way: 0}}})
		}
		p.Spells = append(p.Spells, bound.Spell{MostWork: -1, MostDays: -1, Days: []bound.Day{{
			Stretches: []bound.Stretch{{Ways: []bound.Way{{Uses: []int{0}}}, Places: [][]bound.Rider{riders}}},
			Sets:      []bound.Set{{Work: 45, Stretches: []int{0}}},
		}}})
	}
	return p
}

func free(int, int) int { return 0 }

func TestRidesBeyondTheHorsesOrTheSaddlesStayOnTheGround(t *testing.T) {
	for _, c := range []struct{ horses, rides, saddles, ground int }{
		{3, 5, 9, 2}, {9, 5, 3, 2}, {5, 5, 5, 0}, {1, 4, 2, 3},
	} {
		a := bound.Open(herd(c.horses, c.rides, c.saddles, free)).Lower(context.Background(), c.rides, 300)
		if a.Least != c.ground {
			t.Errorf("%+v: bound %d", c, a.Least)
		}
	}
}

func TestAPairThatIsDearHasItsPrice(t *testing.T) {
	p := herd(2, 2, 2, func(horse, ride int) int {
		if horse == ride {
			return 0
		}
		return 3
	})
	p.OnGround, p.Grounded = nil, []bound.Grounded{{Rides: []int{0, 1}}}
	a := bound.Open(p).Lower(context.Background(), 7, 300)
	if a.Least != 0 {
		t.Errorf("both ride at no cost: bound %d", a.Least)
	}
	for pair, want := range []int{0, 3, 3, 0} { // 3 at least: the other can be swapped for no less than 6
		if a.With[pair] > 2*want || a.With[pair] < want {
			t.Errorf("pair %d has a price of %d", pair, a.With[pair])
		}
	}
}

func TestAHorseKeepsToTheWorkOfItsWeek(t *testing.T) {
	p := herd(1, 3, 9, free)
	one := p.Spells[0].Days[0]
	p.Spells[0].Days = []bound.Day{one, one, one}
	for limit, ground := range map[int64]int{44: 3, 45: 2, 90: 1, 134: 1, 135: 0} {
		p.Spells[0].MostWork = limit
		if a := bound.Open(p).Lower(context.Background(), 3, 300); a.Least != ground {
			t.Errorf("with %d minutes: bound %d, and %d stay on the ground", limit, a.Least, ground)
		}
	}
	p.Spells[0].MostWork, p.Spells[0].MostDays = -1, 2
	if a := bound.Open(p).Lower(context.Background(), 3, 300); a.Least != 1 {
		t.Errorf("in two days: bound %d", a.Least)
	}
}
