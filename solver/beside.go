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

// rounds that the search for prices may take: more bring little. The prices of
// Seat prove next to nothing, and only lead to a first plan.
func rounds(onGround int) int {
	if onGround > 0 {
		return 50
	}
	return 300
}

// boundBeside gives a goal a bound that is worked out beside its search: of what
// seated rides cost, and each on the ground. The goals of Seat stay at what they
// are in the best solution, but for the first of them.
func (e *encoder) boundBeside(goal *ordered.Goal, onGround int, cost func(on rideOn, o *option) int) {
	if e.live { // prices know nothing of what is assumed
		return
	}
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
	told := map[string]bool{} // of what the search has found
	goal.Beside = func(best sat.Model, upper int, found []ordered.Count) func(context.Context) ordered.Beside {
		if tooMuch {
			return nil
		}
		if market == nil {
			x, ok := e.relax(onGround, cost)
			if tooMuch = !ok; tooMuch {
				return nil
			}
			if onGround == 0 {
				x.ground(best)
			}
			market, lits, relaxed = bound.Open(x.p), x.lits(), x
		}
		market.Know(relaxed.cuts(slices.DeleteFunc(slices.Clone(found), func(c ordered.Count) bool {
			key := fmt.Sprint(c.Lits, c.Least)
			before := told[key]
			told[key] = true
			return before
		})))
		return func(ctx context.Context) ordered.Beside {
			a := market.Lower(ctx, upper-fixed, rounds(onGround))
			b := ordered.Beside{Least: a.Least + fixed}
			for i, least := range a.With {
				b.Priced = append(b.Priced, ordered.Priced{Lit: lits[i], Least: least + fixed})
			}
			hint := a.Often
			if onGround > 0 { // all horses are alike to it: the prices alone settle little
				hint = market.Dive(ctx)
			}
			for _, i := range hint {
				b.Hint = append(b.Hint, lits[i])
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

// lits are the literals of the pairs.
func (x *relaxation) lits() []sat.Lit {
	lits := make([]sat.Lit, x.p.Pairs)
	for lit, i := range x.pairs {
		lits[i] = lit
	}
	return lits
}

// ground keeps the goals before: of all rides and of those that they tell apart,
// no more are on the ground.
func (x *relaxation) ground(best sat.Model) {
	among := func(such func(*model.Ride) bool) {
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
	among(func(*model.Ride) bool { return true })
	if x.w.Mends {
		among(func(r *model.Ride) bool { return r.Due })
		among(func(r *model.Ride) bool { return r.Due && r.Rider.RideFirst })
		return
	}
	among(func(r *model.Ride) bool { return r.Rider.RideFirst })
	among(func(r *model.Ride) bool { return x.w.Grounded(r.Rider) })
}
