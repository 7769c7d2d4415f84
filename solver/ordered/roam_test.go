package ordered_test

import (
	"context"
	"math/rand/v2"
	"runtime"
	"testing"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// Forty tasks of three sizes go to eight workers with hardly room for all: with the same effort, a search
// that knows the workers comes nearer to what the tasks ask for.
func TestWhoKnowsRegionsFindsBetterSolutionsSooner(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1)) // or the effort depends on what else runs
	least := func(known bool) int {
		r := rand.New(rand.NewPCG(7, 7))
		s := sat.New()
		goal := ordered.Goal{Name: "asked for"}
		const tasks, workers = 40, 8
		does := make([][]sat.Lit, workers)
		terms := make([][]sat.Term, workers)
		total := 0
		for range tasks {
			var by []sat.Lit
			size := 2 + r.IntN(3)
			total += size
			for w := range workers {
				l := s.NewVar()
				by = append(by, l)
				does[w] = append(does[w], l)
				terms[w] = append(terms[w], sat.Term{Lit: l, Weight: size})
				goal.Softs = append(goal.Softs, ordered.Soft{Lit: l.Not(), Weight: 1 + r.IntN(9), Stratum: -1})
			}
			s.Add(s.Root(), by...)
			s.AtMostOne(s.Root(), by...)
		}
		for w := range workers {
			s.WeightedAtMost(s.Root(), total/workers+1, terms[w]...)
		}
		opts := ordered.Options{Effort: 400}
		if known {
			opts.Partitions = [][][]sat.Lit{does}
		}
		_, results, err := ordered.Minimise(context.Background(), s, nil, []ordered.Goal{goal}, opts)
		if err != nil {
			t.Fatal(err)
		}
		return results[0].Value
	}
	if with, without := least(true), least(false); with >= without {
		t.Errorf("%d with regions, %d without", with, without)
	}
}
