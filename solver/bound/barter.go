package bound

import (
	"context"
	"runtime"
	"slices"
)

// Barter looks for a cheap plan, beginning with another as far as it goes, until one costs no more than
// least, many tries bring nothing, or there were too many; of both it allows more from call to call. It returns the
// cheapest plan and its cost; nothing where in all of them more is on the ground than may be. A plan keeps
// the rules that the problem knows.
//
// Where more is on the ground than may be, or rides there cost something, a horse plans its week anew with one of them, and keeps
// that if it is worth more. So that they do not go round in a circle each ride has a weight, which grows every time that it is on
// the ground and no horse leaves less for it (Nagata & Bräysy 2009, Oper. Res. Lett. 37:333-338), and prices are drawn a little
// off. Where prices do not tell what a ride is worth a few horses also plan anew one after the other. Else some settle their
// weeks anew together (see resettle).
func (m *Market) Barter(ctx context.Context, first Start, least int) ([]Ridden, int) {
	doublings := min(m.barters, 3)
	m.barters++
	b := newBarter(m)
	b.begin(first)
	return m.barter(ctx, b, least, 1<<doublings)
}

// Resume goes on from the plan that horses came to last or, where that breaks what was learned since and another costs little
// more, from the other. What it returns is as with Barter.
func (m *Market) Resume(ctx context.Context, other Start, least int) ([]Ridden, int) {
	const little = 64
	last, b := newBarter(m), newBarter(m)
	last.begin(m.last)
	b.begin(other)
	if c := last.total(); c < b.total() || c >= none && b.total() > m.lastCost+m.lastCost/little {
		b = last
	}
	return m.barter(ctx, b, least, 2)
}

// barter goes on with a plan, so many times as long as the first Barter may.
func (m *Market) barter(ctx context.Context, b *barter, least, times int) ([]Ridden, int) {
	patience, most := 300*len(m.p.Spells)*times, 60_000*400/max(400, m.steps())*times // weeks planned: for nothing, and in all
	best, cost := slices.Clone(b.weeks), b.total()
	for until := patience; b.plans < min(until, most) && ctx.Err() == nil && up(cost) > least; {
		b.round()
		if c := b.total(); c < cost {
			far := min(4, 20*(up(min(c, none))-least)/max(least, 1)) // from the best that it may come to
			best, cost, until = slices.Clone(b.weeks), c, b.plans+patience*(1+far)
		}
	}
	if cost >= none {
		return nil, never
	}
	m.lastCost = cost
	m.last = Start{Things: make([][]int, len(best)), Known: len(m.room)}
	var all []Ridden
	for s, w := range best {
		m.last.Pairs, m.last.Things[s] = append(m.last.Pairs, w.pairs...), w.uses
		for i, pair := range w.pairs {
			all = append(all, Ridden{pair, w.ways[i]})
		}
	}
	return all, up(cost)
}

// steps of a spell, on the average: what it takes to plan one.
func (m *Market) steps() int {
	n := 0
	for _, s := range m.p.Spells {
		for _, d := range s.Days {
			n += len(d.Steps)
		}
	}
	return n / max(1, len(m.p.Spells))
}

// Ridden is a pair that goes together, and the name of its way.
type Ridden struct{ Pair, Way int }

// Start is a plan to begin with: its pairs, and if that is known, for each spell the things of Room that it
// uses, of the first Known of them.
type Start struct {
	Pairs  []int
	Things [][]int
	Known  int
}

// barter is a plan in the making.
type barter struct {
	*Market          // its own, with prices and horses' weeks narrowed to what is asked
	wide    *Problem // the whole
	visible []bool   // rides that a week was last narrowed to
	weeks   []held   // by spell
	left    []int    // of each thing of Room
	owner   []int    // of each ride: a spell, or nobody
	sought  []int64  // a little for each thing of Room, so that nobody takes what others need and she does not
	weight  []int64
	size    int // of a region, in sixteenths of horses
	rounds  int // so far
	plans   int // weeks planned so far
	dice
	twins []*barter
}

const nobody = -1

// held is what a spell carries and uses, and what its wishes cost.
type held struct {
	pairs []int
	rides []int // by pair
	ways  []int // by pair
	uses  []int // things of Room, sorted
	cost  int64
}

// bestWeek of a horse at the prices.
func (m *Market) bestWeek(s int) held {
	m.takings.clear()
	b := m.book(s)
	h := held{cost: b.best()}
	b.take()
	h.pairs, h.ways = slices.Clone(m.picked), slices.Clone(m.ridden)
	for _, p := range h.pairs {
		h.rides = append(h.rides, m.rideOf[p])
		h.cost += m.ride[m.rideOf[p]]
	}
	for k, n := range m.used {
		for range n {
			h.uses = append(h.uses, k)
		}
		h.cost -= int64(n) * m.room[k]
	}
	return h
}

func newBarter(m *Market) *barter {
	b := &barter{Market: m.own(m.p), wide: m.p, size: 16 * fewest, dice: dice(1 + m.barters),
		weeks: make([]held, len(m.p.Spells)), left: slices.Clone(m.p.Room), owner: slices.Repeat([]int{nobody}, m.p.Rides),
		sought: make([]int64, len(m.p.Room)), weight: slices.Repeat([]int64{1}, m.p.Rides), visible: make([]bool, m.p.Rides)}
	for k, price := range m.bestRoom {
		b.sought[k] = scale/256 + min(price, scale)/4
	}
	return b
}

// own is a market with prices of its own, and a problem of its own, like a given one, to narrow.
func (m *Market) own(wide *Problem) *Market {
	own, p := *m, *wide
	own.ride, own.room = make([]int64, len(m.ride)), make([]int64, len(m.room))
	own.limit, own.cut, own.costs = make([]int64, len(m.limit)), make([]int64, len(m.cut)), slices.Clone(m.costs)
	own.takings, own.beside = m.noTakings(), nil
	own.p, own.gauges = &p, slices.Clone(m.gauges)
	p.Spells = slices.Clone(p.Spells)
	return &own
}

// dice give the same draws in every run (Knuth's).
type dice uint64

// draw is a number below n.
func (d *dice) draw(n int) int {
	*d = *d*6364136223846793005 + 1442695040888963407
	return int(*d>>33) % n
}

// down reports whether a ride is on the ground that could be carried.
func (b *barter) down(r int) bool { return b.owner[r] == nobody && len(b.takers[r]) > 0 }

// total is what the plan costs; none and more where more is on the ground than may be.
func (b *barter) total() int64 {
	if beyond := b.beyond(b.owner); beyond > 0 {
		return none + int64(beyond)
	}
	sum := int64(0)
	for r := range b.owner {
		if b.down(r) {
			sum += int64(b.p.OnGround[r]) * scale
		}
	}
	for _, w := range b.weeks {
		sum += w.cost
	}
	return sum
}

// begin gives each horse what it has in a plan, as far as that goes.
func (b *barter) begin(first Start) {
	has := make([]map[int]bool, len(b.weeks))
	for s := range has {
		has[s] = map[int]bool{}
	}
	for _, p := range first.Pairs {
		has[b.spellOf[p]][b.rideOf[p]] = true
	}
	give := func(s int) {
		was := b.release(s)
		h := b.anew(s, func(r int) int64 {
			if has[s][r] {
				return 2 * ride
			}
			return -ride
		})
		if !b.fits(h) || len(h.rides) < len(was.rides) {
			h = was
		}
		b.take(s, h)
	}
	sought := b.sought
	for s := range b.weeks {
		if first.Things != nil {
			b.sought = slices.Repeat([]int64{closed}, len(sought))
			copy(b.sought[first.Known:], sought[first.Known:])
			for _, k := range first.Things[s] {
				b.sought[k] = sought[k]
			}
		}
		give(s)
	}
	b.sought = sought
	for s := range b.weeks {
		if len(b.weeks[s].rides) < len(has[s]) {
			give(s) // in other tack
		}
	}
}

// ride is what it is worth that a ride of weight 1 is carried: more than any wish.
const ride = 256 * scale

// round lets horses take rides that are on the ground, and some exchange what they have or settle their weeks anew.
func (b *barter) round() {
	const inserts, exchanges, seldom = 10, 2, 16
	runtime.Gosched()
	b.rounds++
	var down []int
	for r := range b.owner {
		if b.down(r) {
			down = append(down, r)
		}
	}
	if len(down) > 0 && (b.seats() || b.total() >= none) {
		for range inserts {
			b.insert(down[b.draw(len(down))])
		}
	}
	// Where it counts how many ride, horses that take one each come further in the same time.
	if b.total() < none && (!b.seats() || b.rounds%seldom == 0) {
		b.resettle()
		return
	}
	if b.guided() && len(down) > 0 {
		return
	}
	for range exchanges {
		b.exchange()
	}
}

// guided reports whether prices tell what it costs that a ride is carried.
func (b *barter) guided() bool { return !b.seats() && b.best != unknown }

// seats reports whether rides on the ground are what the plan costs.
func (b *barter) seats() bool { return slices.Max(b.p.OnGround) > 0 }

// anew is the best week of a horse of what nobody else has, at prices for rides.
func (b *barter) anew(s int, price func(ride int) int64) held {
	b.plans++
	for _, r := range b.rides[s] {
		if o := b.owner[r]; o != nobody && o != s {
			b.ride[r] = -closed
		} else {
			b.ride[r] = price(r)
		}
	}
	for k, left := range b.left {
		b.room[k] = b.sought[k]
		if left <= 0 {
			b.room[k] = closed
		}
	}
	b.narrow(s)
	h := b.bestWeek(s)
	for range 3 { // a horse may use too much by itself
		over := b.over(h)
		if len(over) == 0 {
			break
		}
		for _, k := range over {
			b.room[k] = closed
		}
		b.plans++
		h = b.bestWeek(s)
	}
	return h
}

// over are the things of which a week uses more than there is left.
func (b *barter) over(h held) (over []int) {
	for i, n := 0, 0; i < len(h.uses); i++ {
		if n++; i == 0 || h.uses[i] != h.uses[i-1] {
			n = 1
		}
		if n == b.left[h.uses[i]]+1 {
			over = append(over, h.uses[i])
		}
	}
	return over
}

func (b *barter) fits(h held) bool { return len(b.over(h)) == 0 }

func (b *barter) release(s int) held {
	h := b.weeks[s]
	for _, k := range h.uses {
		b.left[k]++
	}
	for _, r := range h.rides {
		b.owner[r] = nobody
	}
	b.weeks[s] = held{}
	return h
}

func (b *barter) take(s int, h held) {
	for _, k := range h.uses {
		b.left[k]--
	}
	for _, r := range h.rides {
		b.owner[r] = s
	}
	b.weeks[s] = h
}

// giveBack gives horses the weeks that they had, whatever they have now.
func (b *barter) giveBack(who []int, was []held) {
	for _, s := range who {
		b.release(s)
	}
	for i, s := range who {
		b.take(s, was[i])
	}
}

// byWeight is a price for a ride that only the weights decide.
func (b *barter) byWeight(r int) int64 { return b.weight[r] * ride }

// worth of a week: the rides in it at their prices, less what it costs.
func worth(h held, price func(ride int) int64) int64 {
	sum := -h.cost
	for _, r := range h.rides {
		sum += price(r)
	}
	return sum
}

// insert lets the horse take a ride that then has the best week.
func (b *barter) insert(r int) {
	if !b.down(r) {
		return
	}
	b.weight[r]++
	at, most, week := nobody, int64(0), held{}
	price := b.byWeight
	if b.guided() { // little of a good plan is given up then: one of 447 came to 473 with its last three rides
		const more = 4 * scale // with a quarter of 1 that took 28,600 weeks planned, with 1, 4 and 16 some 1,000 to 1,600
		price = func(r int) int64 { return b.bestRide[r] + (b.weight[r]-1)*more }
	}
	for _, s := range b.takers[r] {
		was := b.release(s)
		now := b.anew(s, func(r int) int64 { return price(r) + int64(b.draw(scale)) })
		if gain := worth(now, price) - worth(was, price); gain > most && b.fits(now) {
			at, most, week = s, gain, now
		}
		b.take(s, was)
	}
	if at != nobody {
		b.release(at)
		b.take(at, week)
	}
}

// exchange lets two or three horses plan anew, one after the other, each with a ride that the next has and
// it could carry, and keeps that if it is worth no less and as many ride as must.
func (b *barter) exchange() {
	enough := b.total() < none // ride. From where they do not, no way back was found in 40,000 weeks planned
	who := b.neighbours(2 + b.draw(2))
	was := make([]held, len(who))
	gain := int64(0)
	for i, s := range who {
		was[i] = b.release(s)
		gain -= worth(was[i], b.byWeight)
	}
	fits := true
	price := b.byWeight
	if b.best != unknown && b.draw(2) == 0 { // every other time as the prices have it
		price = func(r int) int64 { return b.bestRide[r] }
	}
	for _, s := range who {
		h := b.anew(s, func(r int) int64 { return price(r) + int64(b.draw(noise*scale)) })
		fits = fits && b.fits(h)
		b.take(s, h)
		gain += worth(h, b.byWeight)
	}
	if fits && gain >= 0 && (!enough || b.total() < none) {
		return
	}
	b.giveBack(who, was)
}

// noise is how far off the prices of an exchange are drawn at the most.
const noise = 4

// neighbours are horses of which each could carry a ride that the next has.
func (b *barter) neighbours(n int) []int {
	who := []int{b.draw(len(b.weeks))}
	for range 3 * n {
		last := who[len(who)-1]
		if len(who) == n || len(b.rides[last]) == 0 {
			break
		}
		owner := b.owner[b.rides[last][b.draw(len(b.rides[last]))]]
		if owner != nobody && !slices.Contains(who, owner) {
			who = append(who, owner)
		}
	}
	return who
}
