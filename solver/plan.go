package solver

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// Options may all be left out.
type Options struct {
	// Progress is told when the best value or the bound of the goal being worked
	// on changes.
	Progress func(goal string, best, bound int)
}

// Plan is the best plan of the week, each goal of its score proved before the
// next is opened. When ctx ends first it is the best plan found (before there is
// one: every open ride on the ground, which breaks no rule), and its proof says
// how far from best it can be. Every plan is audited: an error is a bug of the
// program.
func Plan(ctx context.Context, w *model.Week, opts Options) (*model.Plan, error) {
	e := encode(w)
	goals := e.goals()
	best, results, err := ordered.Minimise(ctx, e.s, nil, goals, ordered.Options{Progress: opts.Progress})
	switch {
	case err != nil && errors.Is(err, ctx.Err()):
		return e.nobody(goals)
	case err != nil:
		return nil, err
	}
	plan, err := e.decode(best)
	if err != nil {
		return nil, err
	}
	for _, r := range results {
		plan.Proof.Goals = append(plan.Proof.Goals, model.GoalResult(r))
	}
	e.ground(plan)
	return plan, e.check(plan)
}

// nobody is the plan that needs no search: every open ride is on the ground.
func (e *encoder) nobody(goals []ordered.Goal) (*model.Plan, error) {
	w := e.w
	plan := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for i, r := range w.Rides {
		switch r.State {
		case model.Started:
			plan.Turns[i] = r.Told
		case model.Open:
			plan.Ground[i] = []string{"the time was over before a horse was looked for"}
		}
	}
	score := w.Score(plan)
	for i, g := range goals {
		plan.Proof.Goals = append(plan.Proof.Goals, model.GoalResult{Name: g.Name, Value: score[i].Value, Bound: g.Least})
	}
	return plan, e.check(plan)
}

// check audits the plan, compares its score with what was claimed, and seals
// its proof.
func (e *encoder) check(plan *model.Plan) error {
	if broken := model.Broken(e.w.Audit(plan)); len(broken) > 0 {
		var words []string
		for _, v := range broken {
			words = append(words, v.Rule.Name+": "+v.Words)
		}
		return fmt.Errorf("the plan found breaks a rule, which is a bug of this program: %s", strings.Join(words, "; "))
	}
	score := e.w.Score(plan)
	for i, claim := range plan.Proof.Goals {
		if g := score[i]; claim.Name != g.Name || claim.Value != g.Value {
			return fmt.Errorf("the plan scores %d in %s and not %d in %s as claimed, which is a bug of this program", g.Value, g.Name, claim.Value, claim.Name)
		}
	}
	plan.Proof.Hash = e.w.Fingerprint(plan)
	return nil
}

// goals are the first ones of [model.Week.Score], in the same order.
func (e *encoder) goals() []ordered.Goal {
	seat := ordered.Goal{Name: "seat a", Counts: e.counts()}
	first := ordered.Goal{Name: "seat b"}
	again := ordered.Goal{Name: "seat c"}
	for _, r := range e.w.Rides {
		if r.State == model.Off {
			continue
		}
		soft := ordered.Soft{Lit: e.isSeated(r), Weight: 1, Stratum: int(r.Date() - e.w.From)}
		seat.Softs = append(seat.Softs, soft)
		if r.Rider.RideFirst {
			first.Softs = append(first.Softs, soft)
		}
		if e.w.Grounded(r.Rider) {
			again.Softs = append(again.Softs, soft)
		}
	}
	return []ordered.Goal{seat, first, again}
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

// ground says of each ride on the ground what stands in its way.
func (e *encoder) ground(plan *model.Plan) {
	for i, r := range e.w.Rides {
		if plan.Turns[i] == nil {
			plan.Ground[i] = groundWords(e.w, r)
		}
	}
}

func groundWords(w *model.Week, r *model.Ride) []string {
	if r.State == model.Started {
		return []string{"was on the ground when it started"}
	}
	reasons, free := w.Alone(r)
	if len(free) == 0 {
		return reasons
	}
	var names []string
	for _, h := range free {
		names = append(names, h.Name)
	}
	return []string{fmt.Sprintf("nothing of its own: %s could carry it, but for the other rides of the week", strings.Join(names, ", "))}
}
