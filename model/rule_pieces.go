package model

import (
	"cmp"
	"fmt"
	"slices"
)

var pieceInOnePlace = &Rule{
	Name: "piece in one place", Class: Stock,
	Sentence: "a piece is on one horse at a time, with time to carry it to the next",
	audit: func(l *ledger) {
		for _, p := range l.Centre.Pieces {
			uses := l.ofPiece[p]
			for i, s := range uses {
				for _, t := range uses[i+1:] {
					if t.Date != s.Date {
						break
					}
					gap := t.Start - s.End
					switch {
					case gap < 0:
						l.breaks([]*Stint{s, t}, "%s: wanted by %s and %s at once", p.Tag, s.Name, t.Name)
					case gap < l.House.Move && s.Turn.Horse != t.Turn.Horse:
						l.breaks([]*Stint{s, t}, "%s: %d min to go from %s to %s (%s), and %d are needed",
							p.Tag, gap, s.Turn.Horse.Name, t.Turn.Horse.Name, t.Name, l.House.Move)
					}
				}
			}
		}
	},
}

var pieceInUse = &Rule{
	Name: "piece in use", Class: Care,
	Sentence: "a piece is not out of use and its check is not past due",
	audit: func(l *ledger) {
		for _, s := range l.stints {
			for _, p := range s.Turn.Pieces() {
				if why := l.NotInUse(p, s.Date, s.Start, s.End); why != "" {
					l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
				}
			}
		}
	},
}

// NotInUse says why a piece is not to be used during [start, end) of a date;
// "" is that it is in use. A piece whose check date is unknown is.
func (w *Week) NotInUse(p *Piece, d Date, start, end Minute) string {
	if why := w.outOfUse(p, d, start, end); why != "" {
		return why
	}
	if w.checkOver(p, d) {
		return fmt.Sprintf("the check of %s was due on %s", p.Tag, p.CheckDue)
	}
	return ""
}

// checkOver reports whether the piece's check is past due.
func (w *Week) checkOver(p *Piece, d Date) bool {
	return !w.House.Elsewhere.TackChecks && p.CheckDue != 0 && p.CheckDue < d
}

// outOfUse says why a piece is out during [start, end) of a date; "" is that it
// is not.
func (w *Week) outOfUse(p *Piece, d Date, start, end Minute) string {
	for _, o := range p.Out {
		if o.From.Before(Instant{d, end}) && (o.End.IsZero() || Instant{d, start}.Before(o.End)) {
			return fmt.Sprintf("%s is out of use (%s) until a named person has checked it", p.Tag, cmp.Or(o.Why, "no reason given"))
		}
	}
	return ""
}

var ownTackOnly = &Rule{
	Name: "own tack only", Class: Care,
	Sentence: "a piece that touches the skin of a horse marked own tack only goes to no other horse until a named person has recorded that it was cleaned",
	audit: func(l *ledger) {
		for _, p := range l.Centre.Pieces {
			if !p.Skin {
				continue
			}
			uses := l.ofPiece[p]
			for i, t := range uses {
				at := Instant{t.Date, t.Start}
				for _, h := range l.Contacted(p, at) {
					if h != t.Turn.Horse && t.Date >= l.From {
						l.breaks([]*Stint{t}, "%s: %s was on %s, which was marked as own tack only, and has not been cleaned", t.Name, p.Tag, h.Name)
					}
				}
				for j, s := range uses {
					if j == i || s.Turn.Horse == t.Turn.Horse || s.Date < l.From || !s.LeavesUnclean(p, at, l.House) {
						continue
					}
					l.breaks([]*Stint{s, t}, "%s: %s was on %s, which was marked as own tack only, and has not been cleaned",
						t.Name, p.Tag, s.Turn.Horse.Name)
				}
			}
		}
	},
}

// Needs reports whether the rider needs a piece of the kind.
func (r *Rider) Needs(k Kind) bool {
	return slices.ContainsFunc(r.Extras, func(n ExtraNeed) bool { return n.Kind == k })
}
