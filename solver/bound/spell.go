package bound

import (
	"math"
	"runtime"
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
	m      *Market
	spell  *Spell
	deals  [][]deal            // by day and stretch
	spares [][]int64           // by day and share
	joints []map[joint]*joined // by day
	placed []map[[4]int][]seated
	cheap  [][]cheap // by day, the best set for each amount of work, 0 among them, by work
	unit   int64     // of work
	room   int       // units of work that the week has room for
	picks  [][]int32 // by day: which of cheap was best for so many days and units
	cost   []int64
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
	b := &book{m: m, spell: spell, deals: make([][]deal, len(spell.Days)), cheap: make([][]cheap, len(spell.Days)), spares: make([][]int64, len(spell.Days)),
		joints: make([]map[joint]*joined, len(spell.Days)), placed: make([]map[[4]int][]seated, len(spell.Days))}
	b.measure()
	for d := range spell.Days {
		day := &spell.Days[d]
		b.deals[d] = make([]deal, len(day.Stretches))
		costs := make([]int64, len(day.Stretches))
		for i := range day.Stretches {
			b.deals[d][i] = m.deal(&day.Stretches[i])
			costs[i] = b.deals[d][i].best
		}
		var sharing bool
		if len(day.Shares) > 0 {
			b.spares[d], sharing = b.saving(d)
			b.joints[d], b.placed[d] = map[joint]*joined{}, map[[4]int][]seated{}
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
			if sharing && len(set.Shares) > 0 {
				cost, _ = b.together(d, &day.Sets[i])
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
