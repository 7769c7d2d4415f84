package bound

// pass is the state in which a day leaves a spell that has come to it in one: how many days were worked and
// how many dates in a row, as far as a limit needs to know.
type pass struct{ rest, work int }

// forbidden is no state: a limit would be exceeded.
const forbidden = -1

// passes of a spell by day and state, and the number of states before each day and after the last.
func passes(s *Spell) (days [][]pass, states []int) {
	type state struct{ worked, row int }
	counts := s.MostDays >= 0 && s.MostDays < len(s.Days)
	rows := s.MostRow > 0
	before := []state{{}}
	states = []int{1}
	for _, d := range s.Days {
		var after []state
		index := func(x state) int {
			if !counts {
				x.worked = 0
			}
			if !rows {
				x.row = 0
			}
			x.row = min(x.row, s.MostRow+1)
			for i, y := range after {
				if x == y {
					return i
				}
			}
			after = append(after, x)
			return len(after) - 1
		}
		var day []pass
		for _, x := range before {
			if d.Rested {
				x.row = 0
			}
			x.row += d.Sure
			rest, work := state{x.worked, 0}, state{x.worked + 1, x.row + 1}
			if d.Works {
				rest.row, work.worked = work.row, x.worked
			}
			y := pass{index(rest), forbidden}
			if (!counts || work.worked <= s.MostDays) && (!rows || work.row <= s.MostRow) {
				y.work = index(work)
			}
			day = append(day, y)
		}
		days, states, before = append(days, day), append(states, len(after)), after
	}
	return days, states
}
