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
	under := e.under("whole set")
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
	under := e.under("whole set")
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
		p.girths = append(p.girths, pooled{g, lit[g]})
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

// dress makes the literals of the extras that the horse of a place wears: one
// that meets each need of its rider, and nothing besides.
func (e *encoder) dress(p *place) {
	under := e.under("whole set")
	lit := map[*pool]sat.Lit{}
	needed := map[*pool][]sat.Lit{} // of an extra: the rides that need one of its kind
	kinds := map[model.Kind][]sat.Lit{}
	var order []*pool
	for _, on := range p.rides {
		for _, need := range on.ride.Rider.Extras {
			any := []sat.Lit{on.lit.Not()}
			for _, x := range e.meeting(need, p) {
				if needed[x] == nil {
					lit[x] = e.s.NewVar()
					order = append(order, x)
					kinds[need.Kind] = append(kinds[need.Kind], lit[x])
				}
				needed[x] = append(needed[x], on.lit)
				any = append(any, lit[x])
			}
			e.s.Add(under, any...)
		}
	}
	for _, x := range order {
		e.s.Add(under, append(slices.Clone(needed[x]), lit[x].Not())...)
		p.extras = append(p.extras, pooled{x, lit[x]})
		if l := kinds[x.one().Kind]; len(l) > 1 && l[0] == lit[x] {
			e.s.AtMostOne(under, l...)
		}
		for _, o := range p.saddle {
			if e.on("extras fit") && !x.one().GoesOnSeat(o.seat.one()) {
				e.s.Add(under, lit[x].Not(), o.lit.Not())
			}
		}
	}
}
