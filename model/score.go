package model

import "slices"

// GoalValue is one goal of the score and what a plan reaches in it; less is
// better.
type GoalValue struct {
	Name  string // stable: "seat a"
	Words string // what is counted
	Value int
}

// Score of a plan in every goal, in the order in which they are proved. It is
// the only definition: a solver must return a plan with exactly the score that
// it claims.
func (w *Week) Score(p *Plan) []GoalValue {
	values := w.seatScore(p)
	if w.Mends {
		values = w.mendScore(p)
	}
	for _, g := range w.House.Goals {
		switch g {
		case GoalWishes:
			values = append(values, GoalValue{"wishes", "weight of wishes not met", w.wishScore(p)})
		case GoalCarry:
			values = append(values, GoalValue{"carry", "changes of a horse's seat, and pieces shared by horses", w.carryScore(p)})
		case GoalFair:
			highest, at := w.fairScore(p)
			values = append(values,
				GoalValue{"fair a", "twentieths of its allowance that the busiest horse works in a week", highest},
				GoalValue{"fair b", "horses as busy as that", at})
		case GoalBringIn:
			values = append(values, GoalValue{"bring in", "horses brought in to ride or work, date by date", w.broughtIn(p)})
		}
	}
	return values
}

func (w *Week) seatScore(p *Plan) []GoalValue {
	var ground, first, again int
	for i, r := range w.Rides {
		if r.State == Off || p.Turns[i] != nil {
			continue
		}
		ground++
		if r.Rider.RideFirst {
			first++
		}
		if w.Grounded(r.Rider) {
			again++
		}
	}
	return []GoalValue{
		{"seat a", "rides on the ground", ground},
		{"seat b", "of those, riders who ride first", first},
		{"seat c", "of those, riders who were on the ground last time", again},
	}
}

// wishScore sums the wishes not met over seated rides.
func (w *Week) wishScore(p *Plan) int {
	sum := 0
	for i, r := range w.Rides {
		if t := p.Turns[i]; t != nil && r.State != Off {
			sum += w.HorseWish(r, t.Horse) + w.SeatWish(r, t.Seat) + w.LoadWish(r, t)
		}
	}
	return sum
}

// HorseWish is the weight of a ride's wishes that a horse does not meet.
func (w *Week) HorseWish(r *Ride, h *Horse) int {
	sum := 0
	if usual, _ := w.Usual(r); usual != nil && usual != h {
		sum += w.House.Wishes.UsualHorse
	}
	for _, l := range r.Rider.Likings {
		if l.Horse != nil && (l.Horse == h) == l.Dislike {
			sum += l.Weight
		}
	}
	return sum
}

// SeatWish is the weight of a ride's wishes that a seat, or one alike, does not
// meet. One that a record does not name costs nothing.
func (w *Week) SeatWish(r *Ride, seat *Piece) int {
	if seat == nil {
		return 0
	}
	sum := 0
	if _, usual := w.Usual(r); usual != nil && w.alike[usual] != w.alike[seat] {
		sum += w.House.Wishes.UsualSeat
	}
	for _, l := range r.Rider.Likings {
		if l.Seat != nil && (w.alike[l.Seat] == w.alike[seat]) == l.Dislike {
			sum += l.Weight
		}
	}
	step, _ := r.Rider.StyleStep(seat)
	return sum + step*w.House.Wishes.Style
}

// LoadWish is the weight of a load above the share that is marked; where a
// record names no seat, the load is not known and costs nothing.
func (w *Week) LoadWish(r *Ride, t *Turn) int {
	if t.Seat == nil {
		return 0
	}
	if load, _ := w.Load(r.Rider, t); t.Horse.Marked(load, w.House) {
		return w.House.Wishes.Marked
	}
	return 0
}

// seatedStints are the plan's rides on the dates planned, works left out.
func (w *Week) seatedStints(p *Plan) []*Stint {
	return slices.DeleteFunc(w.Stints(p), func(s *Stint) bool {
		return s.Meeting == nil || s.Date < w.From || s.Date > w.Until
	})
}

// carryScore is the pairs of consecutive rides of a horse on a date whose seats
// are not alike and, for each set of alike pieces that is carried and each date,
// the horses beyond the number of its pieces.
func (w *Week) carryScore(p *Plan) int {
	sum := 0
	stints := w.seatedStints(p)
	last := map[*Horse]*Stint{}
	for _, s := range stints {
		h := s.Turn.Horse
		if before := last[h]; before != nil && before.Date == s.Date && w.changesSeat(before, s) {
			sum++
		}
		last[h] = s
	}
	type set struct {
		date  Date
		alike int
	}
	horses := map[set][]*Horse{}
	for _, s := range stints {
		for _, piece := range s.Turn.Pieces() {
			k := set{s.Date, w.alike[piece]}
			if k.alike != 0 && piece.IsCarried() && !slices.Contains(horses[k], s.Turn.Horse) {
				horses[k] = append(horses[k], s.Turn.Horse)
			}
		}
	}
	for k, hs := range horses {
		sum += max(0, len(hs)-w.AlikePieces(k.alike))
	}
	return sum
}

// changesSeat reports whether the seats of two rides are not alike; one that a
// record does not name is in no pair.
func (w *Week) changesSeat(s, t *Stint) bool {
	a, b := s.Turn.Seat, t.Turn.Seat
	return a != nil && b != nil && w.alike[a] != w.alike[b]
}

// IsCarried reports whether the piece counts in Carry by itself: a pad only
// where it is loose, since else it travels with its seat or stays with its
// horse.
func (p *Piece) IsCarried() bool { return p.Kind != Pad || p.Loose() }

// AlikePieces is the number of pieces in a class.
func (w *Week) AlikePieces(class int) int {
	n := 0
	for _, c := range w.alike {
		if c == class {
			n++
		}
	}
	return n
}

// shares in Fair are twentieths.
const shareParts = 20

// Share is 20 x work / allowance, rounded up; the allowance is in minutes.
func Share(work int64, allowance int) int {
	whole := int64(allowance) * workUnit
	return int((shareParts*work + whole - 1) / whole)
}

// fairScore is the highest share of any horse in any calendar week touched, and
// the horses at it. Works and facts count.
func (w *Week) fairScore(p *Plan) (highest, at int) {
	l := w.ledger(p)
	for _, h := range l.horses {
		allowance := w.LimitsOf(h).WeekMinutes
		if allowance == 0 {
			continue
		}
		switch most := Share(l.heaviestWeek(h), allowance); {
		case most > highest:
			highest, at = most, 1
		case most == highest && most > 0:
			at++
		}
	}
	return highest, at
}

// broughtIn is the horse-dates worked on the dates planned; works count.
func (w *Week) broughtIn(p *Plan) int {
	type horseDate struct {
		horse *Horse
		date  Date
	}
	in := map[horseDate]bool{}
	for _, s := range w.Stints(p) {
		if s.Date < w.From || s.Date > w.Until {
			continue
		}
		in[horseDate{s.Turn.Horse, s.Date}] = true
	}
	return len(in)
}
