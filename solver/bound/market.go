package bound

import (
	"cmp"
	"context"
	"slices"
)

// A Market looks for prices that prove a high bound.
type Market struct {
	p     *Problem
	ride  []int64 // paid to the horse that carries it
	room  []int64 // paid for a thing of Room, 0 or more
	limit []int64 // paid for each ride on the ground, by limit, 0 or more

	cuts      []Cut
	cut       []int64   // paid for each of a cut's, by cut, 0 or more
	cutOf     [][]int   // cuts of each pair
	cutOn     [][]int   // cuts of each ride on the ground
	must      []bool    // rides that may not be on the ground
	of        [][]int   // limits on each ride
	often     []int     // by pair: how often it was in the horses' weeks of late, in 1/65536
	takings             // of the horses' best weeks
	beside    []takings // those planned on another processor
	alone     bool      // none are
	spells    []int     // all
	rideOf    []int     // of each pair
	spellOf   []int     // of each pair
	rides     [][]int   // that each spell could carry
	takers    [][]int   // of each ride: the spells that could carry it
	costs     []int64   // of each spell: its best week
	value     int64
	floor     int64 // a value at other prices
	best      int64 // at the best prices
	bestRide  []int64
	bestRoom  []int64
	bestLimit []int64
	bestCut   []int64
	gauges    []gauge // by spell

	barters  int   // times that horses bartered
	last     Start // the plan that they came to
	lastCost int64 // of it
	patience int   // rounds without gain before prices are aimed less far
	reach    int64 // how far above the best they are aimed at first
}

// Open a market for a problem, which is its own from then on. It may be used by one goroutine at a time.
func Open(p *Problem) *Market {
	m := &Market{p: p, ride: make([]int64, p.Rides), room: make([]int64, len(p.Room)), limit: make([]int64, len(p.Grounded)),
		must: make([]bool, p.Rides), of: make([][]int, p.Rides), often: make([]int, p.Pairs), cutOf: make([][]int, p.Pairs), cutOn: make([][]int, p.Rides),
		best: unknown, costs: make([]int64, len(p.Spells)),
		patience: min(max(p.Rides*2/5, impatient), 80, roundsOf(p)/12)}
	if p.Slow {
		m.patience = min(300, roundsOf(p)/12)
	}
	for k, g := range p.Grounded {
		for _, r := range g.Rides {
			m.of[r] = append(m.of[r], k)
			m.must[r] = m.must[r] || g.Most == 0
		}
	}
	m.rideOf, m.spellOf = make([]int, p.Pairs), make([]int, p.Pairs)
	m.rides, m.takers = make([][]int, len(p.Spells)), make([][]int, p.Rides)
	for s := range p.Spells {
		m.gauges, m.spells = append(m.gauges, gaugeOf(&p.Spells[s])), append(m.spells, s)
		for _, d := range p.Spells[s].Days {
			for _, x := range d.Stretches {
				for _, r := range slices.Concat(x.Places...) {
					m.rideOf[r.Pair], m.spellOf[r.Pair] = r.Ride, s
					if !slices.Contains(m.takers[r.Ride], s) {
						m.takers[r.Ride], m.rides[s] = append(m.takers[r.Ride], s), append(m.rides[s], r.Ride)
					}
				}
			}
		}
	}
	m.takings = m.noTakings()
	m.bestRide, m.bestRoom, m.bestLimit = slices.Clone(m.ride), slices.Clone(m.room), slices.Clone(m.limit)
	return m
}

// Lower looks for better prices, for so many rounds at most; fewer when the bound reaches upper, the
// cost of a plan that is known, or when ctx ends. Called again, it goes on from where it was. Where rides are
// many it takes more rounds.
//
// The prices move round by round towards what was short: subgradient steps (Held, Wolfe & Crowder
// 1974), their direction smoothed (Camerini, Fratta & Maffioli 1975), aimed above the best so far, and
// less far above when that brings nothing for so many rounds as there is patience for. Too little of it ends
// well below the top: of large weeks with 15 rounds at 153 to 156, with 60 at 157.9 of 158.
func (m *Market) Lower(ctx context.Context, upper, rounds int) Answer {
	if m.best == unknown {
		m.open()
	}
	way := make([]int64, len(m.ride)+len(m.room)+len(m.limit)+len(m.cut)) // direction
	m.trade()
	m.note()
	rounds = min(rounds*m.patience/impatient, roundsOf(m.p))
	kept, patience := int64(answering), func(int64) int { return m.patience }
	if m.p.Rides > Many && !m.p.Slow && slices.Max(m.p.OnGround) == 0 {
		kept, patience = steady, func(aim int64) int {
			if aim > max(m.best, 0)/32+scale {
				return min(m.patience, 20) // the first steps are far too wide
			}
			return m.patience
		}
	}
	aim, stale, brought := min(int64(upper)*scale-m.best, m.reach), 0, int64(scale/16)
	for round := 0; round < rounds && ctx.Err() == nil && m.proved() < upper && aim > scale/64; round++ {
		m.step(way, min(m.best+aim, int64(upper)*scale)-m.value, kept)
		m.trade()
		m.watch()
		stale++
		if m.value > m.best+aim/64 {
			stale, brought = 0, aim
		}
		m.note()
		if stale > patience(aim) {
			stale, aim = 0, aim/2
			m.back()
			clear(way)
			m.trade()
		}
	}
	if m.reach = aim; aim <= scale/64 { // it came to an end, and only what is learned can bring more
		m.reach, m.patience = 4*brought, 2*impatient
	}
	m.back()
	return m.answer()
}

// impatient is the least patience, that of a week with few rides.
const impatient = 15

// roundsOf a problem are as many as one call has time for.
func roundsOf(p *Problem) int {
	if p.Slow {
		return 1_000_000 / max(p.Rides, 1)
	}
	return max(24, 400_000/max(p.Rides, 1)*400/max(p.Rides, 400)) // of the largest weeks the first plan comes sooner so
}

// unknown is the best value before there is one.
const unknown = -1 << 62

// proved is what no plan costs less than.
func (m *Market) proved() int { return up(max(m.best, m.floor)) }

// Know adds what is known of every plan that is no dearer than the best.
func (m *Market) Know(cuts []Cut) {
	for _, c := range cuts {
		for _, pair := range c.Pairs {
			m.cutOf[pair] = append(m.cutOf[pair], len(m.cuts))
		}
		for _, r := range c.Rides {
			m.cutOn[r] = append(m.cutOn[r], len(m.cuts))
		}
		m.cuts = append(m.cuts, c)
		m.cut, m.bestCut, m.met = append(m.cut, 0), append(m.bestCut, 0), append(m.met, 0)
		m.beside = nil
	}
}

// note keeps the best prices, and back returns to them.
func (m *Market) note() {
	if m.value > m.best {
		m.best = m.value
		m.bestRide, m.bestRoom, m.bestLimit, m.bestCut = slices.Clone(m.ride), slices.Clone(m.room), slices.Clone(m.limit), slices.Clone(m.cut)
	}
}

func (m *Market) back() {
	copy(m.ride, m.bestRide)
	copy(m.room, m.bestRoom)
	copy(m.limit, m.bestLimit)
	copy(m.cut, m.bestCut)
}

// How much of the last direction is kept in the next, in sixteenths; what is kept makes steps of the same gap shorter too. Where
// 517.9 is the top (stress 2) 1,100 rounds came to 511.6 with 6 and 517.0 with 15. While pairs settle prices must answer at once
// to what is short.
const (
	answering = 6
	steady    = 15
)

// Many rides are more than this: there prices of wishes are long in coming, and a dive gives up too much. In weeks of 160 prices
// come to the top and dives to as good plans as Agree. Of who rides at all prices came no sooner (stress 6: 14 of 15 in 60 s).
const Many = 200

// step moves each price along what is wanted too much or too little, so far that the value would rise
// by gap if nothing changed and nothing of the last direction were kept.
func (m *Market) step(way []int64, gap, kept int64) {
	i, norm := 0, int64(0)
	turn := func(short, price, most int64) {
		way[i] = (way[i]*kept + short*256*10) / 16
		if price == 0 && way[i] < 0 || price >= most && way[i] > 0 {
			way[i] = 0
		}
		norm += way[i] * way[i]
		i++
	}
	for r := range m.ride {
		turn(int64(1-m.carried[r]-m.onGround(r)), m.ride[r], m.dearest(r))
	}
	for k := range m.room {
		turn(int64(m.used[k]-m.p.Room[k]), m.room[k], none)
	}
	for k, g := range m.p.Grounded {
		down := 0
		for _, r := range g.Rides {
			down += m.onGround(r)
		}
		turn(int64(down-g.Most), m.limit[k], none)
	}
	for k, c := range m.cuts {
		turn(int64(c.Least-m.met[k]), m.cut[k], none)
	}
	if norm == 0 {
		return
	}
	move := func(way int64) int64 { return way * gap * 256 / norm }
	i = 0
	next := func() int64 { i++; return move(way[i-1]) }
	for r := range m.ride {
		m.ride[r] = min(max(0, m.ride[r]+next()), m.dearest(r))
	}
	for k := range m.room {
		m.room[k] = max(0, m.room[k]+next())
	}
	for k := range m.limit {
		m.limit[k] = max(0, m.limit[k]+next())
	}
	for k := range m.cut {
		m.cut[k] = max(0, m.cut[k]+next())
	}
}

// groundCost of a ride at the prices.
func (m *Market) groundCost(r int) int64 {
	cost := int64(m.p.OnGround[r]) * scale
	for _, k := range m.of[r] {
		cost += m.limit[k]
	}
	for _, k := range m.cutOn[r] {
		cost -= m.cut[k]
	}
	return cost
}

// dearest is the most that it can help to pay for a ride: what it costs on the ground, unless that changes.
// Nor can it help to charge for one: no horse has to take it.
func (m *Market) dearest(r int) int64 {
	if m.must[r] || len(m.of[r]) > 0 || len(m.cutOn[r]) > 0 {
		return none
	}
	return m.groundCost(r)
}

// onGround is 1 where a ride is best left on the ground.
func (m *Market) onGround(r int) int {
	if !m.must[r] && m.groundCost(r) < m.ride[r] {
		return 1
	}
	return 0
}

// watch keeps count of which pairs go together, the late rounds counting most.
func (m *Market) watch() {
	const one, memory = 1 << 16, 32
	for i, often := range m.often {
		m.often[i] = often - often/memory
	}
	for _, pair := range m.picked {
		m.often[pair] += one / memory
	}
}

// frequent are the pairs that were there more often than not, the most frequent first.
func (m *Market) frequent() []int {
	var pairs []int
	for i, often := range m.often {
		if often > 1<<15 {
			pairs = append(pairs, i)
		}
	}
	slices.SortStableFunc(pairs, func(a, b int) int { return cmp.Compare(m.often[b], m.often[a]) })
	return pairs
}
