package model

import (
	"cmp"
	"fmt"
	"slices"
)

// WhyNot says why a ride that the plan seats is not on a horse, or not in a seat
// that is wanted (nil: any), in this order: what would stand in its way even if
// no other open ride were seated; what does beside the other rides of the plan;
// and where nothing does, which goal the plan would be worse in. "" is that the
// ride has both, or one alike to the seat.
func (w *Week) WhyNot(p *Plan, r *Ride, h *Horse, seat *Piece) string {
	now := p.Turns[r.Index]
	sameSeat := seat == nil || now != nil && w.alike[seat] == w.alike[now.Seat]
	if now == nil || now.Horse == h && sameSeat {
		return ""
	}
	if now.Horse != h {
		if why := w.horseCannot(p, r, h); why != "" {
			return why
		}
		seat = nil // the horse is what is asked about
	} else if why := w.seatCannot(p, r, h, seat); why != "" {
		return why
	}
	best, why := w.swap(p, r, h, seat)
	if best == nil {
		return why
	}
	return w.givenUp(p, best)
}

// horseCannot says why a ride cannot be on a horse in this plan, before its tack
// is looked at.
func (w *Week) horseCannot(p *Plan, r *Ride, h *Horse) string {
	held := ""
	if r.Held != nil && r.Held.Horse != h {
		held = "a note keeps this rider on " + r.Held.Horse.Name
	}
	if why := cmp.Or(held, w.NotThere(h, r.Date(), r.Start, r.End), w.TooYoung(h, r.Date(), r.Rider.Support), w.Unsuited(r, h)); why != "" {
		return why
	}
	if why := w.horseStops(r, h); why != "" {
		return h.Name + ": " + why
	}
	for _, s := range w.Stints(p) {
		switch {
		case s.Ride == r || s.Turn.Horse != h || s.Date != r.Date() || s.Start >= r.End || r.Start >= s.End:
		case s.Rider != nil:
			return h.Name + " carries " + s.Rider.Called() + " then"
		default:
			return h.Name + " is at work then"
		}
	}
	return w.breaksBeside(p, r, &Turn{Horse: h}, bare...)
}

// seatCannot says why a ride cannot be in a seat on the horse that it is on.
func (w *Week) seatCannot(p *Plan, r *Ride, h *Horse, seat *Piece) string {
	switch rows := w.RowsFor(h, seat, r.Date()); {
	case SeatUnfit(r.Rider, seat) != "":
		return SeatUnfit(r.Rider, seat)
	case len(rows) == 0:
		return fmt.Sprintf("%s is not approved for %s on that date", seat.Tag, h.Name)
	case w.NotInUse(seat, r.Date(), r.Start, r.End) != "":
		return w.NotInUse(seat, r.Date(), r.Start, r.End)
	}
	return w.taken(p, r, h, seat)
}

// taken says which ride or work of another horse has a piece when the ride wants
// it, or so near that it cannot be moved in time; "" is none.
func (w *Week) taken(p *Plan, r *Ride, h *Horse, piece *Piece) string {
	for _, s := range w.Stints(p) {
		if s.Ride != r && s.Turn.Horse != h && s.Date == r.Date() && slices.Contains(s.Turn.Pieces(), piece) &&
			s.Start < r.End+w.House.Move && r.Start < s.End+w.House.Move {
			return fmt.Sprintf("%s is on %s at %s", piece.Tag, s.Turn.Horse.Name, s.Start.Clock(w.House.TwelveHour))
		}
	}
	return ""
}

// with is the plan with another turn for one ride.
func (p *Plan) with(r *Ride, t *Turn) *Plan {
	turns := slices.Clone(p.Turns)
	turns[r.Index] = t
	return &Plan{Turns: turns, Ground: p.Ground}
}

// breaksBeside is what the plan breaks with another turn for one ride, but for
// the rules excepted, in words; "" is nothing.
func (w *Week) breaksBeside(p *Plan, r *Ride, t *Turn, except ...string) string {
	for _, v := range Broken(w.Audit(p.with(r, t))) {
		if !slices.Contains(except, v.Rule.Name) {
			return v.Words
		}
	}
	return ""
}

// swap is the best plan that there is with nothing changed but that the ride is
// on the horse, in the seat or one alike where it is not nil. nil is that there
// is none: why says what the last set that was tried breaks, or what no set has.
func (w *Week) swap(p *Plan, r *Ride, h *Horse, seat *Piece) (best *Plan, why string) {
	turns, why := w.freeTurns(p, r, h, seat)
	var score []GoalValue
	for _, t := range turns {
		if broken := w.breaksBeside(p, r, t); broken != "" {
			why = broken
			continue
		}
		if q := p.with(r, t); best == nil || compareScores(w.Score(q), score) < 0 {
			best, score = q, w.Score(q)
		}
	}
	return best, why
}

// freeTurns are the turns of a ride on a horse, in a seat or one alike where it
// is not nil, that are made of pieces that no other horse has then, in the order
// of the centre's pieces. why says what is not free where there are none.
func (w *Week) freeTurns(p *Plan, r *Ride, h *Horse, seat *Piece) (turns []*Turn, why string) {
	blocked := func(ps ...*Piece) string {
		for _, x := range ps {
			if why := cmp.Or(w.NotInUse(x, r.Date(), r.Start, r.End), w.taken(p, r, h, x)); why != "" {
				return why
			}
		}
		return ""
	}
	free := func(ps ...*Piece) bool { return blocked(ps...) == "" }
	furthest, why := 0, "no seat for "+h.Name+" that fits the rider is free then"
	stop := func(step int, words string) {
		if step > furthest {
			furthest, why = step, words
		}
	}
	for _, x := range w.Centre.Pieces {
		if !x.IsSeat() || seat != nil && w.alike[seat] != w.alike[x] ||
			SeatUnfit(r.Rider, x) != "" || !free(x) || NotAsHeld(r, h, x) != "" {
			continue
		}
		for _, row := range w.RowsFor(h, x, r.Date()) {
			extras := w.freeExtras(r, x, free)
			if extras == nil {
				stop(1, "what the rider needs beside "+x.Tag+" is not free then")
				continue
			}
			for _, pads := range w.PadChoices(h, x, row) {
				if why := blocked(pads...); why != "" {
					stop(2, why)
					continue
				}
				stop(3, fmt.Sprintf("no girth for %s on %s is free then", x.Tag, h.Name))
				for _, girth := range w.girthsFor(x, row, free) {
					turns = append(turns, &Turn{Horse: h, Seat: x, Pads: pads, Girth: girth, Extras: extras})
				}
			}
		}
	}
	return turns, why
}

// freeExtras are the lightest that meet the rider's needs; nil is that there are
// too few.
func (w *Week) freeExtras(r *Ride, seat *Piece, free func(...*Piece) bool) []*Piece {
	var choices [][]*Piece
	for _, need := range r.Rider.Extras {
		var can []*Piece
		for _, x := range w.Centre.Pieces {
			if need.MetBy(x) && x.GoesOnSeat(seat) && free(x) {
				can = append(can, x)
			}
		}
		choices = append(choices, can)
	}
	return w.lightest(choices, nil)
}

// compareScores compares two scores goal by goal; less is better.
func compareScores(a, b []GoalValue) int {
	return slices.CompareFunc(a, b, func(x, y GoalValue) int { return cmp.Compare(x.Value, y.Value) })
}

// givenUp says in which goal a plan would be worse that differs in one ride.
func (w *Week) givenUp(p, other *Plan) string {
	score := w.Score(other)
	for i, g := range w.Score(p) {
		switch {
		case score[i].Value < g.Value:
			return "nothing stands in its way: this plan was not proved to be best"
		case score[i].Value > g.Value:
			return "given up so that " + gains[g.Name]
		}
	}
	return "nothing stands in its way: the plan would be as good by every goal"
}

// gains say what is better with a smaller value in a goal. As many ride either
// way.
var gains = map[string]string{
	"wishes": "fewer wishes are lost", "carry": "tack stays put",
	"fair a": "the busiest horse works less", "fair b": "fewer horses are so busy", "bring in": "fewer horses are brought in",
}
