package ordered

import "tackwright/solver/sat"

// hold keeps a proved goal at its value: what fails beyond the lower bound must not exceed what the
// best solution has beyond it.
func (g *search) hold() {
	slack := g.upper() - g.lower
	var terms []sat.Term
	for _, w := range g.wishes {
		if w.tally == nil && w.weight > 0 {
			terms = append(terms, sat.Term{Lit: w.lit.Not(), Weight: w.weight})
		}
	}
	for _, t := range g.tallies {
		terms = append(terms, t.left(slack)...)
	}
	g.q.s.WeightedAtMost(g.q.own, slack, terms...)
}

// left lists the failures of a tally that are not in the lower bound, up to the first that slack
// does not allow.
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
