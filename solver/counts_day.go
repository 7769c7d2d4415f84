package solver

import (
	"tackwright/model"
	"tackwright/solver/ordered"
)

// dayCounts are facts about one date, of the same kind as [encoder.counts]: a horse
// carries no more of the rides than it has sessions left, by its limits and what it
// does on other dates. A week of several dates has none, since there the horses'
// weeks can be shared out otherwise.
func (e *encoder) dayCounts(such func(*model.Ride) bool) []ordered.Count {
	if e.w.From != e.w.Until {
		return nil
	}
	var rides []*model.Ride
	for _, r := range e.w.Rides {
		if len(e.on_[r]) > 0 && r.State == model.Open && such(r) {
			rides = append(rides, r)
		}
	}
	most := map[*model.Horse]int{}
	for _, h := range e.w.Centre.Horses {
		most[h] = e.mostSessions(h)
	}
	short, carried := e.tooMuch(rides, func(h *model.Horse) int { return most[h] })
	if len(short) <= carried {
		return nil
	}
	c := ordered.Count{Least: len(short) - carried}
	for _, r := range short {
		c.Lits = append(c.Lits, e.seated[r])
	}
	return []ordered.Count{c}
}

// mostSessions is how many open rides a horse can carry on the one date of the
// week.
func (e *encoder) mostSessions(h *model.Horse) int {
	if len(e.of[h]) == 0 {
		return 0
	}
	sets, ok := e.daySets(h)
	if !ok {
		return len(e.of[h])
	}
	most := 0
	for _, s := range sets {
		n := 0
		for _, in := range s.in {
			if in {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// workLeft of a horse's week, below 0 where there is no limit.
func (e *encoder) workLeft(h *model.Horse) int64 {
	limit := e.w.LimitsOf(h).WeekMinutes
	if limit == 0 {
		return -1
	}
	done, _ := ofWeek(e.facts[h], e.w.From.WeekStart(e.w.House.WeekStarts))
	return max(int64(limit)*minute-done, 0)
}
