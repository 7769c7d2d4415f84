package model

import "slices"

// Turn is what one ride gets: a horse and a tack set.
type Turn struct {
	Horse  *Horse
	Seat   *Piece
	Pads   []*Piece // in order from the horse's back
	Girth  *Piece   // nil where the seat takes none
	Extras []*Piece // in the order of the rider's needs
}

// Pieces are all pieces of the tack set, seat first.
func (t *Turn) Pieces() []*Piece {
	var all []*Piece
	if t.Seat != nil {
		all = append(all, t.Seat)
	}
	all = append(all, t.Pads...)
	if t.Girth != nil {
		all = append(all, t.Girth)
	}
	return append(all, t.Extras...)
}

// Words are the horse and the tags; a ride without a turn is on the ground.
func (t *Turn) Words() string {
	if t == nil {
		return "on the ground"
	}
	words := t.Horse.Name + ":"
	for _, x := range t.Pieces() {
		words += " " + x.Tag
	}
	return words
}

// SameTack reports whether seat, pads and girth are the very same pieces.
func (t *Turn) SameTack(u *Turn) bool {
	return t.Seat == u.Seat && t.Girth == u.Girth && slices.Equal(t.Pads, u.Pads)
}

// Equal reports whether both name the same horse and the same pieces.
func (t *Turn) Equal(u *Turn) bool {
	if t == nil || u == nil {
		return t == u
	}
	return t.Horse == u.Horse && t.SameTack(u) && slices.Equal(t.Extras, u.Extras)
}

// Plan for the rides of a week, in their order.
type Plan struct {
	Turns  []*Turn    // by ride; nil: on the ground
	Ground [][]string // by ride: what stands in its way, in sentences; nil where seated
	Proof  Proof
}

// Proof is what is known of how good a plan is.
type Proof struct {
	Goals []GoalResult
	Hash  string // of week, goals and plan; the proof covers nothing else
}

// GoalResult of one goal of the score, in order.
type GoalResult struct {
	Name   string
	Value  int  // of the plan
	Bound  int  // no plan that is as good in the goals before has less
	Proved bool // Value is the least there is
}

// Proved reports whether every goal was proved.
func (p Proof) Proved() bool {
	for _, g := range p.Goals {
		if !g.Proved {
			return false
		}
	}
	return len(p.Goals) > 0
}
