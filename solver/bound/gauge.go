package bound

import (
	"cmp"
	"slices"
)

// A gauge is how the work of a spell is measured: in units that divide all of it or, where that is fine
// beyond use, coarser ones, in which work counts for less than it is.
type gauge struct {
	unit int64
	room int // units that the week has room for
	days []amounts

	passes [][]pass // by day and state
	states []int    // before each day and after the last
}

// amounts of work that ways through a day take, in units: each once, from the least, the first none at all. Of ways
// that cost the same the one with least work is taken, which leaves the other horses most: Dive came to 166 and
// 136 in two large weeks, and to none that seats all where that is not so.
type amounts struct {
	units []int
	of    []int32 // the amount of each step that may be the last
}

func gaugeOf(spell *Spell) gauge {
	var g gauge
	g.passes, g.states = passes(spell)
	return g.again(spell)
}

// again measures a spell of which only the ways through its days are others.
func (g gauge) again(spell *Spell) gauge {
	const finest = 1024
	g.unit, g.days = 0, nil
	total := int64(0)
	for _, day := range spell.Days {
		most := int64(0)
		for _, step := range day.Steps {
			if step.Last {
				g.unit = divisor(g.unit, step.Work)
				most = max(most, step.Work)
			}
		}
		total += most
	}
	g.unit = max(g.unit, 1)
	most := spell.MostWork
	if most < 0 || most > total {
		most = total
	}
	if most/g.unit > finest {
		g.unit = most/finest + 1
	}
	g.room = int(most / g.unit)
	for _, day := range spell.Days {
		a := amounts{units: []int{0}, of: make([]int32, len(day.Steps))}
		var last []int // steps
		for n, step := range day.Steps {
			if step.Last {
				last = append(last, n)
			}
		}
		slices.SortStableFunc(last, func(m, n int) int { return cmp.Compare(day.Steps[m].Work, day.Steps[n].Work) })
		for i, n := range last {
			units := int(day.Steps[n].Work / g.unit)
			if i == 0 || units != a.units[len(a.units)-1] {
				a.units = append(a.units, units)
			}
			a.of[n] = int32(len(a.units) - 1)
		}
		g.days = append(g.days, a)
	}
	return g
}

func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
