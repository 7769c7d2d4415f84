package solver

import (
	"tackwright/model"
	"tackwright/solver/sat"
)

// leastBroughtIn is a lower bound of the horses brought in, date by date, by
// arithmetic: rides that go on at one time need as many horses (in staffing the
// largest overlap; Krishnamoorthy, Ernst & Baatar 2012, Eur. J. Oper. Res.
// 219:34-48). So many rides at most are on the ground, but which ones and on which
// dates is open. Facts count: their horses come in anyway.
func (e *encoder) leastBroughtIn(onGround int) int {
	most := map[model.Date]int{} // horses needed if everybody rides
	sure := map[model.Date]int{} // horses with facts
	for h := range e.facts {
		seen := map[model.Date]bool{}
		for _, f := range e.facts[h] {
			if e.w.From <= f.Date && f.Date <= e.w.Until && !seen[f.Date] {
				seen[f.Date] = true
				sure[f.Date]++
			}
		}
	}
	for _, m := range e.moments(func(*model.Ride) bool { return true }, func(*model.Stint) bool { return true }) {
		busy := map[*model.Horse]bool{}
		for _, f := range m.facts {
			busy[f.Turn.Horse] = true
		}
		d := m.date()
		most[d] = max(most[d], sure[d], len(m.rides)+len(busy))
	}
	all, facts := -onGround, 0
	for d := e.w.From; d <= e.w.Until; d++ {
		all += max(most[d], sure[d])
		facts += sure[d]
	}
	return max(all, facts)
}

// onGround counts the rides that could be on a horse and are on none.
func (e *encoder) onGround(m sat.Model) int {
	n := 0
	for _, r := range e.w.Rides {
		if lit, ok := e.seated[r]; ok && !m.Value(lit) {
			n++
		}
	}
	return n
}

func (m moment) date() model.Date {
	if len(m.rides) > 0 {
		return m.rides[0].Date()
	}
	return m.facts[0].Date
}
