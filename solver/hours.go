package solver

import (
	"context"
	"slices"
	"strconv"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// A repair of one date finds what each horse has left of its week fixed. Where the
// herd's last hours are nearly used up, who can be carried is a question of how
// rides of 30, 45 and 60 minutes go into them, which clauses about one horse at a
// time can only try out. So the search is told what arithmetic knows of all horses
// together.

// oneDate adds that to the goals of a repair of one date: who is stood down, and the
// goal after it.
func (e *encoder) oneDate(down, next *ordered.Goal) {
	if e.w.From != e.w.Until {
		return
	}
	down.Better = func(sel sat.Lit, below int) { e.hours(sel, below-1) }
	next.Given = func(sel sat.Lit, best sat.Model) {
		n := 0
		for _, r := range e.dueRides() {
			if !best.Value(e.seated[r]) {
				n++
			}
		}
		e.hours(sel, n)
	}
	asked := false
	down.Beside = func(sat.Model, int, []ordered.Count) func(context.Context) ordered.Beside {
		if asked {
			return nil
		}
		asked = true
		least := e.leastDown()
		return func(ctx context.Context) ordered.Beside { return ordered.Beside{Least: least(ctx)} }
	}
}

// dueRides are those that some horse could carry.
func (e *encoder) dueRides() []*model.Ride {
	var due []*model.Ride
	for _, r := range e.w.Rides {
		if _, ok := e.seated[r]; ok && r.Due {
			due = append(due, r)
		}
	}
	return due
}

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
			for _, i := range s.Stretches {
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

// hours says under sel, of plans in which no more than so many due rides are on the
// ground, that the minutes which horses could carry riders and do not are no more
// than those rides leave over. Where they leave much it says nothing.
func (e *encoder) hours(sel sat.Lit, down int) {
	const plenty = 24 // units
	left, unit := 0, 0
	var due []int
	for _, r := range e.dueRides() {
		due = append(due, int(r.End-r.Start))
		left -= int(r.End - r.Start)
	}
	slices.Sort(due)
	for _, n := range due[max(0, len(due)-down):] {
		left += n
	}
	sets, most := map[*model.Horse][]daySet{}, map[*model.Horse]int{}
	for _, h := range e.w.Centre.Horses {
		if len(e.of[h]) == 0 {
			continue
		}
		all, ok := e.daySets(h)
		if !ok {
			return
		}
		sets[h] = all
		for _, s := range all {
			most[h] = max(most[h], s.minutes)
			unit = divisor(unit, s.minutes)
		}
		left += most[h]
	}
	switch {
	case left < 0: // there is no such plan
		e.s.Add(sel)
		return
	case unit == 0 || left/unit > plenty:
		return
	}
	b := &budget{s: e.s, sel: sel, most: left / unit}
	for _, h := range e.w.Centre.Horses {
		if len(e.of[h]) == 0 {
			continue
		}
		ways := []way{{make([]bool, len(e.of[h])), most[h] / unit}}
		for _, s := range sets[h] {
			ways = append(ways, way{s.in, (most[h] - s.minutes) / unit})
		}
		b.horse(e.of[h], ways)
	}
	e.s.WeightedAtMost(sel, b.most, b.spent...)
}

func divisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// budget is what all horses together may leave unused.
type budget struct {
	s     *sat.Solver
	sel   sat.Lit
	most  int
	spent []sat.Term
}

// way to work a date: in which places, and what that leaves unused.
type way struct {
	in     []bool
	unused int
}

// horse adds a horse's ways to work.
func (b *budget) horse(places []*place, ways []way) {
	t := &horseBudget{budget: b, places: places, seen: map[string]sat.Lit{}}
	for range b.most {
		t.units = append(t.units, b.s.NewVar())
	}
	t.at(0, ways, 0)
	for _, l := range t.units {
		b.spent = append(b.spent, sat.Term{Lit: l, Weight: 1})
	}
}

// horseBudget follows a horse from place to place, and says as soon as that is sure
// that it leaves a unit unused.
type horseBudget struct {
	*budget
	places []*place
	units  []sat.Lit
	seen   map[string]sat.Lit
}

// at is a literal of a horse that comes to its i-th place with these ways left, of
// which so many units are told.
func (t *horseBudget) at(i int, ways []way, told int) sat.Lit {
	least, most := t.most+1, 0
	key := []byte(strconv.Itoa(i) + " " + strconv.Itoa(told))
	for _, w := range ways {
		least, most = min(least, w.unused), max(most, w.unused)
		key = strconv.AppendInt(append(key, ' '), int64(w.unused), 10)
		for _, in := range w.in[i:] {
			key = strconv.AppendBool(key, in)
		}
	}
	switch {
	case least > t.most:
		return t.s.Root().Not()
	case most <= told: // the rest is told already
		return t.s.Root()
	}
	if lit, ok := t.seen[string(key)]; ok {
		return lit
	}
	lit := t.s.Root()
	if i > 0 {
		lit = t.s.NewVar()
	}
	t.seen[string(key)] = lit
	for n := told; n < least; n++ {
		t.s.Add(t.sel, lit.Not(), t.units[n])
	}
	if i == len(t.places) {
		return lit
	}
	var with, without []way
	for _, w := range ways {
		if w.in[i] {
			with = append(with, w)
		} else {
			without = append(without, w)
		}
	}
	worked := t.places[i].worked
	t.s.Add(t.sel, lit.Not(), worked.Not(), t.at(i+1, with, least))
	t.s.Add(t.sel, lit.Not(), worked, t.at(i+1, without, least))
	return lit
}
