package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// tooHeavyAtBest reports whether rider, seat and pads with the lightest girth
// and extras are more than the horse carries.
func tooHeavyAtBest(e *encoder, r *model.Ride, h *model.Horse, o *option) bool {
	return !h.Carries(e.lightestLoad(r, o), r.Rider.Support, e.w.House)
}

func (e *encoder) lightestLoad(r *model.Ride, o *option) model.Grams {
	load := r.Rider.Weight + e.weigh(o.pieces()...) + e.lightest(o.girths)
	for _, need := range r.Rider.Extras {
		load += e.lightest(e.ofKind(need))
	}
	return load
}

func (e *encoder) weigh(pieces ...*model.Piece) model.Grams {
	var sum model.Grams
	for _, p := range pieces {
		w, _ := p.WeightIn(e.w.House)
		sum += w
	}
	return sum
}

func (e *encoder) ofKind(need model.ExtraNeed) []*pool {
	var met []*pool
	for _, x := range e.pools {
		if need.Kind == x.one().Kind {
			met = append(met, x)
		}
	}
	return met
}

// lightest weight of any of the pools; 0 of none.
func (e *encoder) lightest(pools []*pool) model.Grams {
	var least model.Grams
	for i, p := range pools {
		if w := e.weigh(p.one()); i == 0 || w < least {
			least = w
		}
	}
	return least
}

// load forbids the combinations of seat, pads, girth and extras that are more
// than the horse carries beside the rider.
func load(e *encoder, under under) {
	for _, p := range e.places {
		for _, on := range p.rides {
			e.heavier(under(about{ride: on.ride, horse: p.horse}), on, func(g model.Grams) bool { return !p.horse.Carries(g, on.ride.Rider.Support, e.w.House) })
		}
	}
}

// markedLoad charges a ride whose load is above the share that is marked.
func (e *encoder) markedLoad(r *model.Ride, stratum int) []ordered.Soft {
	cost := e.w.House.Wishes.Marked
	if cost == 0 || len(e.on_[r]) == 0 {
		return nil
	}
	marked := e.s.NewVar()
	before := e.s.Clauses()
	for _, on := range e.on_[r] {
		e.heavier(marked.Not(), on, func(g model.Grams) bool { return on.at.horse.Marked(g, e.w.House) })
	}
	if e.s.Clauses() == before {
		return nil
	}
	e.marks[marked.Not()] = r
	return []ordered.Soft{{Lit: marked.Not(), Weight: cost, Stratum: stratum}}
}

// isMarked reports whether a ride of a solution is above the marked share. The wish that
// it is not may fail without need.
func (e *encoder) isMarked(m sat.Model, r *model.Ride) bool {
	for _, on := range e.on_[r] {
		if !m.Value(on.lit) {
			continue
		}
		load := on.ride.Rider.Weight
		for _, o := range on.at.saddle {
			if m.Value(o.lit) {
				load += e.weigh(o.pieces()...)
			}
		}
		for _, g := range slices.Concat(on.at.girths, on.at.extras) {
			if m.Value(g.lit) {
				load += e.weigh(g.pool.one())
			}
		}
		return on.at.horse.Marked(load, e.w.House)
	}
	return false
}

// heavier forbids under sel, for a ride on a horse, the combinations of seat,
// pads, girth and extras that are too heavy beside the rider: each as soon as
// what is named so far, with the lightest of what is not, is too heavy.
func (e *encoder) heavier(sel sat.Lit, on rideOn, tooHeavy func(model.Grams) bool) {
	p := on.at
	for _, o := range p.saddle {
		if e.clash(on.ride, p.horse, o.option) {
			continue
		}
		l := loading{encoder: e, sel: sel, tooHeavy: tooHeavy}
		if len(o.girths) > 0 {
			l.groups = append(l.groups, only(p.girths, o.girths))
		}
		for _, n := range needsOf(on.ride.Rider) {
			l.groups = append(l.groups, slices.DeleteFunc(slices.Clone(p.extras), func(x pooled) bool { return x.need != n }))
		}
		l.forbid(0, on.ride.Rider.Weight+e.weigh(o.pieces()...), []sat.Lit{on.lit.Not(), o.lit.Not()})
	}
}

// only are those of worn that are among the pools.
func only(worn []pooled, pools []*pool) []pooled {
	return slices.DeleteFunc(slices.Clone(worn), func(x pooled) bool { return !slices.Contains(pools, x.pool) })
}

type loading struct {
	*encoder
	sel      sat.Lit
	tooHeavy func(model.Grams) bool
	groups   [][]pooled // one of each is worn
}

func (l *loading) forbid(i int, weight model.Grams, not []sat.Lit) {
	lightest, heaviest := weight, weight
	for _, g := range l.groups[i:] {
		low, high := l.weigh(g[0].pool.one()), model.Grams(0)
		for _, x := range g {
			low = min(low, l.weigh(x.pool.one()))
			high = max(high, l.weigh(x.pool.one()))
		}
		lightest, heaviest = lightest+low, heaviest+high
	}
	switch {
	case !l.tooHeavy(heaviest):
	case l.tooHeavy(lightest):
		l.s.Add(l.sel, not...)
	default:
		for _, x := range l.groups[i] {
			l.forbid(i+1, weight+l.weigh(x.pool.one()), append(not[:len(not):len(not)], x.lit.Not()))
		}
	}
}
