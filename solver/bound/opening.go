package bound

import "slices"

// open sets the prices that the search for better ones begins with. A ride has the price of the cheapest
// horse for it, and more where its place on the ground costs something: such rides are paid by their work.
// Where the herd's weeks are too short for all, that proves most of what can be.
func (m *Market) open() {
	cheapest := m.cheapest()
	copy(m.ride, cheapest)
	for k, g := range m.p.Grounded {
		for _, r := range g.Rides {
			m.limit[k] = max(m.limit[k], cheapest[r])
		}
	}
	m.trade()
	m.reach, m.floor = 2*max(m.value, -m.value)+10*scale, m.value
	if slices.Max(slices.Concat(m.p.OnGround, []int{0})) == 0 {
		return
	}
	work := m.works()
	longest := slices.Max(slices.Concat(work, []int64{1}))
	best := slices.Clone(m.ride)
	for tenths := range int64(20) {
		for r, cost := range cheapest {
			dear := int64(m.p.OnGround[r]) * scale
			m.ride[r] = max(cost, min(dear, dear*work[r]/longest*(tenths+1)/10))
		}
		m.trade()
		if m.value > m.floor {
			m.floor, m.reach = m.value, 2*scale
			copy(best, m.ride)
		}
	}
	// At prices by work alone a horse has many best weeks, and no one of them tells what is short.
	for r, price := range best {
		m.ride[r] = max(cheapest[r], price*4/5+int64(m.p.OnGround[r])*scale/5)
	}
}

// cheapest is what each ride costs on the horse that costs least; 0 where none can carry it.
func (m *Market) cheapest() []int64 {
	cheapest := slices.Repeat([]int64{none}, m.p.Rides)
	for _, s := range m.p.Spells {
		for _, d := range s.Days {
			for _, x := range d.Stretches {
				for _, r := range slices.Concat(x.Places...) {
					for _, w := range r.Ways {
						cheapest[r.Ride] = min(cheapest[r.Ride], int64(r.Cost+w.Cost)*scale)
					}
				}
			}
		}
	}
	for r, cost := range cheapest {
		if cost == none || cost < 0 {
			cheapest[r] = 0
		}
	}
	return cheapest
}

// works is how much work each ride is for a horse that has no other; 0 where that counts for nothing.
func (m *Market) works() []int64 {
	works := make([]int64, m.p.Rides)
	for _, s := range m.p.Spells {
		for _, d := range s.Days {
			for _, step := range d.Steps {
				if !step.Last || step.Stretch == Pause || !slices.Contains(step.After, 0) || len(d.Stretches[step.Stretch].Places) > 1 {
					continue
				}
				for _, r := range d.Stretches[step.Stretch].Places[0] {
					if works[r.Ride] == 0 || step.Work < works[r.Ride] {
						works[r.Ride] = step.Work
					}
				}
			}
		}
	}
	return works
}
