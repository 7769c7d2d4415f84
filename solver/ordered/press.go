package ordered

import (
	"slices"

	"tackwright/solver/sat"
)

// pressed is a copy of the search's solver, made easier for one question: can a solution cost less beyond what the
// lower bound once was?
type pressed struct {
	s      *sat.Solver
	excess *sat.Counter
	lower  int
}

// press asks whether a plain count can be better than the best, for about the given ticks of work, and goes on where it
// left off before. A hard count is proved sooner so than core by core: of carry in two large weeks in 10 and 5 s, where
// cores alone took 12 and did not come to an end in 50.
func (g *search) press(ticks int) {
	const (
		widest = 64 // a gap that is more is better closed by cores
		slice  = 8  // ticks after which the search begins anew with what it learned: gini itself does so too seldom
	)
	if g.weighted() || !g.q.isHard() || g.interrupted() {
		return
	}
	if g.pressed == nil {
		if g.upper()-g.lower > widest || g.q.s.Heavy() {
			return
		}
		sel := g.q.s.NewVar()
		defer g.q.s.Retire(sel)
		excess := g.excess(sel, 1)
		excess.AtLeast(g.upper() - g.lower) // makes those below it too
		g.pressed = &pressed{g.q.s.Copy(slices.Concat(g.q.assume, []sat.Lit{sel})...), excess, g.lower}
	}
	p := g.pressed
	for end := g.q.effort() + ticks; !g.interrupted() && g.q.effort() < end && g.q.left() > 0; {
		few := p.excess.AtLeast(g.upper() - p.lower).Not()
		switch p.s.SolveWithin(g.q.ctx, slice, few) {
		case sat.Sat:
			g.q.remember(p.s.Model())
			g.q.keep(p.s.Model())
		case sat.Unsat:
			g.known = g.upper()
		}
	}
}
