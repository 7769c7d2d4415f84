package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// mendGoals are those of a repair: who was told that she rides does, as few
// rides as can be change horse, then tack, and whoever else can ride does.
func (e *encoder) mendGoals() []ordered.Goal {
	down, first := ordered.Goal{Name: "told a"}, ordered.Goal{Name: "told b"}
	horse, tack := ordered.Goal{Name: "keep a"}, ordered.Goal{Name: "keep b"}
	besides := ordered.Goal{Name: "besides"}
	for _, r := range e.w.Rides {
		if r.State != model.Open {
			continue
		}
		stratum := e.stratum(r.Date())
		wish := func(g *ordered.Goal, l sat.Lit) {
			g.Softs = append(g.Softs, ordered.Soft{Lit: l, Weight: 1, Stratum: stratum})
		}
		if r.Due {
			wish(&down, e.isSeated(r))
			if r.Rider.RideFirst {
				wish(&first, e.isSeated(r))
			}
		} else {
			wish(&besides, e.isSeated(r))
		}
		if r.Posted == nil {
			continue
		}
		on, ok := e.asPosted(r)
		if !ok {
			wish(&horse, e.s.Root().Not())
			continue
		}
		wish(&horse, on.lit)
		wish(&tack, once(e.kept, keptKey{on.lit, tags(r.Posted)}, func() sat.Lit { return e.keptTack(on) }))
	}
	down.Counts = e.dayCounts(func(r *model.Ride) bool { return r.Due })
	e.boundBeside(&down, costs{rounds: 300, onGround: func(r *model.Ride) int { return one(r.Due) }})
	e.boundBeside(&besides, costs{rounds: 300, onGround: func(r *model.Ride) int { return one(!r.Due) }, before: (*relaxation).keepTold})
	e.oneDate(&down, &first)
	return []ordered.Goal{down, first, horse, tack, besides}
}

// asPosted is the ride on the horse that was posted, if that can be.
func (e *encoder) asPosted(r *model.Ride) (rideOn, bool) {
	i := slices.IndexFunc(e.on_[r], func(on rideOn) bool { return on.at.horse == r.Posted.Horse })
	if i < 0 {
		return rideOn{}, false
	}
	return e.on_[r][i], true
}

// keptKey is a ride on a horse and the tack that was posted for it.
type keptKey struct {
	on   sat.Lit
	tack string
}

func tags(t *model.Turn) string {
	all := ""
	for _, x := range t.Pieces() {
		all += x.Tag + "\n"
	}
	return all
}

// keptTack is a literal under which a ride on the horse that was posted has
// tack like that posted.
func (e *encoder) keptTack(on rideOn) sat.Lit {
	kept, was := e.s.NewVar(), on.ride.Posted
	alike := func(p *pool, x *model.Piece) bool { return x != nil && e.w.Alike(p.one()) == e.w.Alike(x) }
	ways, girths := []sat.Lit{on.lit.Not()}, []sat.Lit{on.lit.Not()}
	for _, o := range on.at.saddle {
		if alike(o.seat, was.Seat) && slices.EqualFunc(o.pads, was.Pads, alike) && o.seat.one().TakesGirth() == (was.Girth != nil) {
			ways = append(ways, o.lit)
		}
	}
	for _, g := range on.at.girths {
		if alike(g.pool, was.Girth) {
			girths = append(girths, g.lit)
		}
	}
	e.s.Add(kept, ways...)
	if was.Girth != nil {
		e.s.Add(kept, girths...)
	}
	needs := needsOf(on.ride.Rider)
	if len(needs) != len(was.Extras) { // her needs have changed since
		e.s.Add(kept, on.lit.Not())
	}
	for i, n := range needs[:min(len(needs), len(was.Extras))] {
		extras := []sat.Lit{on.lit.Not()}
		for _, x := range on.at.extras {
			if x.need == n && alike(x.pool, was.Extras[i]) {
				extras = append(extras, x.lit)
			}
		}
		e.s.Add(kept, extras...)
	}
	return kept
}

// posted are the literals of what was posted, as far as it can still be: the
// horses first, then how they are saddled.
func (e *encoder) posted() []sat.Lit {
	var horses, tack []sat.Lit
	for _, r := range e.w.Rides {
		if r.Posted == nil || r.State != model.Open {
			continue
		}
		on, ok := e.asPosted(r)
		if !ok {
			continue
		}
		horses = append(horses, on.lit)
		for _, o := range on.at.saddle {
			if was := r.Posted; slices.Contains(o.seat.pieces, was.Seat) {
				tack = append(tack, o.lit)
			}
		}
		for _, g := range slices.Concat(on.at.girths, on.at.extras) {
			if slices.ContainsFunc(g.pool.pieces, func(x *model.Piece) bool { return slices.Contains(r.Posted.Pieces(), x) }) {
				tack = append(tack, g.lit)
			}
		}
	}
	return append(horses, tack...)
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}
