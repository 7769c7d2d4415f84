package sat

import (
	"cmp"
	"slices"
)

// Interval is a literal that, when true, occupies the half-open time [Start, End).
type Interval struct {
	Lit        Lit
	Start, End int
}

// Disjoint forbids under sel that two true literals occupy a time together. An interval that is
// empty occupies none.
//
// In order of start an interval clashes with a run of those after it. The runs are covered with
// the nodes of a binary tree over that order, a node being true when a literal below it is: about
// n log n clauses in place of n squared.
func (s *Solver) Disjoint(sel Lit, intervals []Interval) {
	d := disjoint{s: s, sel: sel}
	for _, v := range intervals {
		if v.Start < v.End {
			d.order = append(d.order, v)
		}
	}
	if len(d.order) < 2 {
		return
	}
	slices.SortStableFunc(d.order, func(a, b Interval) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.End, b.End))
	})
	tree := d.plant(0, len(d.order))
	for i, v := range d.order {
		end, _ := slices.BinarySearchFunc(d.order, v.End, func(w Interval, end int) int {
			return cmp.Compare(w.Start, end)
		})
		tree.cover(i, i+1, max(end, i+1))
	}
	tree.settle()
	d.emit(tree)
}

type disjoint struct {
	s     *Solver
	sel   Lit
	order []Interval
}

// A branch is a node of the tree over order[from:to].
type branch struct {
	from, to    int
	left, right *branch
	users       []int // those that clash with all of order[from:to]
}

func (d *disjoint) plant(from, to int) *branch {
	b := &branch{from: from, to: to}
	if to-from > 1 {
		middle := (from + to) / 2
		b.left, b.right = d.plant(from, middle), d.plant(middle, to)
	}
	return b
}

// cover makes user clash with order[from:to].
func (b *branch) cover(user, from, to int) {
	switch {
	case to <= b.from || b.to <= from:
	case from <= b.from && b.to <= to:
		b.users = append(b.users, user)
	default:
		b.left.cover(user, from, to)
		b.right.cover(user, from, to)
	}
}

// settle hands the users of a branch down where they are so few that telling them of the two
// halves is cheaper than a literal for the whole.
func (b *branch) settle() {
	if b.left == nil {
		return
	}
	if size := b.to - b.from; len(b.users)*(size-1) <= size {
		b.left.users = append(b.left.users, b.users...)
		b.right.users = append(b.right.users, b.users...)
		b.users = nil
	}
	b.left.settle()
	b.right.settle()
}

// emit writes the clauses of b and of what is below it, and returns literals of which one is true
// whenever a literal of order[from:to] is.
func (d *disjoint) emit(b *branch) []Lit {
	var lits []Lit
	if b.left == nil {
		lits = []Lit{d.order[b.from].Lit}
	} else {
		lits = append(d.emit(b.left), d.emit(b.right)...)
	}
	if len(b.users) > 0 {
		lits = []Lit{d.s.Any(lits...)}
	}
	for _, u := range b.users {
		d.s.Add(d.sel, d.order[u].Lit.Not(), lits[0].Not())
	}
	return lits
}
