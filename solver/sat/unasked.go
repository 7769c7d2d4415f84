package sat

import "github.com/irifrance/gini/z"

// Unasked lists the clauses added since the last question, selectors and Root spelled out: before the
// first question all of them. With Root as one more clause they mean to another solver what they mean
// here.
func (s *Solver) Unasked() [][]Lit {
	var all [][]Lit
	var clause []Lit
	for _, m := range s.waiting {
		if m != z.LitNull {
			clause = append(clause, Lit(m.Dimacs()))
			continue
		}
		all = append(all, clause)
		clause = nil
	}
	return all
}
