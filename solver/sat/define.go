package sat

// Or returns a new literal that is true exactly when at least one of lits is. Of no lits it is the
// constant false; of one it is that literal.
func (s *Solver) Or(lits ...Lit) Lit {
	switch len(lits) {
	case 0:
		return s.root.Not()
	case 1:
		return lits[0]
	}
	y := s.Any(lits...)
	s.Add(y, lits...)
	return y
}

// And returns a new literal that is true exactly when all of lits are.
func (s *Solver) And(lits ...Lit) Lit {
	not := make([]Lit, len(lits))
	for i, l := range lits {
		not[i] = l.Not()
	}
	return s.Or(not...).Not()
}

// Any returns a literal that is true when any of lits is; when none is it may be either. It is
// what a limit on the result needs, in half the clauses of Or.
func (s *Solver) Any(lits ...Lit) Lit {
	switch len(lits) {
	case 0:
		return s.root.Not()
	case 1:
		return lits[0]
	}
	y := s.NewVar()
	for _, l := range lits {
		s.Add(l, y)
	}
	return y
}
