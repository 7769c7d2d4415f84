package sheet

import (
	"slices"

	"tackwright/model"
)

// day is one date of a plan, laid out the way a helper meets it.
type day struct {
	week   *model.Week
	house  *model.House
	plan   *model.Plan
	date   model.Date
	stints []*model.Stint // by start, then horse
	horse  map[*model.Horse][]*model.Stint
	piece  map[*model.Piece][]*model.Stint
}

func newDay(w *model.Week, p *model.Plan, date model.Date) *day {
	return layOut(w, p, date, w.Stints(p))
}

// layOut is the date with those stints of it, which are by start.
func layOut(w *model.Week, p *model.Plan, date model.Date, stints []*model.Stint) *day {
	d := &day{week: w, house: w.House, plan: p, date: date,
		horse: map[*model.Horse][]*model.Stint{}, piece: map[*model.Piece][]*model.Stint{}}
	for _, s := range stints {
		if s.Date != date {
			continue
		}
		d.stints = append(d.stints, s)
		d.horse[s.Turn.Horse] = append(d.horse[s.Turn.Horse], s)
		for _, x := range s.Turn.Pieces() {
			d.piece[x] = append(d.piece[x], s)
		}
	}
	return d
}

// before is the stint before s in a list of them, or nil.
func before(list []*model.Stint, s *model.Stint) *model.Stint {
	if i := slices.Index(list, s); i > 0 {
		return list[i-1]
	}
	return nil
}

// after is the stint after s in a list of them, or nil.
func after(list []*model.Stint, s *model.Stint) *model.Stint {
	if i := slices.Index(list, s); i >= 0 && i+1 < len(list) {
		return list[i+1]
	}
	return nil
}

// rested reports whether the gap between two stints is a rest.
func (d *day) rested(s, t *model.Stint) bool { return t.Start-s.End >= d.house.Rest }

func wears(s *model.Stint) bool { return len(s.Turn.Pieces()) > 0 }

// isTackUp reports whether the horse stands bare before the stint: its first
// tack of the day, after a rest, or after work that names no tack.
func (d *day) isTackUp(s *model.Stint) bool {
	if !wears(s) {
		return false
	}
	last := before(d.horse[s.Turn.Horse], s)
	return last == nil || !wears(last) || d.rested(last, s)
}

// giver is the ride from which the piece comes over, if it is on another horse
// before: nil where it comes from its rack, or was on this horse already. What is
// kept with a seat comes with it.
func (d *day) giver(x *model.Piece, s *model.Stint) *model.Stint {
	if x.WithSeat != nil && x.WithSeat == s.Turn.Seat {
		x = x.WithSeat
	}
	if last := before(d.piece[x], s); last != nil && last.Turn.Horse != s.Turn.Horse {
		return last
	}
	return nil
}

// onBy is when a piece must be on the horse: the ready time before the start
// for a tack-up, the start itself in a changeover (a gap shorter than the rest).
func (d *day) onBy(s *model.Stint, pieces ...*model.Piece) model.Minute {
	if !d.isTackUp(s) {
		return s.Start
	}
	if last := before(d.horse[s.Turn.Horse], s); last != nil && !d.rested(last, s) {
		return s.Start
	}
	for _, x := range pieces {
		if g := d.giver(x, s); g != nil && !d.rested(g, s) {
			return s.Start
		}
	}
	return max(0, s.Start-d.house.Ready)
}

// run is the stint and those that follow it on the horse with its tack on.
func (d *day) run(s *model.Stint) []*model.Stint {
	list := d.horse[s.Turn.Horse]
	run := []*model.Stint{s}
	for _, t := range list[slices.Index(list, s)+1:] {
		if !wears(t) || d.isTackUp(t) {
			break
		}
		run = append(run, t)
	}
	return run
}

// tackChanges reports whether the horse of a ride in the middle of a run has
// other pieces on than in the ride before.
func (d *day) tackChanges(s *model.Stint) bool {
	had, has := before(d.horse[s.Turn.Horse], s).Turn.Pieces(), s.Turn.Pieces()
	return len(had) != len(has) || slices.ContainsFunc(has, func(x *model.Piece) bool { return !slices.Contains(had, x) })
}

// core are the pieces without which a horse is not tacked up: all but extras.
func core(t *model.Turn) []*model.Piece {
	return slices.DeleteFunc(t.Pieces(), func(x *model.Piece) bool { return x.Kind.IsExtra() })
}
