package ordered

import (
	"maps"
	"slices"

	"tackwright/solver/sat"
)

// wager supposes that there is a solution less than step above what is proved: then all literals are false
// whose price is no less, which often leaves little to search. Who is wrong has proved a bound. Where it
// comes out either way more is supposed next, else less. Each time it gives up after some ticks of work. Of plain counts
// none was seen to come out in full weeks, after seconds each.
func (g *search) wager(step, ticks int) {
	if !g.weighted() {
		return
	}
	for !g.interrupted() && len(g.priced) > 0 {
		upper, bound := g.upper(), g.bound()
		g.suppose(min(bound+step, upper), ticks)
		switch {
		case g.upper() < upper || g.bound() > bound:
			step *= 2
		case step > 1:
			step /= 2
		default:
			return
		}
	}
}

// near reports whether what is known leaves so little that wagers are worth their work.
func (g *search) near() bool { return g.upper()-g.bound() <= 4+g.bound()/16 }

// suppose searches for a solution below a target with a copy of what is known, until there is one, it is
// proved that there is none, or the work is done. All that it adds is taken back.
func (g *search) suppose(target, ticks int) {
	q := *g.q
	q.own, q.late = q.s.NewVar(), nil
	q.assume = append([]sat.Lit{q.own}, q.assume...)
	defer q.s.Retire(q.own)
	for _, p := range g.priced {
		if p.Least >= target {
			q.s.Add(q.own, p.not()...)
		}
	}
	g.sum.below(&q, q.own, target)
	w := &search{q: &q, goal: g.goal, groups: g.groups, index: maps.Clone(g.index), wishes: slices.Clone(g.wishes), due: slices.Clone(g.due),
		lower: g.lower, target: target, end: q.effort() + ticks, patience: ticks, raised: q.effort(), turned: q.effort()}
	copies := map[*tally]*tally{}
	for _, t := range g.tallies {
		own := *t
		own.used = slices.Clone(t.used)
		copies[t] = &own
		w.tallies = append(w.tallies, &own)
	}
	for i := range w.wishes {
		w.wishes[i].tally = copies[w.wishes[i].tally]
	}
	for i := range w.due {
		w.due[i].tally = copies[w.due[i].tally]
	}
	w.harden()
	w.gather()
	g.q.asked, g.q.best, g.q.values = q.asked, q.best, q.values
	if w.lower >= target {
		g.known = max(g.known, target)
	}
}

// lost reports whether what was supposed is decided, or not worth more work.
func (g *search) lost() bool {
	if g.tightens {
		return g.lower >= g.upper() || g.q.effort() >= g.end || g.q.ctx.Err() != nil
	}
	return g.lower >= g.target || g.upper() < g.target || g.q.effort() >= g.end || g.q.ctx.Err() != nil
}

// tighten looks for more cores of a goal that is proved by other means, for a while: the more of its value they
// explain, the less the clauses that hold it leave open. A plain count leaves no more than that open.
func (g *search) tighten() {
	const ticks = 1000
	if !g.weighted() || len(g.priced) == 0 {
		return
	}
	g.hint, g.wagers = nil, false
	g.tightens, g.target, g.end, g.patience = true, g.upper()+1, g.q.effort()+ticks, ticks/4
	g.gather()
}

// weighted reports whether the goal is more than a plain count.
func (g *search) weighted() bool {
	return slices.ContainsFunc(g.q.goals[g.goal].Softs, func(s Soft) bool { return s.Weight > 1 })
}
