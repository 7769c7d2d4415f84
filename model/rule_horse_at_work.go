package model

import (
	"cmp"
	"fmt"
)

var horseAtWork = &Rule{
	Name: "horse at work", Class: Care,
	Sentence: "a horse works only when it is well, not on a day off or at an appointment, and old enough for the ride",
	audit: func(l *ledger) {
		for _, s := range l.stints {
			h := s.Turn.Horse
			why := l.NotThere(h, s.Date, s.Start, s.End)
			if why == "" && s.Rider != nil {
				why = l.TooYoung(h, s.Date, s.Rider.Support)
			}
			if why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// NotThere says why a horse does not work during [start, end) of a date; "" is
// that it does.
func (w *Week) NotThere(h *Horse, d Date, start, end Minute) string {
	if o := h.outDuring(d, start, end); o != nil {
		if o.Why == Appointment {
			return h.Name + " has an appointment"
		}
		return fmt.Sprintf("%s is out (%s) until a named person ends it", h.Name, o.Why)
	}
	return h.offDuty(d, start, end)
}

// offDuty says what keeps a horse that is not out from work; "" is nothing.
func (h *Horse) offDuty(d Date, start, end Minute) string {
	if p := anyMeets(h.DaysOff, d, start, end); p != nil {
		return h.Name + " has " + cmp.Or(p.Why, "the day off")
	}
	if d <= h.InFoalUntil {
		return h.Name + " is in foal"
	}
	if d < h.Arrived {
		return h.Name + " has not arrived yet"
	}
	return ""
}

// TooYoung says why a horse carries no rider on a date by its age: more is
// asked for a rider who needs support. "" is that it is old enough.
func (w *Week) TooYoung(h *Horse, d Date, support bool) string {
	least := w.House.AgeRidden
	if support {
		least = max(least, w.House.AgeAdaptive)
	}
	switch age := h.AgeOn(d); {
	case age < 0:
		return "the year in which " + h.Name + " was foaled is not known"
	case age < least:
		return fmt.Sprintf("%s is %d, and at least %d is asked", h.Name, age, least)
	}
	return ""
}
