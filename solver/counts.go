package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
)

// counts are facts about who stays on the ground that arithmetic knows before
// any search: rides that all overlap need as many horses, by Hall's theorem
// (P. Hall 1935, J. London Math. Soc. 10:26-30). For each moment of the week it
// matches the rides going on then to horses; of rides that no matching serves,
// those that compete for the same horses are a count. Counts over moments that
// share a ride are not added up, so each ride is in at most one.
func (e *encoder) counts() []ordered.Count {
	var counts []ordered.Count
	counted := map[*model.Ride]bool{}
	for _, m := range e.moments(func(r *model.Ride) bool { return r.State == model.Open }, func(*model.Stint) bool { return false }) {
		rides := slices.DeleteFunc(slices.Clone(m.rides), func(r *model.Ride) bool { return counted[r] })
		short, horses := e.hallViolator(rides)
		if len(short) <= horses {
			continue
		}
		c := ordered.Count{Least: len(short) - horses}
		for _, r := range short {
			counted[r] = true
			c.Lits = append(c.Lits, e.seated[r])
		}
		counts = append(counts, c)
	}
	return counts
}

// Short is how many rides of the week stay on the ground by arithmetic alone,
// with no search: a lower bound of the first goal.
func Short(w *model.Week) int {
	e := choices(w, nil, false)
	short := 0
	for _, r := range w.Rides {
		if r.State != model.Off && e.isSeated(r) == e.s.Root().Not() {
			short++
		}
	}
	for _, c := range e.counts() {
		short += c.Least
	}
	return short
}

// hallViolator finds, among rides of which a horse carries at most one, a set
// that has fewer horses than rides, with the number of its horses. It is empty
// where every ride can have a horse.
func (e *encoder) hallViolator(rides []*model.Ride) (short []*model.Ride, horses int) {
	return e.tooMuch(rides, func(*model.Horse) int { return 1 })
}

// tooMuch is the same where each horse carries at most as many as room says, with
// the number of rides that those horses can carry. What a session's question rules
// out counts for nothing.
func (e *encoder) tooMuch(rides []*model.Ride, room func(*model.Horse) int) (short []*model.Ride, carried int) {
	carries := map[*model.Horse][]*model.Ride{}
	var try func(r *model.Ride, seen map[*model.Horse]bool) bool
	try = func(r *model.Ride, seen map[*model.Horse]bool) bool {
		for _, on := range e.on_[r] {
			h := on.at.horse
			if seen[h] || e.barred[on.lit] {
				continue
			}
			seen[h] = true
			if len(carries[h]) < room(h) {
				carries[h] = append(carries[h], r)
				return true
			}
			for i, other := range carries[h] {
				if try(other, seen) {
					carries[h][i] = r
					return true
				}
			}
		}
		return false
	}
	var left []*model.Ride
	for _, r := range rides {
		if !try(r, map[*model.Horse]bool{}) {
			left = append(left, r)
		}
	}
	// The horses that an unserved ride reaches by alternating paths are full.
	reached, in := map[*model.Horse]bool{}, map[*model.Ride]bool{}
	for queue := left; len(queue) > 0; queue = queue[1:] {
		r := queue[0]
		if in[r] {
			continue
		}
		in[r] = true
		for _, on := range e.on_[r] {
			if h := on.at.horse; !reached[h] && !e.barred[on.lit] {
				reached[h] = true
				carried += len(carries[h])
				queue = append(queue, carries[h]...)
			}
		}
	}
	for _, r := range rides {
		if in[r] {
			short = append(short, r)
		}
	}
	return short, carried
}
