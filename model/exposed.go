package model

import (
	"cmp"
	"slices"
)

// Exposure is a horse, or a piece that touches skin, that shared skin contact
// with another horse. It is listed for a person to look at: nothing follows
// from it by itself.
type Exposure struct {
	Horse  *Horse  // nil: a piece
	Piece  *Piece  // the piece; of a horse: one that it shared
	Last   Instant // when it was last shared, or worn, in the time looked at
	Direct bool    // with that very horse; else over others, in the order of time
}

// Exposed are the horses and pieces that shared skin contact with a horse in the
// 14 dates before an instant, those that did so with that very horse first, each
// kind in the centre's order. Who wore a piece ahead of the horse is among them,
// since nobody knows who gave it to whom; a piece that was cleaned in between
// passes nothing on. (Equine Disease Communication Center; common practice)
func (c *Centre) Exposed(h *Horse, at Instant) []Exposure {
	e := exposures{wore: map[*Piece][]*Stint{}, horses: map[*Horse]*Exposure{}, pieces: map[*Piece]*Exposure{}}
	all := c.wornBefore(at)
	for _, s := range all {
		if s.Turn.Horse == h {
			for _, p := range s.skin() {
				e.wore[p] = append(e.wore[p], s)
				e.piece(p, s, true)
			}
		}
	}
	for _, s := range all {
		if s.Turn.Horse != h {
			e.direct(s)
		}
	}
	from := map[*Piece]Instant{} // since when a piece passes something on
	caught := map[*Horse]bool{h: true}
	for _, s := range all {
		e.pass(s, h, from, caught)
	}
	var out []Exposure
	for _, direct := range []bool{true, false} {
		for _, x := range c.Horses {
			if f := e.horses[x]; f != nil && f.Direct == direct {
				out = append(out, *f)
			}
		}
		for _, x := range c.Pieces {
			if f := e.pieces[x]; f != nil && f.Direct == direct {
				out = append(out, *f)
			}
		}
	}
	return out
}

// exposures are in the making.
type exposures struct {
	wore   map[*Piece][]*Stint // by the horse that is asked about
	horses map[*Horse]*Exposure
	pieces map[*Piece]*Exposure
}

func (e *exposures) piece(p *Piece, s *Stint, direct bool) {
	f := e.pieces[p]
	if f == nil {
		f = &Exposure{Piece: p, Direct: direct}
		e.pieces[p] = f
	}
	if f.Direct == direct {
		f.Last = Instant{s.Date, s.Start}
	}
}

func (e *exposures) horse(s *Stint, p *Piece, direct bool) {
	f := e.horses[s.Turn.Horse]
	if f == nil {
		f = &Exposure{Horse: s.Turn.Horse, Direct: direct}
		e.horses[s.Turn.Horse] = f
	}
	if f.Direct == direct {
		f.Piece, f.Last = p, Instant{s.Date, s.Start}
	}
}

// direct finds out whether the stint's horse shared a piece with the one that is
// asked about, before or after it.
func (e *exposures) direct(s *Stint) {
	for _, p := range s.skin() {
		for _, t := range e.wore[p] {
			first, then := t, s
			if s.begin().Before(t.begin()) {
				first, then = s, t
			}
			if !p.cleanedBetween(first.end(), then.begin()) {
				e.horse(s, p, true)
			}
		}
	}
}

// pass passes contact on in the order of time, over pieces and over horses.
func (e *exposures) pass(s *Stint, h *Horse, from map[*Piece]Instant, caught map[*Horse]bool) {
	for _, p := range s.skin() {
		if since, ok := from[p]; ok && s.Turn.Horse != h && !p.cleanedBetween(since, s.begin()) {
			caught[s.Turn.Horse] = true
			e.horse(s, p, false)
		}
	}
	if !caught[s.Turn.Horse] {
		return
	}
	for _, p := range s.skin() {
		from[p] = s.end()
		e.piece(p, s, false)
	}
}

func (s *Stint) begin() Instant { return Instant{s.Date, s.Start} }
func (s *Stint) end() Instant   { return Instant{s.Date, s.End} }

// skin are the stint's pieces that touch the skin.
func (s *Stint) skin() []*Piece {
	return slices.DeleteFunc(s.Turn.Pieces(), func(p *Piece) bool { return !p.Skin })
}

// wornBefore is who wore what in the 14 dates before an instant, and on its own
// date before it, in the order of time.
func (c *Centre) wornBefore(at Instant) []*Stint {
	record := newRecorder(c)
	var all []*Stint
	for d := at.Date - exposureDays; d <= at.Date; d++ {
		for _, t := range record.on(d) {
			if t.Turn != nil {
				s := &Stint{Date: d, Start: t.Start, End: t.End, Turn: t.Turn}
				s.endWhenOut()
				all = append(all, s)
			}
		}
		for _, x := range record.works(c, d) {
			if s, not := record.work(d, x, true); not == "" {
				all = append(all, s)
			}
		}
	}
	all = slices.DeleteFunc(all, func(s *Stint) bool { return !s.begin().Before(at) })
	slices.SortStableFunc(all, func(s, t *Stint) int {
		return cmp.Or(cmp.Compare(s.Date, t.Date), cmp.Compare(s.Start, t.Start))
	})
	return all
}
