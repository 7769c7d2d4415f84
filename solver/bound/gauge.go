package bound

import "encoding/binary"

// A gauge is how the work of a spell is measured: in units that divide all of it or, where that is fine
// beyond use, coarser ones, in which work counts for less than it is.
type gauge struct {
	unit int64
	room int // units that the week has room for
	days []amounts

	steps  [][]step // by day and state
	states []int    // before each day and after the last
}

// amounts of work that sets of a day take, in units: each once, the first is none.
type amounts struct {
	units []int
	of    []int32 // the amount of each set
	last  []int32 // the last stretch of each set
	less  []int32 // and the earlier set that lacks only this, or alone where there is none
}

func gaugeOf(spell *Spell) gauge {
	const finest = 1024
	var g gauge
	g.steps, g.states = steps(spell)
	total := int64(0)
	for _, day := range spell.Days {
		most := int64(0)
		for _, set := range day.Sets {
			g.unit = divisor(g.unit, set.Work)
			most = max(most, set.Work)
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
		a := amounts{units: []int{0}, of: make([]int32, len(day.Sets)), last: make([]int32, len(day.Sets)), less: lacking(day.Sets)}
		if len(day.Line) > 0 {
			a.units = append(a.units, 0)
		}
		seen := map[int]int{}
		for i, set := range day.Sets {
			units := int(set.Work / g.unit)
			at, ok := seen[units]
			if !ok {
				at = len(a.units)
				seen[units] = at
				a.units = append(a.units, units)
			}
			a.of[i], a.last[i] = int32(at), int32(set.Stretches[len(set.Stretches)-1])
		}
		g.days = append(g.days, a)
	}
	return g
}

// lacking finds for each set the earlier one that has all its stretches but the last.
func lacking(sets []Set) []int32 {
	less, at := make([]int32, len(sets)), map[string]int32{}
	var key []byte
	for i, set := range sets {
		key = key[:0]
		less[i] = alone
		for _, x := range set.Stretches {
			if k, ok := at[string(key)]; ok {
				less[i] = k
			} else {
				less[i] = alone
			}
			key = binary.AppendUvarint(key, uint64(x))
		}
		at[string(key)] = int32(i)
	}
	return less
}

func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
