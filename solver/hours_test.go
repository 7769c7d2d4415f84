package solver

import (
	"context"
	"fmt"
	"testing"
	"time"

	"tackwright/fixtures"
	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/fixtures/smptsp"
	"tackwright/model"
)

// oneDateRepairs are the first date of random weeks after something went wrong in them,
// by hand of the whole week's best plan, and again as if some had not been told that
// they ride.
func oneDateRepairs(t *testing.T, seed uint64) (repairs []*model.Week) {
	t.Helper()
	for _, before := range smallWeeks(seed, 1000) {
		if len(before.Rides) == 0 {
			continue
		}
		posted, err := Plan(context.Background(), before, Options{})
		if err != nil {
			t.Fatal(err)
		}
		random.Repair(seed, before, posted)
		w := before.Centre.Repair(before.From, 1, before.Now)
		fewer := w.Copy()
		for i, r := range fewer.Rides {
			r.Due = r.Due && (seed>>(i%8))&1 == 0
		}
		repairs = append(repairs, w, fewer)
	}
	return repairs
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
		for _, w := range oneDateRepairs(t, seed) {
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
	}
	if shut < weeksTried/20 {
		t.Errorf("of %d weeks it shut plans out in %d: that tests nothing", weeksTried, shut)
	}
}

func TestTheRidesCountedByLessonAreNoMoreThanTryingAllPlansStandsDown(t *testing.T) {
	met, weeksTried := 0, 0
	for seed := range uint64(*weeks) {
		for _, w := range oneDateRepairs(t, seed) {
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

// Star and Luna work at half: three rides of 20 minutes in a row are 30, and the first and the last of
// them, with the time between, are 40. So both carry three, or none of the last; and the one ride that
// was not told is in the middle.
func TestAHorseMayCarryWhoWasNotToldBetweenTwoWhoWere(t *testing.T) {
	b := fixtures.New()
	b.House.Stay, b.House.Same, b.House.Rest = 0, 0, 30
	luna := b.Horse("Luna")
	b.Saddle("elm", luna)
	for _, h := range b.Horses {
		h.Factor, h.Limits.DayMinutes = 50, 30
	}
	for i, hours := range []string{"10:00-10:20", "10:20-10:40", "10:40-11:00"} {
		b.Lesson(b.From, hours, b.Rider(fmt.Sprint("Ann", i)), b.Rider(fmt.Sprint("Bea", i)))
	}
	w := b.Centre.Repair(b.From, 1, model.Instant{})
	for _, r := range w.Rides {
		r.Due = r.Rider.Name != "Bea1"
	}
	plan, err := Plan(context.Background(), w, Options{})
	if err != nil || plan.Proof.Goals[0].Value > 0 {
		t.Fatalf("%v, %+v", err, plan)
	}
	if counted := encode(w).leastDown()(context.Background()); counted > 0 {
		t.Errorf("counted %d, and all ride", counted)
	}
}
