package ordered

import (
	"slices"

	"tackwright/solver/sat"
)

// shrink takes from a core what it can do without: each member is tried once. One that some
// solution seen so far fails alone needs no trial, which is most of them. A pair is left: that one of
// two fails by itself is rare, and each trial takes a whole answer.
func (q *query) shrink(core []sat.Lit) []sat.Lit {
	const patience = 4 // trials left undecided
	for i, undecided := 0, 0; i < len(core) && len(core) > 2 && undecided < patience && q.ctx.Err() == nil; {
		rest := slices.Delete(slices.Clone(core), i, i+1)
		if q.seen(func(m sat.Model) bool { return fails(m, rest) == 0 }) {
			i++
			continue
		}
		switch q.ask(1, rest) {
		case sat.Unsat:
			// Members before i were needed in a larger core, so they are needed still.
			blamed := q.blamed()
			core = slices.DeleteFunc(rest, func(l sat.Lit) bool {
				return !slices.Contains(rest[:i], l) && !slices.Contains(blamed, l)
			})
		case sat.Unknown:
			undecided++
			i++
		default:
			i++
		}
	}
	return core
}

// seen tells whether a late solution is such.
func (q *query) seen(such func(sat.Model) bool) bool { return slices.ContainsFunc(q.late, such) }

// remember keeps the latest solutions. They keep the clauses, but not all that hold and harden
// added after them.
func (q *query) remember(m sat.Model) {
	const many = 64
	if len(q.late) == many {
		q.late = slices.Delete(q.late, 0, 1)
	}
	q.late = append(q.late, m)
}

// fails counts the literals that are not true in m, or made after it.
func fails(m sat.Model, lits []sat.Lit) int {
	n := 0
	for _, l := range lits {
		if l.Var() >= len(m) || !m.Value(l) {
			n++
		}
	}
	return n
}
