package examples

import "tackwright/model"

// firstCome fills a week as a board is filled by hand: rides in the order of
// the lessons, each on the first horse and the first tack set, in the order in
// which the folder lists them, that break no rule beside what is on the board by
// then. Nothing is ever moved to make room.
func firstCome(w *model.Week) *model.Plan {
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for i, r := range w.Rides {
		if r.State == model.Open {
			p.Turns[i] = firstFree(w, p, r)
		}
	}
	return p
}

// firstFree is the first turn for a ride that breaks nothing; nil is none. The
// audit alone decides; what it would refuse whatever else is on the board is
// only not offered to it, to save time.
func firstFree(w *model.Week, p *model.Plan, r *model.Ride) *model.Turn {
	for _, h := range w.Centre.Horses {
		if w.NotThere(h, r.Date(), r.Start, r.End) != "" || w.Unsuited(r, h) != "" || busy(w, p, r, h) {
			continue
		}
		for _, t := range tackSets(w, r, h) {
			p.Turns[r.Index] = t
			if len(model.Broken(w.Audit(p))) == 0 {
				return t
			}
			p.Turns[r.Index] = nil
		}
	}
	return nil
}

// busy reports whether the horse is on the board already at some time of a ride.
func busy(w *model.Week, p *model.Plan, r *model.Ride, h *model.Horse) bool {
	for i, t := range p.Turns[:r.Index] {
		q := w.Rides[i]
		if t != nil && t.Horse == h && q.Date() == r.Date() && q.Start < r.End && r.Start < q.End {
			return true
		}
	}
	return false
}

// tackSets are the ways to tack up a horse for a ride as if it were the only
// one, in the order of the folder.
func tackSets(w *model.Week, r *model.Ride, h *model.Horse) []*model.Turn {
	var sets []*model.Turn
	for _, seat := range w.Centre.Pieces {
		if !seat.IsSeat() || model.SeatUnfit(r.Rider, seat) != "" {
			continue
		}
		for _, row := range w.RowsFor(h, seat, r.Date()) {
			for _, pads := range w.PadChoices(h, seat, row) {
				for _, girth := range girths(w, seat, row) {
					for _, extras := range extras(w, r.Rider.Extras, seat) {
						sets = append(sets, &model.Turn{Horse: h, Seat: seat, Pads: pads, Girth: girth, Extras: extras})
					}
				}
			}
		}
	}
	return sets
}

func girths(w *model.Week, seat *model.Piece, row *model.FitRow) []*model.Piece {
	if !seat.TakesGirth() {
		return []*model.Piece{nil}
	}
	var fit []*model.Piece
	for _, g := range w.Centre.Pieces {
		if g.Kind == model.Girth && g.Family == seat.Family && row.HasGirth(g) {
			fit = append(fit, g)
		}
	}
	return fit
}

// extras are the ways to meet each need in turn.
func extras(w *model.Week, needs []model.ExtraNeed, seat *model.Piece) [][]*model.Piece {
	if len(needs) == 0 {
		return [][]*model.Piece{nil}
	}
	var sets [][]*model.Piece
	for _, first := range w.Centre.Pieces {
		if needs[0].MetBy(first) && first.GoesOnSeat(seat) {
			for _, rest := range extras(w, needs[1:], seat) {
				sets = append(sets, append([]*model.Piece{first}, rest...))
			}
		}
	}
	return sets
}
