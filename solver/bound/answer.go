package bound

import (
	"math"
	"slices"
)

// never is what no plan costs.
const never = math.MaxInt32

// answer reads off what each rider on each horse would cost.
func (m *Market) answer() Answer {
	m.trade()
	a := Answer{Least: m.proved(), With: slices.Repeat([]int{never}, m.p.Pairs), Often: m.frequent()}
	for s := range m.p.Spells {
		b := m.book(s)
		rest := m.value - b.best()
		for d := range b.spell.Days {
			b.with(d, rest, a.With)
		}
	}
	return a
}

// with tells, for each rider of a day, the least value of all with it; rest is the value of everything
// but this spell.
func (b *book) with(d int, rest int64, with []int) {
	day := &b.spell.Days[d]
	others := b.others(d)
	through := slices.Repeat([]int64{none}, len(day.Stretches)) // the best week with a stretch, itself apart
	for _, set := range day.Sets {
		cost := others[min(int(set.Work/b.unit), len(others)-1)]
		for _, x := range set.Stretches {
			cost += b.costs[d][x]
		}
		cost += int64(day.In)*scale - b.mostSpared(d, &set)
		for _, x := range set.Stretches {
			through[x] = min(through[x], cost-b.costs[d][x])
		}
	}
	if len(day.Line) > 0 {
		least, later := b.line(d), b.later(d)
		for x := range through {
			through[x] = min(none, others[0]+least[day.Line[x]]+later[x]+int64(day.In)*scale)
		}
	}
	for i := range day.Stretches {
		if through[i] >= none/2 {
			continue
		}
		x, deal := &day.Stretches[i], b.deal(d, i)
		for p, riders := range x.Places {
			for k := range riders {
				r := &riders[k]
				least := int64(none)
				for _, w := range r.Ways {
					least = min(least, deal.cost(w.Way)-deal.riders[p][w.Way].cost+int64(w.Cost)*scale)
				}
				cost := rest + through[i] + least + b.m.rider(r)
				if b.m.onGround(r.Ride) == 1 { // then it is not
					cost += b.m.ride[r.Ride] - b.m.groundCost(r.Ride)
				}
				with[r.Pair] = min(with[r.Pair], up(cost))
			}
		}
	}
}

// others is the best cost of all days but one, by the units of work that this one takes.
func (b *book) others(d int) []int64 {
	cost := b.fill(d)
	width := b.room + 1
	least := slices.Repeat([]int64{none}, width+1)
	for i, c := range cost {
		least[i%width] = min(least[i%width], c)
	}
	for u := 1; u < width; u++ {
		least[u] = min(least[u], least[u-1])
	}
	others := make([]int64, width+1)
	others[width] = none // more than the week has room for
	for u := range width {
		others[u] = least[b.room-u]
	}
	return others
}
