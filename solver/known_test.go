package solver

import (
	"context"
	"fmt"
	"math/bits"
	"math/rand/v2"
	"testing"

	"tackwright/fixtures/smptsp"
)

// onTheGround is the proved number of tasks that no worker does.
func onTheGround(t *testing.T, in *smptsp.Instance) int {
	t.Helper()
	plan, err := Plan(context.Background(), in.Week(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !plan.Proof.Goals[0].Proved {
		t.Fatalf("not proved: %+v", plan.Proof.Goals[0])
	}
	return plan.Proof.Goals[0].Value
}

// everyone makes workers who can do every task.
func everyone(workers, tasks int) []smptsp.Worker {
	all := make([]int, tasks)
	for i := range all {
		all[i] = i
	}
	ws := make([]smptsp.Worker, workers)
	for j := range ws {
		ws[j].Tasks = all
	}
	return ws
}

// The pigeon-hole principle (Dirichlet 1834; any textbook).
func TestRidesThatAllOverlapNeedAsManyHorsesAsRides(t *testing.T) {
	for horses := range 12 {
		in := &smptsp.Instance{Name: "all at once", Workers: everyone(horses, 11)}
		for i := range 11 {
			in.Tasks = append(in.Tasks, smptsp.Task{Start: i, End: 20 + i})
		}
		if got, want := onTheGround(t, in), max(0, 11-horses); got != want {
			t.Errorf("%d horses: %d of 11 on the ground, and %d must be", horses, got, want)
		}
	}
}

// An interval graph is coloured with as many colours as its largest clique
// (Gilmore & Hoffman 1964, Canad. J. Math. 16:539-548).
func TestRidesNeedAsManyHorsesAsTheirLargestOverlap(t *testing.T) {
	for seed := range uint64(20) {
		rng := rand.New(rand.NewPCG(seed, 1))
		in := &smptsp.Instance{Name: fmt.Sprint("intervals ", seed)}
		for range 5 + rng.IntN(40) {
			start := rng.IntN(600)
			in.Tasks = append(in.Tasks, smptsp.Task{Start: start, End: start + 1 + rng.IntN(120)})
		}
		most := in.LargestOverlap()
		in.Workers = everyone(most, len(in.Tasks))
		if got := onTheGround(t, in); got != 0 {
			t.Errorf("seed %d: %d horses, and %d on the ground", seed, most, got)
		}
		in.Workers = in.Workers[1:]
		if got := onTheGround(t, in); got < 1 {
			t.Errorf("seed %d: one horse too few, and all ride", seed)
		}
	}
}

// Hall's theorem in the form of Ore 1955 (Duke Math. J. 22:625-639): at one time,
// the least left over is the largest of |S| - |N(S)| over sets S of rides.
func TestOneTimeSlotIsDecidedByHallsCondition(t *testing.T) {
	for seed := range uint64(60) {
		rng := rand.New(rand.NewPCG(seed, 2))
		rides, horses := 1+rng.IntN(9), 1+rng.IntN(9)
		in := &smptsp.Instance{Name: fmt.Sprint("slot ", seed), Tasks: make([]smptsp.Task, rides), Workers: make([]smptsp.Worker, horses)}
		carriedBy := make([]int, rides) // horses as bits
		for i := range in.Tasks {
			in.Tasks[i] = smptsp.Task{Start: 600, End: 645}
			for j := range in.Workers {
				if rng.IntN(3) == 0 {
					in.Workers[j].Tasks = append(in.Workers[j].Tasks, i)
					carriedBy[i] |= 1 << j
				}
			}
		}
		want := 0
		for set := range 1 << rides {
			neighbours := 0
			for i := range rides {
				if set>>i&1 == 1 {
					neighbours |= carriedBy[i]
				}
			}
			want = max(want, bits.OnesCount(uint(set))-bits.OnesCount(uint(neighbours)))
		}
		if got := onTheGround(t, in); got != want {
			t.Errorf("seed %d: %d on the ground, and Hall says %d", seed, got, want)
		}
		if got := Short(in.Week()); got != want {
			t.Errorf("seed %d: arithmetic knows of %d on the ground, and Hall says %d", seed, got, want)
		}
	}
}
