package model

import (
	"strings"
)

var roomInTheRing = &Rule{
	Name: "room in the ring", Class: Care,
	Sentence: "no more riders at once than the arena, the lesson and the instructor each allow; a horse's other work takes one place in its arena",
	audit: func(l *ledger) {
		for _, a := range l.Centre.Arenas {
			l.crowded("in "+a.Name, a.RidersAtOnce, func(s *Stint) bool { return s.Arena == a })
		}
		for _, m := range l.meetings {
			if m.Lesson != nil {
				l.crowded("in "+m.Name, m.Lesson.Size, func(s *Stint) bool { return s.Meeting == m })
			}
		}
		for _, p := range l.Centre.Persons {
			l.crowded("with "+p.Name, p.RidersAtOnce, func(s *Stint) bool { return s.Meeting != nil && s.Meeting.Instructor == p })
		}
	},
}

func (l *ledger) crowded(where string, limit int, in func(*Stint) bool) {
	if limit == 0 {
		return
	}
	var there []*Stint
	for _, s := range l.stints {
		if in(s) {
			there = append(there, s)
		}
	}
	for _, at := range tooMany(there, limit) {
		last := at[len(at)-1]
		l.breaks(at, "%s %s: %d at once %s, and %d are the limit", last.Date.Words(), l.clock(last.Start), len(at), where, limit)
	}
}

var handsInTheRing = &Rule{
	Name: "hands in the ring", Class: Care,
	Sentence: "the leaders and sidewalkers that a lesson's riders and horses need at once are no more than it can count on that date",
	audit: func(l *ledger) {
		for _, m := range l.meetings {
			for _, at := range tooMany(l.ofMeet[m], 0) {
				need := Hands{}
				for _, s := range at {
					n := s.Hands()
					need.Leaders += n.Leaders
					need.Sidewalkers += n.Sidewalkers
				}
				if have := m.Hands.Leaders; have >= 0 && need.Leaders > have {
					l.breaks(at, "%s: %s needed, and %d"+countedOn, lessonOn(m), Count(need.Leaders, "leader"), have)
				}
				if have := m.Hands.Sidewalkers; have >= 0 && need.Sidewalkers > have {
					l.breaks(at, "%s: %s needed, and %d"+countedOn, lessonOn(m), Count(need.Sidewalkers, "sidewalker"), have)
				}
			}
		}
	},
}

// countedOn ends the words of a lesson that is short of helpers.
const countedOn = " can be counted on"

func saysHandsShort(why string) bool { return strings.HasSuffix(why, countedOn) }

// lessonOn names a lesson on its date; the name may be a weekday and an hour.
func lessonOn(m *Meeting) string { return m.Date.Words() + ", lesson " + m.Name }

// HandsFor are the helpers that a rider needs on a horse: a leader where either
// asks for one.
func HandsFor(r *Rider, h *Horse) Hands {
	n := Hands{}
	if r != nil {
		n.Sidewalkers = r.Sidewalkers
	}
	if r != nil && r.Leader || h.MustLead {
		n.Leaders = 1
	}
	return n
}

// Hands are the helpers that the stint needs.
func (s *Stint) Hands() Hands { return HandsFor(s.Rider, s.Turn.Horse) }
