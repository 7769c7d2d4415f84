package solver

import (
	"context"
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
	asked, prices := false, down.Beside
	down.Patience = 1 // all of it is done soon on one date
	down.Beside = func(best sat.Model, upper int, found []ordered.Count) func(context.Context) ordered.Beside {
		priced := prices(best, upper, found)
		if asked {
			return priced
		}
		asked = true
		least := e.leastDown()
		return func(ctx context.Context) ordered.Beside {
			b := ordered.Beside{}
			if priced != nil {
				b = priced(ctx)
			}
			if b.Least < upper {
				b.Least = max(b.Least, least(ctx))
			}
			return b
		}
	}
}

// dueRides are those that some horse could carry.
func (e *encoder) dueRides() []*model.Ride {
	var due []*model.Ride
	for _, r := range e.w.Rides {
		if _, ok := e.seated[r]; ok && r.State == model.Open && r.Due {
			due = append(due, r)
		}
	}
	return due
}

// hours says under sel, of plans in which no more than so many due rides are on the
// ground, that the minutes which horses could carry riders and do not are no more
// than those rides leave over: each the longest, but for what it is shorter. Where
// they leave much it says nothing.
func (e *encoder) hours(sel sat.Lit, down int) {
	const plenty = 48 // units
	s := e.makeSpare()
	if s == nil {
		return
	}
	var parts []*sat.Counter
	key := ""
	left := 0
	for _, h := range s.horses {
		sets, _ := e.daySets(h.horse)
		most := longest(sets)
		left += most
		never := (h.most - most) / s.unit // by what is barred
		parts = append(parts, e.s.Unary(h.idle[never:]...))
		key += " " + strconv.Itoa(never)
	}
	due := e.dueRides()
	longest := model.Minute(0)
	for _, r := range due {
		longest = max(longest, r.End-r.Start)
		left -= int(r.End - r.Start)
	}
	for _, r := range due {
		parts = append(parts, e.s.Weigh(e.seated[r].Not(), int(longest-(r.End-r.Start))/s.unit))
		key += " " + strconv.Itoa(r.Index)
	}
	left += min(down, len(due)) * int(longest)
	switch {
	case left < 0: // there is no such plan
		e.s.Add(sel)
	case left/s.unit <= plenty:
		all := once(s.all, key, func() *sat.Counter { return e.s.Sum(e.s.Root(), parts...) })
		e.s.Add(sel, all.AtLeast(left/s.unit+1).Not())
	}
}
