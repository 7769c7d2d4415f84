package solver

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
	"tackwright/solver/ordered"
)

// mishap is a note for a week, the same in each reading of it.
func mishap(w *model.Week, seed, k uint64) *model.Note {
	g := rand.New(rand.NewPCG(seed, k))
	r, h := w.Rides[g.IntN(len(w.Rides))], w.Centre.Horses[g.IntN(len(w.Centre.Horses))]
	n := &model.Note{Number: 100 + int(k), Date: r.Date(), Hands: model.NoHands}
	switch g.IntN(8) {
	case 0, 1:
		n.Kind, n.Horse, n.Why = model.NoteHorseOut, h, model.Lame
	case 2:
		n.Kind, n.Horse, n.Why = model.NoteHorseOut, h, model.Appointment
	case 3, 4:
		n.Kind, n.Rider = model.NoteRiderAway, r.Rider
	case 5:
		n.Kind, n.Rider, n.Horse = model.NoteNever, r.Rider, h
	case 6:
		n.Kind, n.Rider, n.Horse = model.NoteKeep, r.Rider, h
	default:
		n.Kind, n.Horse = model.NoteOwnTack, h
	}
	return n
}

// noted is a small week, posted, under notes; whole, or its first date.
func noted(t *testing.T, seed uint64, kind int, one bool, notes []uint64) *model.Week {
	t.Helper()
	w := smallWeeks(seed, 800)[kind]
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	fixtures.Post(w, p)
	for _, k := range notes {
		w.Centre.Notes = append(w.Centre.Notes, mishap(w, seed, k))
	}
	w.Centre.Obey()
	if one {
		return w.Centre.Repair(w.Rides[0].Date(), 1, w.Now)
	}
	return w.Centre.Repair(w.From, int(w.Until-w.From)+1, w.Now)
}

// Small weeks of any kind, posted, under a few notes done and undone; planned whole, or on one date.
func TestASessionAboutAnySmallWeekScoresAsFreshSolvesDo(t *testing.T) {
	questions, written := 0, 0
	for seed := range uint64(*weeks) / 40 {
		for kind := range smallWeeks(seed, 800) {
			g := rand.New(rand.NewPCG(seed, 99))
			one := g.IntN(3) > 0
			asked := func(notes []uint64) *model.Week { return noted(t, seed, kind, one, notes) }
			if len(smallWeeks(seed, 800)[kind].Rides) == 0 {
				continue
			}
			var s Session
			var notes []uint64
			for range 8 {
				if len(notes) > 2 || len(notes) > 0 && g.IntN(3) == 0 {
					i := g.IntN(len(notes))
					notes = slices.Delete(notes, i, i+1)
				} else {
					notes = append(notes, g.Uint64N(20))
				}
				questions++
				live, err := s.Plan(context.Background(), asked(notes), Options{})
				if err != nil {
					t.Fatalf("seed %d, notes %v: %v", seed, notes, err)
				}
				w := asked(notes)
				fresh, err := Plan(context.Background(), w, Options{})
				if err != nil {
					t.Fatal(err)
				}
				if !slices.Equal(live.Proof.Goals, fresh.Proof.Goals) {
					t.Errorf("%s, notes %v: live %+v, fresh %+v", w.Centre.Name, notes, live.Proof.Goals, fresh.Proof.Goals)
				}
			}
			written += s.Written()
		}
	}
	if 4*written > 3*questions {
		t.Errorf("the rules were written %d times for %d questions", written, questions)
	}
}

// A ride that a question calls off, or a horse that it rules out, is not counted against the plan.
func TestNoAnswerOfASessionIsBetterThanTheBoundsThatItWorksOut(t *testing.T) {
	bounds, off := 0, 0
	for seed := range uint64(*weeks) / 20 {
		for kind := range smallWeeks(seed, 800) {
			if len(smallWeeks(seed, 800)[kind].Rides) == 0 {
				continue
			}
			g := rand.New(rand.NewPCG(seed, 98))
			var s Session
			s.write(noted(t, seed, kind, true, nil))
			for range 6 {
				w := noted(t, seed, kind, true, []uint64{g.Uint64N(20), g.Uint64N(20)})
				assume, ok := s.assume(w)
				if !ok {
					continue
				}
				goals, bare := s.e.goals(), s.e.goals()
				for i := range bare {
					bare[i].Beside = nil
				}
				for i, goal := range goals {
					if goal.Beside == nil {
						continue
					}
					best, results, err := ordered.Minimise(context.Background(), s.e.s, assume, bare[:i+1], ordered.Options{})
					if err != nil {
						t.Fatal(err)
					}
					value := results[i].Value
					work := goal.Beside(best, value+5, nil)
					if work == nil {
						t.Fatalf("%s: too many ways to work in a day", w.Centre.Name)
					}
					got := work(context.Background())
					bounds++
					if got.Least > value {
						t.Errorf("%s: %s bounded by %d, and a plan has %d", w.Centre.Name, goal.Name, got.Least, value)
					}
					for _, p := range got.Priced {
						if best.Value(p.Lit) && (p.And == 0 || best.Value(p.And)) && p.Least > value {
							t.Errorf("%s: %s priced at %d, and a plan with it has %d", w.Centre.Name, goal.Name, p.Least, value)
						}
					}
				}
				for r := range s.e.seated {
					if r.State == model.Off {
						off++
						break
					}
				}
			}
		}
	}
	if bounds < *weeks/4 || off < *weeks/20 {
		t.Errorf("only %d bounds, and only %d questions that call a ride off", bounds, off)
	}
}
