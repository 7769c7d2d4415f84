package solver

import (
	"context"
	"fmt"
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
	fixed := 0 // what facts cost, and rides that no horse can carry
	for _, s := range goal.Softs {
		if s.Lit == e.s.Root().Not() {
			fixed += s.Weight
		}
	}
	var market *bound.Market
	var lits []sat.Lit // of the pairs
	var relaxed *relaxation
	tooMuch := false          // ways to work in a day
	asked := 0                // times before
	bartered := 0             // what the solution cost from which horses bartered last
	told := map[string]bool{} // of what the search has found
	goal.Beside = func(best sat.Model, upper int, found []ordered.Count) func(context.Context) ordered.Beside {
		if tooMuch {
			return nil
		}
		if market == nil {
			x, ok := e.relax(c)
			if tooMuch = !ok; tooMuch {
				return nil
			}
			if c.before != nil {
				c.before(x, best)
			}
			market, lits, relaxed = bound.Open(x.p), x.lits(), x
			market.Know(x.known)
		}
		fresh := slices.DeleteFunc(slices.Clone(found), func(c ordered.Count) bool {
			key := fmt.Sprint(c.Lits, c.Least)
			before := told[key]
			told[key] = true
			return before
		})
		market.Know(relaxed.cuts(fresh))
		market.Bar(relaxed.clashes(fresh))
		from := relaxed.start(lits, best)
		rounds, again := c.rounds, asked > 0
		asked++
		c.rounds = min(4*rounds, 150)
		seldom := asked&(asked-1) == 0 // the 1st, 2nd, 4th, 8th time and so on
		return func(ctx context.Context) ordered.Beside {
			a := market.Lower(ctx, upper-fixed, rounds)
			b := ordered.Beside{Least: a.Least + fixed}
			for i, least := range a.With {
				b.Priced = append(b.Priced, ordered.Priced{Lit: lits[i], Least: least + fixed})
			}
			for _, i := range a.Often {
				b.Hint = append(b.Hint, lits[i])
			}
			if !again && !c.dive && upper-b.Least <= upper/16 {
				return b // the search is as soon there
			}
			barter := func(start bound.Start) bool {
				plan, cost := market.Barter(ctx, start, a.Least)
				if cost+fixed >= upper {
					return false
				}
				b.Hint = relaxed.lead(plan, lits)
				return true
			}
			if seldom && barter(market.Dive(ctx)) {
				return b
			}
			if seldom || upper != bartered {
				bartered = upper
				barter(from)
			}
			return b
		}
	}
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
		for _, l := range f.Lits {
			if pair, ok := x.pairs[l]; ok {
				clash.Pairs = append(clash.Pairs, pair)
				continue
			}
			names := x.named(l)
			whole = whole && len(names) > 0
			clash.Ways = append(clash.Ways, names)
		}
		if whole {
			all = append(all, clash)
		}
	}
	return all
}

// named are the ways in which a horse is saddled as a literal says.
func (x *relaxation) named(l sat.Lit) []int {
	var names []int
	for n, way := range x.ways {
		for _, p := range x.worn[n] {
			if slices.ContainsFunc(p.saddle, func(s saddled) bool {
				return s.lit == l && s.seat == way.seat && slices.Equal(s.pads, way.pads)
			}) {
				names = append(names, n)
				break
			}
		}
	}
	return names
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
	s := bound.Start{Things: make([][]int, len(x.p.Spells))}
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

// atMost adds that of some rides no more are on the ground than in a solution.
func (x *relaxation) atMost(best sat.Model, such func(*model.Ride) bool) {
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

// keep keeps Seat: of all rides and of those that it tells apart, no more are on the
// ground; and in a repair what was told.
func (x *relaxation) keep(best sat.Model) {
	x.atMost(best, func(*model.Ride) bool { return true })
	if x.w.Mends {
		x.keepTold(best)
		return
	}
	x.atMost(best, func(r *model.Ride) bool { return r.Rider.RideFirst })
	x.atMost(best, func(r *model.Ride) bool { return x.w.Grounded(r.Rider) })
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
