package solver

import (
	"context"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// WhyNot is why a ride is not on a horse, or in a seat, that is asked for.
type WhyNot struct {
	Ride *model.Ride
	// Alone is what stands in the way with every other open ride on the ground; "" is
	// nothing. Rule is the one that forbids it, nil where that is a matter of several.
	Alone string
	Rule  *model.Rule
	// Together is why it cannot be with all that ride in the plan; nil: it can, or ctx
	// ended first.
	Together *Reason
	// Choice is what it is possible at the price of; nil where it is not, or ctx ended
	// first.
	Choice *Choice
}

// WhyPairing says why a ride is not on a horse in a plan, in a seat or one alike
// where it is not nil, or at what price it could be.
func WhyPairing(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, h *model.Horse, seat *model.Piece) (*WhyNot, error) {
	why := &WhyNot{Ride: r}
	if why.Rule, why.Alone = w.Stops(r, h, seat); why.Alone != "" {
		return why, nil
	}
	ask := toRideOn(r, h, seat)
	var err error
	part, cancel := half(ctx)
	why.Together, _, err = whyNotTogether(part, w, p, r, ask)
	cancel()
	if err != nil {
		return why, err
	}
	why.Choice, err = choose(ctx, w, p, r, ask, 0, 0)
	return why, err
}

// toRideOn asks that a ride be on a horse, in a seat or one alike where it is not
// nil.
func toRideOn(r *model.Ride, h *model.Horse, seat *model.Piece) asking {
	return func(e *encoder) ([]sat.Lit, bool) {
		var ways []sat.Lit
		for _, on := range e.on_[e.w.Rides[r.Index]] {
			switch {
			case on.at.horse != h:
			case seat == nil:
				ways = append(ways, on.lit)
			default:
				for _, o := range on.at.saddle {
					if e.w.Alike(o.seat.one()) == e.w.Alike(seat) && !e.clash(on.ride, h, o.option) {
						ways = append(ways, e.both(on, o))
					}
				}
			}
		}
		return []sat.Lit{e.s.Or(ways...)}, len(ways) > 0
	}
}

// WhyLesson is why a rider does not ride in another lesson in the place of hers.
type WhyLesson struct {
	Ride *model.Ride
	// Refused is that the lesson takes nobody in, or not her, in words; "" is that it does.
	Refused string
	// Week is as it would be if she did; what follows is of that week, and its nouns
	// are its own. Was is the plan there, with her on the ground, and There her ride.
	Week  *model.Week
	Was   *model.Plan
	There *model.Ride
	// Alone is what stands in her way then with every other open ride on the ground.
	Alone []string
	// Together is why it cannot be with all others that ride in the plan; nil: it can,
	// or ctx ended first.
	Together *Reason
	// Choice is what it is possible at the price of, beside the plan as it is now; nil
	// where it is not, or ctx ended first.
	Choice *Choice
}

// WhyNotIn says why a ride is not in another lesson of the week, or at what price it
// could be.
func WhyNotIn(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, m *model.Meeting) (*WhyLesson, error) {
	why := &WhyLesson{Ride: r}
	if why.Refused = w.NoPlace(model.Ask{Rider: r.Rider, Meeting: m}, nil); why.Refused != "" {
		return why, nil
	}
	others := &model.Plan{Turns: slices.Clone(p.Turns)}
	others.Turns[r.Index] = nil
	x := &Way{Notes: Change(r.Rider, r.Meeting, m)}
	x.Week = w.With(x.Notes...)
	was, ok := x.carry(w, others)
	if why.There = x.same(r); !ok || why.There == nil || why.There.State != model.Open {
		why.Refused = "it cannot be changed any more"
		return why, nil
	}
	why.Week, why.Was = x.Week, was
	var free []*model.Horse
	if why.Alone, free = x.Week.Alone(why.There); len(free) == 0 {
		return why, nil
	}
	part, cancel := half(ctx)
	var err error
	why.Together, _, err = whyNotTogether(part, x.Week, was, why.There, toRide(why.There))
	cancel()
	if err != nil {
		return why, err
	}
	why.Choice, err = choose(ctx, x.Week, was, why.There, toRide(why.There), 0, 0)
	if c := why.Choice; err == nil && c != nil {
		c.Ground = onGround(w, p)
		if c.Price != nil {
			c.Price.compare(w.Score(p))
		}
	}
	return why, err
}

// compare sets a price beside the scores of another plan.
func (x *Price) compare(before []model.GoalValue) {
	x.Before, x.Decides, x.Settled = before, -1, x.Plan.Proof.Proved()
	for i := range x.Before {
		if x.Before[i].Value != x.After[i].Value {
			x.Decides, x.Settled = i, x.Plan.Proof.Goals[i].Proved
			break
		}
	}
}
