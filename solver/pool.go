package solver

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// pool is a set of pieces that the rules cannot tell apart in this week, so
// that the search counts them and tags are settled afterwards. A piece about
// which anything is particular is a pool of its own.
type pool struct {
	index  int
	pieces []*model.Piece
}

// one is the piece that speaks for the pool.
func (p *pool) one() *model.Piece { return p.pieces[0] }

// makePools parts the pieces of the centre into pools, in its order; where
// tagged, each is its own.
func makePools(w *model.Week, tagged bool) (pools []*pool, of map[*model.Piece]*pool) {
	particular := particularPieces(w)
	kit := map[*model.Piece][]*model.Piece{} // a seat and its pads are one
	for _, p := range w.Centre.Pieces {
		if p.Kind == model.Pad && p.WithSeat != nil {
			kit[p.WithSeat] = append(kit[p.WithSeat], p)
		}
	}
	for seat, pads := range kit {
		all := append(slices.Clone(pads), seat)
		if hasTwins(w, pads) || slices.ContainsFunc(all, func(p *model.Piece) bool { return particular[p] }) {
			for _, p := range all {
				particular[p] = true
			}
		}
	}
	sign := func(p *model.Piece) string {
		s := fmt.Sprint(w.Alike(p), "|", availability(w, p))
		if particular[p] || tagged {
			s += "|" + p.Tag
		}
		return s
	}
	byKey := map[string]*pool{}
	of = map[*model.Piece]*pool{}
	for _, p := range w.Centre.Pieces {
		key := sign(p)
		for _, pad := range kit[p] {
			key += "+" + sign(pad)
		}
		if p.Kind == model.Pad && p.WithSeat != nil {
			key += "+" + sign(p.WithSeat)
		}
		if byKey[key] == nil {
			byKey[key] = &pool{index: len(pools)}
			pools = append(pools, byKey[key])
		}
		byKey[key].pieces = append(byKey[key].pieces, p)
		of[p] = byKey[key]
	}
	return pools, of
}

// hasTwins reports whether two of the pads are alike. Where they are kept with one
// seat the chart may name one of them, or both: no pool can stand for that.
func hasTwins(w *model.Week, pads []*model.Piece) bool {
	seen := map[int]bool{}
	for _, p := range pads {
		if seen[w.Alike(p)] {
			return true
		}
		seen[w.Alike(p)] = true
	}
	return false
}

// availability says when a piece is in use, as far as the week can tell.
func availability(w *model.Week, p *model.Piece) string {
	due := p.CheckDue
	if due > w.Until || w.House.Elsewhere.TackChecks {
		due = 0
	}
	s := fmt.Sprint(due)
	for _, o := range p.Out {
		if o.From.Date <= w.Until && (o.End.IsZero() || o.End.Date >= w.From) {
			s += fmt.Sprint(o.From, o.End)
		}
	}
	return s
}

// particularPieces are those that a pool of their own must hold: held by tag,
// used by a fact, touched by a horse on its own tack.
func particularPieces(w *model.Week) map[*model.Piece]bool {
	particular := map[*model.Piece]bool{}
	for _, r := range w.Rides {
		if r.Held != nil && r.Held.Seat != nil {
			particular[r.Held.Seat] = true
		}
	}
	twice := map[model.Kind]bool{}
	for _, r := range w.Rides {
		kinds := map[model.Kind]bool{}
		for _, n := range r.Rider.Extras {
			twice[n.Kind] = twice[n.Kind] || kinds[n.Kind]
			kinds[n.Kind] = true
		}
	}
	marked, late := markedHorses(w)
	for _, f := range w.Facts {
		if marked || w.From <= f.Date && f.Date <= w.Until {
			for _, p := range f.Turn.Pieces() {
				particular[p] = true
			}
		}
	}
	for _, p := range w.Centre.Pieces {
		switch {
		case twice[p.Kind], w.HasContact(p), marked && len(p.Cleaned) > 0, late && p.Skin:
			particular[p] = true
		case marked && p.Kind == model.Pad && p.WithSeat != nil && p.Skin:
			// The seat can go on where its pad cannot: counting them as one would be wrong.
			particular[p] = true
		}
	}
	return particular
}

// markedHorses reports whether any ride of the week would leave on a piece a
// contact with a horse on its own tack, and whether any such contact would begin
// later than the ride ends.
func markedHorses(w *model.Week) (marked, late bool) {
	at := func(s *model.Stint) {
		for _, from := range s.LeavesContact(w.House) {
			marked = true
			late = late || from != model.Instant{Date: s.Date, Minute: s.End}
		}
	}
	for _, h := range w.Centre.Horses {
		for _, r := range w.Rides {
			at(stintOn(r.Meeting.Date, r.Start, r.End, h))
		}
	}
	for _, f := range w.Facts {
		at(f)
	}
	return marked, late
}

// stintOn is a horse at work for a while, for what only horse and time decide.
func stintOn(d model.Date, start, end model.Minute, h *model.Horse) *model.Stint {
	return &model.Stint{Date: d, Start: start, End: end, Turn: &model.Turn{Horse: h}}
}

// stint is the use as the rules see it, but for its pieces.
func (u use) stint() *model.Stint { return u.at.stint() }

func (p *place) stint() *model.Stint { return stintOn(p.meeting.Date, p.start, p.end, p.horse) }
