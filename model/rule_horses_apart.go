package model

var horsesApart = &Rule{
	Name: "horses apart", Class: Care,
	Sentence: "two horses that are to be kept apart are not in one lesson",
	audit: func(l *ledger) {
		for _, m := range l.meetings {
			in := l.ofMeet[m]
			for i, s := range in {
				for _, t := range in[i+1:] {
					if s.Turn.Horse.IsApart(t.Turn.Horse) {
						l.breaks([]*Stint{s, t}, "%s %s: %s and %s are kept apart", m.Date.Words(), m.Name,
							s.Turn.Horse.Name, t.Turn.Horse.Name)
					}
				}
			}
		}
	},
}
