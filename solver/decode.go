package solver

import (
	"fmt"

	"tackwright/model"
	"tackwright/solver/sat"
)

// decode reads a plan from a solution and settles its tags.
func (e *encoder) decode(m sat.Model) (*model.Plan, error) {
	plan := &model.Plan{Turns: make([]*model.Turn, len(e.w.Rides)), Ground: make([][]string, len(e.w.Rides))}
	for i, r := range e.w.Rides {
		if r.State == model.Started {
			plan.Turns[i] = r.Told
		}
	}
	s := &settler{w: e.w, hands: map[*model.Piece]hand{}}
	for _, p := range e.places {
		for _, on := range p.rides {
			if !m.Value(on.lit) {
				continue
			}
			turn, err := s.turn(on, m)
			if err != nil {
				return nil, err
			}
			plan.Turns[on.ride.Index] = turn
		}
	}
	return plan, nil
}

// turn is what a ride gets in a solution, by tag.
func (s *settler) turn(on rideOn, m sat.Model) (*model.Turn, error) {
	p := on.at
	t := &model.Turn{Horse: p.horse}
	var short *pool
	take := func(x *pool) *model.Piece {
		piece := s.take(x, p.slot, p.horse)
		if piece == nil {
			short = x
		}
		return piece
	}
	for _, o := range p.saddle {
		if !m.Value(o.lit) {
			continue
		}
		t.Seat = take(o.seat)
		for _, pads := range o.pads {
			pad := keptWith(t.Seat, pads) // travels with its seat
			if pad == nil {
				pad = take(pads)
			}
			t.Pads = append(t.Pads, pad)
		}
	}
	for _, g := range p.girths {
		if m.Value(g.lit) {
			t.Girth = take(g.pool)
		}
	}
	for _, n := range needsOf(on.ride.Rider) {
		for _, x := range p.extras {
			if m.Value(x.lit) && x.need == n {
				t.Extras = append(t.Extras, take(x.pool))
			}
		}
	}
	if short != nil {
		return nil, fmt.Errorf("no %s like %s is left for %s", short.one().Kind, short.one().Tag, on.ride)
	}
	return t, nil
}
