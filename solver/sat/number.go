package sat

import "github.com/irifrance/gini/z"

// number gives a variable one in gini, unless it has one or is fixed.
func (s *Solver) number(v Lit) {
	if s.inner[v] == z.LitNull && s.fixed[v] == 0 {
		s.inner[v] = z.Var(len(s.outer)).Pos()
		s.outer = append(s.outer, v)
	}
}

// reserve makes in gini what has been numbered. Each time gini sees more variables it forgets the values it
// saved and counts all clauses anew: so some are made to spare.
func (s *Solver) reserve() {
	if n := len(s.outer) - 1; n > s.reserved {
		for range n - s.reserved + n/8 {
			s.gini.Lit()
			s.reserved++
		}
	}
}

// in is a literal that is not fixed as gini knows it. A variable that was in no clause when gini was made
// anew gets a number now.
func (s *Solver) in(l Lit) z.Lit {
	v := Lit(l.Var())
	if s.inner[v] == z.LitNull {
		s.number(v)
		s.reserve()
	}
	if l < 0 {
		return s.inner[v].Not()
	}
	return s.inner[v]
}

// out is a literal of gini's as it is called here.
func (s *Solver) out(m z.Lit) Lit {
	if m.IsPos() {
		return s.outer[m.Var()]
	}
	return s.outer[m.Var()].Not()
}

// tell hands clauses to gini, less what is fixed.
func (s *Solver) tell(clauses []Lit) {
	var left []z.Lit
	met, negative := false, false
	for _, l := range clauses {
		switch value := valueIn(s.fixed, l); {
		case l == 0:
			if !met {
				if !negative {
					left = append(left, s.in(s.root.Not()))
				}
				for _, m := range left {
					s.gini.Add(m)
				}
				s.gini.Add(z.LitNull)
			}
			left, met, negative = left[:0], false, false
		case value > 0:
			met = true
		case value == 0:
			left = append(left, s.in(l))
			negative = negative || l < 0
		}
	}
}
