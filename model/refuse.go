package model

import (
	"cmp"
	"fmt"
)

// RefusesHold says why a new note that keeps a rider on a horse, or off it,
// cannot be: it breaks a care rule by itself (with nobody else seated), or
// contradicts a note in force; both are named. "" is that it can be, as is any
// note of another kind: those on health, weather and absence are always taken.
func (c *Centre) RefusesHold(n *Note) string {
	if n.Kind != NoteKeep && n.Kind != NoteNever {
		return ""
	}
	for d := n.Date; d <= max(n.Date, n.Through); d++ {
		w := c.Week(d, 1, Instant{})
		for _, r := range w.Rides {
			if r.Rider != n.Rider || n.Lesson != nil && n.Lesson != r.Meeting.Lesson {
				continue
			}
			why := ""
			if n.Kind == NoteNever {
				why = w.refusesNever(r, n)
			} else {
				why = cmp.Or(w.contradicts(r, n), w.harms(r, n))
			}
			if why != "" {
				return why
			}
		}
	}
	return ""
}

// keeping are the words of the hold of a ride.
func (w *Week) keeping(r *Ride, horse *Horse) string {
	return fmt.Sprintf("keeping %s on %s, %s %s,", r.Rider.Called(), horse.Name, r.Date().Words(), w.clock(r.Start))
}

func (w *Week) refusesNever(r *Ride, n *Note) string {
	if r.Held == nil || r.Held.Horse != n.Horse {
		return ""
	}
	return fmt.Sprintf("keeping %s off %s contradicts note %d, which keeps this rider on it, %s %s",
		r.Rider.Called(), n.Horse.Name, r.Held.Note, r.Date().Words(), w.clock(r.Start))
}

// contradicts says which note in force a new keep cannot stand beside.
func (w *Week) contradicts(r *Ride, n *Note) string {
	says := w.keeping(r, n.Horse) + " contradicts note %d, which keeps %s"
	switch h := r.Held; {
	case h != nil && h.Horse != n.Horse:
		return fmt.Sprintf(says+" on %s then", h.Note, r.Rider.Called(), h.Horse.Name)
	case h != nil && h.Seat != nil && n.Seat != nil && h.Seat != n.Seat:
		return fmt.Sprintf(says+" on %s then", h.Note, r.Rider.Called(), h.Seat.Tag)
	}
	for _, x := range Standing(w.Centre.Notes) {
		if x.Kind == NoteNever && x.Rider == r.Rider && x.Horse == n.Horse && x.isFor(r.Date()) && (x.Lesson == nil || x.Lesson == r.Meeting.Lesson) {
			return fmt.Sprintf(says+" off %s", x.Number, r.Rider.Called(), n.Horse.Name)
		}
	}
	for _, q := range w.Rides {
		switch {
		case q == r || q.Held == nil || q.State == Off:
		case q.Held.Horse == n.Horse && q.Start < r.End+w.House.Stay && r.Start < q.End+w.House.Stay:
			return fmt.Sprintf(says+" on %s at %s", q.Held.Note, q.Rider.Called(), n.Horse.Name, w.clock(q.Start))
		case q.Meeting == r.Meeting && q.Held.Horse.IsApart(n.Horse):
			return fmt.Sprintf(says+" on %s in the same lesson: the two horses are to be kept apart (rule: %s)",
				q.Held.Note, q.Rider.Called(), q.Held.Horse.Name, horsesApart.Name)
		}
	}
	return ""
}

// harms says which care rule the ride breaks on the horse, were it the only one.
func (w *Week) harms(r *Ride, n *Note) string {
	breaks := func(rule *Rule, why string) string {
		return fmt.Sprintf("%s breaks the rule %q: %s", w.keeping(r, n.Horse), rule.Name, why)
	}
	h := n.Horse
	for _, x := range []struct {
		rule *Rule
		why  string
	}{
		{formInDate, w.FormStops(r.Rider, r.Date())},
		{horseAtWork, cmp.Or(w.NotThere(h, r.Date(), r.Start, r.End), w.TooYoung(h, r.Date(), r.Rider.Support))},
		{horseSuitsRider, w.Unsuited(r, h)},
		{load, w.TooHeavy(r.Rider, &Turn{Horse: h, Seat: n.Seat})},
	} {
		if x.why != "" {
			return breaks(x.rule, x.why)
		}
	}
	if n.Seat != nil {
		switch seat := n.Seat; {
		case SeatUnfit(r.Rider, seat) != "":
			return breaks(seatFitsRider, SeatUnfit(r.Rider, seat))
		case len(w.RowsFor(h, seat, r.Date())) == 0:
			return breaks(seatFitsHorse, fmt.Sprintf("%s is not approved for %s on that date", seat.Tag, h.Name))
		case w.NotInUse(seat, r.Date(), r.Start, r.End) != "":
			return breaks(pieceInUse, w.NotInUse(seat, r.Date(), r.Start, r.End))
		}
	}
	return w.overworks(r, n, breaks)
}

// overworks says which care rule is broken beside the facts of the week, or that
// no tack is there that fits both.
func (w *Week) overworks(r *Ride, n *Note, breaks func(*Rule, string) string) string {
	if r.State != Open {
		return "" // such a hold is suspended, and listed
	}
	p := &Plan{Turns: make([]*Turn, len(w.Rides))}
	p.Turns[r.Index] = &Turn{Horse: n.Horse, Seat: n.Seat}
	for _, v := range Broken(w.Audit(p)) {
		switch v.Rule {
		case daysWork, runOfWork, weeksWork, handsInTheRing, roomInTheRing:
			return breaks(v.Rule, v.Words)
		}
	}
	held := *r
	held.Held = &Hold{Horse: n.Horse, Seat: n.Seat}
	if !w.hasFit(&held) {
		return fmt.Sprintf("%s breaks the rule %q: no seat that fits the rider is approved for it", w.keeping(r, n.Horse), seatFitsHorse.Name)
	}
	return ""
}

// hasFit reports whether some seat is charted for the held horse and fits the
// rider on that date.
func (w *Week) hasFit(r *Ride) bool {
	for _, p := range w.Centre.Pieces {
		if p.IsSeat() && SeatUnfit(r.Rider, p) == "" && NotAsHeld(r, r.Held.Horse, p) == "" && len(w.RowsFor(r.Held.Horse, p, r.Date())) > 0 {
			return true
		}
	}
	return false
}
