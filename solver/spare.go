package solver

import (
	"slices"
	"strconv"

	"tackwright/model"
	"tackwright/solver/sat"
)

// daySet is places that a horse can work together on the one date of a week, without
// the empty set, and how long it carries riders then.
type daySet struct {
	in      []bool // of the horse's places
	minutes int
}

// daySets of a horse, by its limits, what it does on other dates, and what is not
// barred. It reports false where there are too many to look at.
func (e *encoder) daySets(h *model.Horse) ([]daySet, bool) {
	const tooMany = 2000
	places := e.of[h]
	all := once(e.days_, h, func() []daySet {
		stretches, sets, ok := e.sets(h, places, tooMany)
		if !ok {
			return nil
		}
		all := make([]daySet, len(sets))
		for k, s := range sets {
			all[k].in = make([]bool, len(places))
			for _, i := range s.stretches {
				for _, p := range stretches[i].places {
					all[k].in[slices.Index(places, p)] = true
					all[k].minutes += int(p.end - p.start)
				}
			}
		}
		return all
	})
	if all == nil {
		return nil, false
	}
	if len(e.barred) == 0 {
		return all, true
	}
	idle := make([]bool, len(places)) // nobody can ride there
	for i, p := range places {
		idle[i] = !slices.ContainsFunc(p.rides, func(on rideOn) bool { return !e.barred[on.lit] })
	}
	var open []daySet
	for _, s := range all {
		if !meets(s.in, idle) {
			open = append(open, s)
		}
	}
	return open, true
}

func meets(a, b []bool) bool {
	for i := range a {
		if a[i] && b[i] {
			return true
		}
	}
	return false
}

func longest(sets []daySet) int {
	most := 0
	for _, s := range sets {
		most = max(most, s.minutes)
	}
	return most
}

// spare is what horses leave unused on the one date of a week, in units of so many
// minutes, of what they could work on it.
type spare struct {
	s      *sat.Solver
	unit   int
	horses []*horseSpare
	all    map[string]*sat.Counter // by how much of each horse's is barred
}

// horseSpare is a horse's: of most minutes it leaves k+1 units when idle[k], or it may
// leave fewer and idle[k] be true.
type horseSpare struct {
	*spare
	horse  *model.Horse
	places []*place
	most   int
	idle   []sat.Lit
	seen   map[string]sat.Lit
}

// makeSpare makes it; nil where a horse has too many ways to work, or none has any.
func (e *encoder) makeSpare() *spare {
	if e.spare != nil {
		return e.spare
	}
	barred := e.barred
	e.barred = nil
	defer func() { e.barred = barred }()
	s := &spare{s: e.s, all: map[string]*sat.Counter{}}
	var ways [][]daySet
	for _, h := range e.w.Centre.Horses {
		if len(e.of[h]) == 0 {
			continue
		}
		sets, ok := e.daySets(h)
		if !ok {
			return nil
		}
		for _, x := range sets {
			s.unit = divisor(s.unit, x.minutes)
		}
		s.horses = append(s.horses, &horseSpare{spare: s, horse: h, places: e.of[h], most: longest(sets), seen: map[string]sat.Lit{}})
		ways = append(ways, append(slices.Clone(sets), daySet{in: make([]bool, len(e.of[h]))}))
	}
	if s.unit == 0 {
		return nil
	}
	for i, h := range s.horses {
		for n := 0; n < h.most; n += s.unit {
			h.idle = append(h.idle, e.s.NewVar())
		}
		h.at(0, ways[i], 0)
	}
	e.spare = s
	return s
}

func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// at follows a horse from place to place, and says as soon as that is sure that it
// leaves a unit unused: a literal of a horse that comes to its i-th place with these
// ways left, of which so many units are told.
func (h *horseSpare) at(i int, ways []daySet, told int) sat.Lit {
	least, most := h.most, 0
	key := []byte(strconv.Itoa(i) + " " + strconv.Itoa(told))
	for _, w := range ways {
		unused := (h.most - w.minutes) / h.unit
		least, most = min(least, unused), max(most, unused)
		key = strconv.AppendInt(append(key, ' '), int64(unused), 10)
		for _, in := range w.in[i:] {
			key = strconv.AppendBool(key, in)
		}
	}
	if most <= told { // no more is to be told
		return h.s.Root()
	}
	if lit, ok := h.seen[string(key)]; ok {
		return lit
	}
	lit := h.s.Root()
	if i > 0 {
		lit = h.s.NewVar()
	}
	h.seen[string(key)] = lit
	for n := told; n < least; n++ {
		h.s.Add(h.s.Root(), lit.Not(), h.idle[n])
	}
	if i == len(h.places) {
		return lit
	}
	var with, without []daySet
	for _, w := range ways {
		if w.in[i] {
			with = append(with, w)
		} else {
			without = append(without, w)
		}
	}
	worked := h.places[i].worked
	h.s.Add(h.s.Root(), lit.Not(), worked.Not(), h.at(i+1, with, least))
	h.s.Add(h.s.Root(), lit.Not(), worked, h.at(i+1, without, least))
	return lit
}
