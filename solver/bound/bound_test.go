package bound_test

import (
	"context"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

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
			Steps:     one(45),
		}}})
	}
	return p
}

// one stretch, and its work.
func one(work int64) []bound.Step { return way(nil, work, 0) }

// way adds a way through a day, with steps of its own.
func way(steps []bound.Step, work int64, stretches ...int) []bound.Step {
	if steps == nil {
		steps = []bound.Step{{Stretch: bound.Pause}}
	}
	before := 0
	for _, x := range stretches {
		steps = append(steps, bound.Step{Stretch: x, After: []int{before}})
		before = len(steps) - 1
	}
	steps[before].Last, steps[before].Work = true, work
	return steps
}

func indices(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
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

func TestPricesComeOutTheSameOnAnyNumberOfProcessors(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	r := rand.New(rand.NewPCG(1, 1))
	var costs [144]int
	for i := range costs {
		costs[i] = r.IntN(9)
	}
	answer := func(processors int) (bound.Answer, bound.Start, []bound.Ridden) {
		runtime.GOMAXPROCS(processors)
		m := bound.Open(herd(12, 12, 9, func(horse, ride int) int { return costs[12*horse+ride] }))
		m.Lower(context.Background(), 200, 20)
		m.Know([]bound.Cut{{Pairs: []int{0, 13, 26}, Least: 1}})
		a := m.Lower(context.Background(), 200, 50)
		start, _ := m.Dive(context.Background())
		plan, _ := m.Barter(context.Background(), bound.Start{}, 0)
		return a, start, plan
	}
	one, first, plan := answer(1)
	for _, n := range []int{2, 3, 16} {
		a, start, same := answer(n)
		if diff := cmp.Diff(one, a) + cmp.Diff(first, start) + cmp.Diff(plan, same); diff != "" {
			t.Errorf("one processor -, %d +\n%s", n, diff)
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
	p.OnGround, p.Grounded = make([]int, 2), []bound.Grounded{{Rides: []int{0, 1}}}
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

// week is a horse with one ride on each of so many dates.
func week(dates int) *bound.Problem {
	p := herd(1, dates, 9, free)
	day := p.Spells[0].Days[0]
	p.Spells[0].Days = nil
	for d := range dates {
		one := day
		one.Stretches = slices.Clone(day.Stretches)
		one.Stretches[0].Places = [][]bound.Rider{day.Stretches[0].Places[0][d : d+1]}
		p.Spells[0].Days = append(p.Spells[0].Days, one)
	}
	return p
}

func TestAHorseWorksOnNoMoreDatesInARowThanItMay(t *testing.T) {
	for _, c := range []struct {
		why    string
		change func(*bound.Spell)
		ground int
	}{
		{"two in a row of five", func(s *bound.Spell) { s.MostRow = 2 }, 1},
		{"one in a row of five", func(s *bound.Spell) { s.MostRow = 1 }, 2},
		{"five in a row of five", func(s *bound.Spell) { s.MostRow = 5 }, 0},
		{"two in a row, a date of rest after the second", func(s *bound.Spell) { s.MostRow, s.Days[2].Rested = 2, true }, 1},
		{"three in a row, a date of rest after the second", func(s *bound.Spell) { s.MostRow, s.Days[2].Rested = 3, true }, 0},
		{"two in a row, of which one was before", func(s *bound.Spell) { s.MostRow, s.Days[0].Rested, s.Days[0].Sure = 2, true, 1 }, 2},
		{"two in a row, and it works on the third anyway", func(s *bound.Spell) { s.MostRow, s.Days[2].Works = 2, true }, 2},
		{"three dates besides the third, on which it works anyway", func(s *bound.Spell) { s.MostDays, s.Days[2].Works = 3, true }, 1},
		{"three dates, of them two in a row", func(s *bound.Spell) { s.MostDays, s.MostRow = 3, 2 }, 2},
	} {
		p := week(5)
		c.change(&p.Spells[0])
		if a := bound.Open(p).Lower(context.Background(), 5, 300); a.Least != c.ground {
			t.Errorf("%s: bound %d, and %d stay on the ground", c.why, a.Least, c.ground)
		}
		if _, cost := bound.Open(p).Barter(context.Background(), bound.Start{}, 0); cost != c.ground {
			t.Errorf("%s: %d on the ground by barter", c.why, cost)
		}
	}
}

// Each horse takes one of as many rides: an assignment, of which all can be tried.
func TestHorsesBarterUntilNoAssignmentIsCheaper(t *testing.T) {
	for seed := range uint64(50) {
		r := rand.New(rand.NewPCG(seed, 1))
		const n = 5
		var costs [n][n]int
		for h := range n {
			for ride := range n {
				costs[h][ride] = r.IntN(10)
			}
		}
		p := herd(n, n, n, func(horse, ride int) int { return costs[horse][ride] })
		p.OnGround, p.Grounded = make([]int, n), []bound.Grounded{{Rides: []int{0, 1, 2, 3, 4}}}
		cheapest := 10 * n
		var try func(h, cost int, taken [n]bool)
		try = func(h, cost int, taken [n]bool) {
			if h == n {
				cheapest = min(cheapest, cost)
				return
			}
			for ride := range n {
				if !taken[ride] {
					now := taken
					now[ride] = true
					try(h+1, cost+costs[h][ride], now)
				}
			}
		}
		try(0, 0, [n]bool{})
		plan, cost := bound.Open(p).Barter(context.Background(), bound.Start{Pairs: []int{0, n + 1, 2*n + 2, 3*n + 3, 4*n + 4}}, 0)
		if cost != cheapest || len(plan) != n {
			t.Errorf("seed %d: %d by barter of %d rides, and %d is the cheapest", seed, cost, len(plan), cheapest)
		}
	}
}

func TestWhereMoreIsOnTheGroundThanMayBeBarterHasNoPlan(t *testing.T) {
	p := herd(2, 3, 2, free)
	p.Grounded = []bound.Grounded{{Rides: []int{0, 1, 2}}}
	if plan, cost := bound.Open(p).Barter(context.Background(), bound.Start{}, 0); plan != nil || cost < 1000 {
		t.Errorf("%v at %d", plan, cost)
	}
}

// Each horse could carry six riders on one date: in the second of two ways to saddle it nobody rides, or
// in none, one after the other or with time between. As many impossible places are not a bargain.
func TestManyPlacesInWhichNobodyCanRideCostNoLessThanOne(t *testing.T) {
	const horses, places = 2, 6
	for _, c := range []struct {
		why    string
		joined bool
		ways   []bound.Suits
		ground int
	}{
		{"one after the other, in the first way", true, []bound.Suits{{Way: 0}}, 0},
		{"one after the other, in no way", true, nil, horses * places},
		{"with time between, in the first way", false, []bound.Suits{{Way: 0}}, 0},
		{"with time between, in no way", false, nil, horses * places},
	} {
		p := &bound.Problem{Rides: horses * places, Pairs: horses * places, OnGround: slices.Repeat([]int{1}, horses*places), Room: []int{1}}
		for h := range horses {
			var day bound.Day
			for i := range places {
				n := h*places + i
				rider := bound.Rider{Pair: n, Ride: n, Ways: c.ways}
				if i == 0 || !c.joined {
					day.Stretches = append(day.Stretches, bound.Stretch{Ways: []bound.Way{{}, {Uses: []int{0}}}})
				}
				x := &day.Stretches[len(day.Stretches)-1]
				x.Places = append(x.Places, []bound.Rider{rider})
			}
			day.Steps = way(nil, 1, indices(len(day.Stretches))...)
			p.Spells = append(p.Spells, bound.Spell{MostWork: -1, MostDays: -1, Days: []bound.Day{day}})
		}
		market := bound.Open(p)
		if a := market.Lower(context.Background(), horses*places+1, 100); a.Least != c.ground {
			t.Errorf("%s: bound %d, and %d stay on the ground", c.why, a.Least, c.ground)
		}
		if _, cost := market.Barter(context.Background(), bound.Start{}, 0); cost != c.ground {
			t.Errorf("%s: %d on the ground by barter", c.why, cost)
		}
	}
}

// Two horses with an hour each for rides of 45 and 15 minutes: by their work the prices tell at once that
// minutes are what is short. From nothing the search for prices goes nowhere.
func TestWhereTheWeekIsTooShortPricesByWorkProveIt(t *testing.T) {
	const rides = 6 // half of them long: 180 minutes in 120; two long ones and two others are the most
	p := &bound.Problem{Rides: rides, Pairs: 2 * rides, OnGround: slices.Repeat([]int{1}, rides)}
	for h := range 2 {
		spell := bound.Spell{MostWork: 60, MostDays: -1}
		for r := range rides {
			work := int64(15)
			if r < rides/2 {
				work = 45
			}
			spell.Days = append(spell.Days, bound.Day{
				Stretches: []bound.Stretch{{Ways: []bound.Way{{}}, Places: [][]bound.Rider{{{Pair: h*rides + r, Ride: r, Ways: []bound.Suits{{}}}}}}},
				Steps:     one(work),
			})
		}
		p.Spells = append(p.Spells, spell)
	}
	if a := bound.Open(p).Lower(context.Background(), rides, 0); a.Least != 2 {
		t.Errorf("before any step the bound is %d", a.Least)
	}
}

// Each of two horses has a rider of its own; any other is dear. Whoever says that the two pairs do not go
// together, or that one does not with the other's saddle, leaves a rider on the ground.
func TestWhatClashesDoesNotGoTogether(t *testing.T) {
	own := func(horse, ride int) int { return 5 * (horse ^ ride) }
	for _, c := range []struct {
		clashes []bound.Clash
		ground  int
	}{
		{nil, 0},
		{[]bound.Clash{{Pairs: []int{0, 3}}}, 1},
		{[]bound.Clash{{Pairs: []int{0}, Ways: [][]int{{1}}}}, 1},
		{[]bound.Clash{{Pairs: []int{1, 2}}}, 0},
	} {
		p := herd(2, 2, 9, own)
		for h := range p.Spells {
			p.Spells[h].Days[0].Stretches[0].Ways[0].Name = h
		}
		m := bound.Open(p)
		if a := m.Lower(context.Background(), 2, 300); a.Least != 0 {
			t.Errorf("before a word of it the bound is %d", a.Least)
		}
		m.Bar(c.clashes)
		a := m.Lower(context.Background(), 2, 300)
		plan, cost := m.Barter(context.Background(), bound.Start{Pairs: []int{0, 3}}, a.Least)
		if a.Least != c.ground || cost != c.ground || len(plan) != 2-c.ground {
			t.Errorf("%+v: bound %d, and a plan at %d: %v", c.clashes, a.Least, cost, plan)
		}
	}
}

// Two of six rides are carried; five cost 1, and the last 30, which is never worth it. Prices begin far below
// nothing then, and must come up all the same.
func TestWhereManyStayOnTheGroundPricesStillRise(t *testing.T) {
	p := herd(2, 6, 9, func(_, ride int) int { return 1 + 29*(ride/5) })
	p.OnGround = make([]int, 6)
	p.Grounded = []bound.Grounded{{Rides: []int{0, 1, 2, 3, 4, 5}, Most: 4}}
	if a := bound.Open(p).Lower(context.Background(), 10, 300); a.Least != 2 {
		t.Errorf("bound %d", a.Least)
	}
}
