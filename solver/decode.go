package solver

import (
	"context"

	"tackwright/model"
	"tackwright/solver/sat"
)

// decode reads a plan from a solution and settles its tags, as well as it can be
// done before ctx ends.
func (e *encoder) decode(ctx context.Context, m sat.Model) (*model.Plan, error) {
	plan := &model.Plan{Turns: make([]*model.Turn, len(e.w.Rides)), Ground: make([][]string, len(e.w.Rides))}
	for i, r := range e.w.Rides {
		if r.State == model.Started {
			plan.Turns[i] = r.Told
		}
	}
	var outfits []*outfit
	for _, p := range e.places {
		for _, on := range p.rides {
			if m.Value(on.lit) {
				o := e.outfitOf(on, m)
				outfits = append(outfits, o)
				plan.Turns[on.ride.Index] = o.turn
			}
		}
	}
	return plan, e.settle(ctx, outfits)
}

// outfit is what a ride gets in a solution: by pool, and the turn that its tags
// are to be filled in.
type outfit struct {
	rideOn
	turn   *model.Turn
	stint  *model.Stint
	marks  bool // it leaves a contact with a horse on its own tack
	seat   *pool
	pads   []*pool
	girth  *pool // nil where the seat takes none
	extras []*pool
}

func (e *encoder) outfitOf(on rideOn, m sat.Model) *outfit {
	o := &outfit{rideOn: on, stint: on.at.stint()}
	o.marks = len(o.stint.LeavesContact(e.w.House)) > 0
	for _, way := range on.at.saddle {
		if m.Value(way.lit) {
			o.seat, o.pads = way.seat, way.pads
		}
	}
	for _, g := range on.at.girths {
		if m.Value(g.lit) {
			o.girth = g.pool
		}
	}
	for _, n := range needsOf(on.ride.Rider) {
		for _, x := range on.at.extras {
			if m.Value(x.lit) && x.need == n {
				o.extras = append(o.extras, x.pool)
			}
		}
	}
	o.turn = &model.Turn{Horse: on.at.horse}
	if len(o.pads) > 0 {
		o.turn.Pads = make([]*model.Piece, len(o.pads))
	}
	if len(o.extras) > 0 {
		o.turn.Extras = make([]*model.Piece, len(o.extras))
	}
	return o
}

// posted are the pieces that were posted for the ride on this horse.
func (o *outfit) posted() []*model.Piece {
	if was := o.ride.Posted; was != nil && was.Horse == o.at.horse {
		return was.Pieces()
	}
	return nil
}

// part is what of an outfit is settled as one: a piece, and of a seat the pads
// that are kept with it.
type part struct {
	pools []*pool
	to    []**model.Piece // where each piece is filled in
}

func (o *outfit) parts() []part {
	seat := part{[]*pool{o.seat}, []**model.Piece{&o.turn.Seat}}
	var parts []part
	for i, pads := range o.pads {
		if keptWith(o.seat.one(), pads) != nil { // travels with its seat
			seat.pools, seat.to = append(seat.pools, pads), append(seat.to, &o.turn.Pads[i])
		} else {
			parts = append(parts, part{[]*pool{pads}, []**model.Piece{&o.turn.Pads[i]}})
		}
	}
	if o.girth != nil {
		parts = append(parts, part{[]*pool{o.girth}, []**model.Piece{&o.turn.Girth}})
	}
	for i, x := range o.extras {
		parts = append(parts, part{[]*pool{x}, []**model.Piece{&o.turn.Extras[i]}})
	}
	return append(parts, seat)
}

// keptWith is the pad of the pool that is kept with the seat, or nil.
func keptWith(seat *model.Piece, pads *pool) *model.Piece {
	for _, p := range pads.pieces {
		if p.WithSeat == seat {
			return p
		}
	}
	return nil
}
