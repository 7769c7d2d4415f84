package model

// Used is what a horse's work takes of its limits on one date and in the
// calendar week around it, by the sums of the audit: facts and the plan's rides.
type Used struct {
	Limits      Limits // its own, and the house's where it states none; 0: none
	Day         int64  // work of the date, gaps shorter than the rest counted in; see [InHours]
	Sessions    int
	RunMinutes  int // of the longest run of the date
	RunSessions int // of the run that has most
	Week        int64
	WeekDates   int
	Row         int     // dates worked in a row up to the date; 0: it does not work
	WeekFrom    Date    // first date of the week
	Days        []int64 // work of each date of the week, likewise
}

// Used is what the horse's work takes of its limits on a date.
func (w *Week) Used(p *Plan, h *Horse, d Date) Used {
	l := w.ledger(p)
	day := l.onDate(h, d)
	u := Used{Limits: w.LimitsOf(h), Day: l.DayWork(day), Sessions: sessions(day), WeekFrom: w.weekOf(d)}
	for _, run := range l.runs(h) {
		if run[0].Date == d {
			u.RunMinutes = max(u.RunMinutes, int(lastEnd(run)-run[0].Start))
			u.RunSessions = max(u.RunSessions, sessions(run))
		}
	}
	var week []*Stint
	for x := u.WeekFrom; x < u.WeekFrom+7; x++ {
		on := l.onDate(h, x)
		week = append(week, on...)
		u.Days = append(u.Days, l.DayWork(on))
	}
	u.Week, u.WeekDates = workOf(week), len(dates(week))
	for x := d; len(l.onDate(h, x)) > 0; x-- {
		u.Row++
	}
	return u
}

// Minutes of work, for drawings: what is said in words is [InHours].
func Minutes(work int64) float64 { return float64(work) / workUnit }
