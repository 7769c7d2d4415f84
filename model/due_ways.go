package model

import "slices"

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
// the piece for one need of the rider.
type option struct {
	pieces []*Piece
	needs  []*Due
}

// row goes through the tack sets of a fit row. Where any pieces of the parts go
// together, it is enough to take of each part the options that need fewest.
func (s *waySearch) row(row *FitRow, needs []*Due) {
	parts := s.parts(row)
	n, all, heaviest := len(needs), needs, s.r.Rider.Weight
	for _, part := range parts {
		if len(part) == 0 {
			return
		}
		least := len(slices.MinFunc(part, func(a, b option) int { return len(a.needs) - len(b.needs) }).needs)
		var most Grams
		for _, o := range part {
			if len(o.needs) == least {
				all, most = append(all, o.needs...), max(most, s.w.weigh(o.pieces))
			}
		}
		n, heaviest = n+least, heaviest+most
	}
	switch {
	case s.tooMany(n):
	case !s.needsTwoAlike() && row.Horse.Carries(heaviest, s.r.Rider.Support, s.w.House):
		s.found(n, all)
	default:
		s.oneByOne(&Turn{Horse: row.Horse}, parts, needs)
	}
}

// needsTwoAlike reports whether one piece could be meant for two needs.
func (s *waySearch) needsTwoAlike() bool {
	for i, x := range s.r.Rider.Extras {
		if slices.ContainsFunc(s.r.Rider.Extras[:i], func(y ExtraNeed) bool { return x.Kind == y.Kind }) {
			return true
		}
	}
	return false
}

// oneByOne tries every set of options. The turn holds what is chosen as extras,
// whatever it is: only its weight counts.
func (s *waySearch) oneByOne(t *Turn, parts [][]option, needs []*Due) {
	switch {
	case s.tooMany(len(needs)):
		return
	case len(parts) == 0:
		if s.w.TooHeavy(s.r.Rider, t) == "" {
			s.found(len(needs), needs)
		}
		return
	}
	for _, o := range parts[0] {
		if slices.ContainsFunc(o.pieces, func(p *Piece) bool { return slices.Contains(t.Extras, p) }) {
			continue
		}
		with := &Turn{Horse: t.Horse, Extras: slices.Concat(t.Extras, o.pieces)}
		s.oneByOne(with, parts[1:], slices.Concat(needs, o.needs))
	}
}

// parts are the parts of a row's tack sets, each with its options.
func (s *waySearch) parts(row *FitRow) [][]option {
	parts := [][]option{s.options([][]*Piece{{row.Seat}}), s.options(s.w.PadChoices(row.Horse, row.Seat, row))}
	if row.Seat.TakesGirth() {
		parts = append(parts, s.pieces(func(p *Piece) bool { return p.Kind == Girth && p.Buckles(row.Seat) && row.HasGirth(p) }))
	}
	for _, need := range s.r.Rider.Extras {
		parts = append(parts, s.pieces(func(p *Piece) bool { return need.MetBy(p) && p.GoesOnSeat(row.Seat) }))
	}
	return parts
}

func (s *waySearch) pieces(ok func(*Piece) bool) []option {
	var one [][]*Piece
	for _, p := range s.Pieces {
		if ok(p) {
			one = append(one, []*Piece{p})
		}
	}
	return s.options(one)
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
