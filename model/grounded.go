package model

import (
	"cmp"
	"slices"
)

// Grounded is how often a rider was on the ground over some dates.
type Grounded struct {
	Rider *Rider
	Rides int    // told or ridden, those on the ground counted in
	Times []Told // of them, on the ground, in order
}

// GroundedOver tells of each rider who had a ride on the dates from the first to the
// last, both counted, how often she was on the ground: those with most times first,
// then with the greater share, then by name. It goes by what was ridden, as far as it is
// known; a rider who was away, and a lesson that was not held, do not count.
func (c *Centre) GroundedOver(from, until Date) []*Grounded {
	record := newRecorder(c)
	of := map[*Rider]*Grounded{}
	var all []*Grounded
	for d := from; d <= until; d++ {
		told := record.on(d)
		slices.SortStableFunc(told, func(a, b Told) int { return cmp.Compare(a.Start, b.Start) })
		for _, t := range told {
			if t.Rider == nil {
				continue
			}
			g := of[t.Rider]
			if g == nil {
				g = &Grounded{Rider: t.Rider}
				of[t.Rider] = g
				all = append(all, g)
			}
			g.Rides++
			if t.Turn == nil {
				g.Times = append(g.Times, t)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b *Grounded) int {
		return cmp.Or(cmp.Compare(len(b.Times), len(a.Times)), cmp.Compare(len(b.Times)*a.Rides, len(a.Times)*b.Rides),
			cmp.Compare(a.Rider.Name, b.Rider.Name))
	})
	return all
}
