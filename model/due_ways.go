package model

import "slices"

// waitsFor are the things that run out which the ride waits for. Each way of
// seating it alone has a set of them that would have to be renewed; of these
// sets those count that hold no other.
func (f *dueFinder) waitsFor(w *Week, r *Ride) []*Due {
	if r.State != Open || NotOpen(r) != "" || InstructorAway(r.Meeting) != "" || r.Rider.Weight == 0 {
		return nil
	}
	s := &waySearch{dueFinder: f, w: w, r: r}
	if w.FormStops(r.Rider, r.Date()) != "" {
		if !s.need(&s.always, func(x *Due) bool { return x.form == r.Rider }) {
			return nil // a form with no date
		}
	}
	for _, h := range f.Horses {
		if s.horse(h); s.free {
			break
		}
	}
	var waits []*Due
	for _, way := range s.least {
		for _, x := range way {
			if !slices.Contains(waits, x) {
				waits = append(waits, x)
			}
		}
	}
	return waits
}

// waySearch tries every way of seating one ride alone.
type waySearch struct {
	*dueFinder
	w      *Week
	r      *Ride
	always []*Due   // what every way needs
	least  [][]*Due // what the ways need, without those that hold another
	free   bool     // a way needs nothing more than every way does
}

// need adds the thing that runs out which is meant; false is that there is none,
// and so nothing that renewing it would change.
func (s *waySearch) need(needs *[]*Due, meant func(*Due) bool) bool {
	i := slices.IndexFunc(s.due, meant)
	if i >= 0 && !slices.Contains(*needs, s.due[i]) {
		*needs = append(*needs, s.due[i])
	}
	return i >= 0
}

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
	for _, o := range h.Out {
		if o.Meets(d, s.r.Start, s.r.End) && !s.need(&needs, func(x *Due) bool { return x.Horse == h && x.Kind == DueReview && x.out == o }) {
			return
		}
	}
	for _, row := range s.Chart {
		if row.Horse != h || SeatUnfit(rider, row.Seat) != "" || NotAsHeld(s.r, h, row.Seat) != "" {
			continue
		}
		needs := slices.Clone(needs)
		if !row.ValidOn(d, s.w.House) && (row.Approved > d || !s.need(&needs, func(x *Due) bool { return x.row == row })) {
			continue
		}
		s.set(row, needs)
	}
}

// set tries the tack sets of a row.
func (s *waySearch) set(row *FitRow, needs []*Due) {
	t := &Turn{Horse: row.Horse, Seat: row.Seat}
	if !s.uses(&needs, row.Seat) {
		return
	}
	for _, pads := range s.w.PadChoices(row.Horse, row.Seat, row) {
		needs := slices.Clone(needs)
		if !s.uses(&needs, pads...) {
			continue
		}
		t.Pads = pads
		if !row.Seat.TakesGirth() {
			s.extras(t, needs)
			continue
		}
		for _, g := range s.Pieces {
			if g.Kind != Girth || !g.Buckles(row.Seat) || !row.HasGirth(g) {
				continue
			}
			needs := slices.Clone(needs)
			if s.uses(&needs, g) {
				t.Girth = g
				s.extras(t, needs)
			}
		}
	}
}

// extras gives the rider the rest of what she needs, a piece for each need.
func (s *waySearch) extras(t *Turn, needs []*Due) {
	n := len(t.Extras)
	if s.free || n == len(s.r.Rider.Extras) {
		if !s.free && s.w.TooHeavy(s.r.Rider, t) == "" {
			s.keep(needs)
		}
		return
	}
	for _, p := range s.Pieces {
		if !s.r.Rider.Extras[n].MetBy(p) || !p.GoesOnSeat(t.Seat) || slices.Contains(t.Extras, p) {
			continue
		}
		needs := slices.Clone(needs)
		if s.uses(&needs, p) {
			t.Extras = append(t.Extras[:n:n], p)
			s.extras(t, needs)
			t.Extras = t.Extras[:n:n]
		}
	}
}

// uses reports whether the pieces could be used at the ride, with the checks
// that it adds renewed.
func (s *waySearch) uses(needs *[]*Due, ps ...*Piece) bool {
	for _, p := range ps {
		switch {
		case s.w.outOfUse(p, s.r.Date(), s.r.Start, s.r.End) != "":
			return false
		case s.w.checkOver(p, s.r.Date()) && !s.need(needs, func(x *Due) bool { return x.Kind == DueCheck && x.Piece == p }):
			return false
		}
	}
	return true
}

// keep takes down what a way needs, unless another way needs no more than a part
// of it.
func (s *waySearch) keep(needs []*Due) {
	within := func(a, b []*Due) bool {
		return !slices.ContainsFunc(a, func(x *Due) bool { return !slices.Contains(b, x) })
	}
	if slices.ContainsFunc(s.least, func(way []*Due) bool { return within(way, needs) }) {
		return
	}
	s.least = append(slices.DeleteFunc(s.least, func(way []*Due) bool { return within(needs, way) }), needs)
	s.free = len(needs) == len(s.always)
}
