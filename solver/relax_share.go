package solver

import (
	"slices"

	"tackwright/solver/bound"
)

// share finds what a horse can go on with from place to place of a day: extras
// that the riders of both need, while they could not yet be on another horse.
func (x *relaxation) share(day *bound.Day, stretches []stretch) {
	type key struct{ from, to, place, pool int }
	made := map[key]int{}
	add := func(set *bound.Set, k key, p, q *place) {
		n, ok := made[k]
		if !ok {
			n = -1
			pool := x.pools[k.pool]
			s := bound.Share{From: k.from, To: k.to, Place: k.place, First: x.picks(day.Stretches[k.from].Places[k.place], pool)}
			later := 0
			if k.from == k.to {
				later = k.place + 1
			}
			s.Second = x.picks(day.Stretches[k.to].Places[later], pool)
			for _, room := range x.rooms[p][pool] {
				if slices.Contains(x.rooms[q][pool], room) {
					s.Things = append(s.Things, room)
				}
			}
			if len(s.Things) > 0 && len(s.First) > 0 && len(s.Second) > 0 {
				n = len(day.Shares)
				day.Shares = append(day.Shares, s)
				if k.from == k.to {
					day.Stretches[k.from].Within = append(day.Stretches[k.from].Within, n)
				}
			}
			made[k] = n
		}
		if n >= 0 {
			set.Shares = append(set.Shares, n)
		}
	}
	for i := range day.Sets {
		set := &day.Sets[i]
		for a, from := range set.Stretches {
			places := stretches[from].places
			for n, p := range places {
				to, next := from, n+1
				switch {
				case next < len(places):
				case a+1 < len(set.Stretches):
					to, next = set.Stretches[a+1], 0
				default:
					continue
				}
				q := stretches[to].places[next]
				if q.start-p.end >= x.w.House.Move {
					continue
				}
				for _, pool := range x.bothNeed(p, q) {
					add(set, key{from, to, n, pool.index}, p, q)
				}
			}
		}
	}
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

// picks are the riders of a place who need a piece of the pool, and where.
func (x *relaxation) picks(riders []bound.Rider, pool *pool) []bound.Pick {
	var picks []bound.Pick
	for i := range riders {
		for n, meets := range x.meets[riders[i].Pair] {
			if at := slices.Index(meets, pool); at >= 0 {
				picks = append(picks, bound.Pick{Rider: i, Need: n, List: at})
			}
		}
	}
	return picks
}
