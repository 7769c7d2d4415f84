package bound

import (
	"context"
	"testing"
)

// twoHorses have a ride each at one time. Either is saddled in one of two ways: in the first it uses thing 0 or, where they do not
// share tack, nothing, in the second nothing; its rider likes the first.
func twoHorses(things ...int) *Problem {
	p := &Problem{Rides: 2, Pairs: 2, OnGround: []int{0, 0}, Room: []int{1}, Grounded: []Grounded{{Rides: []int{0, 1}}}}
	for h := range 2 {
		rider := Rider{Pair: h, Ride: h, Ways: []Suits{{Way: 0}, {Way: 1, Cost: 1}}}
		x := Stretch{Ways: []Way{{Name: 2 * h, Uses: things}, {Name: 2*h + 1}}, Places: [][]Rider{{rider}}}
		p.Spells = append(p.Spells, Spell{MostWork: -1, MostDays: -1, Days: []Day{{Stretches: []Stretch{x}, Steps: []Step{{Stretch: Pause}, {After: []int{0}, Last: true, Work: 1}}}}})
	}
	return p
}

// began is what a plan costs that is begun with.
func began(m *Market, first Start) int {
	b := newBarter(m)
	b.begin(first)
	return up(b.total())
}

func TestAPlanBeginsWithoutAClashThatItDoesNotHave(t *testing.T) {
	m := Open(twoHorses())
	m.Bar([]Clash{{Pairs: []int{1}, Ways: [][]int{{0}}}}) // thing 1: the second rides, and the first is saddled as its rider likes
	plan := Start{Pairs: []int{0, 1}, Things: [][]int{{}, {1}}, Known: 2}
	if cost := began(m, plan); cost != 1 {
		t.Errorf("it costs %d", cost)
	}
	plan.Known = 1 // now the first horse may take what the second has
	if cost := began(m, plan); cost < never {
		t.Errorf("both ride at %d: the clash decides nothing", cost)
	}
}

func TestAHorseBeginsInOtherTackWhereAnotherHasItsOwn(t *testing.T) {
	plan := Start{Pairs: []int{0, 1}, Things: [][]int{{0}, {0}}, Known: 1}
	if cost := began(Open(twoHorses(0)), plan); cost != 1 {
		t.Errorf("it costs %d", cost)
	}
}

func TestBarterEndsWhereNoHorseCanCarryWhatIsOnTheGround(t *testing.T) {
	p := twoHorses()
	p.Rides, p.OnGround, p.Grounded = 3, []int{0, 0, 0}, []Grounded{{Rides: []int{0, 1, 2}}} // and all are to ride
	m := Open(p)
	m.Lower(context.Background(), 10, 10)
	if plan, cost := m.Barter(context.Background(), Start{}, 0); plan != nil || cost < never {
		t.Errorf("a plan of %d: %v", cost, plan)
	}
}
