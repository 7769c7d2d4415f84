package model

import (
	"fmt"
	"slices"
)

// Workload is the written daily record of one horse (SI 2018/486 Sch. 5 para
// 6(3)) over some dates, against its limits. Its sums are those of the audit.
type Workload struct {
	Horse  *Horse
	Limits Limits     // 0: none
	Dates  []WorkDate // on which work was planned or done, in order
	Weeks  []WorkWeek // calendar weeks that the dates touch and in which it works
	Over   []string   // what the audit says of its limits, in words
}

// OverDay reports whether the work of one of its dates exceeds the limit of a day.
func (x *Workload) OverDay(d WorkDate) bool { return over(d.Work, x.Limits.DayMinutes) }

// WorkDate is one date of a horse. Planned is as last posted, and the works
// that the folder plans; done is as posted and noted and, where a person has
// closed the date, as she recorded.
type WorkDate struct {
	Date          Date
	Closed        *Ridden // nil: nobody has closed it: not confirmed
	ToCome        bool    // nobody can close it yet
	Planned, Done []WorkPiece
	PlannedWork   int64 // see [InHours]
	Work          int64
	Sessions      int
	Runs          []WorkRun // with no rest between, in order
	Row           int       // dates worked in a row, with this one; 0: it did not work
	Over          []string  // names of the limits of a date that are exceeded: rules
}

// WorkPiece is one ride or other work of a horse.
type WorkPiece struct {
	Start, End Minute
	What       string // name of the lesson, or kind of the work
}

// WorkRun is a run of work: no gap in it is a rest.
type WorkRun struct {
	Start, End Minute
	Sessions   int
}

// WorkWeek is a whole calendar week, whatever part of it the record is of.
type WorkWeek struct {
	From  Date
	Work  int64
	Dates int
	Over  bool
}

// Workloads are the records of all horses, in the order of the centre, for the
// dates from and until, both counted. now divides what has been done from what
// is to come: that is as posted.
func (c *Centre) Workloads(from, until Date, now Instant) []*Workload {
	m := &workloadMaker{Centre: c, from: from, until: until, now: now, whats: map[*Stint]string{}}
	planned, done := m.ledger((*workloadMaker).planned), m.ledger((*workloadMaker).done)
	for _, r := range []*Rule{daysWork, runOfWork, weeksWork} {
		done.rule = r
		r.audit(done)
	}
	closed := map[Date]*Ridden{}
	for _, r := range c.Ridden {
		closed[r.Date] = r
	}
	var all []*Workload
	for _, h := range c.Horses {
		x := &Workload{Horse: h, Limits: done.LimitsOf(h)}
		row := map[Date]int{}
		for _, r := range done.rows(h) {
			for i, d := range dates(r) {
				row[d] = i + 1
			}
		}
		for d := from; d <= until; d++ {
			plan, did := planned.onDate(h, d), done.onDate(h, d)
			if len(plan)+len(did) == 0 {
				continue
			}
			x.Dates = append(x.Dates, WorkDate{Date: d, Closed: closed[d], ToCome: d > m.now.Date, Planned: m.pieces(plan), Done: m.pieces(did),
				PlannedWork: planned.DayWork(plan), Work: done.DayWork(did), Sessions: sessions(did), Runs: done.runsOn(h, d),
				Row: row[d], Over: done.overOn(h, d)})
		}
		for _, week := range done.calendarWeeks(h) {
			x.Weeks = append(x.Weeks, WorkWeek{From: done.weekOf(week[0].Date), Work: workOf(week), Dates: len(dates(week)),
				Over: over(workOf(week), x.Limits.WeekMinutes) || x.Limits.WeekDays != 0 && len(dates(week)) > x.Limits.WeekDays})
		}
		for _, v := range done.found {
			if v.Stints[0].Turn.Horse == h {
				x.Over = append(x.Over, v.Words)
			}
		}
		all = append(all, x)
	}
	return all
}

// workloadMaker lays out what horses did.
type workloadMaker struct {
	*Centre
	from, until Date
	now         Instant
	whats       map[*Stint]string // what a stint is, in a word
}

// rowLooksBack is how many dates before the first one a row of dates worked is
// followed, where no limit of a row reaches farther.
const rowLooksBack = 28

// ledger lays out the stints of the dates that a limit can reach.
func (m *workloadMaker) ledger(on func(*workloadMaker, *weekMaker, Date)) *ledger {
	w := &Week{Centre: m.Centre, House: &m.House, From: m.from, Until: m.until}
	record := newRecorder(m.Centre)
	lo, hi := (&weekMaker{Week: w}).reach()
	for d := min(lo, m.from-rowLooksBack); d <= hi; d++ {
		day := &weekMaker{Week: &Week{Centre: m.Centre, House: &m.House, From: m.now.Date, Now: m.now}, record: record}
		on(m, day, d)
		w.Facts = append(w.Facts, day.Facts...)
	}
	slices.SortStableFunc(w.Facts, compareStints)
	return w.ledger(&Plan{})
}

// done makes facts of what was done on the date, as the weeks around it count it.
func (m *workloadMaker) done(k *weekMaker, d Date) {
	for _, t := range k.record.on(d) {
		k.fact(t, nil)
	}
	for _, s := range k.Facts {
		m.whats[s] = s.Meeting.Name
	}
	for _, x := range k.record.works(k.Centre, d) {
		n := len(k.Facts)
		k.work(d, x)
		for _, s := range k.Facts[n:] {
			m.whats[s] = x.Kind
		}
	}
}

// planned makes facts of what was last posted for the date, and of the works
// that the folder plans.
func (m *workloadMaker) planned(k *weekMaker, d Date) {
	for _, t := range k.record.posting(d) {
		if t.Turn == nil {
			continue
		}
		s := &Stint{Date: d, Start: t.Start, End: t.End, Turn: t.Turn, Rider: t.Rider, Work: t.Work, Meeting: k.meetingOf(t)}
		k.Facts, m.whats[s] = append(k.Facts, s), t.LessonName
	}
	for _, x := range k.Centre.Works {
		if x.IsOn(d) {
			s, _ := k.record.work(d, x, false)
			k.Facts, m.whats[s] = append(k.Facts, s), x.Kind
		}
	}
}

// posting is what was last posted for the date, as it was told.
func (r *recorder) posting(d Date) (told []Told) {
	for _, p := range slices.Backward(r.posted) {
		if p.From <= d && d <= p.Until {
			return slices.DeleteFunc(slices.Clone(p.Told), func(t Told) bool { return t.Date != d })
		}
	}
	return nil
}

// pieces are the rides and works in order; parts of a lesson that follow one
// another stay apart.
func (m *workloadMaker) pieces(stints []*Stint) (all []WorkPiece) {
	for _, s := range stints {
		all = append(all, WorkPiece{s.Start, s.End, m.whats[s]})
	}
	return all
}

func (l *ledger) runsOn(h *Horse, d Date) (runs []WorkRun) {
	for _, run := range l.runs(h) {
		if run[0].Date == d {
			runs = append(runs, WorkRun{run[0].Start, lastEnd(run), sessions(run)})
		}
	}
	return runs
}

// overOn are the names of the rules whose limits of a date the horse exceeds.
func (l *ledger) overOn(h *Horse, d Date) (names []string) {
	for _, v := range l.found {
		if s := v.Stints[0]; v.Rule != weeksWork && s.Turn.Horse == h && s.Date == d && !slices.Contains(names, v.Rule.Name) {
			names = append(names, v.Rule.Name)
		}
	}
	return names
}

// workOf is the work of the stints, gaps not counted.
func workOf(stints []*Stint) (sum int64) {
	for _, s := range stints {
		sum += s.Work
	}
	return sum
}

// InMinutes is work (minutes x percent of its kind x percent of the horse) in
// minutes, with decimals only where a factor left some.
func InMinutes(work int64) string { return workWords(work) }

// InHours is work as people write it: "6 h 01".
func InHours(work int64) string {
	const hour = 60 * workUnit
	if rest := work % hour; rest >= 10*workUnit {
		return fmt.Sprintf("%d h %s", work/hour, workWords(rest))
	}
	return fmt.Sprintf("%d h 0%s", work/hour, workWords(work%hour))
}
