package model

import (
	"cmp"
	"fmt"
	"slices"
)

// grounderLooksBack is how many dates back a rider's latest ride is looked for.
const grounderLooksBack = 120

// facts gathers what stands around the open rides: works, started rides, and
// what was ridden or posted on the other dates that a limit can reach.
func (k *weekMaker) facts() {
	lo, hi := k.reach()
	for d := lo; d <= hi; d++ {
		told := k.record.on(d)
		for i, t := range told {
			if d < k.From || d > k.Until {
				k.fact(t, nil)
			} else if k.hasStarted(d, t.Start) {
				k.started(t, k.rideOf(told, i))
			}
		}
		for _, x := range k.record.works(k.Centre, d) {
			k.work(d, x)
		}
	}
	for _, r := range k.Rides {
		if r.State == Open && k.hasStarted(r.Date(), r.Start) {
			r.State, r.OffWhy, r.Past = Off, "the hour is past and nothing was posted for it", true
		}
	}
	slices.SortStableFunc(k.Facts, compareStints)
	k.lookBack()
}

func compareStints(a, b *Stint) int {
	return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Start, b.Start), cmp.Compare(a.Turn.Horse.Name, b.Turn.Horse.Name))
}

// reach is the span of dates whose work counts in some limit of the week: its
// calendar weeks, and the dates of any run of dates.
func (k *weekMaker) reach() (lo, hi Date) {
	row := Date(1)
	for _, h := range k.Centre.Horses {
		row = max(row, Date(h.Limits.Or(k.House.Limits).RowDates))
	}
	lo = min(k.From.WeekStart(k.House.WeekStarts), k.From-row)
	hi = max(k.Until.WeekStart(k.House.WeekStarts)+6, k.Until+row)
	return lo, hi
}

func (w *Week) hasStarted(d Date, start Minute) bool {
	return !w.Now.IsZero() && !w.Now.Before(Instant{d, start})
}

// started makes the ride that was told a fact; nil is none of the week's.
func (k *weekMaker) started(t Told, r *Ride) {
	if r != nil {
		r.State, r.OffWhy, r.Told = Started, "", t.Turn
		r.Start, r.End = t.Start, t.End
	}
	k.fact(t, r)
}

// rideOf is the ride that was told, of one rider in one lesson: the one at that
// start; else, where it has another start now, in the order of those that have.
// An extra ride is another one than what was told her besides.
func (k *weekMaker) rideOf(told []Told, i int) *Ride {
	t := told[i]
	var hers []*Ride
	for _, r := range k.Rides {
		if r.Date() == t.Date && r.Meeting.Lesson == t.Lesson && r.Rider == t.Rider && r.State != Started {
			hers = append(hers, r)
		}
	}
	at := func(start Minute) int {
		return slices.IndexFunc(hers, func(r *Ride) bool { return r.Start == start })
	}
	if found := at(t.Start); found >= 0 {
		return hers[found]
	}
	for n, u := range told {
		if u.Lesson != t.Lesson || u.Rider != t.Rider || n == i {
			continue
		}
		if t.Extra {
			return nil
		}
		if found := at(u.Start); found >= 0 {
			hers = slices.Delete(hers, found, found+1)
		}
	}
	if len(hers) == 0 {
		return nil
	}
	return hers[0]
}

func (k *weekMaker) fact(t Told, ride *Ride) {
	if t.Turn == nil {
		return
	}
	s := &Stint{Date: t.Date, Start: t.Start, End: t.End, Turn: t.Turn, Rider: t.Rider, Arena: t.Arena,
		Ride: ride, Work: t.Work}
	if ride != nil {
		s.Meeting = ride.Meeting
	} else {
		s.Meeting = k.meetingOf(t)
	}
	who := "a rider"
	if t.Rider != nil {
		who = t.Rider.Called()
	}
	s.Name = fmt.Sprintf("%s %s %s", t.Date.Words(), k.clock(t.Start), who)
	s.endWhenOut()
	k.Facts = append(k.Facts, s)
}

// endWhenOut ends a fact in the minute in which its horse goes out.
func (s *Stint) endWhenOut() {
	for _, o := range s.Turn.Horse.Out {
		if o.From.Date == s.Date && s.Start < o.From.Minute && o.From.Minute < s.End && o.Meets(s.Date, s.Start, s.End) {
			s.Work = s.Work / int64(s.End-s.Start) * int64(o.From.Minute-s.Start)
			s.End = o.From.Minute
		}
	}
}

// meetingOf is the meeting that a posted ride was part of.
func (k *weekMaker) meetingOf(t Told) *Meeting {
	for _, m := range k.Meetings {
		if m.Date == t.Date && m.Name == t.LessonName {
			return m
		}
	}
	for _, s := range k.Facts {
		if m := s.Meeting; m != nil && m.Date == t.Date && m.Name == t.LessonName {
			return m
		}
	}
	return &Meeting{Lesson: t.Lesson, Name: t.LessonName, Date: t.Date, Start: t.Start, End: t.End,
		Arena: t.Arena, Instructor: t.Instructor, Hands: NoHands}
}

// work makes a work a fact, unless it is suspended: that is told where it is on
// a date planned.
func (k *weekMaker) work(d Date, x *Work) {
	s, why := k.record.work(d, x, d < k.From || k.hasStarted(d, x.Start))
	s.Name = k.workName(s, x)
	switch {
	case why == "":
		k.Facts = append(k.Facts, s)
	case k.From <= d && d <= k.Until:
		k.Suspended = append(k.Suspended, s.Name+": "+why)
	}
}

// lookBack finds who was on the ground at her latest ride before the week.
func (k *weekMaker) lookBack() {
	k.grounded = map[*Rider]bool{}
	seen := map[*Rider]bool{}
	for d := k.From - 1; d > k.From-grounderLooksBack && len(k.Centre.Posted) > 0; d-- {
		told := k.record.on(d)
		slices.SortStableFunc(told, func(a, b Told) int { return cmp.Compare(b.Start, a.Start) })
		for _, t := range told {
			if t.Rider != nil && !seen[t.Rider] {
				seen[t.Rider] = true
				k.grounded[t.Rider] = t.Turn == nil
			}
		}
	}
}

// turn is the horse of a work and the tack that it names.
func (x *Work) turn() *Turn {
	return &Turn{Horse: x.Horse, Seat: x.Seat, Pads: x.Pads, Girth: x.Girth}
}
