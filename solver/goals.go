package solver

import (
	"cmp"
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// goals are those of [model.Week.Score], in the same order and with the same
// values.
func (e *encoder) goals() []ordered.Goal {
	var all []ordered.Goal
	if e.w.Mends {
		all = e.mendGoals()
	} else {
		all = e.seatGoals()
	}
	for _, g := range e.w.House.Goals {
		switch g {
		case model.GoalWishes:
			all = append(all, e.wishGoal())
		case model.GoalCarry:
			all = append(all, e.carryGoal())
		case model.GoalFair:
			all = append(all, e.fairGoals()...)
		case model.GoalBringIn:
			all = append(all, e.bringInGoal())
		}
	}
	return all
}

// stratum puts what belongs to one date together.
func (e *encoder) stratum(d model.Date) int { return int(d - e.w.From) }

// constant is what a goal costs whatever is chosen.
func (e *encoder) constant(cost int) []ordered.Soft {
	if cost == 0 {
		return nil
	}
	return []ordered.Soft{{Lit: e.s.Root().Not(), Weight: cost, Stratum: -1}}
}

// seatCounts are the rides that each goal of Seat counts while they are on the ground.
func (e *encoder) seatCounts() []func(*model.Ride) bool {
	return []func(*model.Ride) bool{
		func(*model.Ride) bool { return true },
		func(r *model.Ride) bool { return r.Rider.RideFirst },
		func(r *model.Ride) bool { return e.w.Grounded(r.Rider) },
	}
}

// seatGoals count the rides on the ground.
func (e *encoder) seatGoals() []ordered.Goal {
	goals := []ordered.Goal{{Name: "seat a", Counts: e.counts()}, {Name: "seat b"}, {Name: "seat c"}}
	counts := e.seatCounts()
	for _, r := range e.w.Rides {
		if r.State == model.Off {
			continue
		}
		soft := ordered.Soft{Lit: e.isSeated(r), Weight: 1, Stratum: e.stratum(r.Date())}
		for i, such := range counts {
			if such(r) {
				goals[i].Softs = append(goals[i].Softs, soft)
			}
		}
	}
	for i, such := range counts {
		// A few rounds lead to a first plan; where it is hard the next calls take more.
		e.boundBeside(&goals[i], costs{onGround: func(r *model.Ride) int { return one(such(r)) }, rounds: 20, dive: true,
			before: func(x *relaxation, best sat.Model) { x.atMost(best, counts[:i]...) }})
	}
	return goals
}

// isSeated is the literal that a ride is on some horse; a constant for a ride
// that has started, or that no horse can carry.
func (e *encoder) isSeated(r *model.Ride) sat.Lit {
	if lit, ok := e.seated[r]; ok {
		return lit
	}
	if r.State == model.Started && r.Told != nil {
		return e.s.Root()
	}
	return e.s.Root().Not()
}

// charge is a literal that costs something while it is true.
type charge struct {
	lit  sat.Lit
	cost int
}

// levels turn charges of which at most one is true into wishes that none of
// them is, and that none as dear as the second is, and so on: the fewer wishes
// fail, the smaller the cores.
func (e *encoder) levels(charges []charge, stratum int) []ordered.Soft {
	slices.SortStableFunc(charges, func(a, b charge) int { return cmp.Compare(b.cost, a.cost) })
	var softs []ordered.Soft
	var lits []sat.Lit // of this cost or more
	for i, c := range charges {
		lits = append(lits, c.lit)
		next := 0
		if i+1 < len(charges) {
			next = charges[i+1].cost
		}
		if c.cost > next {
			any := e.s.Or(lits...)
			e.anyOf[any] = slices.Clone(lits)
			softs = append(softs, ordered.Soft{Lit: any.Not(), Weight: c.cost - next, Stratum: stratum})
		}
	}
	return softs
}

// wishGoal sums the wishes that seated rides do not get.
func (e *encoder) wishGoal() ordered.Goal {
	goal := ordered.Goal{Name: "wishes"}
	for _, r := range e.w.Rides {
		if r.State == model.Started && r.Told != nil {
			goal.Softs = append(goal.Softs, e.constant(e.w.HorseWish(r, r.Told.Horse)+e.w.SeatWish(r, r.Told.Seat)+e.w.LoadWish(r, r.Told))...)
			continue
		}
		goal.Softs = append(goal.Softs, once(e.wishes, r, func() []ordered.Soft { return e.rideWishes(r) })...)
	}
	goal.Value = func(m sat.Model) int {
		value := 0
		for _, s := range goal.Softs {
			if r := e.marks[s.Lit]; !m.Value(s.Lit) && (r == nil || e.isMarked(m, r)) {
				value += s.Weight
			}
		}
		return value
	}
	if len(e.w.Rides) > 600 {
		goal.Patience = 2 // cores take long then, and prices prove more than all of those that come first
	}
	e.boundBeside(&goal, costs{seated: e.wishCost, rounds: 300, before: (*relaxation).keep})
	return goal
}

// once is made for a key at its first asking, since each making adds clauses.
func once[K comparable, V any](made map[K]V, key K, make func() V) V {
	v, ok := made[key]
	if !ok {
		v = make()
		made[key] = v
	}
	return v
}

// rideWishes are the wishes of one ride.
func (e *encoder) rideWishes(r *model.Ride) []ordered.Soft {
	var horses, seats []charge
	for _, on := range e.on_[r] {
		if cost := e.w.HorseWish(r, on.at.horse); cost > 0 {
			horses = append(horses, charge{on.lit, cost})
		}
		for _, o := range on.at.saddle {
			if cost := e.w.SeatWish(r, o.seat.one()); cost > 0 && !e.clash(r, on.at.horse, o.option) {
				seats = append(seats, charge{e.both(on, o), cost})
			}
		}
	}
	stratum := e.stratum(r.Date())
	return slices.Concat(e.levels(horses, stratum), e.levels(seats, stratum), e.markedLoad(r, stratum))
}

// both is the literal that a ride is on a horse that is saddled in that way.
func (e *encoder) both(on rideOn, o saddled) sat.Lit {
	switch {
	case len(on.at.rides) == 1:
		return o.lit
	case o.lit == on.at.worked:
		return on.lit
	}
	return e.s.And(on.lit, o.lit)
}

// bringInGoal counts the horses brought in, date by date; works count.
func (e *encoder) bringInGoal() ordered.Goal {
	goal := ordered.Goal{Name: "bring in"}
	for _, h := range e.horses() {
		in := map[model.Date]bool{}
		for _, f := range e.facts[h] {
			if e.w.From <= f.Date && f.Date <= e.w.Until && !in[f.Date] {
				in[f.Date] = true
				goal.Softs = append(goal.Softs, e.constant(1)...)
			}
		}
		for day := range byDate(e.of[h]) {
			if d := day[0].meeting.Date; !in[d] {
				goal.Softs = append(goal.Softs, ordered.Soft{Lit: e.anyWorked(day).Not(), Weight: 1, Stratum: e.stratum(d)})
			}
		}
	}
	softs := goal.Softs
	goal.Open = func(best sat.Model) ([]ordered.Soft, int) { return softs, e.leastBroughtIn(e.onGround(best)) }
	e.boundBeside(&goal, costs{in: true, rounds: 60, before: (*relaxation).keep})
	return goal
}

// anyWorked is the literal that a horse works in any of the places.
func (e *encoder) anyWorked(day []*place) sat.Lit {
	var lits []sat.Lit
	for _, p := range day {
		lits = append(lits, p.worked)
	}
	return e.s.Or(lits...)
}

// horses are those of the centre, then those that have left it and that facts name.
func (e *encoder) horses() []*model.Horse {
	all := slices.Clone(e.w.Centre.Horses)
	for _, f := range e.w.Facts {
		if !slices.Contains(all, f.Turn.Horse) {
			all = append(all, f.Turn.Horse)
		}
	}
	return all
}
