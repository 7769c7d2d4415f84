package solver

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// Room is what there is for a rider in a meeting beside a plan. One of Alone, With
// and Full stands, or none where ctx ended first.
type Room struct {
	model.Ask
	Alone []string // what stands in her way even with every other open ride on the ground
	Full  bool     // proved: not with all that ride now
	With  *Placed
}

// Placed is a plan that has rides more than another: all that ride there ride here,
// and nobody else but them.
type Placed struct {
	Planned
	Rides []*model.Ride // that were asked for, of Week
	// Horse are rides that have another horse than before, and Tack those on the same
	// horse in other tack; as few as can be, first the one, then the other, where
	// Fewest is true. Their Posted is the turn before.
	Horse, Tack []*model.Ride
	Fewest      bool
}

// Disturbs reports whether anybody has another horse or other tack.
func (p *Placed) Disturbs() bool { return len(p.Horse)+len(p.Tack) > 0 }

// RoomFor looks for room for each of some asks, each by itself, in a plan of a week
// that keeps every rule. None asks for a ride that the week has.
func RoomFor(ctx context.Context, w *model.Week, p *model.Plan, asks []model.Ask) ([]*Room, error) {
	q := openRoom(w, p, asks)
	var all []*Room
	for i, a := range asks {
		r := &Room{Ask: a}
		all = append(all, r)
		ride := q.rides[i]
		switch {
		case ride.State == model.Started || ride.Past:
			r.Alone = []string{"the hour is past"}
			continue
		case ride.State == model.Off: // what was written of it is nobody's business
			r.Alone = []string{"the rider is away, or it is not held"}
			continue
		}
		asked, ok := q.e.seated[ride]
		if !ok {
			r.stands(q.w, ride)
			continue
		}
		var odds *ordered.Unsatisfiable
		var err error
		r.With, _, err = q.solve(ctx, append(q.but(ride), asked), nil, ride)
		switch {
		case errors.As(err, &odds):
			r.stands(q.w, ride)
		case err != nil && ctx.Err() == nil:
			return nil, err
		}
	}
	return all, nil
}

// stands says why there is none. A ride that cannot be alone may be beside others: a
// horse that works at half may do less in three rides than in two with a gap between.
func (r *Room) stands(w *model.Week, ride *model.Ride) {
	var free []*model.Horse
	r.Alone, free = w.Alone(ride)
	r.Full = len(free) > 0
}

// RoomForAll looks for a plan in which as many riders as can be have one of the
// meetings that they ask for, beside all that ride in a plan that keeps every rule:
// of those, one in which riders who ask earlier have one before later ones do. No
// more than most can have one at once; that many have where that is proved. A nil
// answer is that ctx ended first.
func RoomForAll(ctx context.Context, w *model.Week, p *model.Plan, asks []model.Ask) (placed *Placed, most int, err error) {
	q := openRoom(w, p, asks)
	var riders []*model.Rider
	of := map[*model.Rider][]sat.Lit{}
	for i, a := range asks {
		l, ok := q.e.seated[q.rides[i]]
		if !ok {
			continue
		}
		if of[a.Rider] == nil {
			riders = append(riders, a.Rider)
		}
		of[a.Rider] = append(of[a.Rider], l)
	}
	goals := []ordered.Goal{{Name: "placed"}}
	for _, r := range riders {
		q.e.s.AtMostOne(q.e.s.Root(), of[r]...)
		soft := ordered.Soft{Lit: q.e.s.Or(of[r]...), Weight: 1, Stratum: -1}
		goals[0].Softs = append(goals[0].Softs, soft)
		goals = append(goals, ordered.Goal{Name: "placed: " + r.Name, Softs: []ordered.Soft{soft}})
	}
	placed, results, err := q.solve(ctx, q.but(q.rides...), goals, q.rides...)
	switch {
	case err != nil && ctx.Err() != nil:
		return nil, len(riders), nil
	case err != nil:
		return nil, 0, err
	case len(placed.Rides) != len(riders)-results[0].Value:
		return nil, 0, fmt.Errorf("%d riders are placed, and %d were claimed, which is a bug of this program", len(placed.Rides), len(riders)-results[0].Value)
	}
	return placed, len(riders) - results[0].Bound, nil
}

// roomQuery is a week with the rides asked for; all others stay seated, or on the
// ground, as in a plan.
type roomQuery struct {
	w     *model.Week
	e     *encoder
	rides []*model.Ride // asked for
	start []sat.Lit     // what holds in the plan
	stay  []sat.Lit
}

func openRoom(w *model.Week, p *model.Plan, asks []model.Ask) *roomQuery {
	q := &roomQuery{}
	q.w, q.rides = w.WithRides(asks)
	turns := map[string]*model.Turn{}
	for i, r := range w.Rides {
		turns[named(r)] = p.Turns[i]
	}
	q.w.Mends = true // so that changes are counted
	for _, r := range q.w.Rides {
		if r.State == model.Open {
			r.Posted = turns[named(r)]
			r.Due = r.Posted != nil
		}
	}
	q.e = encode(q.w)
	q.start = q.e.posted()
	for _, r := range q.w.Rides {
		if l, ok := q.e.seated[r]; ok && !slices.Contains(q.rides, r) {
			if r.Posted == nil {
				l = l.Not()
			}
			q.stay = append(q.stay, l)
		}
	}
	return q
}

// but are the assumptions under which of the rides asked for only some may be
// seated.
func (q *roomQuery) but(some ...*model.Ride) []sat.Lit {
	lits := slices.Clone(q.stay)
	for _, r := range q.rides {
		if l, ok := q.e.seated[r]; ok && !slices.Contains(some, r) {
			lits = append(lits, l.Not())
		}
	}
	return lits
}

// solve looks for a plan that is best in the first goals, then changes the horses of
// as few as can be, then the tack, and then gives those who asked what they wish.
func (q *roomQuery) solve(ctx context.Context, assume []sat.Lit, first []ordered.Goal, asked ...*model.Ride) (*Placed, []ordered.Result, error) {
	mend := q.e.mendGoals()
	wishes := ordered.Goal{Name: "wishes"}
	for _, r := range asked {
		wishes.Softs = append(wishes.Softs, once(q.e.wishes, r, func() []ordered.Soft { return q.e.rideWishes(r) })...)
	}
	horse := len(first) // and then tack
	best, results, err := ordered.Minimise(ctx, q.e.s, assume, slices.Concat(first, mend[2:4], []ordered.Goal{wishes}), ordered.Options{Start: q.start})
	if err != nil {
		return nil, nil, err
	}
	plan, err := q.e.decode(ctx, best)
	if err != nil {
		return nil, nil, err
	}
	if err := check(q.w, plan); err != nil {
		return nil, nil, err
	}
	x := &Placed{Planned: Planned{q.w, plan}, Fewest: results[horse+1].Proved}
	for i, r := range q.w.Rides {
		now := plan.Turns[i]
		switch {
		case slices.Contains(q.rides, r):
			if now != nil && r.State == model.Open {
				x.Rides = append(x.Rides, r)
			}
		case r.State != model.Open:
		case (now == nil) != (r.Posted == nil):
			return nil, nil, fmt.Errorf("%s does not stay as it was, which is a bug of this program", r)
		case now == nil:
		case now.Horse != r.Posted.Horse:
			x.Horse = append(x.Horse, r)
		case !q.w.AlikeTack(now, r.Posted):
			x.Tack = append(x.Tack, r)
		}
	}
	if x.Fewest && (len(x.Horse) != results[horse].Value || len(x.Tack) != results[horse+1].Value) {
		return nil, nil, fmt.Errorf("%d and %d rides are changed, and %d and %d were claimed, which is a bug of this program",
			len(x.Horse), len(x.Tack), results[horse].Value, results[horse+1].Value)
	}
	return x, results, nil
}
