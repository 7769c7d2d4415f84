package bound

// A deal is a stretch at the prices: by way, what the tack costs and what the riders do.
type deal struct {
	tack   []int64
	girths []int // the best of each way
	riders [][]seated
	way    int // the best
	best   int64
	made   int // for which book of the scratch
}

// seated is the cheapest rider of a place in a way.
type seated struct {
	cost  int64
	rider int
	lists []int // how she meets her needs; nil, or Free: as is cheapest
}

func (d *deal) cost(way int) int64 {
	cost := d.tack[way]
	for _, place := range d.riders {
		cost += place[way].cost
	}
	return min(cost, none)
}

// decide looks for the best way.
func (d *deal) decide() {
	d.best = none
	for i := range d.tack {
		if c := d.cost(i); c < d.best {
			d.best, d.way = c, i
		}
	}
}

// plain tells that there is nothing to choose in a stretch.
func (x *Stretch) plain() bool {
	return len(x.Ways) == 1 && len(x.Places) == 1 && len(x.Places[0]) == 1 && len(x.Places[0][0].Ways) == 1
}

// plainly is what a plain stretch costs, with no deal made: nearly all of a day are used for their cost alone.
func (m *Market) plainly(x *Stretch) int64 {
	r, w := &x.Places[0][0], &x.Ways[0]
	if m.ride[r.Ride] <= -closed {
		return none
	}
	cost := m.rider(r) + int64(r.Ways[0].Cost)*scale + m.charge(w.Uses)
	if len(w.Girths) > 0 {
		_, girth := m.least(w.Girths)
		cost += girth
	}
	return min(cost, none)
}

// deal is a stretch at the prices.
func (b *book) deal(d, stretch int) *deal {
	deal := &b.deals[d][stretch]
	if deal.made != b.m.scratch.books {
		*deal = b.m.deal(&b.spell.Days[d].Stretches[stretch])
		deal.made = b.m.scratch.books
	}
	return deal
}

// deal looks for the best way of a stretch.
func (m *Market) deal(x *Stretch) deal {
	s := m.scratch
	d := deal{tack: s.costs.take(len(x.Ways)), girths: s.girths.of(len(x.Ways), 0), riders: s.places.take(len(x.Places))}
	for i, w := range x.Ways {
		d.tack[i] = m.charge(w.Uses)
		if len(w.Girths) > 0 {
			at, cost := m.least(w.Girths)
			d.tack[i] += cost
			d.girths[i] = at
		}
	}
	for p, riders := range x.Places {
		d.riders[p] = s.seated.of(len(x.Ways), seated{cost: none})
		for i := range riders {
			if m.ride[riders[i].Ride] <= -closed {
				continue // nobody else can have her
			}
			offer(d.riders[p], &riders[i], seated{m.rider(&riders[i]), i, nil})
		}
	}
	d.decide()
	return d
}

// offer puts a rider in the ways that suit her, where she is cheaper than who is there.
func offer(place []seated, r *Rider, as seated) {
	for _, w := range r.Ways {
		if cost := as.cost + int64(w.Cost)*scale; cost < place[w.Way].cost {
			place[w.Way] = seated{cost, as.rider, as.lists}
		}
	}
}

// rider is what a rider costs in a place, but for tack and way.
func (m *Market) rider(r *Rider) int64 {
	cost := int64(r.Cost)*scale - m.ride[r.Ride] + m.charge(r.Uses)
	for _, n := range r.Needs {
		_, c := m.least(n)
		cost += c
	}
	for _, k := range m.cutOf[r.Pair] {
		cost -= m.cut[k]
	}
	return cost
}

// charge of a list of things of Room.
func (m *Market) charge(things []int) int64 {
	sum := int64(0)
	for _, k := range things {
		sum += m.room[k]
	}
	return sum
}

// least is the cheapest of lists of Room.
func (m *Market) least(lists [][]int) (int, int64) {
	at, least := 0, int64(none)
	for i, l := range lists {
		if c := m.charge(l); c < least {
			at, least = i, c
		}
	}
	return at, least
}

// tackUp counts what a way uses.
func (m *Market) tackUp(w *Way, girth int) {
	m.count(w.Uses, 1)
	if len(w.Girths) > 0 {
		m.count(w.Girths[girth], 1)
	}
}

// seat counts what a rider uses who meets her needs with such lists.
func (m *Market) seat(r *Rider, way int, lists []int) {
	m.carried[r.Ride]++
	m.picked, m.ridden = append(m.picked, r.Pair), append(m.ridden, way)
	for _, k := range m.cutOf[r.Pair] {
		m.met[k]++
	}
	m.count(r.Uses, 1)
	for n, need := range r.Needs {
		at, _ := m.least(need)
		if lists != nil && lists[n] != Free {
			at = lists[n]
		}
		m.count(need[at], 1)
	}
}

func (m *Market) count(things []int, times int) {
	for _, k := range things {
		m.used[k] += times
	}
}
