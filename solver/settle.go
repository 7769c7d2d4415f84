package solver

import (
	"slices"

	"tackwright/model"
)

// hand is a piece in the settling of tags: which horse has it, and until when.
type hand struct {
	horse   *model.Horse
	until   model.Instant
	forever bool // the horse is on its own tack
}

// settler gives each pool that a plan wears a tagged piece, ride by ride in
// order of time. The pools were counted so that one is always free.
type settler struct {
	w     *model.Week
	hands map[*model.Piece]hand
}

// take picks a piece of the pool for a horse: the one that it still holds, else
// of those that are free the one it had last, else the first. nil is none: a bug.
func (s *settler) take(p *pool, sl *slot, h *model.Horse) *model.Piece {
	if len(p.pieces) == 1 {
		return p.one() // the clauses have settled it
	}
	at := sl.instant()
	held := func(x *model.Piece) bool { return s.hands[x].forever || at.Before(s.hands[x].until) }
	pick := first(p.pieces, func(x *model.Piece) bool { return held(x) && s.hands[x].horse == h })
	if pick == nil {
		pick = first(p.pieces, func(x *model.Piece) bool { return !held(x) && s.hands[x].horse == h })
	}
	if pick == nil {
		pick = first(p.pieces, func(x *model.Piece) bool { return !held(x) })
	}
	if pick == nil {
		return nil
	}
	marked := len(stintOn(at.Date, sl.start, sl.end, h).LeavesContact(s.w.House)) > 0
	s.hands[pick] = hand{
		horse:   h,
		until:   model.Instant{Date: at.Date, Minute: sl.end + s.w.House.Move},
		forever: pick.Skin && marked || s.hands[pick].forever,
	}
	return pick
}

func first(pieces []*model.Piece, ok func(*model.Piece) bool) *model.Piece {
	if i := slices.IndexFunc(pieces, ok); i >= 0 {
		return pieces[i]
	}
	return nil
}

// keptWith is the pad of the pool that is kept with the seat, or nil.
func keptWith(seat *model.Piece, pads *pool) *model.Piece {
	i := slices.IndexFunc(pads.pieces, func(p *model.Piece) bool { return p.WithSeat == seat })
	if i < 0 {
		return nil
	}
	return pads.pieces[i]
}
