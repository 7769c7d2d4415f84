package solver

import (
	"context"
	"math"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	drawn "tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver/bound"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// least values of a goal, of all plans that are best in the goals before, and of
// those in which a ride is on a horse.
type leastValues struct {
	all  int
	with map[rideHorse]int
	each []valued
}

// valued is who rides whom in a plan and in what, and its value.
type valued struct {
	value int
	pairs []rideHorse
	turns []*model.Turn
}

type rideHorse struct {
	ride  *model.Ride
	horse *model.Horse
}

// tried tries all plans of a small week for the least values of a goal, among
// those that are asked for and whose goals before it are as good as can be.
func tried(w *model.Week, goal int, before []int, asked func(*model.Plan) bool) leastValues {
	least := leastValues{all: math.MaxInt, with: map[rideHorse]int{}}
	judge := oracle.For(w)
	judge.Choices().Each(func(p *model.Plan) bool {
		if !judge.Legal(p) || !asked(p) {
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
		var pairs []rideHorse
		var turns []*model.Turn
		for i, turn := range p.Turns {
			if turn == nil {
				continue
			}
			key := rideHorse{w.Rides[i], turn.Horse}
			if v, ok := least.with[key]; !ok || value < v {
				least.with[key] = value
			}
			pairs, turns = append(pairs, key), append(turns, turn)
		}
		least.each = append(least.each, valued{value, pairs, turns})
		return true
	})
	return least
}

// bounds counts what was seen of bounds.
type bounds struct{ asked, met, above, added, worn int }

// hold fails where the bound of a goal, the price of a pair, or what all pairs of a plan cost together, is above what
// a plan has.
func (b *bounds) hold(t *testing.T, e *encoder, goal ordered.Goal, best sat.Model, least leastValues) {
	t.Helper()
	work := goal.Beside(best, least.all+5, nil)
	if work == nil {
		t.Fatalf("%s: too many ways to work in a day", e.w.Centre.Name)
	}
	got := work(context.Background())
	b.asked++
	if got.Least > least.all {
		t.Fatalf("%s: %s bounded by %d, and a plan has %d", e.w.Centre.Name, goal.Name, got.Least, least.all)
	}
	if got.Least == least.all {
		b.met++
	}
	price, priced := map[sat.Lit]int{}, map[[2]sat.Lit]ordered.Priced{}
	for _, p := range got.Priced {
		if priced[[2]sat.Lit{p.Lit, p.And}] = p; p.And == 0 {
			price[p.Lit] = p.Least
		}
	}
	at := map[rideHorse]rideOn{}
	for _, p := range e.places {
		for _, on := range p.rides {
			at[rideHorse{on.ride, p.horse}] = on
			v, ok := least.with[rideHorse{on.ride, p.horse}]
			if ok && price[on.lit] > v {
				t.Fatalf("%s: %s on %s priced at %d in %s, and a plan has %d", e.w.Centre.Name, on.ride, p.horse.Name, price[on.lit], goal.Name, v)
			}
			if price[on.lit] > got.Least {
				b.above++
			}
		}
	}
	for _, plan := range least.each {
		adds, sum := map[int]int{}, got.Base
		for i, pair := range plan.pairs {
			on, ok := at[pair]
			if !ok {
				continue // a fact
			}
			p := priced[[2]sat.Lit{on.lit}]
			adds[p.Group] = max(adds[p.Group], p.More)
			for _, o := range on.at.saddle {
				if !o.isWorn(plan.turns[i]) {
					continue
				}
				p, ok := priced[[2]sat.Lit{on.lit, o.lit}]
				if !ok {
					continue
				}
				if b.worn++; p.Least > plan.value {
					t.Fatalf("%s: %s on %s in %s priced at %d in %s, and a plan has %d", e.w.Centre.Name, pair.ride, pair.horse.Name, plan.turns[i].Seat.Tag, p.Least, goal.Name, plan.value)
				}
				adds[p.Group] = max(adds[p.Group], p.More)
			}
		}
		for _, more := range adds {
			sum += more
		}
		if sum > plan.value*got.Grain {
			t.Fatalf("%s: pairs of a plan add up to %d/%d in %s, and it has %d", e.w.Centre.Name, sum, got.Grain, goal.Name, plan.value)
		}
		if sum > got.Base {
			b.added++
		}
	}
}

// isWorn reports whether a turn is saddled in a way, as far as alike pieces go.
func (s saddled) isWorn(turn *model.Turn) bool {
	return slices.Contains(s.seat.pieces, turn.Seat) && len(s.pads) == len(turn.Pads) &&
		!slices.ContainsFunc(s.pads, func(p *pool) bool {
			return !slices.ContainsFunc(turn.Pads, func(x *model.Piece) bool { return slices.Contains(p.pieces, x) })
		})
}

// bestSeat is a solution that is best in Seat, and its values.
func bestSeat(t *testing.T, e *encoder, goals []ordered.Goal) (sat.Model, []int) {
	t.Helper()
	best, results, err := ordered.Minimise(context.Background(), e.s, nil, goals[:3], ordered.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return best, []int{results[0].Value, results[1].Value, results[2].Value}
}

func TestNoPlanIsBetterThanItsBoundOrThanThePriceOfAPairInIt(t *testing.T) {
	var b bounds
	any := func(*model.Plan) bool { return true }
	for seed := range uint64(*weeks) {
		for _, w := range smallWeeks(seed, 1000) {
			if seed%2 == 1 { // it takes long until another horse can have what one wore
				w.House.Stay, w.House.Same, w.House.Other, w.House.Move = 0, 0, min(w.House.Other, 5), 15+35*model.Minute(seed/2%4)
			}
			e := encode(w)
			goals := e.goals()
			best, seat := bestSeat(t, e, goals)
			if goals[3].Name != "wishes" {
				t.Fatalf("goal 3 is %s", goals[3].Name)
			}
			for goal := range 4 {
				b.hold(t, e, goals[goal], best, tried(w, goal, seat[:goal], any))
			}
		}
	}
	// A bound of nothing would be kept too: it is to be worth its while.
	if b.met*10 < b.asked*7 || b.above*2 < b.asked || b.added < b.asked || b.worn*2 < b.asked {
		t.Errorf("of %d bounds only %d were met, only %d pairs had a price above, only %d plans cost more than the base, and only %d rides were in a way with a price of its own", b.asked, b.met, b.above, b.added, b.worn)
	}
}

// So it is where it costs something that a horse is brought in at all.
func TestNoPlanBringsInFewerThanItsBoundOrThanThePriceOfAPairInIt(t *testing.T) {
	var b bounds
	for seed := range uint64(*weeks / 2) {
		for _, w := range smallWeeks(seed, 1000) {
			w.House.Goals = []model.GoalKind{model.GoalBringIn}
			e := encode(w)
			goals := e.goals()
			best, seat := bestSeat(t, e, goals)
			b.hold(t, e, goals[3], best, tried(w, 3, seat, func(*model.Plan) bool { return true }))
		}
	}
	if b.met*10 < b.asked*7 || b.above*4 < b.asked {
		t.Errorf("of %d bounds only %d were met, and only %d pairs had a price above", b.asked, b.met, b.above)
	}
}

// So it is in a repair, and where a question of a session rules a horse out.
func TestNoRepairIsBetterThanItsBoundOrThanThePriceOfAPairInIt(t *testing.T) {
	var b bounds
	zero := 0
	for seed := range uint64(*weeks / 4) {
		for _, w := range oneDateRepairs(t, seed) {
			for _, out := range []*model.Horse{nil, w.Centre.Horses[int(seed)%len(w.Centre.Horses)]} {
				e := encode(w)
				var assume []sat.Lit
				e.barred = map[sat.Lit]bool{}
				for _, p := range e.of[out] {
					for _, on := range p.rides {
						e.barred[on.lit] = true
						assume = append(assume, on.lit.Not())
					}
				}
				// A bound worked out in the search itself would be held to the same.
				goals := e.goals()
				bare := e.goals()[:5]
				for i := range bare {
					bare[i].Beside = nil
				}
				best, results, err := ordered.Minimise(context.Background(), e.s, assume, bare, ordered.Options{})
				if err != nil {
					t.Fatal(err)
				}
				var kept []int
				for _, r := range results {
					kept = append(kept, r.Value)
				}
				asked := func(p *model.Plan) bool {
					for i, turn := range p.Turns {
						if out != nil && turn != nil && turn.Horse == out && w.Rides[i].State == model.Open {
							return false
						}
					}
					return true
				}
				for goal, before := range map[int][]int{0: nil, 4: kept[:4], 5: kept} {
					if goals[goal].Beside == nil {
						continue // the centre has wishes later
					}
					least := tried(w, goal, before, asked)
					b.hold(t, e, goals[goal], best, least)
					if least.all == 0 {
						zero++
					}
				}
			}
		}
	}
	if b.met*10 < b.asked*7 || b.above*4 < b.asked || b.asked-zero < b.asked/10 {
		t.Errorf("of %d bounds only %d were met, only %d pairs had a price above, and only %d were of more than 0", b.asked, b.met, b.above, b.asked-zero)
	}
}

// What a search has found of the goals before makes the bound no less true: of
// some weeks too large to try all plans, where the search has proved what is best.
// In most of them the first prices prove it by themselves.
func TestABoundThatLeansOnTheSearchIsStillOneAndMostlyTheBest(t *testing.T) {
	size, err := drawn.Named("median")
	if err != nil {
		t.Fatal(err)
	}
	seeds, proved := []uint64{1, 2, 3, 4, 5, 8, 10, 11}, 0
	for _, seed := range seeds {
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
		if plain.Least == results[3].Value {
			proved++
		}
		for _, p := range leaning.Priced {
			if best.Value(p.Lit) && (p.And == 0 || best.Value(p.And)) && p.Least > results[3].Value {
				t.Errorf("week %d: a pair of the best plan is priced at %d of %d", seed, p.Least, results[3].Value)
			}
		}
	}
	if proved*2 < len(seeds) {
		t.Errorf("the first prices prove what is best in %d of %d weeks", proved, len(seeds))
	}
}

// A plan handed to the market is the same plan there: nobody is lost, and it costs no more.
func TestTheMarketKnowsAPlanForWhatItCosts(t *testing.T) {
	size, err := drawn.Named("median")
	if err != nil {
		t.Fatal(err)
	}
	for seed := range uint64(6) {
		w := drawn.Week(size, seed, false)
		e := encode(w)
		best, results, err := ordered.Minimise(context.Background(), e.s, nil, e.goals()[:3], ordered.Options{})
		if err != nil {
			t.Fatal(err)
		}
		plan, err := e.decode(context.Background(), best)
		if err != nil {
			t.Fatal(err)
		}
		wishes := w.Score(plan)[3]
		if wishes.Name != "wishes" || results[0].Value > 5 {
			t.Fatalf("week %d: %+v, %+v", seed, wishes, results)
		}
		x, ok := e.relax(costs{seated: e.wishCost})
		if !ok {
			t.Fatalf("week %d: too many ways to work in a day", seed)
		}
		x.keep(best)
		if _, cost := bound.Open(x.p).Barter(context.Background(), x.start(x.lits(), best), wishes.Value); cost > wishes.Value {
			t.Errorf("week %d: costs %d there, and %d here", seed, cost, wishes.Value)
		}
	}
}
