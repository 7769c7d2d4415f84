package main

import (
	"context"
	"os"
	"time"

	"tackwright/fixtures/wcnf"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// wcnf has solver/ordered alone solve the task's file, as one goal.
func (t task) wcnf(ctx context.Context) (outcome, error) {
	file, err := os.Open(t.File)
	if err != nil {
		return outcome{}, err
	}
	defer file.Close()
	in, err := wcnf.Read(file)
	if err != nil {
		return outcome{}, err
	}
	ctx, cancel := context.WithTimeout(ctx, t.Limit)
	defer cancel()
	start := time.Now()
	s, softs := clauses(in)
	o := outcome{Task: t, Rides: len(in.Soft), Horses: in.Vars, Vars: s.Vars(), Clauses: s.Clauses()}
	_, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{{Name: "cost", Softs: softs}}, ordered.Options{Last: true})
	o.Seconds = time.Since(start).Seconds()
	if err != nil {
		return outcome{}, err
	}
	for _, r := range results {
		o.Goals = append(o.Goals, goal(r))
	}
	return o, nil
}

// clauses of an instance: variable v is the v-th made, and a clause that costs has a literal of its
// own, unless it is one.
func clauses(in *wcnf.Instance) (*sat.Solver, []ordered.Soft) {
	s := sat.New()
	vars := make([]sat.Lit, in.Vars+1)
	for v := 1; v <= in.Vars; v++ {
		vars[v] = s.NewVar()
	}
	lits := func(ns []int) []sat.Lit {
		var out []sat.Lit
		for _, n := range ns {
			if n < 0 {
				out = append(out, vars[-n].Not())
			} else {
				out = append(out, vars[n])
			}
		}
		return out
	}
	for _, c := range in.Hard {
		s.Add(s.Root(), lits(c)...)
	}
	var softs []ordered.Soft
	for _, c := range in.Soft {
		wish := lits(c.Lits)
		if len(wish) != 1 {
			kept := s.NewVar()
			s.Add(s.Root(), append(wish, kept.Not())...)
			wish = []sat.Lit{kept}
		}
		softs = append(softs, ordered.Soft{Lit: wish[0], Weight: c.Weight, Stratum: -1})
	}
	return s, softs
}
