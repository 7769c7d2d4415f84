package model

import (
	"fmt"
	"slices"
)

// waitsFor are the things that run out which the ride waits for: those that are
// in any of the fewest renewals that let it go alone.
func (f *dueFinder) waitsFor(w *Week, r *Ride) []*Due {
	if r.State != Open || NotOpen(r) != "" || InstructorAway(r.Meeting) != "" || r.Rider.Weight == 0 {
		return nil
	}
	s := &waySearch{dueFinder: f, w: w, r: r, fewest: -1}
	if w.FormStops(r.Rider, r.Date()) != "" {
		if f.forms[r.Rider] == nil {
			return nil // a form with no date
		}
		s.always = []*Due{f.forms[r.Rider]}
	}
	for _, h := range f.Horses {
		if s.horse(h); s.fewest == len(s.always) {
			break // nothing needs less than every way does
		}
	}
	return s.waits
}

// waySearch goes through the ways of seating one ride alone.
type waySearch struct {
	*dueFinder
	w      *Week
	r      *Ride
	always []*Due // what every way needs
	fewest int    // renewals that let it go; -1: no way is found yet
	waits  []*Due // in any of the ways that need so few
}

// found takes down ways that need so many renewals, all of them among needs.
func (s *waySearch) found(n int, needs []*Due) {
	if s.tooMany(n) {
		return
	}
	if n != s.fewest {
		s.fewest, s.waits = n, nil
	}
	for _, x := range needs {
		if !slices.Contains(s.waits, x) {
			s.waits = append(s.waits, x)
		}
	}
}

func (s *waySearch) tooMany(n int) bool { return s.fewest >= 0 && n > s.fewest }

func (s *waySearch) horse(h *Horse) {
	d, rider := s.r.Date(), s.r.Rider
	switch {
	case s.r.Held != nil && s.r.Held.Horse != h,
		h.offDuty(d, s.r.Start, s.r.End) != "",
		s.w.TooYoung(h, d, rider.Support) != "",
		s.w.Unsuited(s.r, h) != "",
		!h.Carries(rider.Weight, rider.Support, s.w.House):
		return
	}
	needs := slices.Clone(s.always)
	for i, o := range h.Out {
		if !o.Meets(d, s.r.Start, s.r.End) {
			continue
		}
		review := s.reviews[&h.Out[i]]
		if review == nil {
			return // an appointment, or one that has an end
		}
		needs = append(needs, review)
	}
	for _, row := range s.rowsOf[h] {
		if SeatUnfit(rider, row.Seat) != "" || NotAsHeld(s.r, h, row.Seat) != "" {
			continue
		}
		needs := slices.Clone(needs)
		if !row.ValidOn(d, s.w.House) {
			if row.Approved > d || s.fits[row] == nil {
				continue
			}
			needs = append(needs, s.fits[row])
		}
		s.row(row, needs)
	}
}

// option is one choice of a part of the tack set: a seat, its pads, a girth, or
// the pieces for the rider's needs of one kind.
type option struct {
	pieces []*Piece
	needs  []*Due
}

// row goes through the tack sets of a fit row, and takes down what is in any of
// those that need fewest and that the horse carries.
func (s *waySearch) row(row *FitRow, needs []*Due) {
	parts := s.parts(row)
	carries := func(load Grams) bool {
		return row.Horse.Carries(s.r.Rider.Weight+load, s.r.Rider.Support, s.w.House)
	}
	lightest := s.lightest(parts, -1)
	n := slices.IndexFunc(lightest, func(load Grams) bool { return load >= 0 && carries(load) })
	if n < 0 || s.tooMany(len(needs)+n) {
		return
	}
	all := needs
	for i, part := range parts {
		if !slices.ContainsFunc(part, func(o option) bool { return len(o.needs) > 0 }) {
			continue
		}
		others := s.lightest(parts, i)
		for _, o := range part {
			if k := n - len(o.needs); k >= 0 && k < len(others) && others[k] >= 0 && carries(others[k]+s.w.weigh(o.pieces)) {
				all = append(all, o.needs...)
			}
		}
	}
	s.found(len(needs)+n, all)
}

// lightest is the load of the lightest set of all parts but one, by how many
// renewals it needs; below 0 is that there is none.
func (s *waySearch) lightest(parts [][]option, but int) []Grams {
	loads := []Grams{0}
	for i, part := range parts {
		if i == but {
			continue
		}
		var next []Grams
		for _, o := range part {
			weight := s.w.weigh(o.pieces)
			for n, load := range loads {
				if load < 0 {
					continue
				}
				for len(next) <= n+len(o.needs) {
					next = append(next, -1)
				}
				if at := &next[n+len(o.needs)]; *at < 0 || load+weight < *at {
					*at = load + weight
				}
			}
		}
		loads = next
	}
	return loads
}

// parts are the parts of a row's tack sets, each with its options.
func (s *waySearch) parts(row *FitRow) [][]option {
	parts := [][]option{s.usable(row, "seat", func() [][]*Piece { return [][]*Piece{{row.Seat}} }),
		s.usable(row, "pads", func() [][]*Piece { return s.w.PadChoices(row.Horse, row.Seat, row) })}
	if row.Seat.TakesGirth() {
		parts = append(parts, s.usable(row, "girth", func() [][]*Piece {
			return s.oneOf(func(p *Piece) bool { return p.Kind == Girth && p.Buckles(row.Seat) && row.HasGirth(p) })
		}))
	}
	for i, x := range s.r.Rider.Extras {
		alike := func(y ExtraNeed) bool { return y.Kind == x.Kind }
		if !slices.ContainsFunc(s.r.Rider.Extras[:i], alike) {
			needs := slices.DeleteFunc(slices.Clone(s.r.Rider.Extras), func(y ExtraNeed) bool { return !alike(y) })
			parts = append(parts, s.usable(row, fmt.Sprint(needs), func() [][]*Piece { return s.extras(row, needs) }))
		}
	}
	return parts
}

// partKey is a part of a row's tack sets on a date.
type partKey struct {
	row  *FitRow
	part string
	on   Date
}

// usable are the choices for a part that can be used at the ride. On a date on which
// no piece of them is out they are those of every ride.
func (s *waySearch) usable(row *FitRow, part string, make func() [][]*Piece) []option {
	choices, ok := s.choices[partKey{row: row, part: part}]
	if !ok {
		choices = make()
		s.choices[partKey{row: row, part: part}] = choices
	}
	out := slices.ContainsFunc(choices, func(pieces []*Piece) bool {
		return slices.ContainsFunc(pieces, func(p *Piece) bool { return len(p.Out) > 0 })
	})
	if out {
		return s.options(choices)
	}
	key := partKey{row, part, s.r.Date()}
	options, ok := s.onDate[key]
	if !ok {
		options = s.options(choices)
		s.onDate[key] = options
	}
	return options
}

// oneOf are the choices of one piece.
func (f *dueFinder) oneOf(ok func(*Piece) bool) [][]*Piece {
	var one [][]*Piece
	for _, p := range f.Pieces {
		if ok(p) {
			one = append(one, []*Piece{p})
		}
	}
	return one
}

// extras are the choices of pieces for needs of one kind, a piece for each.
func (s *waySearch) extras(row *FitRow, needs []ExtraNeed) [][]*Piece {
	choices := [][]*Piece{nil}
	for _, need := range needs {
		var more [][]*Piece
		for _, chosen := range choices {
			for _, p := range s.Pieces {
				if need.MetBy(p) && p.GoesOnSeat(row.Seat) && !slices.Contains(chosen, p) {
					more = append(more, append(slices.Clone(chosen), p))
				}
			}
		}
		choices = more
	}
	return choices
}

// options are those choices of pieces that can be used at the ride, with the
// checks that would have to be renewed.
func (s *waySearch) options(choices [][]*Piece) (all []option) {
	for _, pieces := range choices {
		o, use := option{pieces: pieces}, true
		for _, p := range pieces {
			if s.w.checkOver(p, s.r.Date()) {
				o.needs = append(o.needs, s.checks[p])
			}
			use = use && s.w.outOfUse(p, s.r.Date(), s.r.Start, s.r.End) == ""
		}
		if use {
			all = append(all, o)
		}
	}
	return all
}
