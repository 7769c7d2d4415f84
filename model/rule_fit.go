package model

import "slices"

var seatFitsHorse = &Rule{
	Name: "seat fits horse", Class: Care,
	Sentence: "the fit chart approves the seat for the horse on that date, with those pads where it names them",
	audit: func(l *ledger) {
		for _, s := range l.rides {
			t := s.Turn
			if t.Seat == nil {
				continue // another rule's
			}
			rows := l.RowsFor(t.Horse, t.Seat, s.Date)
			if len(rows) > 0 && !slices.ContainsFunc(rows, func(r *FitRow) bool { return len(r.Pads) > 0 }) {
				continue // no row names pads: which go with the seat is asked of the whole set
			}
			if !slices.ContainsFunc(rows, func(r *FitRow) bool {
				return samePads(l.PadChoices(t.Horse, t.Seat, r), t.Pads)
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
		for _, s := range l.rides {
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
		for _, s := range l.rides {
			t := s.Turn
			if t.Seat == nil || t.Girth == nil || !t.Seat.TakesGirth() {
				continue // another rule's
			}
			if !t.Girth.Buckles(t.Seat) {
				l.breaks([]*Stint{s}, "%s: %s does not buckle to %s (%s)", s.Name, t.Girth.Tag, t.Seat.Tag, t.Seat.Family.Takes())
				continue // of a size that the chart names or not: one wrong girth is told once
			}
			rows := slices.DeleteFunc(l.RowsFor(t.Horse, t.Seat, s.Date), func(r *FitRow) bool {
				return !samePads(l.PadChoices(t.Horse, t.Seat, r), t.Pads) // wrong pads are another rule's
			})
			if len(rows) > 0 && !slices.ContainsFunc(rows, func(r *FitRow) bool { return r.HasGirth(t.Girth) }) {
				l.breaks([]*Stint{s}, "%s: the fit chart does not name %s with %s for %s", s.Name, t.Girth.Tag, t.Seat.Tag, t.Horse.Name)
			}
		}
	},
}

var extrasFit = &Rule{
	Name: "extras fit", Class: Care,
	Sentence: "what the rider needs beside is of the right size and goes on that seat",
	audit: func(l *ledger) {
		for _, s := range l.rides {
			if !met(s.Rider.Extras, s.Turn.Extras) {
				l.breaks([]*Stint{s}, "%s: what is needed beside is not all of the right size", s.Name)
			}
			for _, x := range s.Turn.Extras {
				if s.Turn.Seat != nil && !x.GoesOnSeat(s.Turn.Seat) {
					l.breaks([]*Stint{s}, "%s: %s does not go on %s", s.Name, x.Tag, s.Turn.Seat.Tag)
				}
			}
		}
	},
}

// met reports whether every need that has a piece of its kind is met by one of
// its own, in whatever order the pieces are named. (That each has one at all is
// asked of the whole set.)
func met(needs []ExtraNeed, extras []*Piece) bool {
	if len(needs) == 0 {
		return true
	}
	lacking := true
	for i, x := range extras {
		if x.Kind != needs[0].Kind {
			continue
		}
		lacking = false
		if needs[0].MetBy(x) && met(needs[1:], slices.Delete(slices.Clone(extras), i, i+1)) {
			return true
		}
	}
	return lacking && met(needs[1:], extras)
}
