package bound

import "slices"

// best is the cost of the best week: a knapsack over the days, by units of work and days worked.
func (b *book) best() int64 {
	days := len(b.spell.Days)
	b.picks = make([][]int32, days)
	b.cost = b.fill(-1)
	return slices.Min(b.cost)
}

// fill works out the best cost for each state and units, over all days, or over all but one on which it
// works.
func (b *book) fill(but int) []int64 {
	width := b.room + 1
	cost := b.m.scratch.costs.of(width, none)
	cost[0] = 0
	most := 0 // units that come to a day
	for d := range b.spell.Days {
		next := b.m.scratch.costs.of(b.states[d+1]*width, none)
		if d == but {
			for state, to := range b.passes[d] {
				if to.work != forbidden {
					cheapen(cost[state*width:][:most+1], next[to.work*width:], nil, 0, 0)
				}
			}
			cost = next
			continue
		}
		pick := b.m.scratch.picks.of(len(next), 0)
		for k := range b.cheap[d] {
			x := &b.cheap[d][k]
			if x.cost == none || x.units >= width {
				continue
			}
			for state, pass := range b.passes[d] {
				to := pass.work
				if x.last == 0 {
					to = pass.rest
				}
				if to != forbidden {
					n := min(most+1, width-x.units)
					into := to*width + x.units
					cheapen(cost[state*width:][:n], next[into:], pick[into:], x.cost, int32(state*len(b.cheap[d])+k))
				}
			}
		}
		cost = next
		most = min(most+b.cheap[d][len(b.cheap[d])-1].units, b.room)
		if but < 0 {
			b.picks[d] = pick
		}
	}
	return cost
}

// cheapen goes from states and units to others at a cost more, where that is cheaper than what led there
// before, and notes by what.
func cheapen(from, to []int64, pick []int32, more int64, by int32) {
	for i, c := range from {
		if c != none && c+more < to[i] {
			to[i] = c + more
			if pick != nil {
				pick[i] = by
			}
		}
	}
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
		width, by := b.room+1, int(b.picks[d][at])
		x := b.cheap[d][by%len(b.cheap[d])]
		at = by/len(b.cheap[d])*width + at%width - x.units
		if x.last == 0 {
			continue
		}
		b.use(d, x.last)
	}
}
