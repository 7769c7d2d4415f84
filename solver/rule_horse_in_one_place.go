package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// horseInOnePlace keeps the gaps of a horse. Two places that no tack could
// reconcile are intervals that must not meet; of two that the same tack could,
// the one's tack is the other's.
func horseInOnePlace(e *encoder, under under) {
	stay, other := int(e.w.House.Stay), e.w.House.Other
	for _, h := range e.w.Centre.Horses {
		for day := range byDate(e.of[h]) {
			var spans []sat.Interval
			sel := under(about{horse: h, date: day[0].meeting.Date})
			for i, p := range day {
				e.oneRider(sel, p)
				spans = append(spans, sat.Interval{Lit: p.worked, Start: int(p.start), End: int(p.end) + stay})
				for _, q := range day[i+1:] {
					if gap := q.start - p.end; gap >= e.w.House.Stay && gap < other {
						e.keepTack(sel, p, q, gap)
					}
				}
			}
			e.s.Disjoint(sel, spans)
		}
		for _, p := range e.of[h] {
			for _, f := range e.facts[h] {
				e.besideFact(under, p, f)
			}
		}
	}
}

// oneRider keeps a horse to one rider of a slot.
func (e *encoder) oneRider(sel sat.Lit, p *place) {
	var lits []sat.Lit
	for _, on := range p.rides {
		lits = append(lits, on.lit)
	}
	e.s.AtMostOne(sel, lits...)
}

// byDate walks the places of a horse date by date; they are in that order.
func byDate(places []*place) func(yield func([]*place) bool) {
	return func(yield func([]*place) bool) {
		for len(places) > 0 {
			n := slices.IndexFunc(places, func(p *place) bool { return p.meeting.Date != places[0].meeting.Date })
			if n < 0 {
				n = len(places)
			}
			if !yield(places[:n]) {
				return
			}
			places = places[n:]
		}
	}
}

// keepTack lets a horse go from p to q, with so little between, only in the same
// seat, pads and girth; and where the gap is less than it takes to walk over,
// only in the same arena. Pools tell pieces well enough: with a gap below the
// time that a piece needs to another horse, it is the same piece.
func (e *encoder) keepTack(sel sat.Lit, p, q *place, gap model.Minute) {
	if e.tooClose(gap, p.meeting.Arena, q.meeting.Arena) {
		e.s.Add(sel, p.worked.Not(), q.worked.Not())
		return
	}
	same := func(p, q *place) {
		for _, o := range p.saddle {
			e.s.Add(sel, o.lit.Not(), q.worked.Not(), q.litOf(o.option, e.s))
		}
		for _, g := range p.girths {
			e.s.Add(sel, g.lit.Not(), q.worked.Not(), q.litOfGirth(g.pool, e.s))
		}
	}
	same(p, q)
	same(q, p)
}

// litOf is the literal of the same seat and pads in a place.
func (p *place) litOf(o *option, s *sat.Solver) sat.Lit {
	for _, x := range p.saddle {
		if x.seat == o.seat && slices.Equal(x.pads, o.pads) {
			return x.lit
		}
	}
	return s.Root().Not()
}

func (p *place) litOfGirth(g *pool, s *sat.Solver) sat.Lit {
	for _, x := range p.girths {
		if x.pool == g {
			return x.lit
		}
	}
	return s.Root().Not()
}

// besideFact keeps the gap between a place and a fact of its horse.
func (e *encoder) besideFact(under under, p *place, f *model.Stint) {
	if f.Date != p.meeting.Date {
		return
	}
	if max(p.start-f.End, f.Start-p.end) >= e.w.House.Other {
		return
	}
	sel := under(about{horse: p.horse, date: f.Date, fact: f})
	if e.crowded(p, f) {
		e.s.Add(sel, p.worked.Not())
		return
	}
	for _, o := range p.saddle { // every piece of a fact is a pool of its own
		if !slices.Equal(o.pieces(), append([]*model.Piece{f.Turn.Seat}, f.Turn.Pads...)) {
			e.s.Add(sel, o.lit.Not())
		}
		if f.Turn.Girth == nil && len(o.girths) > 0 {
			e.s.Add(sel, o.lit.Not())
		}
	}
	for _, g := range p.girths {
		if g.pool.one() != f.Turn.Girth {
			e.s.Add(sel, g.lit.Not())
		}
	}
	if f.Turn.Girth != nil {
		e.s.Add(sel, p.worked.Not(), p.litOfGirth(e.poolOf[f.Turn.Girth], e.s))
	}
}

// crowded reports whether a horse cannot go between a place and a fact of its
// own, whatever it wears.
func (e *encoder) crowded(p *place, f *model.Stint) bool {
	gap := max(p.start-f.End, f.Start-p.end)
	return f.Date == p.meeting.Date && (e.tooClose(gap, f.Arena, p.meeting.Arena) || gap < e.w.House.Other && f.Turn.Seat == nil)
}

// tooClose reports whether a gap is too short for a horse that keeps its tack on.
func (e *encoder) tooClose(gap model.Minute, from, to *model.Arena) bool {
	stays := from != nil && from == to
	return gap < e.w.House.Stay || gap < e.w.House.Same && !stays
}
