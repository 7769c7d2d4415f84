package solver

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/fixtures/smptsp"
	drawn "tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver/bound"
)

// shifts are tasks of a day, which one worker may all do as far as time allows.
func shifts(r *rand.Rand) *smptsp.Instance {
	n := 1 + r.IntN(7)
	in := &smptsp.Instance{Name: "shifts", Workers: everyone(1, n)}
	for range n {
		start := 480 + 10*r.IntN(30)
		in.Tasks = append(in.Tasks, smptsp.Task{Start: start, End: start + 10 + 10*r.IntN(10)})
	}
	return in
}

// through are the sets of lessons of a day that steps go through, and the work of each.
func through(stretches []stretch, steps []bound.Step) []string {
	var ways []string
	var back func(n int, lessons []string, work int64)
	back = func(n int, lessons []string, work int64) {
		if steps[n].Stretch != bound.Pause {
			lessons = append([]string{lessonsOf(stretches[steps[n].Stretch])}, lessons...)
		}
		if n == 0 {
			slices.Sort(lessons)
			ways = append(ways, fmt.Sprint(lessons, work))
		}
		for _, before := range steps[n].After {
			back(before, lessons, work)
		}
	}
	for n, s := range steps {
		if s.Last {
			back(n, nil, s.Work)
		}
	}
	slices.Sort(ways)
	return ways
}

// listed are sets told in the same words, of a line without their work.
func listed(stretches []stretch, sets []set, line bool) []string {
	var ways []string
	for _, s := range sets {
		var lessons []string
		for _, i := range s.stretches {
			lessons = append(lessons, lessonsOf(stretches[i]))
		}
		slices.Sort(lessons)
		if line {
			s.work = 0
		}
		ways = append(ways, fmt.Sprint(lessons, s.work))
	}
	slices.Sort(ways)
	return ways
}

func TestALineHasTheSetsOfPlacesThatAHorseCanWork(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 1))
		c := shifts(r).Centre()
		c.House.Same = model.Minute(10 * r.IntN(3)) // each lesson has an arena of its own
		c.House.Other, c.House.Move = c.House.Same, c.House.Same
		e := encode(c.Week(smptsp.Date, 1, model.Instant{}))
		h := c.Horses[0]
		line, steps, ok := e.line(h, e.of[h])
		if !ok {
			t.Fatalf("seed %d: there is nothing but time to limit it", seed)
		}
		stretches, sets, _ := e.sets(h, e.of[h], tooMany)
		if diff := cmp.Diff(listed(stretches, sets, true), through(line, steps)); diff != "" {
			t.Errorf("seed %d: sets - line +\n%s", seed, diff)
		}
	}
}

// Of a day with limits, too: its steps go through each set once, and are fewer than the sets have stretches.
func TestStepsGoThroughEachSetOfADayOnce(t *testing.T) {
	size, err := drawn.Named("stress")
	if err != nil {
		t.Fatal(err)
	}
	e := encode(drawn.Week(size, 1, false))
	all, few := 0, 0
	for _, h := range e.horses() {
		for day := range byDate(e.of[h]) {
			stretches, sets, _ := e.sets(h, day, tooMany)
			told := steps(sets)
			if diff := cmp.Diff(listed(stretches, sets, false), through(stretches, told)); diff != "" {
				t.Fatalf("%s on %s: sets - steps +\n%s", h.Name, day[0].meeting.Date, diff)
			}
			for _, s := range sets {
				all += len(s.stretches)
			}
			few += len(told)
		}
	}
	if 2*few > all {
		t.Errorf("%d stretches of sets are told in %d steps", all, few)
	}
}

func lessonsOf(s stretch) string {
	var names []string
	for _, p := range s.places {
		names = append(names, p.meeting.Lesson.Name)
	}
	return fmt.Sprint(names)
}

func TestADayThatMoreThanTimeLimitsIsNoLine(t *testing.T) {
	for why, change := range map[string]func(*model.Centre){
		"minutes of a day":                       func(c *model.Centre) { c.House.Limits.DayMinutes = 60 },
		"lessons of a day":                       func(c *model.Centre) { c.House.Limits.DaySessions = 9 },
		"minutes without a rest":                 func(c *model.Centre) { c.House.Limits.RunMinutes = 90 },
		"lessons without a rest":                 func(c *model.Centre) { c.House.Limits.RunSessions = 9 },
		"minutes of a week":                      func(c *model.Centre) { c.House.Limits.WeekMinutes = 300 },
		"other tack takes longer than the break": func(c *model.Centre) { c.House.Other, c.House.Move = 30, 30 },
		"another horse's tack does":              func(c *model.Centre) { c.House.Move = 30 },
		"a work of its own": func(c *model.Centre) {
			c.Works = []*model.Work{{Kind: "schooling", Horse: c.Horses[0], On: smptsp.Date, Start: 700, End: 710}}
		},
	} {
		in := &smptsp.Instance{Name: "two", Tasks: []smptsp.Task{{Start: 500, End: 520}, {Start: 540, End: 560}}, Workers: everyone(1, 2)}
		c := in.Centre()
		line := func() bool {
			e := encode(c.Week(smptsp.Date, 1, model.Instant{}))
			_, _, ok := e.line(c.Horses[0], e.of[c.Horses[0]])
			return ok
		}
		before := line()
		if change(c); !before || line() {
			t.Errorf("%s: a line before %v, and after %v", why, before, line())
		}
	}
}
