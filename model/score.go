package model

// GoalValue is one goal of the score and what a plan reaches in it; less is
// better.
type GoalValue struct {
	Name  string // stable: "seat a"
	Words string // what is counted
	Value int
}

// Score of a plan in every goal, in the order in which they are proved. It is
// the only definition: a solver must return a plan with exactly the score that
// it claims.
func (w *Week) Score(p *Plan) []GoalValue {
	var ground, first, again int
	for i, r := range w.Rides {
		if r.State == Off || p.Turns[i] != nil {
			continue
		}
		ground++
		if r.Rider.RideFirst {
			first++
		}
		if w.Grounded(r.Rider) {
			again++
		}
	}
	return []GoalValue{
		{"seat a", "rides on the ground", ground},
		{"seat b", "of those, riders who ride first", first},
		{"seat c", "of those, riders who were on the ground last time", again},
	}
}
