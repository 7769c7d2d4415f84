package ordered_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"tackwright/fixtures/wcnf"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// goalOf puts an instance into s: the goal is the weight of soft clauses that are not satisfied.
func goalOf(s *sat.Solver, in *wcnf.Instance) ordered.Goal {
	lits := make([]sat.Lit, in.Vars+1)
	for v := range in.Vars {
		lits[v+1] = s.NewVar()
	}
	clause := func(ints []int) []sat.Lit {
		var out []sat.Lit
		for _, l := range ints {
			if l > 0 {
				out = append(out, lits[l])
			} else {
				out = append(out, lits[-l].Not())
			}
		}
		return out
	}
	for _, hard := range in.Hard {
		s.Add(s.Root(), clause(hard)...)
	}
	goal := ordered.Goal{Name: "falsified"}
	for _, soft := range in.Soft {
		wish := clause(soft.Lits)
		if len(wish) != 1 {
			sel := s.NewVar()
			s.Add(sel, wish...)
			wish = []sat.Lit{sel}
		}
		goal.Softs = append(goal.Softs, ordered.Soft{Lit: wish[0], Weight: soft.Weight, Stratum: -1})
	}
	return goal
}

// Optima as listed in ../shared/bench/README.md: instances of others, from LogicNG's test
// resources (Apache-2.0).
func TestOutsideInstancesReachTheirListedOptimum(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "shared", "bench", "wcnf")
	if _, err := os.Stat(folder); err != nil {
		t.Skip("the outside instances are not beside this clone")
	}
	for name, want := range map[string]int{
		"8.wcsp.log":              2,
		"54.wcsp.log":             37,
		"c1355_F176gat-1278gat_1": 13,
		"normalized-s3-3-3-1pb":   36,
		"frb10-6-1":               37027,
		"ram_k3_n5.ra1":           0,
	} {
		t.Run(name, func(t *testing.T) {
			file, err := os.Open(filepath.Join(folder, name+".wcnf"))
			if err != nil {
				t.Fatal(err)
			}
			defer file.Close()
			in, err := wcnf.Read(file)
			if err != nil {
				t.Fatal(err)
			}
			ctx, cancel := context.WithTimeout(ctx, 5*time.Minute)
			defer cancel()
			s := sat.New()
			begin := time.Now()
			_, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goalOf(s, in)}, ordered.Options{})
			if err != nil || !results[0].Proved || results[0].Value != want {
				t.Fatalf("%+v %v, want %d", results, err, want)
			}
			t.Logf("%v, %d variables, %d clauses", time.Since(begin).Round(time.Millisecond), s.Vars(), s.Clauses())
		})
	}
}
