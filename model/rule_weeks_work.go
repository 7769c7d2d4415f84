package model

var weeksWork = &Rule{
	Name: "week's work", Class: Care,
	Sentence: "in a calendar week a horse's minutes of work and the dates it works, and its dates in a row, stay within its limits",
	audit: func(l *ledger) {
		for _, h := range l.horses {
			limits := l.LimitsOf(h)
			for _, week := range l.calendarWeeks(h) {
				work := workOf(week)
				if over(work, limits.WeekMinutes) {
					l.breaks(week, "%s: %s min of work in the week from %s, and %d are its limit",
						h.Name, workWords(work), l.weekOf(week[0].Date).Words(), limits.WeekMinutes)
				}
				if n := len(dates(week)); limits.WeekDays != 0 && n > limits.WeekDays {
					l.breaks(week, "%s: works on %d dates in the week from %s, and %d are its limit",
						h.Name, n, l.weekOf(week[0].Date).Words(), limits.WeekDays)
				}
			}
			for _, row := range l.rows(h) {
				if n := len(dates(row)); limits.RowDates != 0 && n > limits.RowDates {
					l.breaks(row, "%s: works on %d dates in a row from %s, and %d are its limit",
						h.Name, n, row[0].Date.Words(), limits.RowDates)
				}
			}
		}
	},
}

func (w *Week) weekOf(d Date) Date { return d.WeekStart(w.House.WeekStarts) }

// calendarWeeks are a horse's stints by the calendar weeks that the dates
// planned touch.
func (l *ledger) calendarWeeks(h *Horse) [][]*Stint {
	var weeks [][]*Stint
	for first := l.weekOf(l.From); first <= l.Until; first += 7 {
		var in []*Stint
		for _, s := range l.ofHorse[h] {
			if first <= s.Date && s.Date < first+7 {
				in = append(in, s)
			}
		}
		if len(in) > 0 {
			weeks = append(weeks, in)
		}
	}
	return weeks
}

// rows are a horse's stints by longest runs of dates in a row.
func (l *ledger) rows(h *Horse) [][]*Stint {
	var rows [][]*Stint
	for _, s := range l.ofHorse[h] {
		if n := len(rows) - 1; n >= 0 && s.Date-rows[n][len(rows[n])-1].Date <= 1 {
			rows[n] = append(rows[n], s)
			continue
		}
		rows = append(rows, []*Stint{s})
	}
	return rows
}
