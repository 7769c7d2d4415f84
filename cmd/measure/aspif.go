package main

import (
	"fmt"
	"io"

	"tackwright/solver"
)

// writeASPIF writes the problem in the intermediate form of answer set solvers (Kaminski, Schaub &
// Wanko 2017, A Tutorial on Hybrid Answer Set Solving with clingo, appendix): each variable is a free choice, each
// clause a constraint, each sum a rule with weights, each goal a minimisation, the first of the highest
// priority.
func writeASPIF(to io.Writer, p *solver.Problem) {
	derived := map[int]bool{} // true exactly where the sum is beyond its limit
	for _, s := range p.Sums {
		derived[s.Unless] = true
	}
	fmt.Fprintln(to, "asp 1 0 0")
	fmt.Fprintf(to, "1 1 %d", p.Vars-len(derived))
	for v := 1; v <= p.Vars; v++ {
		if !derived[v] {
			fmt.Fprintf(to, " %d", v)
		}
	}
	fmt.Fprintln(to, " 0 0")
	for _, c := range p.Clauses {
		fmt.Fprintf(to, "1 0 0 0 %d", len(c))
		for _, l := range c {
			fmt.Fprintf(to, " %d", -l)
		}
		fmt.Fprintln(to)
	}
	for _, s := range p.Sums {
		s = coprime(s)
		fmt.Fprintf(to, "1 0 1 %d 1 %d %d", s.Unless, max(0, s.Most+1), len(s.Terms))
		for _, t := range s.Terms {
			fmt.Fprintf(to, " %d %d", t.Lit, t.Weight)
		}
		fmt.Fprintln(to)
	}
	for i, g := range p.Goals {
		fmt.Fprintf(to, "2 %d %d", len(p.Goals)-i, len(g.Wishes))
		for _, w := range g.Wishes {
			fmt.Fprintf(to, " %d %d", -w.Lit, w.Weight)
		}
		fmt.Fprintln(to)
	}
	fmt.Fprintln(to, 0)
}
