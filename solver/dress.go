package solver

import (
	"maps"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// saddle makes the literals of how the horse of a place is saddled: in exactly
// one way when it works, and in none that a rider of it cannot sit.
func (e *encoder) saddle(p *place, ways []*option) {
	under := e.s.Root()
	var lits []sat.Lit
	for _, o := range ways {
		lit := p.worked
		if len(ways) > 1 {
			lit = e.s.NewVar()
			e.s.Add(under, lit.Not(), p.worked)
		}
		lits = append(lits, lit)
		p.saddle = append(p.saddle, saddled{o, lit})
	}
	if len(ways) > 1 {
		e.s.Add(under, append(slices.Clone(lits), p.worked.Not())...)
		e.s.AtMostOne(under, lits...)
	}
	for _, on := range p.rides {
		for _, o := range p.saddle {
			if e.clash(on.ride, p.horse, o.option) {
				e.s.Add(under, on.lit.Not(), o.lit.Not())
			}
		}
	}
}

// girth makes the literals of the girth that the horse of a place wears: exactly
// one that goes with the way it is saddled.
func (e *encoder) girth(p *place) {
	under := e.s.Root()
	takers := map[*pool][]sat.Lit{} // of a girth: the ways that it goes with
	var order []*pool
	chosen := map[*pool]bool{} // girths that some way has a choice about
	for _, o := range p.saddle {
		for _, g := range o.girths {
			if takers[g] == nil {
				order = append(order, g)
			}
			takers[g] = append(takers[g], o.lit)
			chosen[g] = chosen[g] || len(o.girths) > 1
		}
	}
	lit := map[*pool]sat.Lit{}
	var free []sat.Lit
	for _, g := range order {
		if !chosen[g] {
			lit[g] = e.s.Or(takers[g]...)
		} else {
			lit[g] = e.s.NewVar()
			e.s.Add(under, append(slices.Clone(takers[g]), lit[g].Not())...)
		}
		free = append(free, lit[g])
		p.girths = append(p.girths, pooled{pool: g, lit: lit[g]})
	}
	if !slices.Contains(slices.Collect(maps.Values(chosen)), true) {
		return // the ways exclude each other, and each has its one girth
	}
	e.s.AtMostOne(under, free...)
	for _, o := range p.saddle {
		if len(o.girths) > 0 {
			any := []sat.Lit{o.lit.Not()}
			for _, g := range o.girths {
				any = append(any, lit[g])
			}
			e.s.Add(under, any...)
		}
	}
}

// hasExtras reports whether all that the rider needs beside can be worn.
func (e *encoder) hasExtras(p *place, r *model.Ride) bool {
	for _, need := range r.Rider.Extras {
		if len(e.meeting(need, p)) == 0 {
			return false
		}
	}
	return true
}

// meeting are the pools that meet a need and can be worn in a place.
func (e *encoder) meeting(need model.ExtraNeed, p *place) []*pool {
	var met []*pool
	for _, x := range e.pools {
		if x.one().Kind == need.Kind && (need.MetBy(x.one()) || !e.on("extras fit")) && !e.unworn(p.slot, p.horse, x.one()) {
			met = append(met, x)
		}
	}
	return met
}

// need is one thing that a rider needs beside; nth tells two alike apart.
type need struct {
	model.ExtraNeed
	nth int
}

// needsOf are the rider's needs, in her order.
func needsOf(r *model.Rider) []need {
	var needs []need
	for i, n := range r.Extras {
		x := need{ExtraNeed: n}
		for _, before := range r.Extras[:i] {
			if before == n {
				x.nth++
			}
		}
		needs = append(needs, x)
	}
	return needs
}

// dress makes the literals of the extras that the horse of a place wears: one
// that meets each need of its rider, and nothing besides.
func (e *encoder) dress(p *place) {
	under := e.s.Root()
	riders := map[need][]sat.Lit{} // that have the need
	var order []need
	for _, on := range p.rides {
		for _, n := range needsOf(on.ride.Rider) {
			if riders[n] == nil {
				order = append(order, n)
			}
			riders[n] = append(riders[n], on.lit)
		}
	}
	lits := map[need][]sat.Lit{}
	for _, n := range order {
		for _, x := range e.meeting(n.ExtraNeed, p) {
			w := pooled{pool: x, need: n, lit: e.s.NewVar()}
			lits[n] = append(lits[n], w.lit)
			e.s.Add(under, append(slices.Clone(riders[n]), w.lit.Not())...)
			for _, o := range p.saddle {
				if e.on("extras fit") && !x.one().GoesOnSeat(o.seat.one()) {
					e.s.Add(under, w.lit.Not(), o.lit.Not())
				}
			}
			for _, v := range p.extras { // one piece meets one need; those of a kind needed twice are not pooled
				if v.pool == x {
					e.s.Add(under, w.lit.Not(), v.lit.Not())
				}
			}
			p.extras = append(p.extras, w)
		}
		e.s.AtMostOne(under, lits[n]...)
		for _, rider := range riders[n] {
			e.s.Add(under, append(slices.Clone(lits[n]), rider.Not())...)
		}
	}
}
