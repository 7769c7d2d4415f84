package solver

import (
	"context"

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
