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

// roomInTheRing keeps riders at once to what arena, lesson and instructor allow.
func roomInTheRing(e *encoder, sel sat.Lit) {
	crowd := func(limit int, ofRide func(*model.Ride) bool, ofFact func(*model.Stint) bool) {
		if limit == 0 {
			return
		}
		for _, m := range e.moments(ofRide, ofFact) {
			var lits []sat.Lit
			for _, r := range m.rides {
				lits = append(lits, e.seated[r])
			}
			e.atMost(sel, limit-len(m.facts), lits)
		}
	}
	for _, a := range e.w.Centre.Arenas {
		crowd(a.RidersAtOnce, func(r *model.Ride) bool { return r.Meeting.Arena == a }, func(f *model.Stint) bool { return f.Arena == a })
	}
	for _, m := range e.w.Meetings {
		crowd(m.Lesson.Size, func(r *model.Ride) bool { return r.Meeting == m }, func(f *model.Stint) bool { return f.Meeting == m })
	}
	for _, p := range e.w.Centre.Persons {
		crowd(p.RidersAtOnce, func(r *model.Ride) bool { return r.Meeting.Instructor == p },
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
func handsInTheRing(e *encoder, sel sat.Lit) {
	for _, m := range e.w.Meetings {
		if m.Hands == model.NoHands {
			continue
		}
		for _, at := range e.moments(func(r *model.Ride) bool { return r.Meeting == m }, func(f *model.Stint) bool { return f.Meeting == m }) {
			e.hands(sel, m.Hands, at)
		}
	}
}

func (e *encoder) hands(sel sat.Lit, have model.Hands, at moment) {
	var leaders, sidewalkers []sat.Term
	for _, r := range at.rides {
		sidewalkers = append(sidewalkers, sat.Term{Lit: e.seated[r], Weight: r.Rider.Sidewalkers})
		for _, on := range e.on_[r] {
			leaders = append(leaders, sat.Term{Lit: on.lit, Weight: model.HandsFor(r.Rider, on.at.horse).Leaders})
		}
	}
	limit := have
	for _, f := range at.facts {
		limit.Leaders -= f.Hands().Leaders
		limit.Sidewalkers -= f.Hands().Sidewalkers
	}
	keep := func(have, limit int, terms []sat.Term) {
		switch {
		case have < 0: // no number given
		case limit < 0: // facts alone exceed it: nothing may be added
			for _, r := range at.rides {
				e.s.Add(sel, e.seated[r].Not())
			}
		default:
			e.s.WeightedAtMost(sel, limit, slices.DeleteFunc(terms, func(t sat.Term) bool { return t.Weight == 0 })...)
		}
	}
	keep(have.Leaders, limit.Leaders, leaders)
	keep(have.Sidewalkers, limit.Sidewalkers, sidewalkers)
}
