package solver

import (
	"context"
	"fmt"
	"math"
	"slices"

	"tackwright/model"
	"tackwright/solver/bound"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// costs are what a goal counts, as far as prices can tell.
type costs struct {
	seated   func(on rideOn, o *option) int // a ride that is carried so; nil: nothing
	onGround func(*model.Ride) int          // a ride on the ground; nil: nothing
	in       bool                           // each horse brought in on a date
	// before adds that the goals before stay at what they are in the best solution.
	before func(x *relaxation, best sat.Model)
	// rounds that the first search for prices may take, in a week with few rides.
	rounds int
	// dive asks for a plan from the prices even where they nearly prove the best one.
	dive bool
}

// boundBeside gives a goal a bound that is worked out beside its search.
func (e *encoder) boundBeside(goal *ordered.Goal, c costs) {
	a := &advice{e: e, costs: c, offered: noPlan, told: map[string]bool{}}
	for _, s := range goal.Softs {
		if s.Lit == e.s.Root().Not() {
			a.fixed += s.Weight
		}
	}
	goal.Beside = a.prepare
}

// advice is what prices say of a goal: a bound, what each pair costs at the least, and plans to begin with.
type advice struct {
	e *encoder
	costs
	fixed   int  // what facts cost, and rides that no horse can carry
	tooMuch bool // ways to work in a day: there is none

	relaxed *relaxation // nil before it is first asked
	market  *bound.Market
	lits    []sat.Lit // of the pairs

	told     map[string]bool // of what the search has found
	asked    int             // times before
	least    int             // what the last bound says
	offered  int             // what the last plan costs that was offered
	bartered int             // what the solution cost from which horses bartered last
	upper    int             // what it cost when it was asked last
}

// noPlan is dearer than any.
const noPlan = math.MaxInt

// prepare takes in what the search knows, and returns the work to be done beside it.
func (a *advice) prepare(best sat.Model, upper int, found []ordered.Count) func(context.Context) ordered.Beside {
	if a.tooMuch || a.relaxed == nil && !a.open(best) {
		return nil
	}
	fresh := slices.DeleteFunc(slices.Clone(found), func(c ordered.Count) bool {
		key := fmt.Sprint(c.Lits, c.Least)
		before := a.told[key]
		a.told[key] = true
		return before
	})
	a.market.Know(a.relaxed.cuts(fresh))
	clashes := a.relaxed.clashes(fresh)
	a.market.Bar(clashes)
	a.upper = upper
	from := a.relaxed.start(a.lits, best)
	return func(ctx context.Context) ordered.Beside {
		// A plan that was followed is gone on with, one that could not be is mended; then prices are looked for anew.
		clashed := len(clashes) > 0 && a.offered < upper
		resumed := a.offered == upper
		if goal := a.least; clashed || resumed {
			if clashed {
				goal = max(goal, a.offered)
			}
			plan, cost := a.market.Resume(ctx, from, goal-a.fixed)
			if a.isOffer(cost) {
				return ordered.Beside{Least: a.least, Hint: a.relaxed.lead(plan, a.lits)}
			}
			a.offered = noPlan
		}
		return a.advise(ctx, from, resumed)
	}
}

// open makes the relaxation.
func (a *advice) open(best sat.Model) bool {
	x, ok := a.e.relax(a.costs)
	if a.tooMuch = !ok; a.tooMuch {
		return false
	}
	if a.before != nil {
		a.before(x, best)
	}
	a.relaxed, a.market, a.lits = x, bound.Open(x.p), x.lits()
	a.market.Know(x.known)
	return true
}

// isOffer reports whether a plan is cheaper than the best one, and remembers it then.
func (a *advice) isOffer(cost int) bool {
	if cost+a.fixed >= a.upper {
		return false
	}
	a.offered = cost + a.fixed
	return true
}

// advise looks for a bound and, now and then, for a plan: from the prices, and from the best solution unless barter has just
// resumed there.
func (a *advice) advise(ctx context.Context, from bound.Start, resumed bool) ordered.Beside {
	rounds, first := a.rounds, a.asked == 0
	a.asked++
	a.rounds = min(4*rounds, 150)
	l := a.market.Lower(ctx, a.upper-a.fixed, rounds)
	a.least = l.Least + a.fixed
	b := ordered.Beside{Least: a.least, Base: int(l.Value) + a.fixed*bound.Scale, Grain: bound.Scale}
	for i, least := range l.With {
		b.Priced = append(b.Priced, ordered.Priced{Lit: a.lits[i], Least: least + a.fixed, Group: l.Spell[i], More: int(l.More[i])})
	}
	for i, least := range l.Worn { // of the ways that cost more than the best one of the pair
		lits := a.relaxed.wornAt[i]
		if pair := a.relaxed.pairs[lits[0]]; least > l.With[pair] || l.MoreWorn[i] > l.More[pair] {
			b.Priced = append(b.Priced, ordered.Priced{Lit: lits[0], And: lits[1], Least: least + a.fixed, Group: l.Spell[pair], More: int(l.MoreWorn[i])})
		}
	}
	for _, i := range l.Often {
		b.Hint = append(b.Hint, a.lits[i])
	}
	if first && !a.dive && a.upper-a.least <= a.upper/16 {
		return b // the search is as soon there
	}
	barter := func(start bound.Start) bool {
		plan, cost := a.market.Barter(ctx, start, l.Least)
		if !a.isOffer(cost) {
			return false
		}
		b.Hint = a.relaxed.lead(plan, a.lits)
		return true
	}
	seldom := a.asked&(a.asked-1) == 0 // the 1st, 2nd, 4th, 8th time and so on
	if seldom {
		few := 4 // of five or more the last found no place within 50,000 weeks planned; in the best solution all have one
		if a.onGround != nil {
			few = 0 // where prices do not guide them two found none within 200,000
		}
		look := a.market.Dive
		if a.onGround == nil && !a.in && a.relaxed.p.Rides > bound.Many {
			look = a.market.Agree
		}
		if plan, beyond := look(ctx); beyond <= few && barter(plan) {
			return b
		}
	}
	if !resumed && (seldom || a.upper != a.bartered) {
		a.bartered = a.upper
		barter(from)
	}
	return b
}

// cuts are what was found, as far as it speaks of nothing but pairs and rides on
// the ground.
func (x *relaxation) cuts(found []ordered.Count) []bound.Cut {
	ground := map[sat.Lit]int{}
	for r, i := range x.index {
		ground[x.seated[r]] = i
	}
	var cuts []bound.Cut
	for _, c := range found {
		cut, whole := bound.Cut{Least: c.Least}, true
		for _, l := range c.Lits {
			if i, ok := ground[l]; ok {
				cut.Rides = append(cut.Rides, i)
				continue
			}
			pairs, ok := x.anyOf[l.Not()]
			if !ok {
				pairs = []sat.Lit{l.Not()}
			}
			for _, pair := range pairs {
				i, ok := x.pairs[pair]
				whole = whole && ok
				cut.Pairs = append(cut.Pairs, i)
			}
		}
		if whole {
			cuts = append(cuts, cut)
		}
	}
	return cuts
}

// clashes are what was found, as far as it speaks of pairs and saddles that do not all go
// together.
func (x *relaxation) clashes(found []ordered.Count) []bound.Clash {
	var all []bound.Clash
	for _, f := range found {
		clash, whole := bound.Clash{}, f.Least == 1 && len(f.Lits) > 1
		var members []member
		thing := len(x.p.Room) + len(all)
		for _, l := range f.Lits {
			if pair, ok := x.pairs[l]; ok {
				clash.Pairs = append(clash.Pairs, pair)
				members = append(members, member{l, x.at[pair], thing})
				continue
			}
			names, at := x.named(l)
			whole = whole && len(names) > 0
			clash.Ways = append(clash.Ways, names)
			members = append(members, member{l, at, thing})
		}
		if whole {
			all = append(all, clash)
			x.clashing = append(x.clashing, members...)
		}
	}
	return all
}

// member of a clash: a literal about the horse of a place, and the thing of Room that stands for the clash.
type member struct {
	lit   sat.Lit
	at    *place
	thing int
}

// named are the ways in which the horse of a place is saddled as a literal says.
func (x *relaxation) named(l sat.Lit) (names []int, at *place) {
	for n, way := range x.ways {
		for _, p := range x.worn[n] {
			if slices.ContainsFunc(p.saddle, func(s saddled) bool {
				return s.lit == l && s.seat == way.seat && slices.Equal(s.pads, way.pads)
			}) {
				names, at = append(names, n), p
				break
			}
		}
	}
	return names, at
}

// lead are the literals of a plan: who rides whom, then in what.
func (x *relaxation) lead(plan []bound.Ridden, lits []sat.Lit) []sat.Lit {
	var pairs, saddles []sat.Lit
	for _, r := range plan {
		pairs = append(pairs, lits[r.Pair])
		for _, o := range x.at[r.Pair].saddle {
			if way := x.ways[r.Way]; o.seat == way.seat && slices.Equal(o.pads, way.pads) {
				saddles = append(saddles, o.lit)
			}
		}
	}
	return append(pairs, saddles...)
}

// start is a solution as the relaxation sees it.
func (x *relaxation) start(lits []sat.Lit, m sat.Model) bound.Start {
	s := bound.Start{Things: make([][]int, len(x.p.Spells)), Known: len(x.p.Room)}
	for i, l := range lits {
		if m.Value(l) {
			s.Pairs = append(s.Pairs, i)
		}
	}
	for _, p := range x.places {
		at, ok := x.spells[p]
		if !ok {
			continue
		}
		for _, on := range p.rides {
			if m.Value(on.lit) {
				s.Things[at] = append(s.Things[at], x.ring[on.lit]...)
			}
		}
		for worn, l := range p.wears {
			if m.Value(l) {
				s.Things[at] = append(s.Things[at], x.rooms[p][worn]...)
			}
		}
	}
	for _, c := range x.clashing {
		if m.Value(c.lit) {
			s.Things[x.spells[c.at]] = append(s.Things[x.spells[c.at]], c.thing)
		}
	}
	return s
}

// lits are the literals of the pairs.
func (x *relaxation) lits() []sat.Lit {
	lits := make([]sat.Lit, x.p.Pairs)
	for lit, i := range x.pairs {
		lits[i] = lit
	}
	return lits
}

// atMost adds that of some rides, and of others, no more are on the ground than in a solution.
func (x *relaxation) atMost(best sat.Model, counts ...func(*model.Ride) bool) {
	for _, such := range counts {
		g := bound.Grounded{}
		for _, r := range x.w.Rides {
			if i, ok := x.index[r]; ok && such(r) {
				g.Rides = append(g.Rides, i)
				if !best.Value(x.seated[r]) {
					g.Most++
				}
			}
		}
		x.p.Grounded = append(x.p.Grounded, g)
	}
}

// keep keeps Seat: of all rides and of those that it tells apart, no more are on the
// ground; and in a repair what was told.
func (x *relaxation) keep(best sat.Model) {
	if x.w.Mends {
		x.atMost(best, x.seatCounts()[0])
		x.keepTold(best)
		return
	}
	x.atMost(best, x.seatCounts()...)
}

// keepTold keeps what was told: who rides does, and of the rides that were on a
// horse as many are on it still.
func (x *relaxation) keepTold(best sat.Model) {
	x.atMost(best, func(r *model.Ride) bool { return r.Due })
	x.atMost(best, func(r *model.Ride) bool { return r.Due && r.Rider.RideFirst })
	kept := bound.Cut{}
	for _, r := range x.w.Rides {
		if r.State != model.Open || r.Posted == nil {
			continue
		}
		on, ok := x.asPosted(r)
		if !ok {
			continue
		}
		if best.Value(on.lit) {
			kept.Least++
		}
		if pair, ok := x.pairs[on.lit]; ok {
			kept.Pairs = append(kept.Pairs, pair)
		}
	}
	x.known = append(x.known, kept)
}
