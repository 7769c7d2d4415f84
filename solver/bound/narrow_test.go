package bound

import (
	"math/rand/v2"
	"testing"
)

// A horse to which some rides are closed plans the same week whether it looks at all that it could do or at what it can.
func TestAWeekIsWorthTheSameToAHorseThatSeesOpenRidesOnly(t *testing.T) {
	open := 0
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 3))
		p := anyProblem(r)
		m := Open(p)
		closes := make([]bool, p.Rides)
		for ride := range m.ride {
			m.ride[ride] = int64(r.IntN(12)) * scale
			if closes[ride] = r.IntN(2) == 0; closes[ride] {
				m.ride[ride] = -closed
			}
		}
		for k := range m.room {
			m.room[k] = int64(r.IntN(3)) * scale
		}
		whole := m.bestWeek(0)
		b := newBarter(m)
		copy(b.ride, m.ride)
		copy(b.room, m.room)
		b.narrow(0)
		narrow := b.bestWeek(0)
		worth := func(h held) int64 {
			cost := h.cost
			for _, ride := range h.rides {
				cost -= m.ride[ride]
			}
			for _, k := range h.uses {
				cost += m.room[k]
			}
			return cost
		}
		if worth(whole) != worth(narrow) {
			t.Errorf("seed %d: %v costs %d of all, %v costs %d of the open", seed, whole.rides, worth(whole), narrow.rides, worth(narrow))
		}
		open += len(narrow.rides)
	}
	if open < 500 {
		t.Errorf("%d rides in all: the weeks say little", open)
	}
}

// anyProblem is one horse's week of two days, with ways to saddle it, places that follow each other with no time between,
// needs, and what is shared from place to place.
func anyProblem(r *rand.Rand) *Problem {
	p := &Problem{Room: make([]int, 6), Rides: 12}
	p.OnGround = make([]int, p.Rides)
	spell := Spell{MostWork: int64(40 + r.IntN(100)), MostDays: -1}
	for range 2 {
		day := Day{In: r.IntN(2)}
		for range 4 {
			x := Stretch{}
			for range 1 + r.IntN(2) {
				x.Ways = append(x.Ways, Way{Uses: []int{r.IntN(3)}})
			}
			for range 1 + r.IntN(2) {
				var riders []Rider
				for range 1 + r.IntN(3) {
					rider := Rider{Pair: p.Pairs, Ride: r.IntN(p.Rides), Cost: r.IntN(4)}
					p.Pairs++
					for way := range x.Ways {
						rider.Ways = append(rider.Ways, Suits{Way: way, Cost: r.IntN(2)})
					}
					if r.IntN(2) == 0 {
						rider.Needs = [][][]int{{{3}, {3 + r.IntN(3)}}}
					}
					riders = append(riders, rider)
				}
				x.Places = append(x.Places, riders)
			}
			day.Stretches = append(day.Stretches, x)
		}
		share := func(from, place, to, next int) {
			pick := func(riders []Rider) (picks []Pick) {
				for i, rider := range riders {
					if len(rider.Needs) > 0 {
						picks = append(picks, Pick{Rider: i, Lists: []int{0}})
					}
				}
				return picks
			}
			first, second := pick(day.Stretches[from].Places[place]), pick(day.Stretches[to].Places[next])
			if len(first) == 0 || len(second) == 0 {
				return
			}
			if from == to {
				day.Stretches[from].Within = append(day.Stretches[from].Within, len(day.Shares))
			}
			day.Shares = append(day.Shares, Share{Border: Border{From: from, To: to, Place: place}, First: first, Second: second, Things: []int{3}})
		}
		for x := range day.Stretches {
			if len(day.Stretches[x].Places) == 2 {
				share(x, 0, x, 1)
			}
		}
		// Any two or fewer stretches, in order.
		day.Steps = []Step{{Stretch: Pause}}
		for x := range day.Stretches {
			day.Steps = append(day.Steps, Step{Stretch: x, After: []int{0}, Last: true, Work: int64(10 * (1 + x))})
			for y := x + 1; y < len(day.Stretches); y++ {
				day.Steps = append(day.Steps, Step{Stretch: y, After: []int{day.stepOf(x)}, Last: true, Work: int64(10 * (2 + x + y))})
				share(x, len(day.Stretches[x].Places)-1, y, 0)
			}
		}
		spell.Days = append(spell.Days, day)
	}
	p.Spells = []Spell{spell}
	return p
}

// stepOf is the step at which a day begins with a stretch.
func (d *Day) stepOf(stretch int) int {
	for n, s := range d.Steps {
		if s.Stretch == stretch && len(s.After) == 1 && s.After[0] == 0 {
			return n
		}
	}
	return gone
}
