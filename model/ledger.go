package model

import (
	"cmp"
	"fmt"
	"slices"
)

// Audit names every way in which the plan breaks a rule, broken ones before
// inherited ones. It reads tags, times and weights, and trusts nothing that the
// plan says of itself.
func (w *Week) Audit(p *Plan) []Violation {
	l := w.ledger(p)
	for _, r := range Rules {
		l.rule = r
		r.audit(l)
	}
	slices.SortStableFunc(l.found, func(a, b Violation) int {
		return cmp.Compare(b2i(a.Inherited), b2i(b.Inherited))
	})
	return l.found
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Broken are the violations that are not inherited.
func Broken(vs []Violation) []Violation {
	return slices.DeleteFunc(slices.Clone(vs), func(v Violation) bool { return v.Inherited })
}

// ledger is a plan laid out with the facts around it, the way rules ask.
type ledger struct {
	*Week
	plan     *Plan
	stints   []*Stint // all, by date, start, horse
	open     []*Stint // the open ones
	rides    []*Stint // those of riders on the dates planned, started ones too
	horses   []*Horse // that have a stint, in the order of the centre
	ofHorse  map[*Horse][]*Stint
	ofPiece  map[*Piece][]*Stint
	meetings []*Meeting // that have a stint, in order of time
	ofMeet   map[*Meeting][]*Stint

	rule  *Rule
	found []Violation
}

func (w *Week) ledger(p *Plan) *ledger {
	l := &ledger{Week: w, plan: p, ofHorse: map[*Horse][]*Stint{}, ofPiece: map[*Piece][]*Stint{},
		ofMeet: map[*Meeting][]*Stint{}}
	l.stints = w.Stints(p)
	for _, s := range l.stints {
		if s.Open {
			l.open = append(l.open, s)
		}
		if s.Rider != nil && s.Meeting != nil && w.From <= s.Date && s.Date <= w.Until {
			l.rides = append(l.rides, s)
		}
		l.ofHorse[s.Turn.Horse] = append(l.ofHorse[s.Turn.Horse], s)
		for _, piece := range s.Turn.Pieces() {
			l.ofPiece[piece] = append(l.ofPiece[piece], s)
		}
		if s.Meeting != nil {
			if l.ofMeet[s.Meeting] == nil {
				l.meetings = append(l.meetings, s.Meeting)
			}
			l.ofMeet[s.Meeting] = append(l.ofMeet[s.Meeting], s)
		}
	}
	for _, h := range w.Centre.Horses {
		if len(l.ofHorse[h]) > 0 {
			l.horses = append(l.horses, h)
		}
	}
	return l
}

// Stints are the facts and the plan's open seated rides, by date, start and
// horse. A turn that names no horse makes none.
func (w *Week) Stints(p *Plan) []*Stint {
	stints := slices.Clone(w.Facts)
	for i, r := range w.Rides {
		if r.State != Started && i < len(p.Turns) && p.Turns[i] != nil && p.Turns[i].Horse != nil {
			s := w.stintOf(r, p.Turns[i])
			s.Open = true // an Off ride that a plan seats takes part too
			stints = append(stints, s)
		}
	}
	slices.SortStableFunc(stints, compareStints)
	return stints
}

// breaks notes a violation of the rule that is being audited. It is inherited
// where none of the stints that take part is open, and then told only where it
// reaches the dates planned.
func (l *ledger) breaks(part []*Stint, format string, args ...any) {
	inherited := !slices.ContainsFunc(part, func(s *Stint) bool { return s.Open })
	if inherited && !slices.ContainsFunc(part, func(s *Stint) bool { return l.From <= s.Date && s.Date <= l.Until }) {
		return
	}
	l.found = append(l.found, Violation{Rule: l.rule, Inherited: inherited, Words: fmt.Sprintf(format, args...), Stints: part})
}

// ride is the ride of a stint that has a rider; one made for the purpose where
// its rider has left the lesson since.
func (s *Stint) ride() *Ride {
	if s.Ride != nil {
		return s.Ride
	}
	return &Ride{Meeting: s.Meeting, Rider: s.Rider, Start: s.Start, End: s.End, State: Started}
}

// onDate are the stints of a horse on a date, by start.
func (l *ledger) onDate(h *Horse, d Date) []*Stint {
	var out []*Stint
	for _, s := range l.ofHorse[h] {
		if s.Date == d {
			out = append(out, s)
		}
	}
	return out
}

// dates are the dates on which any of the stints is, in order.
func dates(stints []*Stint) []Date {
	var ds []Date
	for _, s := range stints {
		if len(ds) == 0 || ds[len(ds)-1] != s.Date {
			ds = append(ds, s.Date)
		}
	}
	return ds
}

// sessions counts lessons and works: parts of one lesson are one session.
func sessions(stints []*Stint) int {
	n := 0
	for i, s := range stints {
		if !slices.ContainsFunc(stints[:i], s.SameSession) {
			n++
		}
	}
	return n
}

// tooMany are the moments at which more than limit of the stints go on at once,
// each moment with those that do; of alike moments the first.
func tooMany(stints []*Stint, limit int) [][]*Stint {
	var moments [][]*Stint
	for _, s := range stints {
		var at []*Stint
		for _, t := range stints {
			if t.Date == s.Date && t.Start <= s.Start && s.Start < t.End {
				at = append(at, t)
			}
		}
		if len(at) > limit && !slices.ContainsFunc(moments, func(m []*Stint) bool { return slices.Equal(m, at) }) {
			moments = append(moments, at)
		}
	}
	return moments
}
