package ordered

import "tackwright/solver/sat"

// probe tries each literal that prices leave open in solutions as good as the best one of a proved goal, for a while. Those
// that fail then are forbidden to the goals after it: of one in seven to one in two (hard large weeks) the rules see what prices do not.
func (g *search) probe() {
	const ticks, most = 3, 500
	if !g.weighted() || g.sum == nil {
		return
	}
	var open []sat.Lit
	for _, group := range g.sum.groups {
		for _, p := range group {
			if p.And == 0 && p.Least <= g.upper() && !g.q.best.Value(p.Lit) {
				open = append(open, p.Lit)
			}
		}
	}
	end := g.q.effort() + most
	seen := map[sat.Lit]bool{} // in a solution
	for _, l := range open {
		if g.q.effort() >= end {
			return
		}
		if seen[l] {
			continue
		}
		switch g.q.ask(ticks, []sat.Lit{l}) {
		case sat.Sat:
			for _, l := range open {
				seen[l] = seen[l] || g.q.s.Value(l)
			}
		case sat.Unsat:
			g.q.s.Add(g.q.own, l.Not())
		}
	}
}
