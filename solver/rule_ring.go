package solver

import (
	"cmp"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// moment is what goes on at one time.
type moment struct {
	rides []*model.Ride
	facts []*model.Stint
}

// moments are, of the rides and facts picked, those that go on at one time, for
// each time at which one of them starts. A moment that is all in the next is
// left out: what is in two moments is in all between.
func (e *encoder) moments(ofRide func(*model.Ride) bool, ofFact func(*model.Stint) bool) []moment {
	var all []moment
	var starts []model.Instant
	var rides []*model.Ride
	for _, r := range e.w.Rides {
		if _, ok := e.seated[r]; ok && ofRide(r) {
			rides = append(rides, r)
			starts = append(starts, model.Instant{Date: r.Date(), Minute: r.Start})
		}
	}
	var facts []*model.Stint
	for _, f := range e.w.Facts {
		if e.w.From <= f.Date && f.Date <= e.w.Until && ofFact(f) {
			facts = append(facts, f)
			starts = append(starts, model.Instant{Date: f.Date, Minute: f.Start})
		}
	}
	slices.SortFunc(starts, func(a, b model.Instant) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Minute, b.Minute))
	})
	for i, at := range slices.Compact(starts) {
		m := moment{}
		for _, r := range rides {
			if r.Date() == at.Date && r.Start <= at.Minute && at.Minute < r.End {
				m.rides = append(m.rides, r)
			}
		}
		for _, f := range facts {
			if f.Date == at.Date && f.Start <= at.Minute && at.Minute < f.End {
				m.facts = append(m.facts, f)
			}
		}
		if i > 0 && all[len(all)-1].within(m) {
			all = all[:len(all)-1]
		}
		all = append(all, m)
	}
	return all
}

func (m moment) within(n moment) bool {
	return !slices.ContainsFunc(m.rides, func(r *model.Ride) bool { return !slices.Contains(n.rides, r) }) &&
		!slices.ContainsFunc(m.facts, func(f *model.Stint) bool { return !slices.Contains(n.facts, f) })
}

// about is what a limit is about, with when the last of the moment starts.
func (m moment) about(a about) about {
	for _, r := range m.rides {
		a.date, a.at = r.Date(), max(a.at, r.Start)
	}
	for _, f := range m.facts {
		a.date, a.at = f.Date, max(a.at, f.Start)
	}
	return a
}

// roomInTheRing keeps riders at once to what arena, lesson and instructor allow.
func roomInTheRing(e *encoder, under under) {
	for of, rides := range e.crowdsOf {
		var lits []sat.Lit
		for _, r := range rides {
			lits = append(lits, e.seated[r])
		}
		e.atMost(under(of), of.limit, lits)
	}
}

// crowds are rides that may go on at one time, and how many of them may; below 0
// where facts alone are too many.
func (e *encoder) crowds(yield func(limit int, rides []*model.Ride) bool) {
	for of, rides := range e.crowdsOf {
		if !yield(of.limit, rides) {
			return
		}
	}
}

// crowdsOf are the crowds, each with where and when it is.
func (e *encoder) crowdsOf(yield func(of about, rides []*model.Ride) bool) {
	on := true
	crowd := func(place string, limit int, ofRide func(*model.Ride) bool, ofFact func(*model.Stint) bool) {
		if limit == 0 {
			return
		}
		for _, m := range e.moments(ofRide, ofFact) {
			on = on && yield(m.about(about{place: place, limit: limit - len(m.facts)}), m.rides)
		}
	}
	for _, a := range e.w.Centre.Arenas {
		crowd(a.Name, a.RidersAtOnce, func(r *model.Ride) bool { return r.Meeting.Arena == a }, func(f *model.Stint) bool { return f.Arena == a })
	}
	for _, m := range e.w.Meetings {
		crowd(m.Name, m.Lesson.Size, func(r *model.Ride) bool { return r.Meeting == m }, func(f *model.Stint) bool { return f.Meeting == m })
	}
	for _, p := range e.w.Centre.Persons {
		crowd(p.Name, p.RidersAtOnce, func(r *model.Ride) bool { return r.Meeting.Instructor == p },
			func(f *model.Stint) bool { return f.Meeting != nil && f.Meeting.Instructor == p })
	}
}

// atMost keeps all of lits false where facts alone exceed a limit, so that
// limit is what they leave of it and below 0.
func (e *encoder) atMost(sel sat.Lit, limit int, lits []sat.Lit) {
	if limit >= 0 {
		e.s.AtMost(sel, limit, lits...)
		return
	}
	for _, l := range lits {
		e.s.Add(sel, l.Not())
	}
}

// handsInTheRing keeps the helpers needed at once to those a lesson can count on.
func handsInTheRing(e *encoder, under under) {
	for of, pairs := range e.helpedOf {
		sel, limit := under(of), of.limit
		if limit < 0 { // facts alone exceed it: nothing may be added
			for _, x := range pairs {
				e.s.Add(sel, x.on.lit.Not())
			}
			continue
		}
		e.s.WeightedAtMost(sel, limit, e.helperTerms(pairs)...)
	}
}

// helperTerms are one for each ride that needs the same on any horse, else one
// for each horse on which it needs any.
func (e *encoder) helperTerms(pairs []helperNeed) []sat.Term {
	var terms []sat.Term
	for len(pairs) > 0 {
		ride, least := pairs[0].on.ride, pairs[0].hands
		n := 0
		for n < len(pairs) && pairs[n].on.ride == ride {
			least = min(least, pairs[n].hands)
			n++
		}
		if least > 0 {
			terms = append(terms, sat.Term{Lit: e.seated[ride], Weight: least})
		}
		for _, x := range pairs[:n] {
			if x.hands > least {
				terms = append(terms, sat.Term{Lit: x.on.lit, Weight: x.hands - least})
			}
		}
		pairs = pairs[n:]
	}
	return terms
}

// helper need of a ride on a horse.
type helperNeed struct {
	on    rideOn
	hands int
}

// helped are pairs of ride and horse that may go on at one time with the leaders
// that each needs, and how many there are for them; then the sidewalkers.
func (e *encoder) helped(yield func(limit int, pairs []helperNeed) bool) {
	for of, pairs := range e.helpedOf {
		if !yield(of.limit, pairs) {
			return
		}
	}
}

// helpedOf are the same, each with the lesson and the helpers it is about.
func (e *encoder) helpedOf(yield func(of about, pairs []helperNeed) bool) {
	for _, m := range e.w.Meetings {
		if m.Hands == model.NoHands {
			continue
		}
		for _, at := range e.moments(func(r *model.Ride) bool { return r.Meeting == m }, func(f *model.Stint) bool { return f.Meeting == m }) {
			for _, x := range []struct {
				what string
				of   func(model.Hands) int
			}{{"leaders", func(h model.Hands) int { return h.Leaders }}, {"sidewalkers", func(h model.Hands) int { return h.Sidewalkers }}} {
				limit := x.of(m.Hands)
				if limit < 0 { // no number given
					continue
				}
				for _, f := range at.facts {
					limit -= x.of(f.Hands())
				}
				var pairs []helperNeed
				for _, r := range at.rides {
					for _, on := range e.on_[r] {
						pairs = append(pairs, helperNeed{on, x.of(model.HandsFor(r.Rider, on.at.horse))})
					}
				}
				if !yield(at.about(about{what: x.what, meeting: m, limit: limit}), pairs) {
					return
				}
			}
		}
	}
}
