package solver

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"tackwright/fixtures/smptsp"
	"tackwright/model"
)

// never is a pair that cannot be.
const never = -1

// wishesFor is the proved weight of wishes not met, all riding: ride i on horse j
// costs cost[i][j], as dislikes of hers.
func wishesFor(t *testing.T, in *smptsp.Instance, cost [][]int, capacity ...int) int {
	t.Helper()
	in.Workers = make([]smptsp.Worker, len(cost[0]))
	for i, row := range cost {
		for j, c := range row {
			if c != never {
				in.Workers[j].Tasks = append(in.Workers[j].Tasks, i)
			}
		}
	}
	c := in.Centre()
	for j, minutes := range capacity {
		c.Horses[j].Limits.WeekMinutes = minutes
	}
	for i, row := range cost {
		for j, left := range row {
			for _, weight := range []int{4, 2, 1} {
				for ; left >= weight; left -= weight {
					c.Riders[i].Likings = append(c.Riders[i].Likings, model.Liking{Horse: c.Horses[j], Dislike: true, Weight: weight})
				}
			}
		}
	}
	c.House.Goals = []model.GoalKind{model.GoalWishes}
	plan, err := Plan(context.Background(), c.Week(smptsp.Date, 1, model.Instant{}), Options{})
	if err != nil {
		t.Fatal(err)
	}
	goals := plan.Proof.Goals
	wishes := goals[slices.IndexFunc(goals, func(g model.GoalResult) bool { return g.Name == "wishes" })]
	if goals[0].Value != 0 || !wishes.Proved {
		t.Fatalf("%+v", goals)
	}
	return wishes.Value
}

// at once are so many rides of one slot.
func atOnce(rides int) *smptsp.Instance {
	return &smptsp.Instance{Name: "one slot", Tasks: slices.Repeat([]smptsp.Task{{Start: 600, End: 645}}, rides)}
}

// One slot is the linear assignment problem. Tables and optima of the books from
// memory: nobody here could open them.
func TestTheWishesOfOneSlotAreALinearAssignment(t *testing.T) {
	for _, x := range []struct {
		source  string
		cost    [][]int
		optimum int
	}{
		{"Winston, Operations Research: Applications and Algorithms, the assignment problem of Machineco",
			[][]int{{14, 5, 8, 7}, {2, 12, 6, 5}, {7, 8, 3, 9}, {2, 4, 6, 10}}, 15},
		{"Taha, Operations Research: An Introduction, Joe Klyne's three children",
			[][]int{{15, 10, 9}, {9, 15, 10}, {10, 12, 8}}, 27},
		{"Taha, as before, with four children",
			[][]int{{1, 4, 6, 3}, {9, 7, 10, 9}, {4, 5, 11, 7}, {8, 7, 8, 5}}, 21},
		{"Hillier & Lieberman, Introduction to Operations Research, the Job Shop Co.: three machines, four locations, one barred",
			[][]int{{13, 16, 12, 11}, {15, never, 13, 20}, {5, 7, 10, 6}}, 29},
	} {
		if got := wishesFor(t, atOnce(len(x.cost)), x.cost); got != x.optimum {
			t.Errorf("%s: %d, and the best is %d", x.source, got, x.optimum)
		}
	}
}

// Of costs i x j the least sum pairs the largest with the smallest (Hardy,
// Littlewood & Pólya, Inequalities, theorem 368), n(n+1)(n+2)/6 in all. Machol &
// Wien 1976 (Oper. Res. 24:190-192) call the table hard. Both from memory.
func TestTheTableOfProductsIsSolvedByTheRearrangementInequality(t *testing.T) {
	for n := 1; n <= 7; n++ {
		cost := make([][]int, n)
		for i := range n {
			for j := range n {
				cost[i] = append(cost[i], (i+1)*(j+1))
			}
		}
		if got, want := wishesFor(t, atOnce(n), cost), n*(n+1)*(n+2)/6; got != want {
			t.Errorf("%d rides: %d, and the best is %d", n, got, want)
		}
	}
}

// Rides of different length and horses with so many minutes a week are a
// generalised assignment in which what a ride takes is the same on every horse.
// Here it is a multiple knapsack: two horses have little time, and a ride that is
// on neither goes to a third at the price of its profit (Martello & Toth 1990,
// Knapsack Problems, example 6.1 with optimum 452: from memory).
func TestTheMinutesOfAWeekAreKnapsacks(t *testing.T) {
	profits := []int{78, 35, 89, 36, 94, 75, 74, 79, 80, 16}
	minutes := []int{18, 9, 23, 20, 59, 61, 70, 75, 76, 30}
	in := &smptsp.Instance{Name: "knapsacks"}
	var cost [][]int
	start, all := 0, 0
	for i, p := range profits {
		in.Tasks = append(in.Tasks, smptsp.Task{Start: start, End: start + minutes[i]})
		start += minutes[i]
		all += p
		cost = append(cost, []int{0, 0, p})
	}
	if got, want := wishesFor(t, in, cost, 103, 156), all-452; got != want {
		t.Errorf("%d, and the best is %d", got, want)
	}
}

// The same with a table of costs for each horse: by trying all 3^6.
func TestMinutesAndWishesTogetherAreAGeneralisedAssignment(t *testing.T) {
	minutes := []int{20, 25, 30, 35, 40, 45}
	capacity := []int{70, 65, 60}
	for shift := range 10 {
		in := &smptsp.Instance{Name: fmt.Sprint("shift ", shift)}
		var cost [][]int
		for i, m := range minutes {
			in.Tasks = append(in.Tasks, smptsp.Task{Start: 60 * i, End: 60*i + m})
			var row []int
			for j := range capacity {
				row = append(row, (7*i+5*j+3*i*j+shift)%11)
			}
			cost = append(cost, row)
		}
		best := -1
		for code := range 729 {
			sum, used := 0, make([]int, 3)
			for i := range minutes {
				j := code % 3
				code /= 3
				sum += cost[i][j]
				used[j] += minutes[i]
			}
			if used[0] <= capacity[0] && used[1] <= capacity[1] && used[2] <= capacity[2] && (best < 0 || sum < best) {
				best = sum
			}
		}
		if best < 0 {
			t.Fatal("not all can ride")
		}
		if got := wishesFor(t, in, cost, capacity...); got != best {
			t.Errorf("shift %d: %d, and the best is %d", shift, got, best)
		}
	}
}
