package solver

import (
	"fmt"
	"math"

	"tackwright/model"
)

// WorkCount is a reason by arithmetic, which a search would be long in finding: what
// rides come to, and what the horses that can carry them can work within their own
// limits and the facts, whatever of it is ridden when. Nothing says that fewer rides
// would do.
type WorkCount struct {
	Horses      []*model.Horse // in the order of the centre
	Needs, Left int            // minutes at 100 %, rounded up and down
}

// tooMuchWork counts the work of all open rides of a week; nil is that it is not too
// much, or not known to be.
func tooMuchWork(w *model.Week, r *model.Ride) *Reason {
	e := choices(w, nil, false)
	f, ok := e.newFlow()
	if !ok || len(e.on_[r]) == 0 {
		return nil
	}
	for _, x := range w.Rides {
		if x != r && len(e.on_[x]) > 0 {
			f.pour(x)
		}
	}
	if f.pour(r) == 0 {
		return nil
	}
	return f.full(r)
}

// A flow pours the work of rides into what horses can work: into a date of a horse,
// and from there into its week. What cannot be poured is too much; as a ride may be
// split, what can be poured need not fit. Work is in the unit of [model.Stint].Work.
type flow struct {
	e       *encoder
	days    map[horseDate]*vessel
	ofHorse map[*model.Horse][]*vessel // its dates, in order
}

// vessel is a horse's date, or its calendar week.
type vessel struct {
	horse  *model.Horse
	room   int64
	left   int64   // of its room
	week   *vessel // of a date
	poured map[*model.Ride]int64
	seen   bool
}

// newFlow has empty vessels. It reports false where a horse has too many ways to
// work in a date.
func (e *encoder) newFlow() (*flow, bool) {
	f := &flow{e: e, days: map[horseDate]*vessel{}, ofHorse: map[*model.Horse][]*vessel{}}
	for _, h := range e.w.Centre.Horses {
		for first := e.w.From.WeekStart(e.w.House.WeekStarts); first <= e.w.Until; first += 7 {
			if !e.fill(f, h, first) {
				return nil, false
			}
		}
	}
	return f, true
}

// fill makes the vessels of a horse in the calendar week from first on: by the sets
// of places that it can work in a date, and of those sums that its week allows.
func (e *encoder) fill(f *flow, h *model.Horse, first model.Date) bool {
	limits := e.w.LimitsOf(h)
	done, worked := ofWeek(e.facts[h], first)
	most := int64(math.MaxInt64)
	if limits.WeekMinutes != 0 {
		most = int64(limits.WeekMinutes)*minute - done
	}
	dates := 7
	if limits.WeekDays != 0 {
		dates = limits.WeekDays - len(worked)
	}
	week := &vessel{horse: h}
	sums := map[daysAndWork]bool{{}: true}
	for day := range byDate(e.of[h]) {
		d := day[0].meeting.Date
		if d < first || d >= first+7 {
			continue
		}
		_, sets, ok := e.sets(h, day, tooMany)
		if !ok {
			return false
		}
		v := &vessel{horse: h, week: week, poured: map[*model.Ride]int64{}}
		works := map[int64]bool{}
		for _, s := range sets {
			works[s.work] = true
			v.left = max(v.left, s.work)
		}
		v.room = v.left
		f.days[horseDate{h, d}] = v
		f.ofHorse[h] = append(f.ofHorse[h], v)
		more := map[daysAndWork]bool{}
		for x := range sums {
			for work := range works {
				y := daysAndWork{x.days + 1, x.work + work}
				if worked[d] {
					y.days--
				}
				if y.days <= dates && y.work <= most {
					more[y] = true
				}
			}
		}
		for y := range more {
			sums[y] = true
		}
		if len(sums) > tooMany {
			return false
		}
	}
	for x := range sums {
		week.left = max(week.left, x.work)
	}
	week.room = week.left
	return true
}

// daysAndWork is what a horse's week can come to.
type daysAndWork struct {
	days int
	work int64
}

// needs is the work of a ride on the horse on which it is least.
func (f *flow) needs(r *model.Ride) int64 {
	least := int64(math.MaxInt64)
	for _, on := range f.e.on_[r] {
		least = min(least, f.e.w.WorkOf(r, on.at.horse))
	}
	return least
}

// pour pours a ride and returns what does not go in.
func (f *flow) pour(r *model.Ride) int64 {
	left := f.needs(r)
	for left > 0 {
		for _, v := range f.days {
			v.seen, v.week.seen = false, false
		}
		n := f.path(r, left)
		if n == 0 {
			break
		}
		left -= n
	}
	return left
}

// path pours some of a ride, at most so much, into one date; 0 is that nothing goes.
func (f *flow) path(r *model.Ride, most int64) int64 {
	for _, on := range f.e.on_[r] {
		v := f.days[horseDate{on.at.horse, r.Date()}]
		if v == nil || v.seen {
			continue
		}
		v.seen = true
		if n := f.into(v, most); n > 0 {
			v.poured[r] += n
			return n
		}
	}
	return 0
}

// into makes room in a date, at most so much: it has some, and so has its week; or
// a ride of another date makes room in the week, or one of this date gives way.
func (f *flow) into(v *vessel, most int64) int64 {
	if n := min(most, v.left); n > 0 {
		if m := f.intoWeek(v, n); m > 0 {
			v.left -= m
			return m
		}
	}
	return f.giveWay(v, most)
}

func (f *flow) intoWeek(v *vessel, most int64) int64 {
	week := v.week
	if n := min(most, week.left); n > 0 {
		week.left -= n
		return n
	}
	if week.seen {
		return 0
	}
	week.seen = true
	for _, o := range f.ofHorse[v.horse] {
		if o.week == week && !o.seen {
			o.seen = true
			if m := f.giveWay(o, most); m > 0 {
				o.left += m
				return m
			}
		}
	}
	return 0
}

// giveWay takes some of a date's rides elsewhere.
func (f *flow) giveWay(v *vessel, most int64) int64 {
	for _, x := range f.in(v) {
		if m := f.path(x, min(most, v.poured[x])); m > 0 {
			v.poured[x] -= m
			return m
		}
	}
	return 0
}

// in are the rides that are poured into a date, in the order of the week.
func (f *flow) in(v *vessel) (rides []*model.Ride) {
	for _, r := range f.e.w.Rides {
		if v.poured[r] > 0 {
			rides = append(rides, r)
		}
	}
	return rides
}

// full is the reason that is left where nothing more of a ride goes in: what it has
// come to look at is full, of rides that can go nowhere else.
func (f *flow) full(r *model.Ride) *Reason {
	reason := &Reason{Asked: r, Work: &WorkCount{}}
	var needs, left int64
	for _, x := range f.e.w.Rides {
		in := x == r
		for _, on := range f.e.on_[x] {
			v := f.days[horseDate{on.at.horse, x.Date()}]
			in = in || v != nil && v.seen && v.poured[x] > 0
		}
		if in {
			needs += f.needs(x)
			if x != r {
				reason.Rides = append(reason.Rides, x)
			}
		}
	}
	for _, h := range f.e.w.Centre.Horses {
		counted := map[*vessel]bool{}
		for _, v := range f.ofHorse[h] {
			if v.week.seen {
				v = v.week
			}
			if v.seen && !counted[v] {
				counted[v] = true
				left += v.room
			}
		}
		if len(counted) > 0 {
			reason.Work.Horses = append(reason.Work.Horses, h)
		}
	}
	reason.Work.Needs, reason.Work.Left = int((needs+minute-1)/minute), int(left/minute)
	for _, rule := range []string{"horse in one place", "day's work", "run of work", "week's work"} {
		for _, h := range reason.Work.Horses {
			reason.Limits = append(reason.Limits, limitOf(about{rule: rule, horse: h}))
		}
	}
	return reason
}

// workWords tell of a reason that is a matter of minutes.
func (r *Reason) workWords(w *model.Week) []string {
	first, last := r.Asked.Date(), r.Asked.Date()
	for _, x := range r.Rides {
		first, last = min(first, x.Date()), max(last, x.Date())
	}
	when := "on " + first.Words()
	if last > first {
		when = "from " + first.Words() + " to " + last.Words()
	}
	riders := r.rides(w)
	if len(r.Rides) > mostNamed {
		riders = counting(len(r.Rides), "other ride")
	}
	horses := namesOf(r.Work.Horses, func(h *model.Horse) string { return h.Name })
	switch n := len(r.Work.Horses); {
	case n == len(w.Centre.Horses) && n > 1:
		horses = fmt.Sprintf("All %d horses", n)
	case n > mostNamed:
		horses = fmt.Sprintf("The %d horses that can carry them", n)
	}
	return []string{
		fmt.Sprintf("%s and %s that go on riding come to %d minutes of work %s.", r.Asked.Rider.Called(), riders, r.Work.Needs, when),
		fmt.Sprintf("%s can work %d of that together, within their limits and with time to change tack.", horses, r.Work.Left),
	}
}

// mostNamed is how many are named where there are many: the others are counted.
const mostNamed = 8
