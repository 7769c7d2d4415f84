package bound

// A line is the stretches of a day in the order of their ends, where a horse may work any that have time between
// them: of each, how many of the first it can come after. Of so many first stretches that of the best set
// costs least, the empty one at 0.
func (b *book) line(d int) (least []int64) {
	line := b.spell.Days[d].Line
	least = b.m.scratch.costs.take(len(line) + 1)
	least[0] = 0
	for x := range line {
		least[x+1] = min(least[x], b.through(d, x, least))
	}
	return least
}

// through is the cost of the best set of a line that ends with a stretch.
func (b *book) through(d, x int, least []int64) int64 {
	cost := b.costs[d][x]
	if cost >= none/2 {
		return none
	}
	return cost + least[b.spell.Days[d].Line[x]]
}

// ending is the cost of the best set of a line that is not empty, and the stretch that it ends with.
func (b *book) ending(d int, least []int64) (cost int64, last int) {
	cost = none
	for x := range b.spell.Days[d].Line {
		if c := b.through(d, x, least); c < cost {
			cost, last = c, x
		}
	}
	return cost, last
}

// lined is the best set of a line that is not empty.
func (b *book) lined(d int) *Set {
	line, least := b.spell.Days[d].Line, b.line(d)
	set := &Set{}
	_, x := b.ending(d, least)
	for {
		set.Stretches = append(set.Stretches, x)
		k := line[x]
		if least[k] == 0 {
			return set
		}
		for least[k-1] == least[k] {
			k--
		}
		x = k - 1
	}
}

// later is, of each stretch of a line, the cost of the best set of those that can come after it.
func (b *book) later(d int) []int64 {
	line := b.spell.Days[d].Line
	later := make([]int64, len(line))
	for x := len(line) - 1; x >= 0; x-- {
		for y := x + 1; y < len(line); y++ {
			if best := b.costs[d][y]; line[y] > x && best < none/2 {
				later[x] = min(later[x], best+later[y])
			}
		}
	}
	return later
}
