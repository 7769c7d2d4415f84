package model

import "slices"

var daysWork = &Rule{
	Name: "day's work", Class: Care,
	Sentence: "in a date a horse's minutes of work, short gaps counted in, and its sessions stay within its limits",
	audit: func(l *ledger) {
		for _, h := range l.horses {
			limits := l.LimitsOf(h)
			for _, d := range dates(l.ofHorse[h]) {
				day := l.onDate(h, d)
				work, n := l.DayWork(day), sessions(day)
				facts := slices.DeleteFunc(slices.Clone(day), func(s *Stint) bool { return s.Open })
				if over(max(work, l.DayWork(facts)), limits.DayMinutes) {
					l.breaks(day, "%s: %s min of work on %s, and %d are its limit", h.Name, workWords(max(work, l.DayWork(facts))), d.Words(), limits.DayMinutes)
				}
				if limits.DaySessions != 0 && n > limits.DaySessions {
					l.breaks(day, "%s: %d sessions on %s, and %d are its limit", h.Name, n, d.Words(), limits.DaySessions)
				}
			}
		}
	},
}

// LimitsOf a horse: its own, and the house's where it states none.
func (w *Week) LimitsOf(h *Horse) Limits { return h.Limits.Or(w.House.Limits) }

// DayWork is the work of a horse's stints of one date, given by start: the work
// of each and the gaps shorter than the rest at 100 %.
func (w *Week) DayWork(day []*Stint) int64 {
	var sum int64
	var last Minute // end of what is done so far: facts may overlap
	for i, s := range day {
		sum += s.Work
		if gap := s.Start - last; i > 0 && gap > 0 && gap < w.House.Rest {
			sum += int64(gap) * workUnit
		}
		last = max(last, s.End)
	}
	return sum
}

// over reports whether work exceeds a limit in minutes; 0 is no limit.
func over(work int64, minutes int) bool { return minutes != 0 && work > int64(minutes)*workUnit }
