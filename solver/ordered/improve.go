package ordered

import (
	"cmp"
	"slices"

	"tackwright/solver/sat"
)

// improve spends about the given ticks of work on better solutions, looked for from above, in coarse
// units of weight first.
func (g *search) improve(ticks int) {
	end := g.q.effort() + ticks
	const finest = 256 // a sum that counts further than this is a burden
	heaviest := 1
	for _, w := range g.wishes {
		heaviest = max(heaviest, w.weight)
	}
	if heaviest == 1 {
		g.extend(1 + ticks/2)
	}
	g.roam(g.q.effort() + 1 + ticks/2)
	for unit := heaviest; unit > 0 && !g.interrupted(); unit /= 2 {
		if unit == heaviest || (g.upper()-g.lower)/unit <= finest {
			g.descend(1+ticks/4, end, unit)
		}
	}
}

// extend asks for what the best solution meets and one wish more, then another, the heaviest first, for
// about the given ticks of work.
func (g *search) extend(ticks int) {
	var met, more []sat.Lit
	for _, l := range g.softs() {
		if g.q.best.Value(l) {
			met = append(met, l)
		} else {
			more = append(more, l)
		}
	}
	end := g.q.effort() + ticks
	for _, l := range more {
		if g.q.effort() >= end || g.interrupted() {
			return
		}
		g.q.recall()
		if g.q.ask(1, append(met, l)) == sat.Sat {
			met = append(met, l)
		}
	}
}

// descend demands a value well below the best, and less and less below it where that cannot be
// decided with the given ticks of work, until an end of effort.
func (g *search) descend(ticks, end, unit int) {
	sel := g.q.s.NewVar()
	defer g.q.s.Retire(sel)
	excess := g.excess(sel, unit)
	for step := (g.upper() - g.bound()) / 2; !g.interrupted() && g.q.effort() < end; {
		before := g.upper()
		step = max(1, min(step, before-g.bound()))
		target := before - step
		few := excess.AtLeast((target-g.lower)/unit + 1).Not()
		g.q.recall()
		lits := []sat.Lit{sel, few}
		if g.better != 0 {
			lits = append(lits, g.better)
		}
		switch status := g.q.ask(ticks, lits); {
		case status == sat.Sat && g.upper() < before:
			step *= 2
		case status == sat.Unsat: // in whole units no solution costs more than it does
			g.known = max(g.known, target+1)
			step = (before - g.bound()) / 2
		case step > 1:
			step /= 2
		default:
			return
		}
	}
}

// excess counts, under sel, what a solution costs beyond the lower bound, in whole units each.
func (g *search) excess(sel sat.Lit, unit int) *sat.Counter {
	var parts []*sat.Counter
	weigh := func(l sat.Lit, weight int) {
		if weight >= unit {
			parts = append(parts, g.q.s.Weigh(l, weight/unit))
		}
	}
	for _, w := range g.wishes {
		if w.tally == nil {
			weigh(w.lit.Not(), w.weight)
		}
	}
	for _, t := range g.tallies {
		for i, used := range t.used {
			weigh(t.counter.AtLeast(i+1), t.weight-used)
		}
		if t.weight >= unit {
			parts = append(parts, t.counter.Beyond(len(t.used), t.weight/unit))
		}
	}
	return g.q.s.Sum(sel, parts...)
}

// follow looks for a solution that does without the literals whose price is well above the bound, and
// goes along with the hint and with the wishes beside it, as far as that is easy.
func (g *search) follow() {
	many := 8 // clashes: it is sooner mended by who gave it
	if !g.weighted() {
		many = 64 // a plan that loses a few rides is a good one
	}
	hint := g.hint
	g.hint = nil
	before, clashes := g.upper(), len(g.q.clash)
	defer func() {
		if g.vain++; g.upper() < before {
			g.vain = 0
		}
		g.pursued = g.vain < 6 && (len(g.q.clash) > clashes || g.upper() < before)
	}()
	if g.q.along(hint, 30, many); g.upper() < before || len(g.q.clash) >= clashes+many {
		g.harden()
		return
	}
	cheap := g.q.s.NewVar()
	defer g.q.s.Retire(cheap)
	for _, p := range g.priced {
		if p.Least > g.bound()+g.bound()/32+1 {
			g.q.s.Add(cheap, p.not()...)
		}
	}
	g.q.along(slices.Concat([]sat.Lit{cheap}, hint, g.softs()), 10, many)
	g.harden()
}

// softs are the goal's own wishes, the heaviest first.
func (g *search) softs() []sat.Lit {
	softs := slices.Clone(g.q.goals[g.goal].Softs)
	slices.SortStableFunc(softs, func(a, b Soft) int { return cmp.Compare(b.Weight, a.Weight) })
	var lits []sat.Lit
	for _, s := range softs {
		if s.Lit != g.q.s.Root().Not() {
			lits = append(lits, s.Lit)
		}
	}
	return lits
}
