package ordered

import (
	"cmp"
	"slices"

	"tackwright/solver/sat"
)

// sum is what priced literals are known to cost together.
type sum struct {
	base, grain int
	groups      [][]Priced // the dearest first
}

func sumOf(b Beside) *sum {
	if b.Grain == 0 {
		return nil
	}
	s := &sum{base: b.Base, grain: b.Grain}
	for _, p := range b.Priced {
		for len(s.groups) <= p.Group {
			s.groups = append(s.groups, nil)
		}
		s.groups[p.Group] = append(s.groups[p.Group], p)
	}
	for _, g := range s.groups {
		slices.SortStableFunc(g, func(p, q Priced) int { return cmp.Compare(q.More, p.More) })
	}
	return s
}

// below writes under a selector that the value is below a target, as far as the sum tells. It counts in units that are
// coarser than the grain; what is left of one counts for nothing.
func (s *sum) below(q *query, sel sat.Lit, target int) {
	const fine = 32 // units that may be added in all
	if s == nil {
		return
	}
	room := (target-1)*s.grain - s.base
	if room < 0 {
		q.s.Add(sel)
		return
	}
	unit := room/fine + 1
	var parts []*sat.Counter
	for _, group := range s.groups {
		if outs := adds(q, sel, group, unit, room/unit); len(outs) > 0 {
			parts = append(parts, q.s.Unary(outs...))
		}
	}
	q.s.Add(sel, q.s.Sum(sel, parts...).AtLeast(room/unit+1).Not())
}

// adds are literals of which the k-th says, under a selector, that a group adds k units or more. What adds more than most
// is forbidden.
func adds(q *query, sel sat.Lit, group []Priced, unit, most int) []sat.Lit {
	var outs []sat.Lit // the last first
	above := q.s.Root().Not()
	i := 0
	for ; i < len(group) && group[i].More/unit > most; i++ {
		q.s.Add(sel, group[i].not()...)
	}
	for k := most; k > 0; k-- {
		at := i
		for i < len(group) && group[i].More/unit == k {
			i++
		}
		if i > at {
			one := q.s.NewVar()
			q.s.Add(sel, above.Not(), one)
			for _, p := range group[at:i] {
				q.s.Add(sel, append(p.not(), one)...)
			}
			above = one
		}
		if above != q.s.Root().Not() {
			outs = append(outs, above)
		}
	}
	slices.Reverse(outs)
	return outs
}
