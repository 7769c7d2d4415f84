package solver

import (
	"context"
	"errors"
	"io/fs"
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
		in, err := smptsp.Read(file)
		if errors.Is(err, fs.ErrNotExist) {
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
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
