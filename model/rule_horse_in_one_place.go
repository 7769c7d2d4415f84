package model

var horseInOnePlace = &Rule{
	Name: "horse in one place", Class: Stock,
	Sentence: "a horse is in one place at a time, with time between two rides to stay, to walk over or to change tack",
	audit: func(l *ledger) {
		for _, h := range l.horses {
			all := l.ofHorse[h]
			for i, s := range all {
				for _, t := range all[i+1:] {
					if t.Date != s.Date {
						break
					}
					gap := t.Start - s.End
					switch need := l.Rests(s, t); {
					case gap < 0:
						l.breaks([]*Stint{s, t}, "%s: %s and %s overlap", h.Name, s.Name, t.Name)
					case gap < need:
						l.breaks([]*Stint{s, t}, "%s: %d min between %s and %s, and %d are needed",
							h.Name, gap, s.Name, t.Name, need)
					}
				}
			}
		}
	},
}
