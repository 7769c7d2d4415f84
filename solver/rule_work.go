package solver

import (
	"tackwright/model"
	"tackwright/solver/sat"
)

// minute is the work of one minute at 100 %, in the unit of [model.Stint].Work.
const minute = 100 * 100

// days are the dates on which a horse may work, in order.
func (e *encoder) days(h *model.Horse) []model.Date {
	var ds []model.Date
	for day := range byDate(e.of[h]) {
		ds = append(ds, day[0].meeting.Date)
	}
	return ds
}

// daysWork keeps the work and the sessions of each date.
func daysWork(e *encoder, under under) {
	for _, h := range e.w.Centre.Horses {
		limits := e.w.LimitsOf(h)
		for _, d := range e.days(h) {
			day := e.diary(h, d)
			if limits.DayMinutes != 0 {
				e.dayMinutes(under(about{what: minutes, horse: h, date: d}), day, limits)
			}
			if limits.DaySessions != 0 {
				e.daySessions(under(about{what: sessions, horse: h, date: d}), day, limits.DaySessions)
			}
		}
	}
}

// dayState is how far a horse has come in a date: the work so far, the end of
// what it did last, and its sessions, as far as they are limited: a way with too
// many is forbidden without the sum of its minutes, and most sums are.
type dayState struct {
	work     int64
	last     model.Minute
	worked   bool
	open     bool // an open ride takes part
	sessions int
	parts    uint64 // of lessons in parts, those that are counted
}

func (e *encoder) dayMinutes(sel sat.Lit, day []entry, limits model.Limits) {
	limit := int64(limits.DayMinutes) * minute
	step := e.dayStep(day, limits)
	var alone dayState
	for _, x := range day {
		if x.fact {
			alone, _ = step(alone, x)
		}
	}
	if alone.work > limit { // facts alone exceed it: nothing may be added
		e.forbidAll(sel, day)
		return
	}
	walk(e.s, sel, day, dayState{}, step)
}

// dayStep follows the work of a date.
func (e *encoder) dayStep(day []entry, limits model.Limits) func(dayState, entry) (dayState, verdict) {
	limit, most := int64(limits.DayMinutes)*minute, limits.DaySessions
	if limit == 0 {
		limit = 1 << 62
	}
	if !e.premise("day's work") {
		most = 0
	}
	inParts := partsOf(day)
	return func(s dayState, x entry) (dayState, verdict) {
		if e.impossible(s.worked, s.last, x) {
			return s, moot
		}
		if most > 0 {
			bit := uint64(1) << (inParts[x.session] - 1) // 0 where it is not in parts
			if s.parts&bit == 0 {
				s.sessions++
				s.parts |= bit
			}
			if !x.fact && s.sessions > most {
				return s, moot
			}
		}
		if gap := x.start - s.last; s.worked && gap > 0 && gap < e.w.House.Rest {
			s.work += int64(gap) * minute
		}
		s.work += x.work
		s.last, s.worked, s.open = max(s.last, x.end), true, s.open || !x.fact
		return s, kept(s.work <= limit || !s.open)
	}
}

func (e *encoder) forbidAll(sel sat.Lit, day []entry) {
	for _, x := range day {
		if !x.fact {
			e.s.Add(sel, x.lit.Not())
		}
	}
}

func (e *encoder) daySessions(sel sat.Lit, day []entry, limit int) {
	lits := map[*model.Meeting][]sat.Lit{}
	var order []*model.Meeting
	fixed := map[*model.Meeting]bool{}
	for _, x := range day {
		switch {
		case x.fact && x.session == nil:
			limit--
		case x.fact:
			if !fixed[x.session] {
				fixed[x.session] = true
				limit--
			}
		default:
			if lits[x.session] == nil {
				order = append(order, x.session)
			}
			lits[x.session] = append(lits[x.session], x.lit)
		}
	}
	if limit < 0 {
		e.forbidAll(sel, day)
		return
	}
	var held []sat.Lit
	for _, m := range order {
		if !fixed[m] {
			held = append(held, e.s.Any(lits[m]...))
		}
	}
	e.s.AtMost(sel, limit, held...)
}

// runState is a run of work so far: when it began, when it last ended, and the
// sessions in it. Those of a lesson in parts are told apart, as bits.
type runState struct {
	start, last model.Minute
	worked      bool
	open        bool
	sessions    int
	parts       uint64
	day         int    // sessions of the date, as far as day's work limits them
	dayParts    uint64 // of those
}

// runOfWork keeps the clock time and the sessions of each run.
func runOfWork(e *encoder, under under) {
	for _, h := range e.w.Centre.Horses {
		limits := e.w.LimitsOf(h)
		if limits.RunMinutes == 0 && limits.RunSessions == 0 {
			continue
		}
		for _, d := range e.days(h) {
			e.runs(under(about{horse: h, date: d}), e.diary(h, d), limits)
		}
	}
}

func (e *encoder) runs(sel sat.Lit, day []entry, limits model.Limits) {
	walk(e.s, sel, day, runState{}, e.runStep(day, limits))
}

// runStep follows the runs of a date.
func (e *encoder) runStep(day []entry, limits model.Limits) func(runState, entry) (runState, verdict) {
	inParts, most := partsOf(day), limits.DaySessions
	if !e.premise("day's work") {
		most = 0
	}
	return func(s runState, x entry) (runState, verdict) {
		if e.impossible(s.worked, s.last, x) {
			return s, moot
		}
		if !s.worked || x.start-s.last >= e.w.House.Rest {
			s = runState{start: x.start, last: x.end, worked: true, day: s.day, dayParts: s.dayParts}
		}
		s.last = max(s.last, x.end)
		s.open = s.open || !x.fact
		bit := uint64(1) << (inParts[x.session] - 1) // 0 where it is not in parts
		if s.parts&bit == 0 {
			s.sessions++
			s.parts |= bit
		}
		if most > 0 && s.dayParts&bit == 0 {
			s.day++
			s.dayParts |= bit
		}
		if !x.fact && most > 0 && s.day > most {
			return s, moot
		}
		tooLong := limits.RunMinutes != 0 && int(s.last-s.start) > limits.RunMinutes
		tooMany := limits.RunSessions != 0 && s.sessions > limits.RunSessions
		return s, kept(!s.open || !tooLong && !tooMany)
	}
}

// partsOf numbers, from 1, the lessons of which a diary has more than one part.
func partsOf(day []entry) map[*model.Meeting]uint {
	n, number := map[*model.Meeting]int{}, map[*model.Meeting]uint{}
	for _, x := range day {
		if x.session == nil {
			continue
		}
		if n[x.session]++; n[x.session] == 2 {
			number[x.session] = uint(len(number) + 1)
		}
	}
	return number
}

// weeksWork keeps the work and the dates of each calendar week, and the dates in
// a row.
func weeksWork(e *encoder, under under) {
	defer e.s.Mark(e.s.Mark(sat.Across))
	for _, h := range e.w.Centre.Horses {
		first := e.w.From.WeekStart(e.w.House.WeekStarts)
		for ; first <= e.w.Until; first += 7 {
			e.calendarWeek(under, h, first)
		}
		e.rowOfDates(under, h)
	}
}

// ofWeek is the work of facts in the calendar week from first on, and its dates.
func ofWeek(facts []*model.Stint, first model.Date) (work int64, dates map[model.Date]bool) {
	dates = map[model.Date]bool{}
	for _, f := range facts {
		if first <= f.Date && f.Date < first+7 {
			work += f.Work
			dates[f.Date] = true
		}
	}
	return work, dates
}

func (e *encoder) calendarWeek(under under, h *model.Horse, first model.Date) {
	limits := e.w.LimitsOf(h)
	in := func(d model.Date) bool { return first <= d && d < first+7 }
	done, fact := ofWeek(e.facts[h], first)
	work, days := int64(limits.WeekMinutes)*minute-done, limits.WeekDays-len(fact)
	var terms []sat.Term
	var worksOn []sat.Lit
	for day := range byDate(e.of[h]) {
		if !in(day[0].meeting.Date) {
			continue
		}
		var worked []sat.Lit
		for _, p := range day {
			terms = append(terms, sat.Term{Lit: p.worked, Weight: int(e.w.WorkOf(p.rides[0].ride, h))})
			worked = append(worked, p.worked)
		}
		if !fact[day[0].meeting.Date] {
			worksOn = append(worksOn, e.s.Any(worked...))
		}
	}
	none := func(sel sat.Lit) { // facts alone exceed it: nothing may be added
		for _, t := range terms {
			e.s.Add(sel, t.Lit.Not())
		}
	}
	inMinutes, inDates := about{what: minutes, horse: h, date: first}, about{what: dates, horse: h, date: first}
	switch {
	case limits.WeekMinutes != 0 && work < 0:
		none(under(inMinutes))
	case limits.WeekMinutes != 0:
		e.s.WeightedAtMost(under(inMinutes), int(work), terms...)
	}
	switch {
	case limits.WeekDays != 0 && days < 0:
		none(under(inDates))
	case limits.WeekDays != 0:
		e.s.AtMost(under(inDates), days, worksOn...)
	}
}

// rowOfDates forbids, of any dates in a row one more than the limit, that all
// are worked.
func (e *encoder) rowOfDates(under under, h *model.Horse) {
	limit := e.w.LimitsOf(h).RowDates
	if limit == 0 {
		return
	}
	fact := map[model.Date]bool{}
	for _, f := range e.facts[h] {
		fact[f.Date] = true
	}
	worked := map[model.Date][]sat.Lit{}
	for _, p := range e.of[h] {
		worked[p.meeting.Date] = append(worked[p.meeting.Date], p.worked)
	}
	any := map[model.Date]sat.Lit{}
	for d := e.w.From; d <= e.w.Until; d++ {
		any[d] = e.s.Any(worked[d]...)
	}
	for first := e.w.From - model.Date(limit); first <= e.w.Until; first++ {
		sel := under(about{what: inARow, horse: h, date: first})
		var not []sat.Lit
		open, never := false, false
		for d := first; d <= first+model.Date(limit); d++ {
			open = open || worked[d] != nil
			switch {
			case fact[d]:
			case worked[d] != nil:
				not = append(not, any[d].Not())
			default:
				never = true // a date on which it cannot work ends the row
			}
		}
		switch {
		case never || !open:
		case len(not) > 0:
			e.s.Add(sel, not...)
		default: // facts alone exceed it: nothing may be added
			for d := first; d <= first+model.Date(limit); d++ {
				for _, l := range worked[d] {
					e.s.Add(sel, l.Not())
				}
			}
		}
	}
}
