package ordered

import "tackwright/solver/sat"

// hold keeps a proved goal at its value: what fails beyond the lower bound must not exceed what the
// best solution has beyond it.
func (g *search) hold() {
	for _, d := range g.due {
		g.grant(d)
	}
	slack := g.upper() - g.lower
	var terms []sat.Term
	counted := map[*tally]bool{}
	for _, w := range g.wishes {
		switch {
		case w.weight == 0:
		case w.tally == nil || slack == 0:
			terms = append(terms, sat.Term{Lit: w.lit.Not(), Weight: w.weight})
		case !counted[w.tally]:
			counted[w.tally] = true
			terms = append(terms, w.tally.left(slack)...)
		}
	}
	if slack > 0 {
		g.q.s.WeightedAtMost(g.q.own, slack, terms...)
		return
	}
	for _, t := range terms {
		g.q.s.Add(g.q.own, t.Lit.Not())
	}
}

// left lists the failures of a tally that are not in the lower bound, as far as slack allows.
func (t *tally) left(slack int) []sat.Term {
	var terms []sat.Term
	for level := 1; level <= t.counter.Size() && slack >= 0; level++ {
		weight := t.weight
		if level <= len(t.used) {
			weight -= t.used[level-1]
		}
		if weight > 0 {
			terms = append(terms, sat.Term{Lit: t.counter.AtLeast(level), Weight: weight})
			slack -= weight
		}
	}
	return terms
}
