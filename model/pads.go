package model

import "slices"

// PadChoices are the pads that a horse wears under a seat, each choice in order
// from its back: those of the fit row where it names them; none where the seat
// needs none; else one of the horse's own; else one kept with the seat; else a
// loose one of a size that the row allows. A nil row allows any size.
func (w *Week) PadChoices(h *Horse, seat *Piece, row *FitRow) [][]*Piece {
	if row != nil && len(row.Pads) > 0 {
		return [][]*Piece{row.Pads}
	}
	if seat.NoPad {
		return [][]*Piece{nil}
	}
	one := func(ok func(*Piece) bool) (choices [][]*Piece) {
		for _, p := range w.Centre.Pieces {
			if p.Kind == Pad && ok(p) {
				choices = append(choices, []*Piece{p})
			}
		}
		return choices
	}
	if own := one(func(p *Piece) bool { return p.WithHorse == h }); own != nil {
		return own
	}
	if kept := one(func(p *Piece) bool { return p.WithSeat == seat }); kept != nil {
		return kept
	}
	return one(func(p *Piece) bool {
		return p.Loose() && (row == nil || len(row.PadSizes) == 0 || slices.Contains(row.PadSizes, p.Size))
	})
}

// RowsFor are the rows of the fit chart for a seat on a horse that are valid on
// a date, in the chart's order.
func (w *Week) RowsFor(h *Horse, seat *Piece, d Date) []*FitRow {
	var rows []*FitRow
	for _, r := range w.rows[fit{h, seat}] {
		if r.ValidOn(d, w.House) {
			rows = append(rows, r)
		}
	}
	return rows
}

// fit is a seat on a horse.
type fit struct {
	horse *Horse
	seat  *Piece
}

// rowsByFit finds the rows of the fit chart by seat and horse.
func rowsByFit(c *Centre) map[fit][]*FitRow {
	rows := map[fit][]*FitRow{}
	for _, r := range c.Chart {
		rows[fit{r.Horse, r.Seat}] = append(rows[fit{r.Horse, r.Seat}], r)
	}
	return rows
}

// samePads reports whether the pads are one of the choices.
func samePads(choices [][]*Piece, pads []*Piece) bool {
	return slices.ContainsFunc(choices, func(c []*Piece) bool { return slices.Equal(c, pads) })
}
