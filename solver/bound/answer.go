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
	a.Value, a.More, a.Spell = m.value, slices.Repeat([]int64{none}, m.p.Pairs), m.spellOf
	a.Worn, a.MoreWorn = slices.Repeat([]int{never}, m.p.Worn), slices.Repeat([]int64{none}, m.p.Worn)
	for s := range m.p.Spells {
		b := m.book(s)
		rest := m.value - b.best()
		for d := range b.spell.Days {
			b.with(d, rest, &a)
		}
	}
	return a
}

// with tells, for each rider of a day, the least value of all with it, and what it costs more; rest is the value of everything
// but this spell.
func (b *book) with(d int, rest int64, a *Answer) {
	day := &b.spell.Days[d]
	through := b.through(d) // the best week with a stretch, itself apart
	for i := range day.Stretches {
		if through[i] >= none/2 {
			continue
		}
		x, deal := &day.Stretches[i], b.deal(d, i)
		for p, riders := range x.Places {
			for k := range riders {
				r := &riders[k]
				least := int64(none)
				other := rest + through[i] + b.m.rider(r)
				if b.m.onGround(r.Ride) == 1 { // then it is not
					other += b.m.ride[r.Ride] - b.m.groundCost(r.Ride)
				}
				for _, w := range r.Ways {
					way := deal.cost(w.Way) - deal.riders[p][w.Way].cost + int64(w.Cost)*scale
					least = min(least, way)
					if len(a.Worn) > 0 {
						a.Worn[w.Worn] = min(a.Worn[w.Worn], up(other+way))
						a.MoreWorn[w.Worn] = min(a.MoreWorn[w.Worn], max(0, other+way-b.m.value))
					}
				}
				cost := other + least
				a.With[r.Pair] = min(a.With[r.Pair], up(cost))
				a.More[r.Pair] = min(a.More[r.Pair], max(0, cost-b.m.value)) // shares may be counted twice
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

// through is what the best week costs with each stretch of a day, itself apart; none where there is no such week. What
// could be shared is taken for shared.
func (b *book) through(d int) []int64 {
	day, others := &b.spell.Days[d], b.others(d)
	through := slices.Repeat([]int64{none}, len(day.Stretches))
	own := make([]int64, len(day.Stretches))
	for x := range own {
		if own[x] = b.costs[d][x]; own[x] < none/2 {
			own[x] -= b.inside(d, x)
		}
	}
	edge := func(p, n int) int64 { // from step to step, the second counted in
		x := day.Steps[n].Stretch
		if x == Pause {
			return 0
		}
		return own[x] - b.across(d, day.Steps[p].Stretch, x)
	}
	before := slices.Repeat([]int64{none}, len(day.Steps)) // up to a step
	before[0] = 0
	for n := range day.Steps {
		for _, p := range day.Steps[n].After {
			before[n] = min(before[n], before[p]+edge(p, n))
		}
	}
	after := slices.Repeat([]int64{none}, len(day.Steps)) // from a step, itself apart
	for n := len(day.Steps) - 1; n >= 0; n-- {
		if step := &day.Steps[n]; step.Last {
			after[n] = min(after[n], others[min(int(step.Work/b.unit), len(others)-1)]+int64(day.In)*scale)
		}
		for _, p := range day.Steps[n].After {
			after[p] = min(after[p], after[n]+edge(p, n))
		}
		if x := day.Steps[n].Stretch; x != Pause && before[n] < none/2 && after[n] < none/2 {
			through[x] = min(through[x], before[n]-b.costs[d][x]+after[n])
		}
	}
	return through
}
