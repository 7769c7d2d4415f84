package bound

import (
	"runtime"
	"slices"
)

// fewest horses of a region, to begin with.
const fewest = 4

// resettle lets some horses settle their weeks anew, at prices of their own for what they have among them, and keeps that
// if it costs no more: several regions at once, each as if it were alone. Of one of which it is known that it cannot do
// better, by its own bound, no more is asked; the next are larger then, else smaller.
func (b *barter) resettle() {
	const regions = 4 // as many on any number of processors
	for len(b.twins) < regions {
		b.twins = append(b.twins, b.twin())
	}
	tried := make([]region, regions)
	for i := range tried {
		tried[i].who = b.together()
	}
	each(regions, min(runtime.GOMAXPROCS(0), regions), func(_, i int) {
		b.twins[i].follow(b)
		b.twins[i].try(&tried[i])
	})
	for _, r := range tried {
		if b.plans += r.plans; r.hopeless {
			b.size = min(b.size+2, 16*max(fewest, len(b.weeks)/2))
		} else {
			b.size = max(b.size-1, 16*2)
		}
		b.adopt(r)
	}
}

// region is horses that try together.
type region struct {
	who      []int
	was      []held
	now      []held // none: they came to nothing
	hopeless bool
	plans    int // weeks planned
}

// twin is one that tries without changing b.
func (b *barter) twin() *barter {
	own := *b
	own.Market = b.own(b.wide)
	own.alone = true
	own.weeks, own.left, own.owner, own.visible = slices.Clone(b.weeks), slices.Clone(b.left), slices.Clone(b.owner), slices.Clone(b.visible)
	return &own
}

// follow has a twin begin where b is.
func (b *barter) follow(of *barter) {
	copy(b.weeks, of.weeks)
	copy(b.left, of.left)
	copy(b.owner, of.owner)
	b.plans = 0
}

// try a region. What it has come to it leaves as it is.
func (b *barter) try(r *region) {
	const rounds, dives = 20, 6 // twice or half as many do as well
	before := b.total()
	for _, s := range r.who {
		r.was = append(r.was, b.release(s))
	}
	d := b.free(r.who)
	cost := b.costOf(r.was, d)
	if r.hopeless = !b.hopeful(d, rounds, cost); !r.hopeless && b.settle(d, dives, cost) && b.total() <= before {
		for _, s := range r.who {
			r.now = append(r.now, b.weeks[s])
		}
	}
	r.plans = b.plans
}

// adopt takes over what a region has come to, if that still fits.
func (b *barter) adopt(r region) {
	for i, s := range r.who {
		if r.now == nil || !slices.Equal(b.weeks[s].pairs, r.was[i].pairs) || !slices.Equal(b.weeks[s].uses, r.was[i].uses) {
			return // another has changed it
		}
	}
	before, was := b.total(), make([]held, len(r.who))
	for i, s := range r.who {
		was[i] = b.release(s)
	}
	fits := true
	for i, s := range r.who {
		free := !slices.ContainsFunc(r.now[i].rides, func(r int) bool { return b.owner[r] != nobody })
		if fits = fits && free && b.fits(r.now[i]); fits {
			b.take(s, r.now[i])
		}
	}
	if fits && b.total() <= before {
		return
	}
	b.giveBack(r.who, was)
}

// hopeful reports whether horses might do better by their bound: prices move for some rounds to tell.
func (b *barter) hopeful(d *dive, rounds, cost int64) bool {
	for round := range rounds {
		b.plans += len(d.horses)
		d.trade()
		value := d.value()
		if value > cost-scale+scale/16 { // costs are whole
			return false
		}
		d.step((cost - value) * (rounds - round) / rounds)
	}
	return true
}

// settle settles one horse after the other, as long as all of them might cost no more. It reports whether it came to an end.
func (b *barter) settle(d *dive, rounds, cost int64) bool {
	gap := max(cost, 0)/32 + scale
	for len(d.horses) > 0 {
		for k := range rounds {
			b.plans += len(d.horses)
			if d.trade(); d.value() > cost {
				return false
			}
			d.step(gap * (rounds - k) / rounds)
		}
		at := d.fullest()
		b.plans++
		h := d.bestWeek(at)
		if !b.fits(h) {
			return false
		}
		d.settle(at, h)
		b.take(at, h)
		cost -= h.cost
	}
	return true
}

// free begins with horses that have been released, the rides that nobody has and the best prices.
func (b *barter) free(who []int) *dive {
	can := make([]bool, len(b.owner))
	for _, s := range who {
		for _, r := range b.rides[s] {
			can[r] = b.owner[r] == nobody
		}
	}
	copy(b.ride, b.bestRide)
	copy(b.room, b.bestRoom)
	copy(b.limit, b.bestLimit)
	d := b.dive(slices.Clone(who), slices.Clone(b.left), func(r int) bool { return can[r] })
	for _, s := range who {
		b.narrow(s)
	}
	return d
}

// costOf is what horses had cost, with rides counted in that were open to them as well, and what the limits on rides on the
// ground are worth at the prices, less those that are there whatever they do.
func (b *barter) costOf(was []held, d *dive) (cost int64) {
	open, had := make([]bool, len(b.owner)), make([]bool, len(b.owner))
	for _, h := range was {
		cost += h.cost
		for _, r := range h.rides {
			had[r] = true
		}
	}
	for _, r := range d.offered {
		open[r] = true
		if !had[r] {
			cost += int64(b.p.OnGround[r]) * scale
		}
	}
	for k, g := range b.p.Grounded {
		most := g.Most
		for _, r := range g.Rides {
			if b.owner[r] == nobody && !open[r] {
				most--
			}
		}
		cost += b.limit[k] * int64(most)
	}
	return cost
}

// together draws horses that could carry what others of them have: the first rather one whose week is dear at the best
// prices.
func (b *barter) together() []int {
	n := b.size / 16
	who := []int{b.dear()}
	for range 6 * n {
		if len(who) == n {
			break
		}
		from := who[b.draw(len(who))]
		if len(b.rides[from]) == 0 {
			continue
		}
		s := b.owner[b.rides[from][b.draw(len(b.rides[from]))]]
		if s == nobody || slices.Contains(who, s) || b.off(s) < scale/4 && b.draw(2) == 0 {
			continue
		}
		who = append(who, s)
	}
	return who
}

// dear draws a horse: one whose week costs twice as much more than its best is drawn twice as often.
func (b *barter) dear() int {
	const eighth = scale / 8
	off := make([]int, len(b.weeks))
	sum := 0
	for s := range off {
		off[s] = 1 + int(min(b.off(s), none/1024)/eighth)
		sum += off[s]
	}
	at := b.draw(sum)
	for s := range off {
		if at -= off[s]; at < 0 {
			return s
		}
	}
	return len(off) - 1
}

// off is how much more than its best a horse's week costs at the best prices.
func (b *barter) off(s int) int64 {
	w := &b.weeks[s]
	cost := w.cost - b.costs[s]
	for _, r := range w.rides {
		cost -= b.bestRide[r]
	}
	for _, k := range w.uses {
		cost += b.bestRoom[k]
	}
	return max(0, cost)
}
