package bound_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/solver/bound"
)

// Each horse has time for two of twelve rides, if not both are long.
func TestHorsesThatSettleTogetherComeToTheBestPlan(t *testing.T) {
	const rides, never = 12, 1 << 20
	best, many := 0, 0
	for seed := range uint64(40) {
		_, want := twoOfAtBest(seed)
		m := twoOfMarket(seed)
		if a := m.Lower(context.Background(), 1000, 300); a.Least > want {
			t.Errorf("seed %d: bound %d, and the best plan costs %d", seed, a.Least, want)
		}
		plan, cost := m.Barter(context.Background(), bound.Start{}, want)
		if cost < want || cost < never && len(plan) != rides {
			t.Errorf("seed %d: %d rides at %d, and the best plan costs %d", seed, len(plan), cost, want)
		}
		if cost > want && cost < never {
			many++
			again, less := m.Resume(context.Background(), bound.Start{}, want)
			if less > cost || less < want || len(again) != len(plan) {
				t.Errorf("seed %d: %d from a plan at %d, and the best costs %d", seed, less, cost, want)
			}
			cost = less
		}
		if cost == want {
			best++
		}
	}
	if best < 40 {
		t.Errorf("the best of %d weeks of 40, in %d of them after a second try", best, many)
	}
}

// What is learned may be about one horse: its two rides do not go together.
func TestAPlanThatIsResumedKeepsWhatWasLearnedOfOneHorse(t *testing.T) {
	const rides = 12
	learned := 0
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 5))
		m := bound.Open(twoOf(func(int, int) int { return r.IntN(20) }))
		a := m.Lower(context.Background(), 1000, 300)
		plan, cost := m.Barter(context.Background(), bound.Start{}, a.Least)
		of := map[int][]int{}
		for _, p := range plan {
			of[p.Pair/rides] = append(of[p.Pair/rides], p.Pair)
		}
		two := of[0]
		if len(two) != 2 {
			continue
		}
		learned++
		m.Bar([]bound.Clash{{Pairs: two}})
		again, less := m.Resume(context.Background(), bound.Start{}, cost)
		if got := slices.DeleteFunc(again, func(p bound.Ridden) bool { return !slices.Contains(two, p.Pair) }); len(got) == 2 || less < cost {
			t.Errorf("seed %d: %v go together at %d, and they may not; before it was %d", seed, got, less, cost)
		}
	}
	if learned < 15 {
		t.Errorf("of %d plans anything was learned", learned)
	}
}

// isLong says which of twelve rides are.
func isLong(ride int) bool { return ride < 6 }

// twoOfAtBest draws what each of twelve rides costs on each of six horses, and tells what the best plan costs in which a horse
// has two at most, not both long: found by trying all, horse by horse, for each set of rides that are taken.
func twoOfAtBest(seed uint64) (costs [6][12]int, want int) {
	const rides, never = 12, 1 << 20
	r := rand.New(rand.NewPCG(seed, 5))
	for h := range costs {
		for ride := range rides {
			costs[h][ride] = r.IntN(20)
		}
	}
	cheapest := slices.Repeat([]int{never}, 1<<rides) // with those rides taken
	cheapest[0] = 0
	for h := range costs {
		next := slices.Clone(cheapest)
		for taken, cost := range cheapest {
			for a := range rides {
				for b := range a + 1 { // b is a: it has one
					if both := 1<<a | 1<<b; taken&both == 0 && (b == a || !isLong(a) || !isLong(b)) {
						more := costs[h][a]
						if b != a {
							more += costs[h][b]
						}
						next[taken|both] = min(next[taken|both], cost+more)
					}
				}
			}
		}
		cheapest = next
	}
	return costs, cheapest[1<<rides-1]
}

// twoOfMarket is of such a week.
func twoOfMarket(seed uint64) *bound.Market {
	costs, _ := twoOfAtBest(seed)
	return bound.Open(twoOf(func(horse, ride int) int { return costs[horse][ride] }))
}

// twoOf are six horses that each have time for two of twelve rides, of which one may be long. All must ride.
func twoOf(cost func(horse, ride int) int) *bound.Problem {
	const horses, rides = 6, 12
	p := &bound.Problem{Rides: rides, Pairs: horses * rides, OnGround: make([]int, rides), Grounded: []bound.Grounded{{Rides: indices(rides)}}}
	work := func(ride int) int64 {
		if isLong(ride) {
			return 60
		}
		return 30
	}
	for h := range horses {
		day := bound.Day{}
		for r := range rides {
			rider := bound.Rider{Pair: h*rides + r, Ride: r, Cost: cost(h, r), Ways: []bound.Suits{{}}}
			day.Stretches = append(day.Stretches, bound.Stretch{Ways: make([]bound.Way, 1), Places: [][]bound.Rider{{rider}}})
			day.Steps = way(day.Steps, work(r), r)
			for s := range r {
				day.Steps = way(day.Steps, work(s)+work(r), s, r)
			}
		}
		p.Spells = append(p.Spells, bound.Spell{MostWork: 90, MostDays: -1, Days: []bound.Day{day}})
	}
	return p
}
