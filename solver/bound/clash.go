package bound

import "slices"

// Clash is known of every plan that matters: its members do not all go together. A member is a pair, or a
// horse saddled in one of some ways, by name.
type Clash struct {
	Pairs []int
	Ways  [][]int
}

// Bar adds clashes: each is a thing of Room of which there is one less than it has members.
func (m *Market) Bar(clashes []Clash) {
	for _, c := range clashes {
		k := len(m.p.Room)
		m.p.Room = append(m.p.Room, len(c.Pairs)+len(c.Ways)-1)
		m.room, m.bestRoom, m.used = append(m.room, 0), append(m.bestRoom, 0), append(m.used, 0)
		m.uses(c, k)
	}
	if len(clashes) > 0 {
		m.beside = nil
		m.reach = max(m.reach, 2*scale)
	}
}

// uses has all members of a clash use a thing.
func (m *Market) uses(c Clash, k int) {
	for _, s := range m.p.Spells {
		for _, d := range s.Days {
			for i := range d.Stretches {
				x := &d.Stretches[i]
				for w := range x.Ways {
					for _, names := range c.Ways {
						if slices.Contains(names, x.Ways[w].Name) {
							x.Ways[w].Uses = append(slices.Clip(x.Ways[w].Uses), k)
						}
					}
				}
				for _, riders := range x.Places {
					for r := range riders {
						if slices.Contains(c.Pairs, riders[r].Pair) {
							riders[r].Uses = append(slices.Clip(riders[r].Uses), k)
						}
					}
				}
			}
		}
	}
}
