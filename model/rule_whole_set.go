package model

import "slices"

var wholeSet = &Rule{
	Name: "whole set", Class: Stock,
	Sentence: "a ride has one horse and one whole tack set: a seat, its pads, a girth where the seat takes one, and each extra its rider needs",
	audit: func(l *ledger) {
		for i, t := range l.plan.Turns {
			if t == nil || l.Rides[i].State == Started {
				continue
			}
			if what := l.lacks(l.Rides[i], t); what != "" {
				l.breaks([]*Stint{l.openStint(l.Rides[i], t)}, "%s: %s", l.Rides[i], what)
			}
		}
		for _, s := range l.rides {
			if s.Open {
				continue
			}
			if what := l.lacks(s.ride(), s.Turn); what != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, what)
			}
		}
	},
}

// openStint is the stint of an open ride, one made for the purpose where its
// turn has no horse.
func (l *ledger) openStint(r *Ride, t *Turn) *Stint {
	for _, s := range l.open {
		if s.Ride == r {
			return s
		}
	}
	return &Stint{Date: r.Date(), Start: r.Start, End: r.End, Turn: t, Ride: r, Rider: r.Rider, Meeting: r.Meeting, Open: true, Name: r.String()}
}

// lacks says what a turn has too little or too much of; "" is nothing.
func (w *Week) lacks(r *Ride, t *Turn) string {
	switch {
	case t.Horse == nil:
		return "no horse"
	case t.Seat == nil || !t.Seat.IsSeat():
		return "no seat"
	case t.Seat.TakesGirth() && (t.Girth == nil || t.Girth.Kind != Girth):
		return t.Seat.Tag + " needs a girth"
	case !t.Seat.TakesGirth() && t.Girth != nil:
		return t.Seat.Tag + " has a girth of its own and takes no other"
	}
	if rows := w.RowsFor(t.Horse, t.Seat, r.Date()); len(rows) > 0 && !slices.ContainsFunc(rows, func(row *FitRow) bool {
		return len(row.Pads) > 0 || samePads(w.PadChoices(t.Horse, t.Seat, row), t.Pads)
	}) {
		return "not the pads that go with " + t.Seat.Tag + " on " + t.Horse.Name
	}
	left := slices.Clone(t.Extras)
	for _, need := range r.Rider.Extras {
		i := slices.IndexFunc(left, func(p *Piece) bool { return p.Kind == need.Kind })
		if i < 0 {
			return "no " + string(need.Kind)
		}
		left = slices.Delete(left, i, i+1)
	}
	if len(left) > 0 {
		return left[0].Tag + " is more than the rider needs"
	}
	return ""
}
