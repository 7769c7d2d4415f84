package bound

import (
	"context"
	"slices"
)

// closed is a price that nobody pays.
const closed = int64(1) << 40

// Dive settles the horses' weeks one by one, the fullest first, each the best at the prices, which move
// a little now and then: what is settled nobody else can have. It returns what they have.
// That keeps the rules that the problem knows, or nearly. The prices are then as they were.
func (m *Market) Dive(ctx context.Context) Start {
	const rounds = 12 // in which the prices move after each: with 5 a herd of 60 leaves one or two more on the ground
	d := &dive{Market: m, settled: make([]bool, len(m.p.Spells)), rides: make([]int, len(m.p.Spells)),
		left: slices.Clone(m.p.Room), taken: make([]bool, m.p.Rides)}
	start := Start{Things: make([][]int, len(m.p.Spells))}
	for range m.p.Spells {
		if ctx.Err() != nil {
			break
		}
		for k := range int64(rounds) {
			d.trade()
			d.step((max(m.best, 0)/32 + scale) * (rounds - k) / rounds)
		}
		d.settle(&start)
	}
	m.back()
	return start
}

type dive struct {
	*Market
	settled []bool // by spell
	rides   []int  // by spell: in its best week of late
	left    []int  // of each thing of Room
	taken   []bool // rides
}

// trade lets the horses that are left plan at the prices.
func (d *dive) trade() {
	var left []int
	for s, settled := range d.settled {
		if !settled {
			left = append(left, s)
		}
	}
	d.planWeeks(left, func(spell int, _ int64, rides int) { d.rides[spell] = rides })
}

// step moves the prices towards what is short, so far that the value would rise by gap if nothing changed.
func (d *dive) step(gap int64) {
	norm := int64(1)
	for r := range d.ride {
		if !d.taken[r] {
			short := int64(1 - d.carried[r] - d.onGround(r))
			norm += short * short
		}
	}
	for k, left := range d.left {
		if short := int64(d.used[k] - left); left > 0 && (short > 0 || d.room[k] > 0) {
			norm += short * short
		}
	}
	for r := range d.ride {
		if !d.taken[r] {
			d.ride[r] += int64(1-d.carried[r]-d.onGround(r)) * gap / norm
		}
	}
	for k, left := range d.left {
		if left > 0 {
			d.room[k] = max(0, d.room[k]+int64(d.used[k]-left)*gap/norm)
		}
	}
}

// settle settles the week of the horse that is left and had most rides.
func (d *dive) settle(start *Start) {
	at := slices.Index(d.settled, false)
	for s, settled := range d.settled {
		if !settled && d.rides[s] > d.rides[at] {
			at = s
		}
	}
	d.settled[at] = true
	d.planWeeks([]int{at}, func(int, int64, int) {})
	start.Pairs = append(start.Pairs, d.picked...)
	for r, carried := range d.carried {
		if carried > 0 {
			d.taken[r], d.ride[r] = true, -closed
		}
	}
	for k, used := range d.used {
		start.Things[at] = append(start.Things[at], slices.Repeat([]int{k}, used)...)
		if d.left[k] -= used; used > 0 && d.left[k] <= 0 {
			d.room[k] = closed
		}
	}
}
