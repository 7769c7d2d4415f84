package bound

import (
	"context"
	"slices"
)

// closed is a price that nobody pays.
const closed = int64(1) << 40

// Dive settles the horses' weeks one by one, the fullest first, each the best at the prices, which move
// a little now and then: what is settled nobody else can have. It returns what they have.
// That keeps the rules that the problem knows, or nearly: beyond tells how many more rides are on the ground than may be. The
// prices are then as they were.
func (m *Market) Dive(ctx context.Context) (start Start, beyond int) {
	rounds := int64(12)
	if m.p.Rides > 400 {
		rounds = 6 // twice or four times as many take long, and leave as many on the ground
	}
	d := m.dive(slices.Clone(m.spells), slices.Clone(m.p.Room), func(int) bool { return true })
	start = d.settleAll(ctx, rounds, max(m.best, 0)/32+scale, func(int, held) {})
	m.back()
	return start, m.beyond(m.owners(start.Pairs))
}

// settleAll settles the horses' weeks one by one, after so many rounds each in which prices move, less and less, and returns what
// they have. Each is told.
func (d *dive) settleAll(ctx context.Context, rounds, gap int64, tell func(at int, h held)) Start {
	start := Start{Things: make([][]int, len(d.p.Spells)), Known: len(d.room)}
	for len(d.horses) > 0 && ctx.Err() == nil {
		for k := range rounds {
			d.trade()
			d.step(gap * (rounds - k) / rounds)
		}
		at := d.fullest()
		h := d.bestWeek(at)
		start.Pairs, start.Things[at] = append(start.Pairs, h.pairs...), h.uses
		d.settle(at, h)
		tell(at, h)
	}
	return start
}

// owners are who carries each ride: a spell, or nobody.
func (m *Market) owners(pairs []int) []int {
	owner := slices.Repeat([]int{nobody}, m.p.Rides)
	for _, p := range pairs {
		owner[m.rideOf[p]] = m.spellOf[p]
	}
	return owner
}

// beyond is how many more rides are on the ground than may be, where each has an owner or nobody.
func (m *Market) beyond(owner []int) (beyond int) {
	for _, g := range m.p.Grounded {
		n := 0
		for _, r := range g.Rides {
			if owner[r] == nobody {
				n++
			}
		}
		beyond += max(0, n-g.Most)
	}
	return beyond
}

// A dive is horses whose weeks are not yet settled, and what is left for them.
type dive struct {
	*Market
	horses  []int   // spells
	offered []int   // rides that they may take
	things  []int   // of Room, of which some are left
	left    []int   // of each thing of Room
	cost    []int64 // by spell: of its best week of late
	load    []int   // by spell: rides in it
}

// dive begins with some horses, and with the rides that are open to them. Nobody can have others, nor things of which
// nothing is left.
func (m *Market) dive(horses, left []int, open func(ride int) bool) *dive {
	d := &dive{Market: m, horses: horses, left: left, cost: make([]int64, len(m.p.Spells)), load: make([]int, len(m.p.Spells))}
	for r := range m.ride {
		if open(r) {
			d.offered = append(d.offered, r)
		} else {
			m.ride[r] = -closed
		}
	}
	for k := range left {
		if left[k] > 0 {
			d.things = append(d.things, k)
		} else {
			m.room[k] = closed
		}
	}
	return d
}

// trade lets the horses that are left plan at the prices.
func (d *dive) trade() {
	d.planWeeks(d.horses, func(spell int, cost int64, rides int) { d.cost[spell], d.load[spell] = cost, rides })
}

// value is what no plan of theirs costs less than: the limits on rides on the ground apart.
func (d *dive) value() (value int64) {
	for _, s := range d.horses {
		value += d.cost[s]
	}
	for _, r := range d.offered {
		if d.onGround(r) == 1 {
			value += d.groundCost(r)
		} else {
			value += d.ride[r]
		}
	}
	for _, k := range d.things {
		value -= d.room[k] * int64(d.left[k])
	}
	return value
}

// step moves the prices towards what is short, so far that the value would rise by gap if nothing changed.
func (d *dive) step(gap int64) {
	norm := int64(1)
	for _, r := range d.offered {
		short := int64(1 - d.carried[r] - d.onGround(r))
		norm += short * short
	}
	for _, k := range d.things {
		if short := int64(d.used[k] - d.left[k]); short > 0 || d.room[k] > 0 {
			norm += short * short
		}
	}
	for _, r := range d.offered {
		d.ride[r] += int64(1-d.carried[r]-d.onGround(r)) * gap / norm
	}
	for _, k := range d.things {
		d.room[k] = max(0, d.room[k]+int64(d.used[k]-d.left[k])*gap/norm)
	}
}

// fullest is the horse that is left and had most rides.
func (d *dive) fullest() int {
	at := d.horses[0]
	for _, s := range d.horses {
		if d.load[s] > d.load[at] {
			at = s
		}
	}
	return at
}

// settle gives a horse a week.
func (d *dive) settle(at int, h held) {
	d.horses = slices.DeleteFunc(d.horses, func(s int) bool { return s == at })
	for _, r := range h.rides {
		d.ride[r] = -closed
	}
	d.offered = slices.DeleteFunc(d.offered, func(r int) bool { return slices.Contains(h.rides, r) })
	for _, k := range h.uses {
		if d.left[k]--; d.left[k] <= 0 {
			d.room[k] = closed
		}
	}
	d.things = slices.DeleteFunc(d.things, func(k int) bool { return d.left[k] <= 0 })
}
