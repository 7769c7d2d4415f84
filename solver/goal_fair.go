package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// load-sharing works in twentieths of a horse's allowance, as model.Share does.
const parts = 20

// spell is a horse's work in one calendar week: what facts make of it, and what
// each place would add.
type spell struct {
	horse     *model.Horse
	first     model.Date // of the week
	allowance int        // minutes
	facts     int64      // in the unit of model.Stint.Work
	terms     []sat.Term
}

// work of the spell in a solution.
func (s *spell) work(m sat.Model) int64 {
	work := s.facts
	for _, t := range s.terms {
		if m.Value(t.Lit) {
			work += int64(t.Weight)
		}
	}
	return work
}

func (s *spell) share(m sat.Model) int { return model.Share(s.work(m), s.allowance) }

// most is the work with which the share is still below v.
func (s *spell) most(v int) int64 { return int64(v-1) * int64(s.allowance) * minute / parts }

// spells are the work of every horse that has an allowance, by calendar week.
func (e *encoder) spells() []*spell {
	var all []*spell
	for _, h := range e.w.Centre.Horses {
		allowance := e.w.LimitsOf(h).WeekMinutes
		if allowance == 0 {
			continue
		}
		for first := e.w.From.WeekStart(e.w.House.WeekStarts); first <= e.w.Until; first += 7 {
			in := func(d model.Date) bool { return first <= d && d < first+7 }
			s := &spell{horse: h, first: first, allowance: allowance}
			s.facts, _ = ofWeek(e.factsNow(h), first)
			for _, p := range e.of[h] {
				if in(p.meeting.Date) {
					s.terms = append(s.terms, sat.Term{Lit: p.worked, Weight: int(e.w.WorkOf(p.rides[0].ride, h))})
				}
			}
			all = append(all, s)
		}
	}
	return all
}

// fairGoals are the highest share of any horse, and the horses at it. They are
// written down when their turn comes: by then a good plan bounds the shares that
// are worth telling apart.
func (e *encoder) fairGoals() []ordered.Goal {
	spells := e.spells()
	highest := func(m sat.Model) int {
		high := 0
		for _, s := range spells {
			high = max(high, s.share(m))
		}
		return high
	}
	return []ordered.Goal{
		{Name: "fair a", Value: highest, Open: func(best sat.Model) ([]ordered.Soft, int) {
			high := highest(best)
			return e.lowerShares(spells, high, e.leastShare(spells, e.onGround(best), high))
		}},
		{Name: "fair b", Value: func(m sat.Model) int { return len(busiest(spells, m, highest(m))) },
			Open: func(best sat.Model) ([]ordered.Soft, int) { return e.fewerAt(spells, highest(best)), 0 }},
	}
}

// busiest are the horses with a share of at least v.
func busiest(spells []*spell, m sat.Model, v int) []*model.Horse {
	var at []*model.Horse
	for _, s := range spells {
		if v > 0 && s.share(m) >= v && !slices.Contains(at, s.horse) {
			at = append(at, s.horse)
		}
	}
	return at
}

// leastShare is a share that some horse must reach, by arithmetic: with all below
// it there is no room in a calendar week for the work of those who ride. So many
// rides at most are on the ground, but any may be: the longest are taken to be,
// and each other to be on the horse to which it is least work. It is not more than
// highest, the best that is known.
func (e *encoder) leastShare(spells []*spell, onGround, highest int) (least int) {
	for _, s := range spells {
		least = max(least, model.Share(s.facts, s.allowance))
	}
	for first := e.w.From.WeekStart(e.w.House.WeekStarts); first <= e.w.Until; first += 7 {
		var works []int64
		for _, r := range e.w.Rides {
			if _, ok := e.seated[r]; ok && first <= r.Date() && r.Date() < first+7 {
				works = append(works, e.leastWork(r))
			}
		}
		slices.Sort(works)
		var demand int64
		for _, work := range works[:max(0, len(works)-onGround)] {
			demand += work
		}
		for least < highest && room(spells, first, least) < demand {
			least++
		}
	}
	return least
}

// leastWork of a ride is 0 where a horse that is in no spell may carry it.
func (e *encoder) leastWork(r *model.Ride) int64 {
	least := int64(-1)
	for _, on := range e.on_[r] {
		work := e.w.WorkOf(r, on.at.horse)
		if e.w.LimitsOf(on.at.horse).WeekMinutes == 0 {
			work = 0
		}
		if least < 0 || work < least {
			least = work
		}
	}
	return least
}

// room is the open work that fits in the spells of a calendar week while no share
// is above v.
func room(spells []*spell, first model.Date, v int) (sum int64) {
	for _, s := range spells {
		if s.first != first {
			continue
		}
		var could int64
		for _, t := range s.terms {
			could += int64(t.Weight)
		}
		sum += max(0, min(could, s.most(v+1)-s.facts))
	}
	return sum
}

// below is a literal under which a spell's share is below v.
func (e *encoder) below(s *spell, v int) sat.Lit {
	return once(e.shares, shareKey{s.horse, s.first, s.most(v) - s.facts}, func() sat.Lit {
		l := e.s.NewVar()
		e.s.WeightedAtMost(l, int(s.most(v)-s.facts), s.terms...)
		return l
	})
}

// shareKey is a horse's calendar week, and the open work that is in it at most.
type shareKey struct {
	horse *model.Horse
	first model.Date
	most  int64
}

// factsNow are a horse's facts in the question asked.
func (e *encoder) factsNow(h *model.Horse) []*model.Stint {
	if facts, ok := e.idle[h]; ok {
		return facts
	}
	return e.facts[h]
}

// lowerShares wish, of each share from least up to the one above the highest now,
// that no horse has it: the last keeps the goals after this one from going above.
func (e *encoder) lowerShares(spells []*spell, highest, least int) (softs []ordered.Soft, _ int) {
	softs = e.constant(least)
	var higher sat.Lit
	for v := highest + 1; v > least; v-- {
		none := e.s.NewVar() // no horse has a share of v
		for _, s := range spells {
			e.s.Add(none, e.below(s, v))
		}
		if higher != 0 {
			e.s.Add(none, higher)
		}
		higher = none
		softs = append(softs, ordered.Soft{Lit: none, Weight: 1, Stratum: -1})
	}
	return softs, least
}

// fewerAt wish of each horse that its share is below the highest.
func (e *encoder) fewerAt(spells []*spell, highest int) []ordered.Soft {
	if highest == 0 {
		return nil
	}
	var softs []ordered.Soft
	var horses []*model.Horse
	below := map[*model.Horse]sat.Lit{}
	for _, s := range spells {
		if below[s.horse] == 0 {
			below[s.horse] = e.s.NewVar()
			horses = append(horses, s.horse)
		}
		e.s.Add(below[s.horse], e.below(s, highest))
	}
	for _, h := range horses {
		softs = append(softs, ordered.Soft{Lit: below[h], Weight: 1, Stratum: -1})
	}
	return softs
}
