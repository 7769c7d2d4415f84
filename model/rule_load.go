package model

import "fmt"

var load = &Rule{
	Name: "load", Class: Care,
	Sentence: "rider dressed to ride and everything on the horse stay within the horse's share of its body weight and within its own limits",
	audit: func(l *ledger) {
		for _, s := range l.rides {
			if why := l.TooHeavy(s.Rider, s.Turn); why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// Load of a rider and the pieces of a turn; ok is false where the rider's
// weight is unknown.
func (w *Week) Load(r *Rider, t *Turn) (load Grams, ok bool) {
	load = r.Weight
	for _, p := range t.Pieces() {
		weight, _ := p.WeightIn(w.House)
		load += weight
	}
	return load, r.Weight != 0
}

// TooHeavy says why the horse does not carry the turn; "" is that it does. It
// names no weight: sheets and screens show its words.
func (w *Week) TooHeavy(r *Rider, t *Turn) string {
	load, ok := w.Load(r, t)
	switch {
	case !ok:
		return "the rider's weight is not known"
	case t.Horse.Weight == 0:
		return "the weight of " + t.Horse.Name + " is not known"
	case !t.Horse.Carries(load, r.Support, w.House):
		return fmt.Sprintf("rider and tack are more than %s may carry", t.Horse.Name)
	}
	return ""
}
