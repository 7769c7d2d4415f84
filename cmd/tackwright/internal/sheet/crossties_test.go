package sheet

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"tackwright/model"
)

// everyWay calls see with each way to begin the tackings in time, no more than
// bays at once: minute by minute, with no thought of order.
func everyWay(jobs []tacking, bays int, length model.Minute, see func(begin []model.Minute)) {
	begin := make([]model.Minute, len(jobs))
	var place func(i int)
	place = func(i int) {
		if i == len(jobs) {
			see(begin)
			return
		}
		for m := jobs[i].free; m+length <= jobs[i].due; m++ {
			begin[i] = m
			if mostAtOnce(begin[:i+1], length) <= bays {
				place(i + 1)
			}
		}
	}
	place(0)
}

func mostAtOnce(begin []model.Minute, length model.Minute) int {
	most := 0
	for _, m := range begin {
		n := 0
		for _, x := range begin {
			if x <= m && m < x+length {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// lateFirst are the times, the latest first.
func lateFirst(begin []model.Minute) []model.Minute {
	sorted := slices.Sorted(slices.Values(begin))
	slices.Reverse(sorted)
	return sorted
}

func TestTackUpsBeginAsLateAsBruteForceCanHaveThem(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 26))
	possible, impossible := 0, 0
	for range 4000 {
		bays, length := 1+r.IntN(3), model.Minute(1+r.IntN(4))
		jobs := make([]tacking, 1+r.IntN(5))
		for i := range jobs {
			jobs[i].due = model.Minute(1 + r.IntN(10))
			if r.IntN(2) == 0 {
				jobs[i].free = model.Minute(r.IntN(int(jobs[i].due)))
			}
		}
		var best []model.Minute // place by place, over every way
		everyWay(jobs, bays, length, func(begin []model.Minute) {
			late := lateFirst(begin)
			if best == nil {
				best = late
			}
			for i := range best {
				best[i] = max(best[i], late[i])
			}
		})
		got, ok := latest(jobs, bays, length)
		if ok != (best != nil) {
			t.Fatalf("%v in %d bays of %d min: possible %v, brute force says %v", jobs, bays, length, ok, best != nil)
		}
		if !ok {
			impossible++
			checkCrowd(t, jobs, bays, length)
			continue
		}
		possible++
		for i, m := range got {
			if m < jobs[i].free || m+length > jobs[i].due || mostAtOnce(got, length) > bays {
				t.Fatalf("%v in %d bays of %d min: %v is not in time", jobs, bays, length, got)
			}
		}
		if late := lateFirst(got); !slices.Equal(late, best) {
			t.Fatalf("%v in %d bays of %d min: begins %v, and %v can be had", jobs, bays, length, late, best)
		}
	}
	if possible < 1000 || impossible < 1000 {
		t.Errorf("%d cases possible and %d not: too few of one to tell", possible, impossible)
	}
}

// checkCrowd asks brute force whether the crowd is one, and whether it is none
// without any of its members.
func checkCrowd(t *testing.T, jobs []tacking, bays int, length model.Minute) {
	t.Helper()
	few := crowd(jobs, bays, length)
	can := func(numbers []int) (yes bool) {
		everyWay(only(jobs, numbers), bays, length, func([]model.Minute) { yes = true })
		return yes
	}
	if can(few) {
		t.Fatalf("%v in %d bays of %d min: %v can be in time", jobs, bays, length, few)
	}
	for _, j := range few {
		if !can(slices.DeleteFunc(slices.Clone(few), func(x int) bool { return x == j })) {
			t.Fatalf("%v in %d bays of %d min: %v are too many without %d too", jobs, bays, length, few, j)
		}
	}
}

func TestAPlaceStaysEmptyForAHorseThatComesLate(t *testing.T) {
	// One bay of 10 min. The second horse is back at 32 and due at 45; straight
	// backwards the first would take 40 to 50 and leave it 30 to 40.
	begin, ok := latest([]tacking{{0, 50}, {32, 45}}, 1, 10)
	if want := []model.Minute{25, 35}; !ok || !slices.Equal(begin, want) {
		t.Errorf("got %v, %v, want %v", begin, ok, want)
	}
}

func TestTheBaysOfABusyDayAreDealtOutAtOnce(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	jobs := make([]tacking, 200)
	for i := range jobs {
		jobs[i].free = model.Minute(r.IntN(900))
		jobs[i].due = jobs[i].free + 20 + model.Minute(r.IntN(60))
	}
	start := time.Now()
	crowd(jobs, 3, 10)
	if took := time.Since(start); took > 2*time.Second {
		t.Errorf("200 tack-ups took %v", took)
	}
}
