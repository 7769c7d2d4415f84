package sat

import (
	"slices"

	"github.com/irifrance/gini/z"
)

// Copy is another solver of the same clauses, in which some literals are certain and which is made easier for that. What
// its models say of variables is what models of the first do. The work of both counts as one's.
func (s *Solver) Copy(certain ...Lit) *Solver {
	c := &Solver{root: s.root, vars: s.vars, work: s.work, store: slices.Clone(s.store), kept: s.kept, clauses: s.clauses,
		inner: make([]z.Lit, s.vars+1), outer: make([]Lit, 1), fixed: slices.Clone(s.fixed), marks: make([]Mark, s.vars+1),
		hung: make([]int32, 2*s.vars+2), gone: slices.Clone(s.gone), goneAt: slices.Clone(s.goneAt), numbered: s.vars, due: true}
	for _, l := range certain {
		c.Add(c.root, l)
	}
	return c
}
