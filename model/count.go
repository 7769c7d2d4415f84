package model

// OnUsual counts the open rides that have a usual horse and are seated, and those
// of them that are on it.
func (w *Week) OnUsual(p *Plan) (on, have int) {
	for i, r := range w.Rides {
		usual, _ := w.Usual(r)
		if r.State != Open || p.Turns[i] == nil || usual == nil {
			continue
		}
		have++
		on += b2i(p.Turns[i].Horse == usual)
	}
	return on, have
}

// Move is a piece that goes from one horse to another within a date. A pad that
// travels with its seat makes no move of its own.
type Move struct {
	Piece    *Piece
	From, To *Stint
}

// Moves are the plan's moves on the dates planned, in the order of the centre's
// pieces and of time. Unlike Carry, which speaks of alike pieces, they are those
// of the tags; work that names tack counts.
func (w *Week) Moves(p *Plan) []Move {
	var moves []Move
	l := w.ledger(p)
	for _, piece := range w.Centre.Pieces {
		if !piece.IsCarried() {
			continue
		}
		var last *Stint
		for _, s := range l.ofPiece[piece] {
			if s.Date < w.From || s.Date > w.Until {
				continue
			}
			if last != nil && last.Date == s.Date && last.Turn.Horse != s.Turn.Horse {
				moves = append(moves, Move{piece, last, s})
			}
			last = s
		}
	}
	return moves
}

// Busiest is the horse whose work, facts counted in, is the greatest part of its
// allowance of a calendar week that the dates planned touch, and that part in
// percent, rounded up. Of two alike it is the first; nil where no horse with an
// allowance works.
func (w *Week) Busiest(p *Plan) (*Horse, int) {
	var busiest *Horse
	var most, of int64 = 0, 1
	l := w.ledger(p)
	for _, h := range l.horses {
		allowance := int64(w.LimitsOf(h).WeekMinutes)
		if work := l.heaviestWeek(h); allowance > 0 && work*of > most*allowance {
			busiest, most, of = h, work, allowance
		}
	}
	whole := of * workUnit
	return busiest, int((100*most + whole - 1) / whole)
}

// heaviestWeek is the most work of a horse in any calendar week touched.
func (l *ledger) heaviestWeek(h *Horse) int64 {
	var most int64
	for _, week := range l.calendarWeeks(h) {
		most = max(most, workOf(week))
	}
	return most
}
