package model

import "slices"

// contact is a piece that touched the skin of a horse marked own tack only:
// from the instant on it goes to no other horse until it is cleaned.
type contact struct {
	horse *Horse
	from  Instant
}

// exposureDays is how many whole dates before that of a mark a piece that the
// horse wore counts as worn since (Equine Disease Communication Center; common practice).
const exposureDays = 14

// LeavesContact are the instants from which the stint's skin-touching pieces go
// to no other horse: one for each mark that reaches it, since a cleaning before
// a later mark does not count. None is before the stint's end: a cleaning in the
// middle of it cleans nothing.
func (s *Stint) LeavesContact(house *House) (from []Instant) {
	worn, end := Instant{s.Date, s.Start}, Instant{s.Date, s.End}
	for _, mark := range s.Turn.Horse.ownTackMarks(house) {
		switch {
		case mark.Has(worn), worn.Before(mark.From) && mark.From.Before(end):
			from = append(from, end)
		case worn.Before(mark.From) && worn.Date >= mark.From.Date-exposureDays:
			from = append(from, mark.From)
		}
	}
	return from
}

// LeavesUnclean reports whether a piece that touched the skin in the stint may
// go to no other horse at an instant.
func (s *Stint) LeavesUnclean(p *Piece, at Instant, house *House) bool {
	return slices.ContainsFunc(s.LeavesContact(house), func(from Instant) bool {
		return !at.Before(from) && !p.cleanedBetween(from, at)
	})
}

// cleanedBetween reports whether a named person has cleaned the piece at or
// after from and no later than to.
func (p *Piece) cleanedBetween(from, to Instant) bool {
	return slices.ContainsFunc(p.Cleaned, func(c Cleaning) bool { return !c.At.Before(from) && !to.Before(c.At) })
}

// contactsBefore finds the contacts that history, up to the first date planned,
// leaves on pieces; cleaned ones too, since a later use decides.
func contactsBefore(w *Week) map[*Piece][]contact {
	marked := map[*Horse]bool{}
	earliest := w.From
	for _, h := range w.Centre.Horses {
		for _, m := range h.ownTackMarks(w.House) {
			marked[h] = true
			earliest = min(earliest, m.From.Date-exposureDays)
		}
	}
	found := map[*Piece][]contact{}
	if len(marked) == 0 {
		return found
	}
	record := newRecorder(w.Centre)
	earliest = max(earliest, w.historyBegins())
	add := func(s *Stint) {
		if !marked[s.Turn.Horse] {
			return
		}
		for _, from := range s.LeavesContact(w.House) {
			for _, p := range s.Turn.Pieces() {
				if p.Skin {
					found[p] = append(found[p], contact{s.Turn.Horse, from})
				}
			}
		}
	}
	for d := earliest; d < w.From; d++ {
		for _, t := range record.on(d) {
			if t.Turn != nil {
				s := &Stint{Date: d, Start: t.Start, End: t.End, Turn: t.Turn}
				s.endWhenOut()
				add(s)
			}
		}
		for _, x := range record.works(w.Centre, d) {
			if s, not := record.work(d, x, true); not == "" {
				add(s)
			}
		}
	}
	return found
}

// worksLookBack is how many dates back a standing work that states no first
// date is taken to have been done.
const worksLookBack = 366

// historyBegins is the first date of which anything can be told.
func (w *Week) historyBegins() Date {
	first := w.From
	for _, p := range w.Centre.Posted {
		first = min(first, p.From)
	}
	for _, r := range w.Centre.Ridden {
		first = min(first, r.Date)
	}
	for _, x := range w.Centre.Works {
		from := max(x.From, x.On)
		if from == 0 {
			from = w.From - worksLookBack
		}
		first = min(first, from)
	}
	return first
}

// Contacted are the marked horses whose contact lies on the piece, uncleaned,
// at an instant of the week, from before the dates planned.
func (w *Week) Contacted(p *Piece, at Instant) []*Horse {
	var horses []*Horse
	for _, c := range w.contacts[p] {
		if !at.Before(c.from) && !p.cleanedBetween(c.from, at) && !slices.Contains(horses, c.horse) {
			horses = append(horses, c.horse)
		}
	}
	return horses
}

// HasContact reports whether history left a contact with a marked horse on the
// piece, cleaned since or not.
func (w *Week) HasContact(p *Piece) bool { return len(w.contacts[p]) > 0 }
