package solver

import (
	"context"
	"runtime"
	"testing"

	drawn "tackwright/fixtures/weeks"
)

// Where the proof completes the same week gives the same plan, to the tag, with a
// bound worked out beside the search too, whenever that is ready: on one
// processor while it searches, as the program does (see package sat).
func TestTheSameWeekTwiceGivesTheSamePlan(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	size, err := drawn.Named("median")
	if err != nil {
		t.Fatal(err)
	}
	for _, seed := range []uint64{1, 4} {
		w := drawn.Week(size, seed, false)
		first, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		second, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for i, turn := range first.Turns {
			if !turn.Equal(second.Turns[i]) {
				t.Fatalf("week %d: %s has %+v and then %+v", seed, w.Rides[i], turn, second.Turns[i])
			}
		}
	}
}
