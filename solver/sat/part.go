package sat

import (
	"context"
	"iter"
	"slices"

	"github.com/irifrance/gini/z"
)

// A Mark tells which part of a problem a variable is of: a number from 1 up, Across for what ties parts together, or
// 0 for what is only defined by others, and of their part if that is one.
type Mark int16

// Across marks what ties parts together.
const Across Mark = -1

// Mark gives variables made from now on a mark, and returns the one that they had before.
func (s *Solver) Mark(m Mark) (before Mark) {
	before, s.mark = s.mark, m
	return before
}

// MarkOf is the mark of a literal's variable.
func (s *Solver) MarkOf(l Lit) Mark { return s.marks[l.Var()] }

// A Part is a solver of those clauses of a whole that speak of one part alone. What it finds impossible is
// impossible in the whole, and most of that it finds much sooner. Clauses are added to the whole.
type Part struct {
	solver  *Solver
	whole   *Solver
	of      Mark
	in      []bool // by variable: it is of the part
	seen    int    // of the whole's store
	renewed int    // how often the whole was, then
}

// Part of the problem with a mark, from 1 up; nil if there is none.
func (s *Solver) Part(m Mark) *Part {
	if !slices.Contains(s.marks, m) {
		return nil
	}
	p := &Part{whole: s, of: m}
	p.begin()
	return p
}

func (p *Part) begin() {
	s := p.whole
	p.solver = &Solver{work: s.work, root: s.root, fixed: slices.Clone(s.fixed), outer: make([]Lit, 1)}
	p.in, p.seen, p.renewed = nil, 0, s.renewed
	p.follow()
}

// follow takes in what the whole was told since.
func (p *Part) follow() {
	s := p.whole
	if p.renewed != s.renewed {
		p.begin()
		return
	}
	for v := len(p.in); v <= s.vars; v++ {
		p.in = append(p.in, s.marks[v] == p.of)
		p.solver.inner = append(p.solver.inner, z.LitNull)
	}
	for len(p.solver.fixed) <= s.vars {
		p.solver.fixed = append(p.solver.fixed, 0)
	}
	p.solver.vars, p.solver.numbered = s.vars, s.vars
	news := s.store[p.seen:]
	p.seen = len(s.store)
	for more := len(news) > 0; more; {
		more = false
		for clause := range p.own(news) {
			for _, l := range clause {
				if v := l.Var(); !p.in[v] && p.counts(l) {
					p.in[v], more = true, true
				}
			}
		}
	}
	for clause := range p.own(news) {
		p.solver.store = append(append(p.solver.store, clause...), 0)
		p.solver.kept++
		for _, l := range clause {
			if p.counts(l) {
				p.solver.number(Lit(l.Var()))
			}
		}
	}
}

// own are the clauses that speak of the part, and of no other.
func (p *Part) own(clauses []Lit) iter.Seq[[]Lit] {
	return func(yield func([]Lit) bool) {
		for clause := range each(clauses) {
			ours, others := false, false
			for _, l := range clause {
				if p.counts(l) {
					m := p.whole.MarkOf(l)
					ours = ours || p.in[l.Var()]
					others = others || m != 0 && m != p.of
				}
			}
			if ours && !others && !yield(clause) {
				return
			}
		}
	}
}

// counts reports whether a literal says something in a clause.
func (p *Part) counts(l Lit) bool {
	return l.Var() != p.whole.root.Var() && valueIn(p.solver.fixed, l) == 0
}

// SolveWithin asks as [Solver.SolveWithin] does; the whole counts the work.
func (p *Part) SolveWithin(ctx context.Context, ticks int, assume ...Lit) Status {
	p.whole.expect(assume)
	p.follow()
	return p.solver.SolveWithin(ctx, ticks, assume...)
}

// Core is, after Unsat, some of the assumptions, which cannot all hold; see [Solver.Core].
func (p *Part) Core() []Lit { return p.solver.Core() }
