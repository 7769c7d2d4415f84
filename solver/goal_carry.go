package solver

import (
	"maps"
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// carryGoal counts changes of seat between consecutive rides of a horse, and the
// horses of a date beyond the pieces of a set of alike ones.
func (e *encoder) carryGoal() ordered.Goal {
	goal := ordered.Goal{Name: "carry"}
	for _, h := range e.horses() {
		for d := e.w.From; d <= e.w.Until; d++ {
			goal.Softs = append(goal.Softs, e.seatChanges(h, d)...)
		}
	}
	goal.Softs = append(goal.Softs, e.shared()...)
	return goal
}

// ridden is one ride of a horse's date: one that may be, or a fact.
type ridden struct {
	start  model.Minute
	worked sat.Lit
	in     map[int]sat.Lit // by class of alike seats; none where a record does not name it
}

// seatChanges follows which seat a horse wore last, ride by ride: "the last is
// of that class" is a literal, and a ride that is in another one costs.
func (e *encoder) seatChanges(h *model.Horse, d model.Date) []ordered.Soft {
	day := e.ridesOf(h, d)
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

// changes is the literal that a ride is in another seat than the one before.
func (e *encoder) changes(x ridden, last map[int]sat.Lit, classes []int) sat.Lit {
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
			x := ridden{f.Start, e.s.Root(), map[int]sat.Lit{}}
			if seat := f.Turn.Seat; seat != nil {
				x.in[e.w.Alike(seat)] = x.worked
			}
			day = append(day, x)
		}
	}
	for _, p := range e.of[h] {
		if p.meeting.Date != d {
			continue
		}
		lits := map[int][]sat.Lit{}
		for _, o := range p.saddle {
			c := e.w.Alike(o.seat.one())
			lits[c] = append(lits[c], o.lit)
		}
		x := ridden{p.start, p.worked, map[int]sat.Lit{}}
		for _, c := range slices.Sorted(maps.Keys(lits)) {
			x.in[c] = p.worked
			if len(lits) > 1 {
				x.in[c] = e.s.Or(lits[c]...)
			}
		}
		day = append(day, x)
	}
	slices.SortStableFunc(day, func(a, b ridden) int { return int(a.start - b.start) })
	return day
}

// shared charges, for each set of alike pieces that is carried and each date,
// every horse beyond the number of its pieces.
func (e *encoder) shared() []ordered.Soft {
	var softs []ordered.Soft
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
	for _, c := range order {
		for d := e.w.From; d <= e.w.Until; d++ {
			softs = append(softs, e.sharedOn(d, c, byClass[c])...)
		}
	}
	return softs
}

func (e *encoder) sharedOn(d model.Date, class int, pools []*pool) []ordered.Soft {
	had := map[*model.Horse]bool{} // by facts
	for _, f := range e.w.Facts {
		if f.Date == d && f.Meeting != nil && slices.ContainsFunc(f.Turn.Pieces(), func(p *model.Piece) bool { return e.w.Alike(p) == class }) {
			had[f.Turn.Horse] = true
		}
	}
	wears := map[*model.Horse][]sat.Lit{}
	var horses []*model.Horse
	for _, p := range pools {
		for _, u := range e.uses[p.index] {
			if h := u.at.horse; u.at.meeting.Date == d && !had[h] {
				if wears[h] == nil {
					horses = append(horses, h)
				}
				wears[h] = append(wears[h], u.lit)
			}
		}
	}
	free := e.w.AlikePieces(class) - len(had)
	softs := e.constant(max(0, -free))
	if len(horses) <= free {
		return softs
	}
	var lits []sat.Lit
	for _, h := range horses {
		lits = append(lits, e.s.Or(wears[h]...))
	}
	count := e.s.NewCounter(e.s.Root(), lits...)
	for k := max(free, 0) + 1; k <= len(lits); k++ {
		softs = append(softs, ordered.Soft{Lit: count.AtLeast(k).Not(), Weight: 1, Stratum: e.stratum(d)})
	}
	return softs
}
