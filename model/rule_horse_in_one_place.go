package model

import (
	"slices"
	"strings"
)

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
						l.breaks([]*Stint{s, t}, "%s: %d min between %s and %s, and %d are needed: %s",
							h.Name, gap, s.Name, t.Name, need, l.whyRests(s, t))
					}
				}
			}
		}
	},
}

// whyRests says what a horse does between two stints, s first, that takes time.
func (w *Week) whyRests(s, t *Stint) string {
	a, b := s.Turn, t.Turn
	var changes []string
	for _, x := range []struct {
		what string
		same bool
	}{{"seat", a.Seat == b.Seat}, {"pads", slices.Equal(a.Pads, b.Pads)}, {"girth", a.Girth == b.Girth}} {
		if !x.same {
			changes = append(changes, x.what)
		}
	}
	switch {
	case a.Seat == nil || b.Seat == nil:
		return "it may have to change tack"
	case len(changes) > 0:
		return "it changes " + strings.Join(changes, ", ")
	case s.Arena == t.Arena && s.Arena != nil:
		return "it stays in the ring"
	}
	return "it goes from ring to ring"
}
