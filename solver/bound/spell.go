package bound

import "runtime"

const none = 1 << 56 // dearer than anything; many of it, as many as a date has lessons, are still a number

// trade lets every horse plan its weeks at the prices, and counts what they take.
func (m *Market) trade() {
	m.planWeeks(m.all, func(spell int, cost int64, _ int) { m.weeks[spell] = cost })
	m.value = 0
	for _, cost := range m.weeks {
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
	m      *Market
	spell  *Spell
	costs  [][]int64           // by day and stretch: the best
	deals  [][]deal            // by day and stretch, made when first asked for
	spares [][]int64           // by day and share
	joints []map[joint]*joined // by day
	placed []map[[4]int][]seated
	cheap  [][]cheap // by day, the best set for each amount of work, the first none
	gauge
	picks [][]int32 // by day: which of cheap was best for so many days and units
	cost  []int64
}

type cheap struct {
	units int
	cost  int64
	set   int // -1: the horse rests
}

// book evaluates each step and set of a spell.
func (m *Market) book(s int) *book {
	runtime.Gosched() // the search beside this counts its ticks with a goroutine that must be heard
	m.scratch.clear()
	spell := &m.p.Spells[s]
	b := &book{m: m, spell: spell, gauge: m.gauges[s], costs: make([][]int64, len(spell.Days)), deals: make([][]deal, len(spell.Days)), cheap: make([][]cheap, len(spell.Days)), spares: make([][]int64, len(spell.Days)),
		joints: make([]map[joint]*joined, len(spell.Days)), placed: make([]map[[4]int][]seated, len(spell.Days))}
	for d := range spell.Days {
		day := &spell.Days[d]
		b.deals[d] = m.scratch.deals.of(len(day.Stretches), deal{})
		costs := m.scratch.costs.take(len(day.Stretches))
		b.costs[d] = costs
		for i := range day.Stretches {
			if x := &day.Stretches[i]; x.plain() {
				costs[i] = m.plainly(x)
			} else {
				costs[i] = b.deal(d, i).best
			}
		}
		var sharing bool
		if len(day.Shares) > 0 {
			b.spares[d], sharing = b.saving(d)
			b.joints[d], b.placed[d] = map[joint]*joined{}, map[[4]int][]seated{}
		}
		amounts := &b.days[d]
		b.cheap[d] = m.scratch.cheap.take(len(amounts.units))
		for k, units := range amounts.units {
			b.cheap[d][k] = cheap{units, none, -1}
		}
		b.cheap[d][0].cost = 0
		if len(day.Line) > 0 {
			cost, last := b.ending(d, b.line(d))
			b.cheap[d][1] = cheap{0, min(none, cost+int64(day.In)*scale), last}
			continue
		}
		sums, in := m.scratch.costs.take(len(day.Sets)), int64(day.In)*scale
		for i := range day.Sets {
			cost := costs[amounts.last[i]]
			if less := amounts.less[i]; less != alone {
				cost += sums[less]
			} else {
				cost = 0
				for _, x := range day.Sets[i].Stretches {
					cost += costs[x]
				}
			}
			sums[i] = cost
			if cost >= none/2 {
				continue
			}
			c := &b.cheap[d][amounts.of[i]]
			if set := &day.Sets[i]; sharing && len(set.Shares) > 0 && cost+in-b.mostSpared(d, set) < c.cost {
				cost, _ = b.together(d, set)
			}
			if cost += in; cost < c.cost {
				c.cost, c.set = cost, i
			}
		}
	}
	return b
}
