package bound

import (
	"cmp"
	"context"
	"slices"
)

// Agree looks for a good plan as Dive does, but pair by pair: those that went together in nearly all weeks of late are
// settled first, then a few at a time, while prices move on and horses plan around what is settled. That gives up less than
// whole weeks do. Then, while more is on the ground than may be or the plan is dear, some horses let go of what they have and
// agree anew, those first that could carry what is on the ground. For covering sets Caprara, Fischetti & Toth fix little by
// little at prices so (1999, Oper. Res. 47:730-743; from memory). The prices are then as they were. It does not look at what
// rides cost on the ground.
func (m *Market) Agree(ctx context.Context) (start Start, beyond int) {
	const turns, enough = 20, 12 // the second where no more is on the ground than may be
	a := m.accord()
	var cost int64
	for turn := 0; turn == 0 || ctx.Err() == nil && turn < turns && (beyond > 0 || turn < enough && up(cost) > m.proved()+m.proved()/32); turn++ {
		a.agree(ctx)
		plan, costs := a.plan(ctx)
		owner := m.owners(plan.Pairs)
		left := m.beyond(owner)
		if turn == 0 || cmp.Or(cmp.Compare(left, beyond), cmp.Compare(costs, cost)) <= 0 {
			start, beyond, cost = plan, left, costs
		}
		a.blame(owner)
		a.back()
		clear(a.way)
		a.part(m.owners(start.Pairs))
	}
	return start, beyond
}

// An accord is who is to carry whom, in the making.
type accord struct {
	*Market          // its own, with prices and horses' weeks narrowed to what is settled
	wide    *Problem // the whole
	to      []int    // of each ride: the spell that it is settled with, or nobody
	way     []int64  // in which prices move
	vain    []int    // of each ride: how often it was left on the ground
	changed []bool   // of each spell: what is settled of the rides that it could carry, since it was narrowed last
	dice
}

// accord begins at the best prices.
func (m *Market) accord() *accord {
	a := &accord{Market: m.own(m.p), wide: m.p, to: slices.Repeat([]int{nobody}, m.p.Rides), vain: make([]int, m.p.Rides), dice: 1, changed: make([]bool, len(m.p.Spells)),
		way: make([]int64, len(m.ride)+len(m.room)+len(m.limit)+len(m.cut))}
	a.often = slices.Clone(m.often)
	a.back()
	return a
}

// agree settles pairs until none is left that goes together.
func (a *accord) agree(ctx context.Context) {
	const sure = 95 * (1 << 16) / 100 // of late
	rounds, few := 32, 1+a.p.Rides/100
	if a.p.Rides > 400 {
		rounds, few = 8, 1+a.p.Rides/30
	}
	for ctx.Err() == nil {
		a.haggle(ctx, rounds)
		open := slices.DeleteFunc(slices.Clone(a.picked), func(pair int) bool { return a.to[a.rideOf[pair]] != nobody })
		if len(open) == 0 {
			return
		}
		slices.SortFunc(open, func(p, q int) int {
			return cmp.Or(cmp.Compare(a.vain[a.rideOf[q]], a.vain[a.rideOf[p]]), cmp.Compare(a.often[q], a.often[p]), cmp.Compare(p, q))
		})
		for i, pair := range open {
			if r := a.rideOf[pair]; a.to[r] == nobody && (i < few || a.often[pair] >= sure) {
				a.give(r, a.spellOf[pair])
			}
		}
		a.narrow()
	}
}

// give settles a ride with a spell, or with nobody.
func (a *accord) give(r, s int) {
	if a.to[r] == s {
		return
	}
	a.to[r] = s
	for _, t := range a.takers[r] {
		a.changed[t] = true
	}
}

// haggle lets prices move for some rounds, or until nothing is short.
func (a *accord) haggle(ctx context.Context, rounds int) {
	const aim = 4 * scale // above the best: with less, what is left on the ground is long in becoming dear
	best := int64(unknown)
	for range rounds {
		a.trade()
		a.watch()
		if ctx.Err() != nil || a.balanced() {
			return
		}
		best = max(best, a.value)
		a.step(a.way, best+aim-a.value, answering)
	}
	a.trade()
	a.watch()
}

// balanced reports whether the horses' weeks at the prices take each ride once and no more than there is.
func (a *accord) balanced() bool {
	for r, n := range a.carried {
		if n+a.onGround(r) != 1 && len(a.takers[r]) > 0 {
			return false
		}
	}
	for k, n := range a.used {
		if n > a.p.Room[k] {
			return false
		}
	}
	return true
}

// plan settles the horses' weeks one by one, as a dive does, and returns them with what they cost; rides on the ground apart.
// The prices are others then.
func (a *accord) plan(ctx context.Context) (start Start, cost int64) {
	d := a.dive(slices.Clone(a.spells), slices.Clone(a.p.Room), func(int) bool { return true })
	start = d.settleAll(ctx, 2, scale, func(at int, h held) {
		cost += h.cost
		for i, pair := range h.pairs {
			if a.to[h.rides[i]] == at {
				cost += ride
			}
			for _, k := range a.cutOf[pair] {
				cost += a.cut[k]
			}
		}
	})
	return start, cost
}

// blame remembers what is on the ground.
func (a *accord) blame(owner []int) {
	for r, o := range owner {
		if o == nobody && len(a.takers[r]) > 0 {
			a.vain[r]++
		}
	}
}

// part goes back to a plan in which some horses have nothing.
func (a *accord) part(owner []int) {
	const each, most = 4, 60 // up to so many horses for each ride on the ground, and in a hundred in all if that is more
	free := map[int]bool{}
	for r, o := range owner {
		if n := len(a.takers[r]); o == nobody && n > 0 {
			for range each {
				free[a.takers[r][a.draw(n)]] = true
			}
		}
	}
	for n := len(a.p.Spells); len(free) < n*most/100; {
		free[a.draw(n)] = true
	}
	for r, o := range owner {
		if o != nobody && free[o] {
			o = nobody
		}
		a.give(r, o)
	}
	a.narrow()
}

// narrow has horses see what is settled.
func (a *accord) narrow() {
	for s, changed := range a.changed {
		if changed {
			a.changed[s] = false
			a.narrowOne(s)
		}
	}
}

// narrowOne leaves a spell no ride that is settled with another, and gives it so much for each that is settled with it that it
// has that in any case.
func (a *accord) narrowOne(s int) {
	open := make([]bool, a.p.Rides)
	for _, r := range a.rides[s] {
		open[r] = a.to[r] == nobody || a.to[r] == s
	}
	n := narrowed(&a.wide.Spells[s], open)
	for d := range n.Days {
		for x := range n.Days[d].Stretches {
			places := slices.Clone(n.Days[d].Stretches[x].Places)
			for p := range places {
				places[p] = slices.Clone(places[p])
				for i := range places[p] {
					switch r := &places[p][i]; {
					case a.to[r.Ride] == s:
						r.Cost -= int(ride / scale)
					case !open[r.Ride]: // it is there where it could share what it wears
						r.Cost += int(closed / scale)
					}
				}
			}
			n.Days[d].Stretches[x].Places = places
		}
	}
	a.p.Spells[s] = n
	a.gauges[s] = a.gauges[s].again(&a.p.Spells[s])
}
