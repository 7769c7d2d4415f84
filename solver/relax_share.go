package solver

import (
	"fmt"
	"slices"

	"tackwright/solver/bound"
)

// met is, for each need of a rider that can run short, the pools that meet it, as her
// lists have them.
type met [][]*pool

// share finds what a horse can go on with from place to place of a day, while it could not yet be on another horse: extras
// that the riders of both need, and its seat. What the riders' needs are met by is told by stretch, place and rider.
func (x *relaxation) share(day *bound.Day, stretches []stretch, needs [][][]met) {
	border := func(from, n, to, next int) {
		p, q := stretches[from].places[n], stretches[to].places[next]
		if q.start-p.end >= x.w.House.Move {
			return
		}
		var shares []bound.Share
		if both := x.bothNeed(p, q); len(both) > 0 {
			first := carriers(both, day.Stretches[from].Places[n], needs[from][n])
			second := carriers(both, day.Stretches[to].Places[next], needs[to][next])
			shares = sharesOf(first, second)
		}
		at := bound.Border{From: from, To: to, Place: n}
		if from != to {
			shares = append(shares, withSeats(shares, x.seats(stretches[from], &day.Stretches[from], stretches[to], &day.Stretches[to]))...)
		}
		for _, s := range shares {
			s.Border = at
			if from == to {
				day.Stretches[from].Within = append(day.Stretches[from].Within, len(day.Shares))
			}
			day.Shares = append(day.Shares, s)
		}
	}
	for i, y := range stretches {
		for n := range y.places[1:] {
			border(i, n, i, n+1)
		}
	}
	follows := map[[2]int]bool{} // one stretch the other
	for _, to := range day.Steps {
		for _, before := range to.After {
			from := day.Steps[before]
			if both := [2]int{from.Stretch, to.Stretch}; from.Stretch != bound.Pause && to.Stretch != bound.Pause && !follows[both] {
				follows[both] = true
				border(from.Stretch, len(stretches[from.Stretch].places)-1, to.Stretch, 0)
			}
		}
	}
}

// sharesOf are what riders on both sides of a border need.
func sharesOf(first, second []*carried) (all []bound.Share) {
	for _, f := range first {
		for _, s := range second {
			if f.pools != s.pools {
				continue
			}
			if things := inBoth(f.rooms, s.rooms); len(things) > 0 {
				all = append(all, bound.Share{First: f.picks, Second: s.picks, Things: things})
			}
		}
	}
	return all
}

func inBoth(a, b []int) (both []int) {
	for _, x := range a {
		if slices.Contains(b, x) {
			both = append(both, x)
		}
	}
	return both
}

// seats are those that a horse can go on with from one stretch to the next.
func (x *relaxation) seats(y stretch, from *bound.Stretch, z stretch, to *bound.Stretch) (all []bound.Share) {
	var seen []*pool
	for _, w := range from.Ways {
		seat := x.ways[w.Name].seat
		if slices.Contains(seen, seat) {
			continue
		}
		seen = append(seen, seat)
		things := inBoth(x.taken(y, seat), x.taken(z, seat))
		second := x.waysIn(to, seat)
		if len(things) > 0 && len(second) > 0 {
			all = append(all, bound.Share{FirstWays: x.waysIn(from, seat), SecondWays: second, Things: things})
		}
	}
	return all
}

// waysIn are those of a stretch that have a seat.
func (x *relaxation) waysIn(s *bound.Stretch, seat *pool) (ways []int) {
	for i, w := range s.Ways {
		if x.ways[w.Name].seat == seat {
			ways = append(ways, i)
		}
	}
	return ways
}

// withSeats are seats alone, and with each share of extras.
func withSeats(extras, seats []bound.Share) (all []bound.Share) {
	for _, s := range seats {
		all = append(all, s)
		for _, e := range extras {
			e.FirstWays, e.SecondWays, e.Things = s.FirstWays, s.SecondWays, slices.Concat(e.Things, s.Things)
			all = append(all, e)
		}
	}
	return all
}

// carried is some pools of extras, a piece of each, and which riders of a place need
// just those.
type carried struct {
	pools string // by number
	picks []bound.Pick
	rooms []int
}

// carriers are all that riders of a place can need of some pools: of one, or of
// several at once.
func carriers(of []*pool, riders []bound.Rider, needs []met) (all []*carried) {
	for i := range riders {
		r, lists := &riders[i], make([]int, len(needs[i]))
		var from func(n int, pools []int, rooms []int)
		from = func(n int, pools []int, rooms []int) {
			if n < len(lists) {
				lists[n] = bound.Free
				from(n+1, pools, rooms)
				for at, p := range needs[i][n] {
					if slices.Contains(of, p) && !slices.Contains(pools, p.index) {
						lists[n] = at
						from(n+1, append(slices.Clone(pools), p.index), slices.Concat(rooms, r.Needs[n][at]))
					}
				}
				return
			}
			if len(pools) == 0 {
				return
			}
			slices.Sort(pools)
			key := fmt.Sprint(pools)
			k := slices.IndexFunc(all, func(c *carried) bool { return c.pools == key })
			if k < 0 {
				k = len(all)
				all = append(all, &carried{pools: key, rooms: rooms})
			}
			all[k].picks = append(all[k].picks, bound.Pick{Rider: i, Lists: slices.Clone(lists)})
		}
		from(0, nil, nil)
	}
	return all
}

// bothNeed are the pools of extras that run short, and that riders of both places
// can need.
func (x *relaxation) bothNeed(p, q *place) []*pool {
	var both []*pool
	for _, a := range p.extras {
		for _, b := range q.extras {
			if a.pool == b.pool && len(x.rooms[p][a.pool]) > 0 && !slices.Contains(both, a.pool) {
				both = append(both, a.pool)
			}
		}
	}
	return both
}
