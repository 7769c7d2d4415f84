package solver

import (
	"maps"
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// carryGoal counts changes of seat between consecutive rides of a horse, and the
// horses of a date beyond the pieces of a set of alike ones. It is written down
// when its turn comes: its literals are a third of all.
func (e *encoder) carryGoal() ordered.Goal {
	days, shared := e.riddenDays(), e.shared()
	return ordered.Goal{Name: "carry",
		Value: func(m sat.Model) int {
			value := 0
			for _, day := range days {
				value += day.changes(m)
			}
			for _, s := range shared {
				value += s.beyond(m)
			}
			return value
		},
		Open: func(sat.Model) ([]ordered.Soft, int) { return e.carrySofts(), 0 }}
}

// carrySofts are made at the first asking.
func (e *encoder) carrySofts() []ordered.Soft {
	if e.carry == nil {
		for _, day := range e.riddenDays() {
			e.carry = append(e.carry, e.seatChanges(day)...)
		}
		for _, s := range e.shared() {
			e.carry = append(e.carry, e.chargeBeyond(s)...)
		}
	}
	return e.carry
}

// riddenDay is what a horse may be ridden in on a date, by start.
type riddenDay struct {
	date  model.Date
	rides []ridden
}

// ridden is one ride of a horse's date: one that may be, or a fact.
type ridden struct {
	start  model.Minute
	worked sat.Lit
	in     map[int][]sat.Lit // by class of alike seats: one of them is; none where a record does not name it
}

// riddenDays are those of every horse.
func (e *encoder) riddenDays() []riddenDay {
	var days []riddenDay
	for _, h := range e.horses() {
		for d := e.w.From; d <= e.w.Until; d++ {
			days = append(days, riddenDay{d, e.ridesOf(h, d)})
		}
	}
	return days
}

// changes of seat in a solution.
func (day riddenDay) changes(m sat.Model) int {
	n, last := 0, -1
	for _, x := range day.rides {
		if !m.Value(x.worked) {
			continue
		}
		now := -1
		for class, lits := range x.in {
			if slices.ContainsFunc(lits, m.Value) {
				now = class
			}
		}
		if now >= 0 && last >= 0 && now != last {
			n++
		}
		last = now
	}
	return n
}

// seatChanges follows which seat a horse wore last, ride by ride: "the last is
// of that class" is a literal, and a ride that is in another one costs.
func (e *encoder) seatChanges(of riddenDay) []ordered.Soft {
	d := of.date
	var day []riddenIn
	for _, x := range of.rides {
		day = append(day, e.riddenIn(x))
	}
	var softs []ordered.Soft
	last := map[int]sat.Lit{}
	var classes []int // of last, in order
	for i, x := range day {
		if i > 0 && len(x.in) > 0 {
			change := e.changes(x, last, classes)
			if change != e.s.Root().Not() {
				softs = append(softs, ordered.Soft{Lit: change.Not(), Weight: 1, Stratum: e.stratum(d)})
			}
		}
		for _, c := range slices.Sorted(maps.Keys(x.in)) {
			if !slices.Contains(classes, c) {
				classes = append(classes, c)
			}
		}
		now := map[int]sat.Lit{}
		for _, c := range classes {
			var ways []sat.Lit
			if in, ok := x.in[c]; ok {
				ways = append(ways, in)
			}
			if before, ok := last[c]; ok && x.worked != e.s.Root() {
				ways = append(ways, e.s.And(before, x.worked.Not()))
			}
			now[c] = e.s.Or(ways...)
		}
		last = now
	}
	return softs
}

// riddenIn is a ride with a literal for each class of seats.
type riddenIn struct {
	worked sat.Lit
	in     map[int]sat.Lit
}

func (e *encoder) riddenIn(x ridden) riddenIn {
	out := riddenIn{x.worked, map[int]sat.Lit{}}
	for _, c := range slices.Sorted(maps.Keys(x.in)) {
		out.in[c] = x.worked
		if len(x.in) > 1 {
			out.in[c] = e.s.Or(x.in[c]...)
		}
	}
	return out
}

// changes is the literal that a ride is in another seat than the one before.
func (e *encoder) changes(x riddenIn, last map[int]sat.Lit, classes []int) sat.Lit {
	var ways []sat.Lit
	for _, c := range classes {
		same, ok := x.in[c]
		if !ok {
			same = e.s.Root().Not()
		}
		if same == x.worked {
			continue // it can be in no other
		}
		ways = append(ways, e.s.And(last[c], x.worked, same.Not()))
	}
	return e.s.Or(ways...)
}

// ridesOf are the rides that a horse has or may have on a date, by start; works
// are skipped.
func (e *encoder) ridesOf(h *model.Horse, d model.Date) []ridden {
	var day []ridden
	for _, f := range e.facts[h] {
		if f.Date == d && f.Meeting != nil {
			x := ridden{f.Start, e.s.Root(), map[int][]sat.Lit{}}
			if seat := f.Turn.Seat; seat != nil {
				x.in[e.w.Alike(seat)] = []sat.Lit{x.worked}
			}
			day = append(day, x)
		}
	}
	for _, p := range e.of[h] {
		if p.meeting.Date != d {
			continue
		}
		x := ridden{p.start, p.worked, map[int][]sat.Lit{}}
		for _, o := range p.saddle {
			c := e.w.Alike(o.seat.one())
			x.in[c] = append(x.in[c], o.lit)
		}
		day = append(day, x)
	}
	slices.SortStableFunc(day, func(a, b ridden) int { return int(a.start - b.start) })
	return day
}

// shared is a set of alike pieces on a date: the horses that may wear one, by the
// literals of which one is then true, and the pieces that facts leave free; below
// 0 where facts alone need more.
type shared struct {
	date  model.Date
	wears [][]sat.Lit
	free  int
}

// shared are those of every set that is carried and every date.
func (e *encoder) shared() []shared {
	byClass := map[int][]*pool{}
	var order []int
	for _, p := range e.pools {
		if c := e.w.Alike(p.one()); p.one().IsCarried() {
			if byClass[c] == nil {
				order = append(order, c)
			}
			byClass[c] = append(byClass[c], p)
		}
	}
	var all []shared
	for _, c := range order {
		for d := e.w.From; d <= e.w.Until; d++ {
			all = append(all, e.sharedOn(d, c, byClass[c]))
		}
	}
	return all
}

func (e *encoder) sharedOn(d model.Date, class int, pools []*pool) shared {
	had := map[*model.Horse]bool{} // by facts
	for _, f := range e.w.Facts {
		if f.Date == d && f.Meeting != nil && slices.ContainsFunc(f.Turn.Pieces(), func(p *model.Piece) bool { return e.w.Alike(p) == class }) {
			had[f.Turn.Horse] = true
		}
	}
	s := shared{date: d, free: e.w.AlikePieces(class) - len(had)}
	at := map[*model.Horse]int{}
	for _, p := range pools {
		for _, u := range e.uses[p.index] {
			h := u.at.horse
			if u.at.meeting.Date != d || had[h] {
				continue
			}
			i, ok := at[h]
			if !ok {
				i = len(s.wears)
				at[h] = i
				s.wears = append(s.wears, nil)
			}
			s.wears[i] = append(s.wears[i], u.lit)
		}
	}
	return s
}

// beyond is how many horses there are beyond the pieces in a solution.
func (s shared) beyond(m sat.Model) int {
	n := -s.free
	for _, lits := range s.wears {
		if slices.ContainsFunc(lits, m.Value) {
			n++
		}
	}
	return max(n, 0)
}

// chargeBeyond charges every horse beyond the number of the pieces.
func (e *encoder) chargeBeyond(s shared) []ordered.Soft {
	softs := e.constant(max(0, -s.free))
	if len(s.wears) <= s.free {
		return softs
	}
	var lits []sat.Lit
	for _, wears := range s.wears {
		lits = append(lits, e.s.Or(wears...))
	}
	count := e.s.NewCounter(e.s.Root(), lits...)
	for k := max(s.free, 0) + 1; k <= len(lits); k++ {
		softs = append(softs, ordered.Soft{Lit: count.AtLeast(k).Not(), Weight: 1, Stratum: e.stratum(s.date)})
	}
	return softs
}
