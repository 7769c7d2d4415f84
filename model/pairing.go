package model

import "cmp"

// Stops says why a ride cannot be on a horse, in a seat or one alike where it is
// not nil, even if no other open ride of the week were seated; "" is that it can.
// The rule is the one that forbids it, nil where that is a matter of several.
func (w *Week) Stops(r *Ride, h *Horse, seat *Piece) (rule *Rule, why string) {
	weight := ""
	switch {
	case r.Rider.Weight == 0:
		weight = "the weight of " + r.Rider.Called() + " is not known"
	case h.Weight == 0:
		weight = "the weight of " + h.Name + " is not known"
	case !h.Carries(r.Rider.Weight, r.Rider.Support, w.House):
		weight = "the rider is more than " + h.Name + " may carry"
	}
	held := ""
	if r.Held != nil && r.Held.Horse != h {
		held = "a note keeps this rider on " + r.Held.Horse.Name
	}
	for _, x := range []struct {
		rule *Rule
		why  string
	}{
		{centreOpen, NotOpen(r)},
		{instructorInOnePlace, InstructorAway(r.Meeting)},
		{formInDate, w.FormStops(r.Rider, r.Date())},
		{asTold, held},
		{horseAtWork, cmp.Or(w.NotThere(h, r.Date(), r.Start, r.End), w.TooYoung(h, r.Date(), r.Rider.Support))},
		{horseSuitsRider, w.Unsuited(r, h)},
		{load, weight},
	} {
		if x.why != "" {
			return x.rule, x.why
		}
	}
	if seat == nil {
		return nil, w.horseStops(r, h)
	}
	if r.Held != nil && r.Held.Seat != nil && w.alike[r.Held.Seat] != w.alike[seat] {
		return asTold, "a note keeps this rider on " + r.Held.Seat.Tag
	}
	return w.seatStops(r, h, seat)
}

// seatStops says it of a seat, or one alike, on a horse that is none of the
// reasons itself.
func (w *Week) seatStops(r *Ride, h *Horse, seat *Piece) (rule *Rule, why string) {
	if unfit := SeatUnfit(r.Rider, seat); unfit != "" {
		return seatFitsRider, unfit
	}
	if len(w.RowsFor(h, seat, r.Date())) == 0 {
		return seatFitsHorse, seat.Tag + " is not approved for " + h.Name + " on that date"
	}
	for _, x := range w.Centre.Pieces {
		if w.alike[x] != w.alike[seat] {
			continue
		}
		held := *r
		held.Held = &Hold{Horse: h, Seat: x}
		stops := w.horseStops(&held, h)
		if stops == "" {
			return nil, ""
		}
		if x != seat {
			continue // it would do as well, and does not either
		}
		if why = stops; w.NotInUse(x, r.Date(), r.Start, r.End) != "" {
			rule, why = pieceInUse, w.NotInUse(x, r.Date(), r.Start, r.End)
		}
	}
	return rule, why
}
