package model

import (
	"cmp"
	"fmt"
	"slices"
)

// Spare is something that a centre could have one more of. One of the three is
// stated: a piece that it would be a copy of, a girth of a size that the fit chart
// names and the centre has none of, or a horse that it would be like.
type Spare struct {
	Piece *Piece
	Girth *Piece // made up: its family and size count
	Horse *Horse
}

// Spares are all that a centre could have one more of: each piece, in its order,
// but for pads that are kept with a seat, which come with it; girths of sizes that
// it has none of, by family and size; then each horse. Girths are sold in steps of
// 2 in (trade size charts).
func (c *Centre) Spares() []Spare {
	const step = 20
	var all []Spare
	for _, p := range c.Pieces {
		if p.Kind != Pad || p.WithSeat == nil {
			all = append(all, Spare{Piece: p})
		}
	}
	var girths []*Piece
	for _, f := range c.Chart {
		family := f.Seat.Family
		if f.GirthMin == 0 || family == NoFamily || family == OwnGirth {
			continue
		}
		for size := f.GirthMin; size <= f.GirthMax; size += step {
			same := func(g *Piece) bool { return g.Kind == Girth && g.Family == family && g.Label == size }
			if !slices.ContainsFunc(c.Pieces, same) && !slices.ContainsFunc(girths, same) {
				girths = append(girths, &Piece{Kind: Girth, Family: family, Label: size, Skin: true})
			}
		}
	}
	slices.SortFunc(girths, func(a, b *Piece) int {
		return cmp.Or(cmp.Compare(a.Family, b.Family), cmp.Compare(a.Label, b.Label))
	})
	for _, g := range girths {
		all = append(all, Spare{Girth: g})
	}
	for _, h := range c.Horses {
		all = append(all, Spare{Horse: h})
	}
	return all
}

// With is a copy of the centre that has spares besides, each of them at most once:
// a plan of it is one of what could be, if everything fits. It differs from c only
// in what it has more of, so whatever is possible in c is possible in it.
//
// A piece comes new: in use, clean, its check not due, with the pieces kept with
// it, and approved by the fit chart wherever the one that it copies is. A horse
// comes sound, rested and past its quarantine, with the pieces kept with it; it is
// approved, kept apart, off on days of the week and not ridden by whom the one is
// that it is like, and it is nobody's usual horse.
func (c *Centre) With(spares ...Spare) *Centre {
	o := deepCopy(c)
	for _, s := range spares {
		switch {
		case s.Piece != nil:
			o.copyPieces([]*Piece{o.Pieces[slices.Index(c.Pieces, s.Piece)]}, nil, nil)
		case s.Girth != nil:
			g := *s.Girth
			g.Tag = o.free(fmt.Sprintf("girth of %s", g.Label), func(tag string) bool { return o.hasTag(tag) })
			o.Pieces = append(o.Pieces, &g)
		case s.Horse != nil:
			o.copyHorse(o.Horses[slices.Index(c.Horses, s.Horse)])
		}
	}
	return o
}

func (c *Centre) hasTag(tag string) bool {
	return slices.ContainsFunc(c.Pieces, func(p *Piece) bool { return p.Tag == tag })
}

// free is a name for something like what is called name.
func (c *Centre) free(name string, taken func(string) bool) string {
	for n := 2; ; n++ {
		if like := fmt.Sprintf("%s (%d)", name, n); !taken(like) {
			return like
		}
	}
}

// copyPieces adds copies of pieces, with what is kept with them, and of the rows
// of the fit chart that name them; of those rows and pieces horse is the one, where
// there is one, for which like stands in.
func (c *Centre) copyPieces(pieces []*Piece, horse, like *Horse) {
	copies := map[*Piece]*Piece{}
	for _, p := range slices.Clone(c.Pieces) {
		if !slices.Contains(pieces, p) && !slices.Contains(pieces, p.WithSeat) {
			continue
		}
		q := *p
		q.Tag = c.free(p.Tag, c.hasTag)
		q.Was, q.Out, q.Cleaned, q.CheckDue = nil, nil, nil, 0
		if like != nil && q.WithHorse == horse {
			q.WithHorse = like
		}
		copies[p] = &q
		c.Pieces = append(c.Pieces, &q)
	}
	for _, q := range copies {
		q.WithSeat = cmp.Or(copies[q.WithSeat], q.WithSeat)
	}
	for _, f := range slices.Clone(c.Chart) {
		if horse != nil && f.Horse != horse {
			continue
		}
		row := *f
		row.Horse = cmp.Or(like, f.Horse)
		row.Seat = cmp.Or(copies[f.Seat], f.Seat)
		row.Pads, row.Girths = nil, nil
		for _, p := range f.Pads {
			row.Pads = append(row.Pads, cmp.Or(copies[p], p))
		}
		for _, g := range f.Girths {
			row.Girths = append(row.Girths, g)
			if copies[g] != nil {
				row.Girths = append(row.Girths, copies[g])
			}
		}
		if row.Horse == f.Horse && row.Seat == f.Seat && slices.Equal(row.Pads, f.Pads) {
			f.Girths = row.Girths // of the same seat on the same horse
			continue
		}
		c.Chart = append(c.Chart, &row)
	}
}

func (c *Centre) copyHorse(h *Horse) {
	like := *h
	like.Name = c.free(h.Name, func(name string) bool {
		return slices.ContainsFunc(c.Horses, func(x *Horse) bool { return x.Name == name })
	})
	like.Was, like.Out, like.OwnTack = nil, nil, nil
	like.InFoalUntil, like.Arrived, like.QuarantineUntil = 0, 0, 0
	like.DaysOff = slices.Clone(h.DaysOff)
	everyWeek(&like.DaysOff, c.Today, c.Today)
	like.Apart = nil
	for _, x := range c.Horses {
		if x != h && h.IsApart(x) {
			like.Apart = append(like.Apart, x)
		}
	}
	c.Horses = append(c.Horses, &like)
	var own []*Piece
	for _, p := range c.Pieces {
		if p.WithHorse == h {
			own = append(own, p)
		}
	}
	c.copyPieces(own, h, &like)
	for _, r := range c.Riders {
		if r.IsBanned(h) {
			r.Bans = append(r.Bans, &like)
		}
		for _, l := range r.Likings {
			if l.Horse == h && l.Dislike {
				l.Horse = &like
				r.Likings = append(r.Likings, l)
			}
		}
	}
	for _, n := range slices.Clone(c.Notes) {
		if n.Kind == NoteNever && n.Horse == h {
			never := *n
			never.Horse = &like
			c.Notes = append(c.Notes, &never)
		}
	}
}
