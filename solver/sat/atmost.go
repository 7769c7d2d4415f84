package sat

import (
	"cmp"
	"slices"
)

// AtMostOne forbids under sel that two of lits are true. A literal given twice counts twice.
func (s *Solver) AtMostOne(sel Lit, lits ...Lit) {
	const pairwise = 6
	for len(lits) > pairwise {
		// A ladder: settle a few, and let one literal speak for them among the rest.
		const rung = pairwise - 2
		head := lits[:rung]
		s.AtMostOne(sel, head...)
		lits = append([]Lit{s.Any(head...)}, lits[rung:]...)
	}
	for i, a := range lits {
		for _, b := range lits[i+1:] {
			s.Add(sel, a.Not(), b.Not())
		}
	}
}

// AtMost forbids under sel that more than k of lits are true. A literal given twice counts twice.
func (s *Solver) AtMost(sel Lit, k int, lits ...Lit) {
	terms := make([]Term, len(lits))
	for i, l := range lits {
		terms[i] = Term{l, 1}
	}
	s.WeightedAtMost(sel, k, terms...)
}

// AtLeast demands under sel that at least k of lits are true.
func (s *Solver) AtLeast(sel Lit, k int, lits ...Lit) {
	if k == 1 {
		s.Add(sel, lits...)
		return
	}
	not := make([]Lit, len(lits))
	for i, l := range lits {
		not[i] = l.Not()
	}
	s.AtMost(sel, len(lits)-k, not...)
}

// Term is a literal that counts Weight when it is true. Weight may be negative.
type Term struct {
	Lit    Lit
	Weight int
}

// WeightedAtMost demands under sel that the weights of the true literals add up to at most bound.
//
// It is a decision diagram over the terms, heaviest first, in which bounds that allow the same are
// one node (Abío et al. 2012, J. Artif. Intell. Res. 45). A node is a literal "what is left
// keeps to my bound", so that the first node is sel itself: at most two clauses a node, none longer
// than three literals, and unit propagation finds every literal that is forced.
func (s *Solver) WeightedAtMost(sel Lit, bound int, terms ...Term) {
	terms, bound = s.normal(terms, bound)
	if bound < 0 {
		s.Add(sel)
		return
	}
	heavy := 0
	for heavy < len(terms) && terms[heavy].Weight > bound {
		s.Add(sel, terms[heavy].Lit.Not())
		heavy++
	}
	terms = terms[heavy:]
	switch {
	case len(terms) == 0:
		return
	case len(terms) > 2 && terms[len(terms)-1].Weight+terms[len(terms)-2].Weight > bound:
		lits := make([]Lit, len(terms))
		for i, t := range terms {
			lits[i] = t.Lit
		}
		s.AtMostOne(sel, lits...)
		return
	}
	d := diagram{s: s, terms: terms, made: make([][]node, len(terms)+1)}
	d.rest = make([]int, len(terms)+1)
	for i := len(terms) - 1; i >= 0; i-- {
		d.rest[i] = d.rest[i+1] + terms[i].Weight
	}
	d.first = sel
	d.at(0, bound)
}

// normal merges the terms of one variable, turns negative weights round, divides by what all
// weights share and sorts, heaviest first.
func (s *Solver) normal(terms []Term, bound int) ([]Term, int) {
	byVar := slices.Clone(terms)
	slices.SortStableFunc(byVar, func(a, b Term) int { return cmp.Compare(a.Lit.Var(), b.Lit.Var()) })
	var out []Term
	for i := 0; i < len(byVar); {
		v, weight := byVar[i].Lit.Var(), 0 // weight of v true; w * not v is w - w * v
		for ; i < len(byVar) && byVar[i].Lit.Var() == v; i++ {
			if t := byVar[i]; t.Lit > 0 {
				weight += t.Weight
			} else {
				weight -= t.Weight
				bound -= t.Weight
			}
		}
		switch {
		case Lit(v) == s.root:
			bound -= weight
		case weight > 0:
			out = append(out, Term{Lit(v), weight})
		case weight < 0:
			out = append(out, Term{Lit(-v), -weight})
			bound -= weight
		}
	}
	shared := 0
	for _, t := range out {
		for a := t.Weight; a != 0; {
			shared, a = a, shared%a
		}
	}
	if shared > 1 && bound >= 0 {
		for i := range out {
			out[i].Weight /= shared
		}
		bound /= shared
	}
	// Where weights are equal the caller's order stays: neighbours in time stay neighbours.
	slices.SortStableFunc(out, func(a, b Term) int { return cmp.Compare(b.Weight, a.Weight) })
	return out, bound
}

// A node stands for every bound from low to high on the terms from its level on.
type node struct {
	low, high int
	lit       Lit
}

const boundless = int(^uint(0) >> 1)

type diagram struct {
	s     *Solver
	terms []Term
	rest  []int // weight of all terms from here on
	made  [][]node
	first Lit
}

// at returns the node for bound on the terms from level on.
func (d *diagram) at(level, bound int) node {
	if bound < 0 {
		return node{-boundless, -1, d.s.root.Not()}
	}
	if bound >= d.rest[level] {
		return node{d.rest[level], boundless, d.s.root}
	}
	i, found := slices.BinarySearchFunc(d.made[level], bound, func(n node, bound int) int {
		switch {
		case n.high < bound:
			return -1
		case n.low > bound:
			return 1
		}
		return 0
	})
	if found {
		return d.made[level][i]
	}
	lit := d.first
	if level > 0 {
		lit = d.s.NewVar()
	}
	t := d.terms[level]
	without := d.at(level+1, bound)
	with := d.at(level+1, bound-t.Weight)
	n := node{max(without.low, shift(with.low, t.Weight)), min(without.high, shift(with.high, t.Weight)), lit}
	d.s.Add(lit, without.lit)
	if with.lit != without.lit {
		d.s.Add(lit, t.Lit.Not(), with.lit)
	}
	d.made[level] = slices.Insert(d.made[level], i, n)
	return n
}

// shift adds weight to an end of an interval; an open end stays open.
func shift(end, weight int) int {
	if end == boundless || end == -boundless {
		return end
	}
	return end + weight
}
