package model

import "slices"

var seatFitsHorse = &Rule{
	Name: "seat fits horse", Class: Care,
	Sentence: "the fit chart approves the seat for the horse on that date, with those pads where it names them",
	audit: func(l *ledger) {
		for _, s := range l.open {
			t := s.Turn
			if t.Seat == nil {
				continue // another rule's
			}
			if !slices.ContainsFunc(l.RowsFor(t.Horse, t.Seat, s.Date), func(r *FitRow) bool {
				return len(r.Pads) == 0 || slices.Equal(r.Pads, t.Pads)
			}) {
				l.breaks([]*Stint{s}, "%s: the fit chart does not approve %s with these pads for %s on that date",
					s.Name, t.Seat.Tag, t.Horse.Name)
			}
		}
	},
}

var seatFitsRider = &Rule{
	Name: "seat fits rider", Class: Care,
	Sentence: "the seat is of a style that the rider accepts and of her size",
	audit: func(l *ledger) {
		for _, s := range l.open {
			if s.Turn.Seat == nil {
				continue
			}
			if why := SeatUnfit(s.Rider, s.Turn.Seat); why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// SeatUnfit says why a seat does not fit a rider; "" is that it does, or that a
// size is not known.
func SeatUnfit(r *Rider, seat *Piece) string {
	if _, ok := r.StyleStep(seat); !ok {
		return seat.Tag + " is not of a style that the rider accepts"
	}
	if fits, _ := r.SeatFits(seat); !fits {
		return seat.Tag + " is not of the rider's size"
	}
	return ""
}

var girthFits = &Rule{
	Name: "girth fits", Class: Care,
	Sentence: "the girth is of the family that the seat takes and of a size or tag that the fit chart names",
	audit: func(l *ledger) {
		for _, s := range l.open {
			t := s.Turn
			if t.Seat == nil || t.Girth == nil {
				continue
			}
			if t.Girth.Family != t.Seat.Family {
				l.breaks([]*Stint{s}, "%s: %s does not buckle to %s (%s)", s.Name, t.Girth.Tag, t.Seat.Tag, t.Seat.Family.Takes())
			}
			rows := l.RowsFor(t.Horse, t.Seat, s.Date)
			if len(rows) > 0 && !slices.ContainsFunc(rows, func(r *FitRow) bool {
				return samePads(l.PadChoices(t.Horse, t.Seat, r), t.Pads) && r.HasGirth(t.Girth)
			}) {
				l.breaks([]*Stint{s}, "%s: the fit chart does not name %s with %s for %s", s.Name, t.Girth.Tag, t.Seat.Tag, t.Horse.Name)
			}
		}
	},
}

var extrasFit = &Rule{
	Name: "extras fit", Class: Care,
	Sentence: "what the rider needs beside is of the right size and goes on that seat",
	audit: func(l *ledger) {
		for _, s := range l.open {
			for _, x := range s.Turn.Extras {
				i := slices.IndexFunc(s.Rider.Extras, func(n ExtraNeed) bool { return n.Kind == x.Kind })
				if i >= 0 && !slices.ContainsFunc(s.Rider.Extras, func(n ExtraNeed) bool { return n.MetBy(x) }) {
					l.breaks([]*Stint{s}, "%s: %s is not of the size that the rider needs", s.Name, x.Tag)
				}
				if s.Turn.Seat != nil && !x.GoesOnSeat(s.Turn.Seat) {
					l.breaks([]*Stint{s}, "%s: %s does not go on %s", s.Name, x.Tag, s.Turn.Seat.Tag)
				}
			}
		}
	},
}
