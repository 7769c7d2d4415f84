package model

import "slices"

// usualLooksBack is how many dates before the first one planned the horse that
// a rider has ridden most is looked for: four weeks.
const usualLooksBack = 28

// Usual is the horse and the seat that a rider usually has in a lesson: the
// term's standing pairing, for that lesson before one for all; else the horse
// that her entry names; else the one ridden most in the last four weeks (ties:
// the one ridden latest, then by name). Either is nil where there is none.
func (w *Week) Usual(r *Ride) (*Horse, *Piece) {
	switch p := w.Standing(r); {
	case p != nil:
		return p.Horse, p.Seat
	case r.Rider.Usual != nil:
		return r.Rider.Usual, nil
	}
	return w.mostRidden[r.Rider], nil
}

// Standing is the term's standing pairing of a rider in a lesson, one for that
// lesson before one for all; nil is that there is none.
func (w *Week) Standing(r *Ride) *Pairing {
	var all *Pairing
	for _, t := range w.pairingTerms(r) {
		for i := range t.Pairings {
			switch p := &t.Pairings[i]; {
			case p.Rider != r.Rider:
			case p.Lesson != nil && p.Lesson == r.Meeting.Lesson:
				return p
			case p.Lesson == nil && all == nil:
				all = p
			}
		}
	}
	return all
}

// pairingTerms are those asked for a ride's pairing: its lesson's own, then all
// others of the date.
func (w *Week) pairingTerms(r *Ride) (terms []*Term) {
	if l := r.Meeting.Lesson; l != nil && l.Term != nil {
		terms = append(terms, l.Term)
	}
	for _, t := range w.Centre.Terms {
		if t.Has(r.Date()) && !slices.Contains(terms, t) {
			terms = append(terms, t)
		}
	}
	return terms
}

// mostRiddenBefore finds each rider's horse of the last four weeks.
func mostRiddenBefore(w *Week) map[*Rider]*Horse {
	type ridden struct {
		times  int
		latest Instant
	}
	count := map[*Rider]map[*Horse]ridden{}
	if len(w.Centre.Posted) > 0 || len(w.Centre.Ridden) > 0 {
		record := newRecorder(w.Centre)
		for d := w.From - usualLooksBack; d < w.From; d++ {
			for _, t := range record.on(d) {
				if t.Rider == nil || t.Turn == nil {
					continue
				}
				if count[t.Rider] == nil {
					count[t.Rider] = map[*Horse]ridden{}
				}
				x := count[t.Rider][t.Turn.Horse]
				x.times++
				if at := (Instant{d, t.Start}); x.latest.Before(at) {
					x.latest = at
				}
				count[t.Rider][t.Turn.Horse] = x
			}
		}
	}
	most := map[*Rider]*Horse{}
	for rider, horses := range count {
		for _, h := range w.Centre.Horses {
			x, ok := horses[h]
			if !ok {
				continue
			}
			best := most[rider]
			y := horses[best]
			if best == nil || x.times > y.times || x.times == y.times &&
				(y.latest.Before(x.latest) || x.latest == y.latest && h.Name < best.Name) {
				most[rider] = h
			}
		}
	}
	return most
}
