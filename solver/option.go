package solver

import (
	"slices"

	"tackwright/model"
)

// option is one way to saddle a horse: a seat, its pads and the girths that the
// fit chart names with them, each as a pool.
type option struct {
	seat   *pool
	pads   []*pool
	girths []*pool // none where the seat takes none
}

// pieces are seat and pads by the pieces that speak for their pools.
func (o *option) pieces() []*model.Piece {
	all := []*model.Piece{o.seat.one()}
	for _, p := range o.pads {
		all = append(all, p.one())
	}
	return all
}

type horseDate struct {
	horse *model.Horse
	date  model.Date
}

// optionsOn are the ways to saddle a horse on a date, in the order of the
// centre's pieces.
func (e *encoder) optionsOn(h *model.Horse, d model.Date) []*option {
	key := horseDate{h, d}
	if opts, ok := e.options[key]; ok {
		return opts
	}
	var opts []*option
	for _, seat := range e.pools {
		if !seat.one().IsSeat() {
			continue
		}
		rows := e.w.RowsFor(h, seat.one(), d)
		if !e.on("seat fits horse") && len(rows) == 0 {
			rows = []*model.FitRow{nil}
		}
		for _, row := range rows {
			for _, pads := range e.w.PadChoices(h, seat.one(), row) {
				opts = e.addOption(opts, seat, pads, row)
			}
		}
	}
	e.options[key] = opts
	return opts
}

// addOption adds a row's girths to the option with that seat and those pads.
func (e *encoder) addOption(opts []*option, seat *pool, pads []*model.Piece, row *model.FitRow) []*option {
	o := &option{seat: seat}
	for _, p := range pads {
		o.pads = append(o.pads, e.poolOf[p])
	}
	i := slices.IndexFunc(opts, func(x *option) bool { return x.seat == seat && slices.Equal(x.pads, o.pads) })
	if i >= 0 {
		o = opts[i]
	} else {
		opts = append(opts, o)
	}
	if !seat.one().TakesGirth() {
		return opts
	}
	for _, g := range e.pools {
		fits := g.one().Kind == model.Girth
		if e.on("girth fits") {
			fits = fits && g.one().Buckles(seat.one()) && row != nil && row.HasGirth(g.one())
		}
		if fits && !slices.Contains(o.girths, g) {
			o.girths = append(o.girths, g)
		}
	}
	return opts
}
