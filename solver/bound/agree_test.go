package bound_test

import (
	"context"
	"runtime"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/solver/bound"
)

func TestHorsesThatAgreePairByPairComeCloseToTheBestPlan(t *testing.T) {
	const horses, rides = 6, 12
	all, more, least := 0, 0, 0
	for seed := range uint64(40) {
		costs, want := twoOfAtBest(seed)
		m := twoOfMarket(seed)
		m.Lower(context.Background(), 1000, 300)
		start, beyond := m.Agree(context.Background())
		cost := 0
		var carried [rides]bool
		var has, long [horses]int
		for _, p := range start.Pairs {
			h, r := p/rides, p%rides
			if carried[r] {
				t.Errorf("seed %d: ride %d is carried twice", seed, r)
			}
			carried[r] = true
			cost += costs[h][r]
			if has[h]++; isLong(r) {
				long[h]++
			}
			if has[h] > 2 || long[h] > 1 {
				t.Errorf("seed %d: horse %d has %d rides, %d of them long", seed, h, has[h], long[h])
			}
		}
		if beyond != rides-len(start.Pairs) {
			t.Errorf("seed %d: %d rides are carried of %d, and it tells of %d on the ground", seed, len(start.Pairs), rides, beyond)
		}
		if beyond > 0 {
			continue
		}
		if cost < want {
			t.Errorf("seed %d: it costs %d, and the best plan %d", seed, cost, want)
		}
		all, more, least = all+1, more+cost-want, least+want
	}
	if all < 35 || more > least/10 {
		t.Errorf("in %d weeks of 40 all ride, at %d more than the least, %d", all, more, least)
	}
}

func TestAMarketGoesOnAsIfHorsesHadNotAgreed(t *testing.T) {
	for seed := range uint64(4) {
		after := func(agree bool) ([]int64, bound.Answer) {
			m := twoOfMarket(seed)
			m.Lower(context.Background(), 1000, 20)
			if agree {
				m.Agree(context.Background())
			}
			return m.Costs(), m.Lower(context.Background(), 1000, 20)
		}
		costs, prices := after(false)
		same, again := after(true)
		if diff := cmp.Diff(costs, same) + cmp.Diff(prices, again); diff != "" {
			t.Errorf("seed %d: without -, with +\n%s", seed, diff)
		}
	}
}

func TestHorsesAgreeOnTheSameOnAnyNumberOfProcessors(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for seed := range uint64(8) {
		agree := func(processors int) (bound.Start, int) {
			runtime.GOMAXPROCS(processors)
			m := twoOfMarket(seed)
			m.Lower(context.Background(), 1000, 20)
			return m.Agree(context.Background())
		}
		one, beyond := agree(1)
		for _, n := range []int{2, 3, 16} {
			start, same := agree(n)
			if diff := cmp.Diff(one, start) + cmp.Diff(beyond, same); diff != "" {
				t.Errorf("seed %d: one processor -, %d +\n%s", seed, n, diff)
			}
		}
	}
}
