package ordered

import "tackwright/solver/sat"

// seed takes the goal's counts into the lower bound. Of wishes with different weights the lightest
// are the ones that fail, layer by layer; a wish whose weight is used up may be one of them.
func (g *search) seed() {
	for _, c := range g.q.goals[g.goal].Counts {
		lits, least := c.Lits, c.Least
		for {
			var heavy []sat.Lit
			weight := 0
			for _, l := range lits {
				w := 0
				if i, ok := g.index[l]; ok {
					w = g.wishes[i].weight
				}
				if w == 0 {
					least--
					continue
				}
				if len(heavy) == 0 || w < weight {
					weight = w
				}
				heavy = append(heavy, l)
			}
			if least <= 0 || len(heavy) == 0 {
				break
			}
			t := g.count(heavy, weight)
			t.sure = least
			for level := 2; level <= least; level++ {
				t.use(level, weight)
			}
			g.lower += least * weight
			for _, l := range heavy {
				g.take(l, weight)
			}
			g.grant(due{t, least + 1, weight})
			lits = heavy
		}
	}
}
