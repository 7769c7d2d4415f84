package ordered

import (
	"cmp"
	"slices"

	"tackwright/solver/sat"
)

// A portion of wishes is asked for where it is hard to decide whether all can be had together: those that the best
// solution meets and half of the others, then more or fewer of them. The answer is a core or a better
// solution.
type portion struct {
	easy, hard int // so many can be had together, and so many are hard; 0: not known
}

// of tells how many to ask for, of some that the best solution meets and of all; all again where there is
// nothing between those that can be had and those that are hard.
func (p *portion) of(met, all int) int {
	p.easy = max(p.easy, met)
	if p.hard = min(p.hard, all); p.easy >= p.hard {
		p.hard = all
	}
	n := (p.easy + p.hard + 1) / 2
	if n >= p.hard {
		*p = portion{}
		return all
	}
	return n
}

// metFirst puts the wishes first that the best solution meets, and tells how many they are.
func (g *search) metFirst(lits []sat.Lit) int {
	unmet := func(l sat.Lit) int { return fails(g.q.best, []sat.Lit{l}) }
	slices.SortStableFunc(lits, func(a, b sat.Lit) int { return cmp.Compare(unmet(a), unmet(b)) })
	return len(lits) - fails(g.q.best, lits)
}
