package bound

import (
	"math"
	"runtime"
	"slices"
)

const none = math.MaxInt64 / 4 // dearer than anything

// trade lets every horse plan its weeks at the prices, and counts what they take.
func (m *Market) trade() {
	clear(m.carried)
	clear(m.used)
	clear(m.met)
	m.picked = m.picked[:0]
	m.value = 0
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
	for s := range m.p.Spells {
		b := m.book(s)
		m.value += b.best()
		b.take()
	}
}

// A book is a spell at the prices.
type book struct {
	m     *Market
	spell *Spell
	deals [][]deal  // by day and stretch
	cheap [][]cheap // by day, the best set for each amount of work, 0 among them, by work
	unit  int64     // of work
	room  int       // units of work that the week has room for
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
	spell := &m.p.Spells[s]
	b := &book{m: m, spell: spell, deals: make([][]deal, len(spell.Days)), cheap: make([][]cheap, len(spell.Days))}
	b.measure()
	for d := range spell.Days {
		day := &spell.Days[d]
		b.deals[d] = make([]deal, len(day.Stretches))
		costs := make([]int64, len(day.Stretches))
		for i := range day.Stretches {
			b.deals[d][i] = m.deal(&day.Stretches[i])
			costs[i] = b.deals[d][i].best
		}
		cheapest := map[int]int{} // into b.cheap[d], by units
		b.cheap[d] = []cheap{{set: -1}}
		for i, set := range day.Sets {
			cost := int64(0)
			for _, x := range set.Stretches {
				cost += costs[x]
			}
			if cost >= none/2 {
				continue
			}
			units := int(set.Work / b.unit)
			at, ok := cheapest[units]
			switch {
			case !ok:
				cheapest[units] = len(b.cheap[d])
				b.cheap[d] = append(b.cheap[d], cheap{units, cost, i})
			case cost < b.cheap[d][at].cost:
				b.cheap[d][at].cost, b.cheap[d][at].set = cost, i
			}
		}
	}
	return b
}

// measure chooses the unit of work: what divides all, or where that is fine beyond use a coarser one,
// in which work counts for less than it is.
func (b *book) measure() {
	const finest = 1024
	total := int64(0)
	for _, day := range b.spell.Days {
		most := int64(0)
		for _, set := range day.Sets {
			b.unit = divisor(b.unit, set.Work)
			most = max(most, set.Work)
		}
		total += most
	}
	b.unit = max(b.unit, 1)
	most := b.spell.MostWork
	if most < 0 || most > total {
		most = total
	}
	if most/b.unit > finest {
		b.unit = most/finest + 1
	}
	b.room = int(most / b.unit)
}

func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// charge of a list of things of Room.
func (m *Market) charge(things []int) int64 {
	sum := int64(0)
	for _, k := range things {
		sum += m.room[k]
	}
	return sum
}

// least is the cheapest of lists of Room.
func (m *Market) least(lists [][]int) (int, int64) {
	at, least := 0, int64(none)
	for i, l := range lists {
		if c := m.charge(l); c < least {
			at, least = i, c
		}
	}
	return at, least
}

// A deal is a stretch at the prices: by way, what the tack costs and what the riders do.
type deal struct {
	tack   []int64
	girths []int // the best of each way
	riders [][]int64
	way    int // the best
	best   int64
}

func (d *deal) cost(way int) int64 {
	cost := d.tack[way]
	for _, place := range d.riders {
		cost += place[way]
	}
	return min(cost, none)
}

// rider is what a rider costs in a place, but for tack and way.
func (m *Market) rider(r *Rider) int64 {
	cost := int64(r.Cost)*scale - m.ride[r.Ride] + m.charge(r.Uses)
	for _, n := range r.Needs {
		_, c := m.least(n)
		cost += c
	}
	for _, k := range m.cutOf[r.Pair] {
		cost -= m.cut[k]
	}
	return cost
}

// deal looks for the best way of a stretch.
func (m *Market) deal(x *Stretch) deal {
	d := deal{tack: make([]int64, len(x.Ways)), girths: make([]int, len(x.Ways)), riders: make([][]int64, len(x.Places))}
	for i, w := range x.Ways {
		d.tack[i] = m.charge(w.Uses)
		if len(w.Girths) > 0 {
			at, cost := m.least(w.Girths)
			d.tack[i] += cost
			d.girths[i] = at
		}
	}
	for p, riders := range x.Places {
		d.riders[p] = slices.Repeat([]int64{none}, len(x.Ways))
		for i := range riders {
			cost := m.rider(&riders[i])
			for _, w := range riders[i].Ways {
				d.riders[p][w.Way] = min(d.riders[p][w.Way], cost+int64(w.Cost)*scale)
			}
		}
	}
	d.best = none
	for i := range x.Ways {
		if c := d.cost(i); c < d.best {
			d.best, d.way = c, i
		}
	}
	return d
}

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
		for _, i := range b.spell.Days[d].Sets[x.set].Stretches {
			b.m.use(&b.spell.Days[d].Stretches[i], &b.deals[d][i])
		}
	}
}

func (m *Market) use(x *Stretch, d *deal) {
	count := func(things []int) {
		for _, k := range things {
			m.used[k]++
		}
	}
	w := &x.Ways[d.way]
	count(w.Uses)
	if len(w.Girths) > 0 {
		count(w.Girths[d.girths[d.way]])
	}
	for p := range x.Places {
		r := m.chosen(x.Places[p], d.way, d.riders[p][d.way])
		m.carried[r.Ride]++
		m.picked = append(m.picked, r.Pair)
		for _, k := range m.cutOf[r.Pair] {
			m.met[k]++
		}
		count(r.Uses)
		for _, n := range r.Needs {
			at, _ := m.least(n)
			count(n[at])
		}
	}
}

// chosen is the rider who costs so much in a way.
func (m *Market) chosen(riders []Rider, way int, cost int64) *Rider {
	for i := range riders {
		for _, w := range riders[i].Ways {
			if w.Way == way && m.rider(&riders[i])+int64(w.Cost)*scale == cost {
				return &riders[i]
			}
		}
	}
	panic("bound: nobody costs what the cheapest does")
}
