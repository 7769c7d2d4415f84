package ordered

import "tackwright/solver/sat"

// apart finds cores of a group in its own part of the problem. Those of a day take a hundredth of the work there.
func (g *search) apart(least, group int) {
	if g.target > 0 || !g.q.isHard() {
		return
	}
	part := g.q.part(group)
	if part == nil {
		return
	}
	g.q.asks = part
	defer func() { g.q.asks = nil }()
	for !g.interrupted() {
		switch g.q.ask(g.patience, g.above(least, group)) {
		case sat.Unsat:
			g.relax(g.q.shrink(g.q.blamed()))
			g.raised = g.q.effort()
		case sat.Unknown:
			return
		default:
			if len(g.due) == 0 {
				return
			}
			g.settle()
		}
	}
}

// part of a group; nil if it has none.
func (q *query) part(group int) *sat.Part {
	p, ok := q.parts[group]
	if !ok {
		p = q.s.Part(markOf(group))
		q.parts[group] = p
	}
	return p
}

// above are the wishes of a group that have at least the given weight.
func (g *search) above(least, group int) (lits []sat.Lit) {
	for _, w := range g.wishes {
		if w.weight >= least && (group == all || w.group == group) {
			lits = append(lits, w.lit)
		}
	}
	return lits
}

// markOf a group's variables.
func markOf(group int) sat.Mark {
	if group < 0 {
		return sat.Across
	}
	return sat.Mark(1 + group)
}

// marked does what makes variables of a group.
func (q *query) marked(m sat.Mark, do func()) {
	defer q.s.Mark(q.s.Mark(m))
	do()
}

// fewer says that not so many of a tally fail.
func (g *search) fewer(t *tally, level int) (l sat.Lit) {
	g.q.marked(markOf(t.group), func() { l = t.counter.AtLeast(level).Not() })
	return l
}
