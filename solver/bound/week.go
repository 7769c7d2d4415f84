package bound

import "slices"

// best is the cost of the best week: a knapsack over the days, by units of work and days worked.
func (b *book) best() int64 {
	days := len(b.spell.Days)
	b.picks = make([][]int32, days)
	b.cost = b.fill(-1)
	return slices.Min(b.cost)
}

// most is how many days can be worked.
func (b *book) most() int {
	if b.spell.MostDays < 0 || b.spell.MostDays > len(b.spell.Days) {
		return len(b.spell.Days)
	}
	return b.spell.MostDays
}

// tiers is how many numbers of days are told apart: one, where the limit cannot bind.
func (b *book) tiers() int {
	if b.most() == len(b.spell.Days) {
		return 1
	}
	return b.most() + 1
}

// fill works out the best cost for each number of days and units, over all days but one.
func (b *book) fill(but int) []int64 {
	width := b.room + 1
	cost := make([]int64, b.tiers()*width)
	for i := range cost {
		cost[i] = none
	}
	cost[0] = 0
	for d := range b.spell.Days {
		if d == but {
			continue
		}
		next := make([]int64, len(cost))
		for i := range next {
			next[i] = none
		}
		pick := make([]int32, len(cost))
		for i, c := range cost {
			if c == none {
				continue
			}
			for k, x := range b.cheap[d] {
				to := i + x.units
				if i%width+x.units >= width {
					continue
				}
				if b.tiers() > 1 && x.set >= 0 {
					to += width
				}
				if to < len(next) && c+x.cost < next[to] {
					next[to], pick[to] = c+x.cost, int32(k)
				}
			}
		}
		cost = next
		if but < 0 {
			b.picks[d] = pick
		}
	}
	return cost
}

// take counts what the best week uses.
func (b *book) take() {
	at := 0
	for i, c := range b.cost {
		if c < b.cost[at] {
			at = i
		}
	}
	for d := len(b.spell.Days) - 1; d >= 0; d-- {
		x := b.cheap[d][b.picks[d][at]]
		at -= x.units
		if x.set < 0 {
			continue
		}
		if b.tiers() > 1 {
			at -= b.room + 1
		}
		b.use(d, &b.spell.Days[d].Sets[x.set])
	}
}
