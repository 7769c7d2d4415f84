package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/bound"
	"tackwright/solver/sat"
)

// relaxation is the week without what ties horses together, but for prices.
type relaxation struct {
	*encoder
	p      *bound.Problem
	rooms  map[*place]map[*pool][]int // of a pool in a place
	ring   map[sat.Lit][]int          // of a ride on a horse, whatever it wears
	index  map[*model.Ride]int
	pairs  map[sat.Lit]int
	known  []bound.Cut        // of the goals before
	spells map[*place]int     // the spell that each is in
	at     []*place           // of each pair
	ways   []*option          // by name
	worn   [][]*place         // in which each way is worn
	wornAs map[[2]sat.Lit]int // a ride on a horse that is saddled in a way
	wornAt [][2]sat.Lit       // by number
	// clashing are the members of all clashes that the problem was told.
	clashing []member
}

// tooMany sets of places in a day are not looked at.
const tooMany = 50_000

// relax makes it with the costs of a goal, without what a session's question rules
// out. It reports false where a horse has too many ways to work.
func (e *encoder) relax(c costs) (*relaxation, bool) {
	x := &relaxation{encoder: e, p: &bound.Problem{Slow: c.in}, rooms: map[*place]map[*pool][]int{},
		ring: map[sat.Lit][]int{}, spells: map[*place]int{}, index: map[*model.Ride]int{}, pairs: map[sat.Lit]int{}, wornAs: map[[2]sat.Lit]int{}}
	for _, r := range e.w.Rides {
		if _, ok := e.seated[r]; ok {
			x.index[r] = x.p.Rides
			x.p.Rides++
			down := 0
			if c.onGround != nil && r.State == model.Open { // a session's question may have called it off
				down = c.onGround(r)
			}
			x.p.OnGround = append(x.p.OnGround, down)
		}
	}
	x.tackRooms()
	x.ringRooms()
	for _, h := range e.w.Centre.Horses {
		for first := e.w.From.WeekStart(e.w.House.WeekStarts); first <= e.w.Until; first += 7 {
			if !x.spell(h, first, c) {
				return nil, false
			}
		}
	}
	return x, true
}

// room is a new thing that so many may use.
func (x *relaxation) room(n int) int {
	x.p.Room = append(x.p.Room, n)
	return len(x.p.Room) - 1
}

// tackRooms are the pieces of each pool at each time.
func (x *relaxation) tackRooms() {
	for _, p := range x.pools {
		for holding := range x.holdings(p, false) {
			if len(holding) <= len(p.pieces) {
				continue
			}
			k := x.room(len(p.pieces))
			for _, u := range holding {
				if x.rooms[u.at] == nil {
					x.rooms[u.at] = map[*pool][]int{}
				}
				x.rooms[u.at][p] = append(x.rooms[u.at][p], k)
			}
		}
	}
}

// ringRooms are places in the ring, helpers, and the peace between two horses.
func (x *relaxation) ringRooms() {
	use := func(k, times int, ons ...rideOn) {
		for _, on := range ons {
			x.ring[on.lit] = append(x.ring[on.lit], slices.Repeat([]int{k}, times)...)
		}
	}
	for limit, rides := range x.crowds {
		if limit >= 0 && len(rides) > limit {
			k := x.room(limit)
			for _, r := range rides {
				use(k, 1, x.on_[r]...)
			}
		}
	}
	for limit, pairs := range x.helped {
		if limit >= 0 {
			k := x.room(limit)
			for _, pair := range pairs {
				use(k, pair.hands, pair.on)
			}
		}
	}
	for p, q := range x.quarrels {
		k := x.room(1)
		use(k, 1, p.rides...)
		use(k, 1, q.rides...)
	}
}

// spell adds a horse in the calendar week from first on.
func (x *relaxation) spell(h *model.Horse, first model.Date, c costs) bool {
	limits := x.w.LimitsOf(h)
	s := bound.Spell{MostWork: -1, MostDays: -1}
	done, fact := ofWeek(x.facts[h], first)
	work, days := int64(limits.WeekMinutes)*minute-done, limits.WeekDays
	worked := map[model.Date]bool{} // for sure
	for _, f := range x.facts[h] {
		worked[f.Date] = true
	}
	var last model.Date // the day before
	for day := range byDate(x.of[h]) {
		d := day[0].meeting.Date
		if d < first || d >= first+7 {
			continue
		}
		ways := once(x.ways_, day[0], func() dayWays { return x.waysOf(h, day) })
		if ways.steps == nil {
			return false
		}
		out, stretches := bound.Day{Steps: ways.steps}, ways.stretches
		needs := make([][][]met, len(stretches))
		for i, y := range stretches {
			var s bound.Stretch
			s, needs[i] = x.stretch(y, c.seated)
			out.Stretches = append(out.Stretches, s)
		}
		x.share(&out, stretches, needs)
		for _, p := range day {
			x.spells[p] = len(x.p.Spells)
		}
		out.Works = worked[d]
		if c.in && !worked[d] {
			out.In = 1
		}
		for before := d - 1; before != last; before-- {
			if !worked[before] {
				out.Rested = true
				break
			}
			out.Sure++
		}
		last = d
		s.Days = append(s.Days, out)
	}
	if len(s.Days) == 0 {
		return true
	}
	if limits.WeekMinutes != 0 {
		s.MostWork = max(work, 0)
	}
	if limits.WeekDays != 0 {
		s.MostDays = max(days-len(fact), 0)
	}
	s.MostRow = limits.RowDates
	x.p.Spells = append(x.p.Spells, s)
	return true
}

// taken is what a pool's piece takes of Room in a stretch, in any of its places: once. A seat that the horse may go on
// with is counted in both (see share), unless it is after the next place; other tack is counted there.
func (x *relaxation) taken(y stretch, q *pool) (all []int) {
	after := y.after
	if q.one().IsSeat() {
		after = after[min(1, len(after)):]
	}
	for _, p := range y.places {
		for _, k := range x.rooms[p][q] {
			if !slices.Contains(all, k) && !slices.ContainsFunc(after, func(a *place) bool { return slices.Contains(x.rooms[a][q], k) }) {
				all = append(all, k)
			}
		}
	}
	return all
}

// stretch is what may be chosen in a stretch. What meets needs is told by place and rider.
func (x *relaxation) stretch(y stretch, cost func(rideOn, *option) int) (out bound.Stretch, needs [][]met) {
	var ways []*option
	first := y.places[0]
	for _, o := range first.saddle {
		common := &option{seat: o.seat, pads: o.pads}
		for _, g := range o.girths {
			if !slices.ContainsFunc(y.places, func(p *place) bool { return !p.canWear(common, g) }) {
				common.girths = append(common.girths, g)
			}
		}
		if slices.ContainsFunc(y.places, func(p *place) bool { return p.wayOf(common) == nil }) || o.seat.one().TakesGirth() && len(common.girths) == 0 {
			continue
		}
		w := bound.Way{Name: len(x.ways)}
		for _, q := range append([]*pool{o.seat}, o.pads...) {
			w.Uses = append(w.Uses, x.taken(y, q)...)
		}
		for _, g := range common.girths {
			w.Girths = append(w.Girths, x.taken(y, g))
		}
		ways, x.ways, x.worn = append(ways, common), append(x.ways, common), append(x.worn, y.places)
		out.Ways = append(out.Ways, w)
	}
	for i, p := range y.places {
		var riders []bound.Rider
		var meet []met
		later := slices.Concat(y.places[i+1:], y.after)
		for _, on := range p.rides {
			if x.barred[on.lit] {
				continue
			}
			r, m := x.rider(on, ways, later[min(1, len(later)):], cost)
			riders, meet = append(riders, r), append(meet, m)
		}
		out.Places, needs = append(out.Places, riders), append(needs, meet)
	}
	return out, needs
}

// wayOf is the way in a place with the same seat and pads, or nil.
func (p *place) wayOf(o *option) *option {
	for _, x := range p.saddle {
		if x.seat == o.seat && slices.Equal(x.pads, o.pads) {
			return x.option
		}
	}
	return nil
}

func (p *place) canWear(o *option, g *pool) bool {
	way := p.wayOf(o)
	return way != nil && slices.Contains(way.girths, g)
}

// rider is a ride on the horse of a place. What a rider of far, places after the
// next, may go on with while it could not yet be on another horse is left out.
func (x *relaxation) rider(on rideOn, ways []*option, far []*place, cost func(rideOn, *option) int) (r bound.Rider, m met) {
	r = bound.Rider{Pair: x.pair(on), Ride: x.index[on.ride], Uses: x.ring[on.lit]}
	for i, o := range ways {
		if !x.clash(on.ride, on.at.horse, on.at.wayOf(o)) && x.dressed(on, o) {
			s := bound.Suits{Way: i, Worn: x.wears(on, o)}
			if cost != nil {
				s.Cost = cost(on, o)
			}
			r.Ways = append(r.Ways, s)
		}
	}
	for _, n := range needsOf(on.ride.Rider) {
		var meets [][]int
		var pools []*pool
		free := false
		for _, w := range on.at.extras {
			if w.need == n {
				l := slices.DeleteFunc(slices.Clone(x.rooms[on.at][w.pool]), func(k int) bool {
					return slices.ContainsFunc(far, func(p *place) bool { return slices.Contains(x.rooms[p][w.pool], k) })
				})
				free = free || len(l) == 0
				meets = append(meets, l)
				pools = append(pools, w.pool)
			}
		}
		if !free {
			r.Needs = append(r.Needs, meets)
			m = append(m, pools)
		}
	}
	return r, m
}

// wears numbers a ride on a horse that is saddled in a way: in each stretch the same.
func (x *relaxation) wears(on rideOn, o *option) int {
	key := [2]sat.Lit{on.lit, on.at.litOf(o, x.s)}
	n, ok := x.wornAs[key]
	if !ok {
		n = x.p.Worn
		x.wornAs[key] = n
		x.wornAt = append(x.wornAt, key)
		x.p.Worn++
	}
	return n
}

// dressed reports whether there is something for each need of a ride that goes on the
// seat of a way.
func (x *relaxation) dressed(on rideOn, o *option) bool {
	for _, n := range needsOf(on.ride.Rider) {
		if !slices.ContainsFunc(on.at.extras, func(w pooled) bool {
			return w.need == n && (!x.on("extras fit") || w.pool.one().GoesOnSeat(o.seat.one()))
		}) {
			return false
		}
	}
	return true
}

// pair numbers a ride on a horse.
func (x *relaxation) pair(on rideOn) int {
	n, ok := x.pairs[on.lit]
	if !ok {
		n = x.p.Pairs
		x.pairs[on.lit] = n
		x.p.Pairs++
		x.at = append(x.at, on.at)
	}
	return n
}

// wishCost is what a ride's wishes lose on a horse saddled in that way, at the
// least.
func (e *encoder) wishCost(on rideOn, o *option) int {
	cost := e.w.HorseWish(on.ride, on.at.horse) + e.w.SeatWish(on.ride, o.seat.one())
	if on.at.horse.Marked(e.lightestLoad(on.ride, o), e.w.House) {
		cost += e.w.House.Wishes.Marked
	}
	return cost
}
