package main

import (
	"fmt"
	"io"

	"tackwright/solver"
)

// linear is a sum of literals as a sum of variables: a false v counts 1 - v.
type linear struct {
	terms    []solver.Wish // of variables; weights of any sign
	constant int
}

func (l *linear) add(lit, weight int) {
	if lit < 0 {
		l.constant += weight
		lit, weight = -lit, -weight
	}
	l.terms = append(l.terms, solver.Wish{Lit: lit, Weight: weight})
}

// write writes the terms, each variable once, a few to a line as readers of the form ask.
func (l *linear) write(to io.Writer) {
	weight := map[int]int{}
	for _, t := range l.terms {
		weight[t.Lit] += t.Weight
	}
	n := 0
	for _, t := range l.terms {
		if w := weight[t.Lit]; w != 0 {
			if n%12 == 11 {
				fmt.Fprintln(to)
			}
			fmt.Fprintf(to, " %+d x%d", w, t.Lit)
			n++
		}
		weight[t.Lit] = 0
	}
	if n == 0 {
		fmt.Fprint(to, " 0 x1")
	}
}

// cost of a goal.
func cost(g solver.ProblemGoal) *linear {
	l := &linear{}
	for _, w := range g.Wishes {
		l.add(-w.Lit, w.Weight)
	}
	return l
}

// writeLP writes goal i of the problem as a linear program in whole numbers. The goals before it are
// rows whose limits are written as "@0", "@1" ...: they are known once those are solved.
func writeLP(to io.Writer, p *solver.Problem, i int) {
	c := cost(p.Goals[i])
	fmt.Fprintf(to, "\\ constant %d\nMinimize\nobj:", c.constant)
	c.write(to)
	fmt.Fprintln(to, "\nSubject To")
	row := 0
	limit := func(l *linear, sense string, bound string) {
		row++
		fmt.Fprintf(to, "c%d:", row)
		l.write(to)
		fmt.Fprintf(to, " %s %s\n", sense, bound)
	}
	for j, g := range p.Goals[:i] {
		l := cost(g)
		fmt.Fprintf(to, "\\ @%d constant %d\n", j, l.constant)
		limit(l, "<=", fmt.Sprintf("@%d", j))
	}
	for _, clause := range p.Clauses {
		l := &linear{}
		for _, lit := range clause {
			l.add(lit, 1)
		}
		limit(l, ">=", fmt.Sprint(1-l.constant))
	}
	for _, s := range p.Sums {
		s = coprime(s)
		l := &linear{}
		all := 0
		for _, t := range s.Terms {
			l.add(t.Lit, t.Weight)
			all += t.Weight
		}
		l.add(s.Unless, min(0, s.Most-all))
		limit(l, "<=", fmt.Sprint(s.Most-l.constant))
	}
	fmt.Fprintln(to, "Binaries")
	for v := 1; v <= p.Vars; v++ {
		fmt.Fprintf(to, " x%d\n", v)
	}
	fmt.Fprintln(to, "End")
}
