package sat

import (
	"cmp"
	"slices"
)

// eliminate takes variables out of the clauses where that makes them no more (Eén & Biere 2005): what two clauses say
// together that differ on one takes their place. Variables to keep are left.
func (c *clauseSet) eliminate(keep []bool) (out []gone) {
	const rounds = 8
	c.subsume()
	var turn []Lit
	for v := 1; v < len(c.fixed); v++ {
		turn = append(turn, Lit(v))
	}
	for range rounds {
		turn = slices.DeleteFunc(turn, func(v Lit) bool { return keep[v] || c.fixed[v] != 0 || c.both(v) == 0 })
		slices.SortStableFunc(turn, func(v, w Lit) int { return cmp.Compare(c.product(v), c.product(w)) })
		c.touched = c.touched[:0]
		for _, v := range turn {
			if c.odds || c.effort <= 0 {
				return out
			}
			if c.fixed[v] == 0 && c.both(v) > 0 && c.without(v) {
				out = append(out, c.remove(v))
				c.subsume()
			}
		}
		turn = append(turn[:0], c.touched...)
		slices.Sort(turn)
		turn = slices.Compact(turn)
	}
	return out
}

func (c *clauseSet) product(v Lit) int64 { return int64(c.alive[at(v)]) * int64(c.alive[at(-v)]) }

// without works out fresh clauses that say what those with a variable say of all others. It reports false where they
// would be more, or long.
func (c *clauseSet) without(v Lit) bool {
	const longest, many = 20, 16
	yes, no := c.with(v), c.with(v.Not())
	if len(yes) > many && len(no) > many {
		return false
	}
	c.fresh = c.fresh[:0]
	more := len(yes) + len(no)
	for _, n := range yes {
		stamp := c.marked(n)
		for _, m := range no {
			from := len(c.fresh)
			if !c.resolve(n, m, v, stamp) {
				c.fresh = c.fresh[:from]
				continue
			}
			if more--; more < 0 || len(c.fresh)-from > longest {
				return false
			}
			c.fresh = append(c.fresh, 0)
		}
	}
	return true
}

// resolve appends to fresh what clause n, which has v and whose literals are marked, and m, which has its negation, say
// together. It reports false where that is nothing.
func (c *clauseSet) resolve(n, m int32, v Lit, stamp int32) bool {
	c.effort -= int(c.clauses[m].size)
	for _, l := range c.of(m) {
		if l == v.Not() || c.mark[at(l)] == stamp {
			continue
		}
		if c.mark[at(l.Not())] == stamp {
			return false
		}
		c.fresh = append(c.fresh, l)
	}
	for _, l := range c.of(n) {
		if l != v {
			c.fresh = append(c.fresh, l)
		}
	}
	return true
}

// remove puts what is fresh in the place of the clauses with a variable.
func (c *clauseSet) remove(v Lit) gone {
	c.spelled = c.spelled[:0]
	for _, l := range [2]Lit{v, v.Not()} {
		for _, n := range slices.Clone(c.with(l)) {
			c.spelled = c.spell(c.spelled, n)
			c.kill(n)
		}
	}
	for lits := range each(c.fresh) {
		c.add(lits)
	}
	return gone{v, slices.Clone(c.spelled)}
}
