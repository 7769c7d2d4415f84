package solver

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/fixtures/smptsp"
	"tackwright/model"
)

// shifts are tasks of a day, which one worker may all do as far as time allows.
func shifts(r *rand.Rand) *smptsp.Instance {
	in := &smptsp.Instance{Name: "shifts", Workers: []smptsp.Worker{{}}}
	for i := range 1 + r.IntN(7) {
		start := 480 + 10*r.IntN(30)
		in.Tasks = append(in.Tasks, smptsp.Task{Start: start, End: start + 10 + 10*r.IntN(10)})
		in.Workers[0].Tasks = append(in.Workers[0].Tasks, i)
	}
	return in
}

func TestALineHasTheSetsOfPlacesThatAHorseCanWork(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 1))
		c := shifts(r).Centre()
		c.House.Same = model.Minute(10 * r.IntN(3)) // each lesson has an arena of its own
		c.House.Other, c.House.Move = c.House.Same, c.House.Same
		e := encode(c.Week(smptsp.Date, 1, model.Instant{}))
		h := c.Horses[0]
		stretches, before, ok := e.line(h, e.of[h])
		if !ok {
			t.Fatalf("seed %d: there is nothing but time to limit it", seed)
		}
		var got []string
		for chosen := 1; chosen < 1<<len(before); chosen++ {
			var set []string
			last, fits := -1, true
			for i, k := range before {
				if chosen>>i&1 == 1 {
					fits = fits && last < k
					set, last = append(set, lessonsOf(stretches[i])), i
				}
			}
			if fits {
				slices.Sort(set)
				got = append(got, fmt.Sprint(set))
			}
		}
		stretches, sets, _ := e.sets(h, e.of[h], tooMany)
		var want []string
		for _, s := range sets {
			var set []string
			for _, i := range s.Stretches {
				set = append(set, lessonsOf(stretches[i]))
			}
			slices.Sort(set)
			want = append(want, fmt.Sprint(set))
		}
		slices.Sort(got)
		slices.Sort(want)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("seed %d: sets - line +\n%s", seed, diff)
		}
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
		in := &smptsp.Instance{Name: "two", Tasks: []smptsp.Task{{Start: 500, End: 520}, {Start: 540, End: 560}}, Workers: []smptsp.Worker{{Tasks: []int{0, 1}}}}
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
