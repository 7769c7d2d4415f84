package solver

import (
	"context"
	"math/rand/v2"
	"path/filepath"
	"testing"

	"tackwright/fixtures/smptsp"
)

// smptspFiles are the instances of Krishnamoorthy, Ernst & Baatar 2012, Eur. J.
// Oper. Res. 219:34-48, where they are present.
func smptspFiles(t *testing.T) []string {
	t.Helper()
	files, _ := filepath.Glob("../../shared/bench/smptsp/*.dat")
	if len(files) == 0 {
		t.Skip("../shared/bench is not here")
	}
	return files
}

func TestEveryTaskOfAStaffingInstanceIsSeatedWithAllItsWorkers(t *testing.T) {
	for _, file := range smptspFiles(t) {
		in := read(t, file)
		t.Run(in.Name, func(t *testing.T) {
			plan, err := Plan(context.Background(), in.Week(), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if g := plan.Proof.Goals[0]; g.Value != 0 || !g.Proved {
				t.Errorf("%+v", g)
			}
		})
	}
}

// In the first six instances the optimum is the largest overlap, so that no
// search is needed to refuse one worker less, whichever are left.
func TestOneWorkerTooFewIsRefusedByArithmetic(t *testing.T) {
	for _, file := range smptspFiles(t) {
		in := read(t, file)
		if in.LargestOverlap() != optima[in.Name] {
			continue
		}
		t.Run(in.Name, func(t *testing.T) {
			order := rand.New(rand.NewPCG(1, uint64(len(in.Workers)))).Perm(len(in.Workers))
			few := in.Without(order[optima[in.Name]-1:]...)
			if short := Short(few.Week()); short < 1 {
				t.Errorf("%d workers: %d tasks short", len(few.Workers), short)
			}
		})
	}
}

func read(t *testing.T, file string) *smptsp.Instance {
	t.Helper()
	in, err := smptsp.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// optima of the first six, as ../shared/bench/README.md gives them.
var optima = map[string]int{
	"data_1_23_40_66": 20, "data_2_24_40_33": 20, "data_9_49_104_33": 40, "data_21_93_175_33": 80,
	"data_35_171_280_33": 140, "data_52_205_480_66": 160,
}
