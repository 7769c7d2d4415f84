package sat

import "slices"

// gone is a variable that was eliminated, and the clauses that it was in.
type gone struct {
	v       Lit
	clauses []Lit // each ended by 0; nil: it is back
}

// ease makes clauses fewer and shorter, and notes what is gone. It reports false where they are at odds.
func (s *Solver) ease(store []Lit, fixed []int8) ([]Lit, bool) {
	const most = 100_000_000 // literals to look at: some three seconds
	s.expect(nil)
	s.assumed[s.root] = true
	c := newClauseSet(store, fixed, s.root, most)
	out := c.eliminate(s.assumed)
	if c.odds {
		return nil, false
	}
	for len(s.goneAt) <= s.vars {
		s.goneAt = append(s.goneAt, 0)
	}
	for _, g := range out {
		s.gone = append(s.gone, g)
		s.goneAt[g.v] = int32(len(s.gone))
	}
	clear(s.assumed)
	return c.store(), true
}

// expect notes that literals are assumed, and brings back those that were eliminated.
func (s *Solver) expect(assume []Lit) {
	s.restore(assume...)
	for len(s.assumed) <= s.vars {
		s.assumed = append(s.assumed, false)
	}
	for _, l := range assume {
		s.assumed[l.Var()] = true
	}
}

// restore brings back the eliminated variables among some literals, and their clauses.
func (s *Solver) restore(lits ...Lit) {
	for _, l := range lits {
		v := l.Var()
		if v >= len(s.goneAt) || s.goneAt[v] == 0 {
			continue
		}
		g := &s.gone[s.goneAt[v]-1]
		clauses := g.clauses
		s.goneAt[v], g.clauses = 0, nil
		for _, l := range clauses {
			if l == 0 {
				s.kept++
			}
		}
		s.restore(clauses...)
		s.store = append(s.store, clauses...)
	}
}

// extend gives eliminated variables values that agree with a model of the others.
func (s *Solver) extend(m Model) {
	for i := len(s.gone) - 1; i >= 0; i-- {
		g := &s.gone[i]
		if g.clauses == nil {
			continue
		}
		m[g.v] = false
		for c := range each(g.clauses) {
			if slices.Contains(c, g.v) && !slices.ContainsFunc(c, m.Value) {
				m[g.v] = true
				break
			}
		}
	}
}
