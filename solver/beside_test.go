package solver

import (
	"context"
	"math"
	"testing"

	"tackwright/fixtures/oracle"
	drawn "tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// least values of a goal, of all plans that are best in the goals before, and of
// those in which a ride is on a horse.
type leastValues struct {
	all  int
	with map[rideHorse]int
}

type rideHorse struct {
	ride  *model.Ride
	horse *model.Horse
}

// tried tries all plans of a small week for the least values of a goal, among
// those whose goals before it are as good as can be.
func tried(w *model.Week, goal int, before []int) leastValues {
	least := leastValues{math.MaxInt, map[rideHorse]int{}}
	judge := oracle.For(w)
	judge.Choices().Each(func(p *model.Plan) bool {
		if !judge.Legal(p) {
			return true
		}
		score := w.Score(p)
		for i, v := range before {
			if score[i].Value != v {
				return true
			}
		}
		value := score[goal].Value
		least.all = min(least.all, value)
		for i, turn := range p.Turns {
			if turn == nil {
				continue
			}
			key := rideHorse{w.Rides[i], turn.Horse}
			if v, ok := least.with[key]; !ok || value < v {
				least.with[key] = value
			}
		}
		return true
	})
	return least
}

func TestNoPlanIsBetterThanItsBoundOrThanThePriceOfAPairInIt(t *testing.T) {
	met, weeksTried, above := 0, 0, 0
	for seed := range uint64(*weeks) {
		for _, w := range smallWeeks(seed, 1000) {
			e := encode(w)
			goals := e.goals()
			best, results, err := ordered.Minimise(context.Background(), e.s, nil, goals[:3], ordered.Options{})
			if err != nil {
				t.Fatal(err)
			}
			seat := []int{results[0].Value, results[1].Value, results[2].Value}
			for goal, before := range map[int][]int{0: nil, 3: seat} {
				if goals[goal].Name != "seat a" && goals[goal].Name != "wishes" {
					t.Fatalf("goal %d is %s", goal, goals[goal].Name)
				}
				least := tried(w, goal, before)
				work := goals[goal].Beside(best, least.all+5, nil)
				if work == nil {
					t.Fatalf("%s: too many ways to work in a day", w.Centre.Name)
				}
				b := work(context.Background())
				weeksTried++
				if b.Least > least.all {
					t.Fatalf("%s: %s bounded by %d, and a plan has %d", w.Centre.Name, goals[goal].Name, b.Least, least.all)
				}
				if b.Least == least.all {
					met++
				}
				price := map[sat.Lit]int{}
				for _, p := range b.Priced {
					price[p.Lit] = p.Least
				}
				for _, p := range e.places {
					for _, on := range p.rides {
						v, ok := least.with[rideHorse{on.ride, p.horse}]
						if ok && price[on.lit] > v {
							t.Fatalf("%s: %s on %s priced at %d in %s, and a plan has %d", w.Centre.Name, on.ride, p.horse.Name, price[on.lit], goals[goal].Name, v)
						}
						if price[on.lit] > b.Least {
							above++
						}
					}
				}
			}
		}
	}
	// A bound of nothing would be kept too: it is to be worth its while.
	if met*10 < weeksTried*7 || above*2 < weeksTried {
		t.Errorf("of %d bounds only %d were met, and only %d pairs had a price above", weeksTried, met, above)
	}
}

// What a search has found of the goals before makes the bound tighter, and no
// less true: of some weeks too large to try all plans, where the search has proved
// what is best.
func TestABoundThatLeansOnTheSearchIsStillOne(t *testing.T) {
	size, err := drawn.Named("median")
	if err != nil {
		t.Fatal(err)
	}
	tighter := 0
	for _, seed := range []uint64{1, 4, 8, 10} {
		e := encode(drawn.Week(size, seed, false))
		goals := e.goals()[:4]
		real := goals[3].Beside
		var plain, leaning ordered.Beside
		goals[3].Beside = func(best sat.Model, upper int, found []ordered.Count) func(context.Context) ordered.Beside {
			if leaning.Priced == nil {
				plain = real(best, upper, nil)(context.Background())
				leaning = real(best, upper, found)(context.Background())
			}
			return nil
		}
		best, results, err := ordered.Minimise(context.Background(), e.s, nil, goals, ordered.Options{})
		if err != nil || !results[3].Proved {
			t.Fatalf("%v, %+v", err, results)
		}
		if leaning.Priced == nil { // it was proved before it was asked for
			leaning = real(best, results[3].Value+5, nil)(context.Background())
			plain = leaning
		}
		if leaning.Least > results[3].Value || plain.Least > leaning.Least {
			t.Errorf("week %d: bound %d, with what was found %d, and the best is %d", seed, plain.Least, leaning.Least, results[3].Value)
		}
		if leaning.Least > plain.Least {
			tighter++
		}
		for _, p := range leaning.Priced {
			if best.Value(p.Lit) && p.Least > results[3].Value {
				t.Errorf("week %d: a pair of the best plan is priced at %d of %d", seed, p.Least, results[3].Value)
			}
		}
	}
	if tighter == 0 {
		t.Error("what was found made no bound tighter")
	}
}
