package bound_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/solver/bound"
)

// Each horse may do any tasks of a day that do not overlap: told as a line with pauses, and way by way.
func TestWaysThatMeetAreWorthWhatTheyAreWorthApart(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 7))
		line, apart := tasks(r, true), tasks(rand.New(rand.NewPCG(seed, 7)), false)
		rounds := r.IntN(2) // none: at the prices that it begins with; else at its first step's too
		a := bound.Open(line).Lower(context.Background(), 1000, rounds)
		b := bound.Open(apart).Lower(context.Background(), 1000, rounds)
		if rounds == 0 {
			if diff := cmp.Diff(b, a); diff != "" {
				t.Errorf("seed %d: apart - line +\n%s", seed, diff)
			}
		}
		_, cost := bound.Open(apart).Barter(context.Background(), bound.Start{}, 0)
		if a.Least > cost || b.Least > cost {
			t.Errorf("seed %d: bounds of %d and %d, and a plan costs %d", seed, a.Least, b.Least, cost)
		}
		m := bound.Open(line)
		start, _ := m.Dive(context.Background())
		if _, cost := m.Barter(context.Background(), start, 0); cost < b.Least {
			t.Errorf("seed %d: a plan in lines costs %d, less than %d", seed, cost, b.Least)
		}
	}
}

// tasks of two horses on a day, their ways in lines or apart.
func tasks(r *rand.Rand, line bool) *bound.Problem {
	n := 2 + r.IntN(5)
	type span struct{ start, end int }
	spans := make([]span, n)
	for i := range spans {
		start := r.IntN(10)
		spans[i] = span{start, start + 1 + r.IntN(5)}
	}
	slices.SortFunc(spans, func(a, b span) int { return a.end - b.end })
	p := &bound.Problem{Rides: n, Pairs: 2 * n, OnGround: make([]int, n), Room: []int{1 + r.IntN(2)}}
	for i := range n {
		p.OnGround[i] = r.IntN(4)
	}
	for h := range 2 {
		day := bound.Day{In: r.IntN(2), Works: r.IntN(4) == 0}
		for i := range n {
			way := bound.Way{}
			if r.IntN(3) == 0 {
				way.Uses = []int{0}
			}
			rider := bound.Rider{Pair: h*n + i, Ride: i, Cost: r.IntN(4) - 1, Ways: []bound.Suits{{Cost: r.IntN(2)}}}
			day.Stretches = append(day.Stretches, bound.Stretch{Ways: []bound.Way{way}, Places: [][]bound.Rider{{rider}}})
		}
		if line {
			day.Steps = []bound.Step{{Stretch: bound.Pause}}
			for i, s := range spans {
				before := 0
				for before < n && spans[before].end <= s.start {
					before++
				}
				day.Steps = append(day.Steps, bound.Step{Stretch: i, After: []int{2 * before}, Last: true},
					bound.Step{Stretch: bound.Pause, After: []int{2 * i, 2*i + 1}})
			}
		} else {
			for chosen := 1; chosen < 1<<n; chosen++ {
				var stretches []int
				free := 0 // from then on
				fits := true
				for i, s := range spans {
					if chosen>>i&1 == 1 {
						fits = fits && s.start >= free
						stretches, free = append(stretches, i), s.end
					}
				}
				if fits {
					day.Steps = way(day.Steps, 0, stretches...)
				}
			}
		}
		p.Spells = append(p.Spells, bound.Spell{MostWork: -1, MostDays: -1, Days: []bound.Day{day}})
	}
	return p
}
