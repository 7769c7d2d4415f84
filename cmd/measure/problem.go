package main

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"

	"tackwright/solver"
)

// writeProblem writes the task's week to files, for peers. With t.Write "-" it only counts.
func (t task) writeProblem() (outcome, error) {
	w, _, err := t.week()
	if err != nil {
		return outcome{}, err
	}
	p := solver.Export(w)
	o := outcome{Task: t, Vars: p.Vars, Clauses: len(p.Clauses) + len(p.Sums)}
	for _, g := range p.Goals {
		o.Goals = append(o.Goals, goal{Name: g.Name})
	}
	if t.Write == "-" {
		return o, nil
	}
	return o, t.write(p)
}

// write writes a problem to files beside each other: t.Write.aspif, .lp (the rules, with the goals to
// come) and .words (which variable says what).
func (t task) write(p *solver.Problem) error {
	write := func(ending string, body func(io.Writer)) error { return writeFile(t.Write+ending, body) }
	err := cmp.Or(
		write(".aspif", func(to io.Writer) { writeASPIF(to, p) }),
		write(".words", func(to io.Writer) { writeWords(to, p) }))
	for i := range p.Goals {
		err = cmp.Or(err, write(fmt.Sprintf(".goal%d.lp", i), func(to io.Writer) { writeLP(to, p, i) }))
	}
	return err
}

func writeWords(to io.Writer, p *solver.Problem) {
	for _, v := range slices.Sorted(maps.Keys(p.Words)) {
		fmt.Fprintln(to, v, p.Words[v])
	}
}

// coprime divides the weights of a sum and its limit by what the weights share.
func coprime(s solver.Sum) solver.Sum {
	shared := 0
	for _, t := range s.Terms {
		for a := t.Weight; a != 0; {
			shared, a = a, shared%a
		}
	}
	if shared <= 1 {
		return s
	}
	out := solver.Sum{Unless: s.Unless, Most: s.Most / shared}
	if s.Most < 0 && s.Most%shared != 0 {
		out.Most-- // round down
	}
	for _, t := range s.Terms {
		out.Terms = append(out.Terms, solver.Wish{Lit: t.Lit, Weight: t.Weight / shared})
	}
	return out
}

func writeFile(path string, body func(io.Writer)) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	defer file.Close()
	b := bufio.NewWriter(file)
	body(b)
	return b.Flush()
}
