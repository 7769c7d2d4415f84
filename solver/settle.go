package solver

import (
	"context"
	"slices"

	"tackwright/model"
)

// settle picks the tags of outfits, by time, among pieces alike: as many as can be
// that were posted for that ride on that horse, then with the fewest moves.
func (e *encoder) settle(ctx context.Context, outfits []*outfit) error {
	for _, s := range e.settlers(outfits) {
		if err := s.settle(ctx); err != nil {
			return err
		}
	}
	return nil
}

// settlers have the uses of outfits, a settler for each class of alike pieces, and
// those of facts beside them.
func (e *encoder) settlers(outfits []*outfit) []*settler {
	of := map[int]*settler{}
	var order []*settler
	pools := map[int]int{} // of a class
	for _, p := range e.pools {
		pools[e.w.Alike(p.one())]++
	}
	parted := func(p *pool) bool { return pools[e.w.Alike(p.one())] > 1 }
	for _, o := range outfits {
		for _, t := range o.parts() {
			class := e.w.Alike(t.pools[0].one())
			s := of[class]
			if s == nil {
				s = &settler{w: e.w}
				of[class] = s
				order = append(order, s)
			}
			u := wear{Stint: o.stint, to: t.to, marks: o.marks, posted: o.posted()}
			u.first = s.numbers(kitsOf(t.pools))
			u.can = u.first
			if slices.ContainsFunc(t.pools, parted) {
				u.can = s.numbers(e.alikeKits(o, t))
			}
			s.uses = append(s.uses, u)
		}
	}
	for _, f := range e.w.Facts {
		for _, k := range kitsWorn(f.Turn) {
			if s := of[e.w.Alike(k[0])]; s != nil && f.Date >= e.w.From {
				at := s.numbers([]kit{k})
				s.uses = append(s.uses, wear{Stint: f, marks: len(f.LeavesContact(e.w.House)) > 0, first: at, can: at})
			}
		}
	}
	return order
}

// kit is a piece, and of a seat the pads that travel with it.
type kit []*model.Piece

// kitsOf are the kits of a seat's pool and its pads', or of any other pool.
func kitsOf(pools []*pool) []kit {
	var kits []kit
	for _, p := range pools[0].pieces {
		k := kit{p}
		for _, pads := range pools[1:] {
			k = append(k, keptWith(p, pads))
		}
		kits = append(kits, k)
	}
	return kits
}

// kitsWorn are the kits of a turn.
func kitsWorn(t *model.Turn) []kit {
	var kits []kit
	var seat kit
	for _, p := range t.Pieces() { // the seat comes first
		switch {
		case p == t.Seat:
			seat = kit{p}
		case seat != nil && p.Kind == model.Pad && p.WithSeat == t.Seat:
			seat = append(seat, p)
		default:
			kits = append(kits, kit{p})
		}
	}
	if seat != nil {
		kits = append(kits, seat)
	}
	return kits
}

// alikeKits are all that could take the place of a part.
func (e *encoder) alikeKits(o *outfit, t part) []kit {
	var kits []kit
	add := func(found []kit) {
		for _, k := range found {
			if !slices.ContainsFunc(k, func(x *model.Piece) bool { return e.unworn(o.at.slot, o.at.horse, x) }) {
				kits = append(kits, k)
			}
		}
	}
	if !t.pools[0].one().IsSeat() {
		for _, p := range e.pools {
			if e.w.Alike(p.one()) == e.w.Alike(t.pools[0].one()) {
				add(kitsOf([]*pool{p}))
			}
		}
		return kits
	}
	alike := func(p, q *pool) bool { return e.w.Alike(p.one()) == e.w.Alike(q.one()) }
	for _, x := range e.optionsOn(o.at.horse, o.at.meeting.Date) {
		if !alike(x.seat, o.seat) || !slices.EqualFunc(x.pads, o.pads, alike) || e.clash(o.ride, o.at.horse, x) {
			continue
		}
		pools := []*pool{x.seat}
		for _, pads := range x.pads {
			if keptWith(x.seat.one(), pads) != nil {
				pools = append(pools, pads)
			}
		}
		add(kitsOf(pools))
	}
	return kits
}
