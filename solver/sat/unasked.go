package sat

// Unasked lists the clauses added since the last question, selectors and Root spelled out: before the
// first question all of them. With Root as one more clause they mean to another solver what they mean
// here.
func (s *Solver) Unasked() [][]Lit {
	var all [][]Lit
	var clause []Lit
	for _, l := range s.store[s.told:] {
		if l != 0 {
			clause = append(clause, l)
			continue
		}
		all = append(all, clause)
		clause = nil
	}
	return all
}
