package sheet

import (
	"cmp"
	"slices"

	"tackwright/model"
)

// PutAway is a piece that goes back after its last use of the day.
type PutAway struct {
	From  Clock   `json:"from" about:"when that use ends"`
	Horse string  `json:"horse" about:"that wears it last"`
	Piece Piece   `json:"piece" about:"what goes back"`
	With  []Piece `json:"with" about:"what is kept with the seat, and came off with it"`
}

// putAway are the pieces of the day by rack spot; then those that are kept with
// a horse, then those whose spot is not recorded.
func (d *day) putAway() []PutAway {
	var out []PutAway
	for _, x := range d.week.Centre.Pieces {
		uses := d.piece[x]
		if len(uses) == 0 || d.travels(x) {
			continue
		}
		last := uses[len(uses)-1]
		p := PutAway{From: Clock(last.End), Horse: last.Turn.Horse.Name, Piece: d.asPiece(x)}
		for _, y := range d.week.Centre.Pieces {
			if y.WithSeat == x && d.travels(y) {
				with := d.asPiece(y)
				with.Travels = true
				p.With = append(p.With, with)
			}
		}
		out = append(out, p)
	}
	slices.SortStableFunc(out, func(a, b PutAway) int {
		return cmp.Or(cmp.Compare(spotOrder(a.Piece), spotOrder(b.Piece)), natural(a.Piece.KeptAt, b.Piece.KeptAt),
			natural(a.Piece.Rack, b.Piece.Rack), natural(a.Piece.Tag, b.Piece.Tag))
	})
	return out
}

// travels reports whether a piece goes back with the seat that it is kept with:
// the last use of both is the same.
func (d *day) travels(x *model.Piece) bool {
	uses, seats := d.piece[x], d.piece[x.WithSeat]
	return x.WithSeat != nil && len(uses) > 0 && len(seats) > 0 && uses[len(uses)-1] == seats[len(seats)-1]
}

func spotOrder(p Piece) int {
	switch {
	case p.KeptAt != "":
		return 1
	case p.Rack == "":
		return 2
	}
	return 0
}

// natural compares names the way people walk along a wall: A2 before A10.
func natural(a, b string) int {
	x, y := a, b
	for x != "" && y != "" {
		p, q := chunk(x), chunk(y)
		x, y = x[len(p):], y[len(q):]
		c := cmp.Compare(p, q)
		if isDigit(p[0]) && isDigit(q[0]) {
			p, q = trimZeros(p), trimZeros(q)
			c = cmp.Or(cmp.Compare(len(p), len(q)), cmp.Compare(p, q))
		}
		if c != 0 {
			return c
		}
	}
	return cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(a, b))
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

// chunk is the longest start of s that is all digits, or has none.
func chunk(s string) string {
	for i := 1; i < len(s); i++ {
		if isDigit(s[i]) != isDigit(s[0]) {
			return s[:i]
		}
	}
	return s
}

func trimZeros(s string) string {
	for len(s) > 1 && s[0] == '0' {
		s = s[1:]
	}
	return s
}
