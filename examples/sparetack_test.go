package examples

import (
	"cmp"
	"slices"

	"tackwright/model"
)

// spared gives a centre two of every piece that is not kept with a horse, each
// charted like the one it copies, so that tack is never what is missing.
func spared(c *model.Centre) {
	pieces, chart := slices.Clone(c.Pieces), slices.Clone(c.Chart)
	spare := map[*model.Piece]*model.Piece{}
	for _, p := range pieces {
		if p.WithHorse == nil {
			q := *p
			q.Tag += " spare"
			spare[p] = &q
			c.Pieces = append(c.Pieces, &q)
		}
	}
	for _, p := range pieces {
		if p.WithSeat != nil {
			spare[p].WithSeat = spare[p.WithSeat]
		}
	}
	for _, f := range chart {
		var girths, pads []*model.Piece
		for _, g := range f.Girths {
			girths = append(girths, g, spare[g])
		}
		for _, p := range f.Pads {
			pads = append(pads, cmp.Or(spare[p], p))
		}
		f.Girths = girths
		g := *f
		g.Seat, g.Pads = spare[f.Seat], pads
		c.Chart = append(c.Chart, &g)
	}
}
