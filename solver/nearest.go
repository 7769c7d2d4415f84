package solver

import (
	"context"
	"errors"

	"tackwright/model"
	"tackwright/solver/ordered"
)

// nearest is a plan in which a ride is seated, or is as asked, and so are all that
// are seated in p; of such plans one in which as few rides as can be are on another
// horse than there, and then in other tack. nil is that there is none, or that none
// was found before ctx ended. Nothing is proved of the plan.
func nearest(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, ask asking) (*model.Plan, error) {
	near := w.Copy()
	near.Mends = true
	for i, x := range near.Rides {
		x.Posted, x.Due = nil, false
		if x.State == model.Open {
			x.Posted, x.Due = p.Turns[i], p.Turns[i] != nil || i == r.Index
		}
	}
	e := encode(near)
	assume, ok := ask(e)
	if !ok {
		return nil, nil
	}
	for _, x := range near.Rides {
		if x.State == model.Open && x.Due {
			assume = append(assume, e.isSeated(x))
		}
	}
	found, err := e.solve(ctx, assume, e.keepGoals(), Options{})
	var odds *ordered.Unsatisfiable
	switch {
	case errors.As(err, &odds), err == nil && found.Turns[r.Index] == nil:
		return nil, nil
	case err != nil:
		return nil, err
	}
	found.Proof = model.Proof{}
	return found, finish(w, found)
}

// nearestOn is the same where rides of other dates than these are as they are in p: a
// plan of the whole week.
func nearestOn(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, ask asking, dates ...model.Date) (*model.Plan, error) {
	found, err := nearest(ctx, w.Beside(p, dates...), p, r, ask)
	if err != nil || found == nil {
		return nil, err
	}
	found.Ground, found.Proof = make([][]string, len(w.Rides)), model.Proof{}
	return found, finish(w, found)
}

// keepGoals are Keep alone: horse, then tack.
func (e *encoder) keepGoals() (keep []ordered.Goal) {
	for _, g := range e.mendGoals() {
		if g.Name == "keep a" || g.Name == "keep b" {
			keep = append(keep, g)
		}
	}
	return keep
}
