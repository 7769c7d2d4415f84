package bound

import "runtime"

const none = 1 << 56 // dearer than anything; many of it, as many as a date has lessons, are still a number

// trade lets every horse plan its weeks at the prices, and counts what they take.
func (m *Market) trade() {
	m.planWeeks(m.spells, func(spell int, cost int64, _ int) { m.costs[spell] = cost })
	m.value = 0
	for _, cost := range m.costs {
		m.value += cost
	}
	for r, price := range m.ride {
		m.value += price
		if m.onGround(r) == 1 {
			m.value += m.groundCost(r) - price
			for _, k := range m.cutOn[r] {
				m.met[k]++
			}
		}
	}
	for k, price := range m.cut {
		m.value += price * int64(m.cuts[k].Least)
	}
	for k, price := range m.room {
		m.value -= price * int64(m.p.Room[k])
	}
	for k, price := range m.limit {
		m.value -= price * int64(m.p.Grounded[k].Most)
	}
}

// A book is a spell at the prices. It is written on the market's scratch.
type book struct {
	m       *Market
	spell   *Spell
	costs   [][]int64           // by day and stretch: the best
	deals   [][]deal            // by day and stretch, made when first asked for
	spares  [][]int64           // by day and share
	onward  [][][]int           // by day and stretch: alone, and the shares that lead on; nil where nothing is shared
	reached []costsTo           // by day
	joints  []map[joint]*joined // by day
	placed  []map[[4]int][]seated
	cheap   [][]cheap // by day, the best way for each amount of work, the first none
	gauge
	picks [][]int32 // by day: which of cheap was best for so many days and units
	cost  []int64
}

type cheap struct {
	units int
	cost  int64
	last  int // step; 0: the horse rests
}

// worthIt is what is left of the best ways for the amounts of work without those that cost no less than one with less
// work, or more than none at all.
func worthIt(all []cheap) []cheap {
	left, least := all[:1], int64(1)
	for _, x := range all[1:] {
		if x.cost < least {
			left, least = append(left, x), x.cost
		}
	}
	return left
}

// book evaluates the days of a spell.
func (m *Market) book(s int) *book {
	runtime.Gosched() // the search beside this counts its ticks with a goroutine that must be heard
	m.scratch.clear()
	spell := &m.p.Spells[s]
	b := &book{m: m, spell: spell, gauge: m.gauges[s], costs: make([][]int64, len(spell.Days)), deals: make([][]deal, len(spell.Days)), cheap: make([][]cheap, len(spell.Days)), spares: make([][]int64, len(spell.Days)), onward: make([][][]int, len(spell.Days)), reached: make([]costsTo, len(spell.Days)),
		joints: make([]map[joint]*joined, len(spell.Days)), placed: make([]map[[4]int][]seated, len(spell.Days))}
	for d := range spell.Days {
		day := &spell.Days[d]
		b.deals[d] = m.scratch.deals.take(len(day.Stretches))
		costs := m.scratch.costs.take(len(day.Stretches))
		b.costs[d] = costs
		for i := range day.Stretches {
			if x := &day.Stretches[i]; x.plain() {
				costs[i] = m.plainly(x)
			} else {
				costs[i] = b.deal(d, i).best
			}
		}
		b.saving(d)
		b.walk(d)
		amounts := &b.days[d]
		b.cheap[d] = m.scratch.cheap.take(len(amounts.units))
		for k, units := range amounts.units {
			b.cheap[d][k] = cheap{units, none, 0}
		}
		b.cheap[d][0].cost = 0
		in := int64(day.In) * scale
		for n := range day.Steps {
			if !day.Steps[n].Last {
				continue
			}
			if cost := b.reached[d].cost[n]; cost < none/2 && cost+in <= b.cheap[d][amounts.of[n]].cost {
				b.cheap[d][amounts.of[n]] = cheap{amounts.units[amounts.of[n]], cost + in, n}
			}
		}
		b.cheap[d] = worthIt(b.cheap[d])
	}
	return b
}
