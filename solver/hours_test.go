package solver

import (
	"context"
	"testing"
	"time"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/fixtures/smptsp"
	"tackwright/model"
)

// oneDateRepair is the first date of a random week after something went wrong in it,
// by hand of the whole week's best plan; nil where nobody rides.
func oneDateRepair(t *testing.T, seed uint64) *model.Week {
	t.Helper()
	before := random.Week(seed, 1000)
	if len(before.Rides) == 0 {
		return nil
	}
	posted, err := Plan(context.Background(), before, Options{})
	if err != nil {
		t.Fatal(err)
	}
	random.Repair(seed, before, posted)
	return before.Centre.Repair(before.From, 1, before.Now)
}

// stoodDown counts the rides of a plan that were due, that some horse could carry, and
// that are on the ground.
func stoodDown(e *encoder, p *model.Plan) int {
	n := 0
	for i, r := range e.w.Rides {
		if _, ok := e.seated[r]; ok && r.Due && p.Turns[i] == nil {
			n++
		}
	}
	return n
}

func TestWhatArithmeticKnowsOfHorsesHoursShutsOutNoPlanThatStandsFewDown(t *testing.T) {
	weeksTried, shut := 0, 0
	for seed := range uint64(*weeks) {
		w := oneDateRepair(t, seed)
		if w == nil {
			continue
		}
		weeksTried++
		for down := range 3 {
			e := encode(w)
			var want []string
			every(t, encode(w), func(p *model.Plan) {
				if stoodDown(e, p) <= down {
					want = append(want, oracle.Projected(w, p))
				}
			})
			sel := e.s.NewVar()
			e.hours(sel, down)
			e.s.Add(e.s.Root(), sel)
			got := map[string]bool{}
			if e.s.Solve(context.Background(), sel) > 0 {
				every(t, e, func(p *model.Plan) {
					got[oracle.Projected(w, p)] = true
				})
			}
			for _, p := range want {
				if !got[p] {
					t.Errorf("week %d (%s): stands down %d or fewer and is shut out: %s", seed, w.Centre.Name, down, p)
				}
			}
			all := 0
			every(t, encode(w), func(*model.Plan) { all++ })
			if len(got) < all {
				shut++
			}
		}
	}
	if shut < weeksTried/20 {
		t.Errorf("of %d weeks it shut plans out in %d: that tests nothing", weeksTried, shut)
	}
}

func TestTheRidesCountedByLessonAreNoMoreThanTryingAllPlansStandsDown(t *testing.T) {
	met, weeksTried := 0, 0
	for seed := range uint64(*weeks) {
		w := oneDateRepair(t, seed)
		if w == nil {
			continue
		}
		least := -1
		judge := oracle.For(w)
		judge.Choices().Each(func(p *model.Plan) bool {
			if judge.Legal(p) {
				if n := w.Score(p)[0].Value; least < 0 || n < least {
					least = n
				}
			}
			return true
		})
		weeksTried++
		counted := encode(w).leastDown()(context.Background())
		if counted > least {
			t.Errorf("week %d (%s): counted %d, and %d can be", seed, w.Centre.Name, counted, least)
		}
		if counted == least {
			met++
		}
	}
	if met < weeksTried/2 {
		t.Errorf("of %d weeks it met the least in %d", weeksTried, met)
	}
}

// Twelve horses have 75 minutes left of their week each, which is a ride of 45 minutes and one of 30:
// of thirteen rides of 45 minutes one is stood down, though there are hours for it, and no horse alone
// tells so.
func TestARideWithHoursEnoughAndNoHorseThatHasThemIsStoodDown(t *testing.T) {
	in := &smptsp.Instance{Name: "to the brim", Workers: everyone(12, 18)}
	at := 0
	for i := range 18 {
		minutes := 45
		if i >= 13 {
			minutes = 30
		}
		in.Tasks = append(in.Tasks, smptsp.Task{Start: at, End: at + minutes})
		at += minutes
	}
	c := in.Centre()
	c.House.Limits.WeekMinutes = 75
	w := c.Repair(smptsp.Date, 1, model.Instant{})
	for _, r := range w.Rides {
		r.Due = true
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	plan, err := Plan(ctx, w, Options{Goals: 1})
	if err != nil {
		t.Fatal(err)
	}
	if g := plan.Proof.Goals[0]; g.Value != 1 || !g.Proved {
		t.Errorf("%+v", g)
	}
}
