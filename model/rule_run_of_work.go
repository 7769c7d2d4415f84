package model

var runOfWork = &Rule{
	Name: "run of work", Class: Care,
	Sentence: "between two rests a horse works no longer and no more sessions than its limits",
	audit: func(l *ledger) {
		for _, h := range l.horses {
			limits := l.LimitsOf(h)
			for _, run := range l.runs(h) {
				first, n := run[0], sessions(run)
				if clock := int(lastEnd(run) - first.Start); limits.RunMinutes != 0 && clock > limits.RunMinutes {
					l.breaks(run, "%s: %d min with no rest on %s from %s on, and %d are its limit",
						h.Name, clock, first.Date.Words(), l.clock(first.Start), limits.RunMinutes)
				}
				if limits.RunSessions != 0 && n > limits.RunSessions {
					l.breaks(run, "%s: %d sessions with no rest on %s from %s on, and %d are its limit",
						h.Name, n, first.Date.Words(), l.clock(first.Start), limits.RunSessions)
				}
			}
		}
	},
}

// runs are the longest sequences of a horse's stints in which every gap is
// shorter than the rest.
func (l *ledger) runs(h *Horse) [][]*Stint {
	var runs [][]*Stint
	for _, s := range l.ofHorse[h] {
		if n := len(runs) - 1; n >= 0 {
			if runs[n][0].Date == s.Date && s.Start-lastEnd(runs[n]) < l.House.Rest {
				runs[n] = append(runs[n], s)
				continue
			}
		}
		runs = append(runs, []*Stint{s})
	}
	return runs
}

// lastEnd is when the last of the stints ends: facts may overlap, so it need not
// be the last to start.
func lastEnd(stints []*Stint) Minute {
	end := stints[0].End
	for _, s := range stints {
		end = max(end, s.End)
	}
	return end
}
