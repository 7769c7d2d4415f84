package ordered_test

import (
	"context"
	"errors"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// riders seats up to n riders in fewer places, each place held by one of them; the goal is to seat
// them all. It returns the literals "rider i is seated".
func riders(s *sat.Solver, n, places int) (seated []sat.Lit, goal ordered.Goal) {
	at := make([][]sat.Lit, places)
	for range n {
		var some []sat.Lit
		for p := range places {
			l := s.NewVar()
			some = append(some, l)
			at[p] = append(at[p], l)
		}
		seated = append(seated, s.Or(some...))
	}
	for _, lits := range at {
		s.AtMostOne(s.Root(), lits...)
	}
	goal.Name = "seat"
	for i, l := range seated {
		goal.Softs = append(goal.Softs, ordered.Soft{Lit: l, Weight: 1, Stratum: i % 5})
	}
	return seated, goal
}

// 41 riders in 40 places are a pigeon hole, which no clause learner refutes (Haken 1985): the count
// must do it, and leave the search no more than to find the forty.
func TestACountSparesTheSearchAPigeonHole(t *testing.T) {
	s := sat.New()
	seated, goal := riders(s, 41, 40)
	goal.Counts = []ordered.Count{{Lits: seated, Least: 1}}
	_, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, ordered.Options{})
	if err != nil || results[0] != (ordered.Result{Name: "seat", Value: 1, Bound: 1, Proved: true}) {
		t.Fatalf("%+v %v", results, err)
	}
	if s.Work() > 100 {
		t.Errorf("it took %d ticks of work", s.Work())
	}
}

func TestAGoalWhoseBoundIsMetNeedsNoSearch(t *testing.T) {
	s := sat.New()
	seated, goal := riders(s, 41, 40)
	goal.Least = 1
	later := ordered.Goal{Name: "first rider on the ground"}
	later.Softs = []ordered.Soft{{Lit: seated[0].Not(), Weight: 1, Stratum: -1}}
	start := seated[1:]
	_, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal, later}, ordered.Options{Start: start})
	if err != nil || !results[1].Proved || results[0].Value != 1 || results[1].Value != 0 {
		t.Fatalf("%+v %v", results, err)
	}
	if s.Work() > 100 {
		t.Errorf("it took %d ticks of work", s.Work())
	}
}

func TestAFactThatASolutionContradictsIsAnError(t *testing.T) {
	for name, lie := range map[string]func(*ordered.Goal, []sat.Lit){
		"count": func(g *ordered.Goal, l []sat.Lit) { g.Counts = []ordered.Count{{Lits: l, Least: 2}} },
		"least": func(g *ordered.Goal, l []sat.Lit) { g.Least = 3 },
		"bound": func(g *ordered.Goal, l []sat.Lit) { g.Beside = beside(3) },
	} {
		s := sat.New()
		seated, goal := riders(s, 12, 11) // hard enough for the bound to be awaited
		lie(&goal, seated)
		start := ordered.Options{Start: seated[:11]}
		if _, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, start); err == nil {
			t.Errorf("%s: %+v, want an error", name, results)
		}
	}
}

func TestWhenTimeEndsTheBestSolutionAndItsValuesComeBack(t *testing.T) {
	before := runtime.NumGoroutine()
	s := sat.New()
	_, goal := riders(s, 30, 20) // ten on the ground: hopeless to prove without counting
	ended := make(chan bool, 100)
	ctx, cancel := context.WithCancel(ctx)
	goal.Beside = func(sat.Model, int, []ordered.Count) func(context.Context) ordered.Beside {
		time.AfterFunc(200*time.Millisecond, cancel) // asked once the goal is not easy, however slow the machine
		return func(ctx context.Context) ordered.Beside { <-ctx.Done(); ended <- true; return ordered.Beside{} }
	}
	later := ordered.Goal{Name: "later", Least: 2}
	for _, soft := range goal.Softs[:7] {
		later.Softs = append(later.Softs, ordered.Soft{Lit: soft.Lit.Not(), Weight: 3, Stratum: -1})
	}
	goals := []ordered.Goal{goal, later}

	var told [][2]int
	improved := 0
	model, results, err := ordered.Minimise(ctx, s, nil, goals, ordered.Options{
		Progress: func(_ string, best, bound int) { told = append(told, [2]int{best, bound}) },
		Improved: func(func(sat.Lit) bool) { improved++ },
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range results {
		if r.Proved || r.Value != cost(goals[i], model.Value) || r.Bound > r.Value {
			t.Errorf("%+v, model %d", r, cost(goals[i], model.Value))
		}
	}
	if results[0].Value != 10 || results[1].Bound != 2 {
		t.Errorf("%+v: want the ten found, and the bound of the goal not reached as given", results)
	}
	if improved == 0 || len(told) == 0 || told[len(told)-1] != [2]int{results[0].Value, results[0].Bound} {
		t.Errorf("told %v, improved %d times", told, improved)
	}
	if !slices.IsSortedFunc(told, func(a, b [2]int) int { return b[0] - a[0] }) ||
		!slices.IsSortedFunc(told, func(a, b [2]int) int { return a[1] - b[1] }) {
		t.Errorf("told %v: want best falling and bound rising", told)
	}
	<-ended
	for end := time.Now().Add(5 * time.Second); runtime.NumGoroutine() > before; time.Sleep(time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("%d goroutines, %d before", runtime.NumGoroutine(), before)
		}
	}
	if s.Solve(t.Context()) != sat.Sat {
		t.Error("the solver is of no use any more")
	}
}

func TestATimeThatIsOverBeforeAnySolutionIsAnError(t *testing.T) {
	ctx, cancel := context.WithCancel(ctx)
	cancel()
	s := sat.New()
	_, goal := riders(s, 3, 2)
	if _, _, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, ordered.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("%v, want %v", err, context.Canceled)
	}
}

func TestTheFirstSolutionSatisfiesWhatItCanOfStart(t *testing.T) {
	s := sat.New()
	seated, _ := riders(s, 6, 3)
	var first func(sat.Lit) bool
	_, _, err := ordered.Minimise(ctx, s, nil, nil, ordered.Options{
		Start:    []sat.Lit{seated[5], seated[0].Not(), seated[2], seated[3]},
		Improved: func(value func(sat.Lit) bool) { first = value },
	})
	if err != nil || !first(seated[5]) || first(seated[0]) || !first(seated[2]) || !first(seated[3]) {
		t.Errorf("%v: the start can be had whole", err)
	}
}

func TestTheSameCallGivesTheSameModel(t *testing.T) {
	run := func() sat.Model {
		r := rand.New(rand.NewPCG(7, 7))
		s := sat.New()
		seated, goal := riders(s, 7, 6)
		var wishes ordered.Goal
		for range 40 {
			i, j := r.IntN(len(seated)), r.IntN(len(seated))
			wishes.Softs = append(wishes.Softs, ordered.Soft{Lit: s.And(seated[i], seated[j].Not()), Weight: 1 + r.IntN(4), Stratum: r.IntN(3)})
		}
		wishes.Beside = beside(r.IntN(2))
		model, results, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal, wishes}, ordered.Options{})
		if err != nil || !results[1].Proved {
			t.Fatal(results, err)
		}
		return model
	}
	if !slices.Equal(run(), run()) {
		t.Error("two runs differ")
	}
}

// beside tells a bound.
func beside(least int) func(sat.Model, int, []ordered.Count) func(context.Context) ordered.Beside {
	return besideOf(ordered.Beside{Least: least})
}

func besideOf(b ordered.Beside) func(sat.Model, int, []ordered.Count) func(context.Context) ordered.Beside {
	return func(sat.Model, int, []ordered.Count) func(context.Context) ordered.Beside {
		return func(context.Context) ordered.Beside { return b }
	}
}

// Two groups of their own, each twelve pigeon holes: looking at a group alone is work that counts.
func TestEffortIsKeptAlsoWhereAGroupIsAskedAlone(t *testing.T) {
	defer ordered.Hard()()
	s := sat.New()
	goal := ordered.Goal{Name: "seat"}
	for day := range 2 {
		before := s.Mark(sat.Mark(1 + day))
		for range 12 {
			_, some := riders(s, 9, 8)
			for i := range some.Softs {
				some.Softs[i].Stratum = day
			}
			goal.Softs = append(goal.Softs, some.Softs...)
		}
		s.Mark(before)
	}
	const most = 20
	if _, _, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, ordered.Options{Effort: most}); err != nil {
		t.Fatal(err)
	}
	if s.Work() > 2*most {
		t.Errorf("%d ticks of work for %d", s.Work(), most)
	}
}

// A pigeon hole asked from above, in a copy: that is work that counts too.
func TestEffortIsKeptAlsoWhereLessIsAskedFor(t *testing.T) {
	defer ordered.Hard()()
	s := sat.New()
	_, goal := riders(s, 13, 12)
	const most = 60
	if _, _, err := ordered.Minimise(ctx, s, nil, []ordered.Goal{goal}, ordered.Options{Effort: most}); err != nil {
		t.Fatal(err)
	}
	if s.Work() > 2*most {
		t.Errorf("%d ticks of work for %d", s.Work(), most)
	}
}
