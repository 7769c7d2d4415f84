package solver

import (
	"context"
	"errors"
	"fmt"
	"slices"
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
	// Goals, if not 0, is how many of the first goals are looked at; the others
	// are as they turn out, and nothing is proved of them.
	Goals int

	last   bool      // the encoder is not asked again
	start  []sat.Lit // what the first plan should have; nil: what was posted
	effort int       // see [ordered.Options]
}

// Plan is the best plan of the week, each goal of its score proved before the
// next is opened. When ctx ends first it is the best plan found (before there is
// one: every open ride on the ground, which breaks no rule), and its proof says
// how far from best it can be. Every plan is audited: an error is a bug of the
// program.
func Plan(ctx context.Context, w *model.Week, opts Options) (*model.Plan, error) {
	e := encode(w)
	opts.last = true
	plan, err := e.solve(ctx, nil, e.goals(), opts)
	if err != nil {
		return nil, err
	}
	return plan, finish(w, plan)
}

// solve is the plan that is best in the goals, with what was proved of them.
func (e *encoder) solve(ctx context.Context, assume []sat.Lit, goals []ordered.Goal, opts Options) (*model.Plan, error) {
	if opts.Goals > 0 {
		goals = goals[:min(opts.Goals, len(goals))]
	}
	if opts.start == nil {
		opts.start = e.posted()
	}
	best, results, err := ordered.Minimise(ctx, e.s, assume, goals, ordered.Options{Progress: opts.Progress, Start: opts.start, Effort: opts.effort, Last: opts.last, Partitions: e.partitions()})
	switch {
	case err != nil && errors.Is(err, ctx.Err()):
		return e.nobody(goals), nil
	case err != nil:
		return nil, err
	}
	plan, err := e.decode(ctx, best)
	if err != nil {
		return nil, err
	}
	for _, r := range results {
		plan.Proof.Goals = append(plan.Proof.Goals, model.GoalResult(r))
	}
	return plan, nil
}

// partitions are the rides on horses, by horse and by date.
func (e *encoder) partitions() [][][]sat.Lit {
	var horses, dates [][]sat.Lit
	of := map[model.Date]int{}
	for _, h := range e.w.Centre.Horses {
		var lits []sat.Lit
		for _, p := range e.of[h] {
			d := p.meeting.Date
			if _, ok := of[d]; !ok {
				of[d] = len(dates)
				dates = append(dates, nil)
			}
			for _, on := range p.rides {
				lits = append(lits, on.lit)
				dates[of[d]] = append(dates[of[d]], on.lit)
			}
		}
		if len(lits) > 0 {
			horses = append(horses, lits)
		}
	}
	return [][][]sat.Lit{horses, dates}
}

// finish audits a plan and says of each ride on the ground what stands in its
// way, if nothing does already.
func finish(w *model.Week, plan *model.Plan) error {
	for i, r := range w.Rides {
		if plan.Turns[i] == nil && plan.Ground[i] == nil {
			plan.Ground[i] = groundWords(w, r)
		}
	}
	return check(w, plan)
}

// nobody is the plan that needs no search: every open ride is on the ground.
func (e *encoder) nobody(goals []ordered.Goal) *model.Plan {
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
	return plan
}

// check audits the plan, compares its score with what was claimed, and seals
// its proof. A goal that was not proved may have been claimed at more than it
// is: some literals that count for it can be true without need.
func check(w *model.Week, plan *model.Plan) error {
	if broken := model.Broken(w.Audit(plan)); len(broken) > 0 {
		var words []string
		for _, v := range broken {
			words = append(words, v.Rule.Name+": "+v.Words)
		}
		return fmt.Errorf("the plan found breaks a rule, which is a bug of this program: %s", strings.Join(words, "; "))
	}
	for i, g := range w.Score(plan) {
		if i == len(plan.Proof.Goals) { // nobody asked for its proof
			plan.Proof.Goals = append(plan.Proof.Goals, model.GoalResult{Name: g.Name, Value: g.Value})
		}
		claim := &plan.Proof.Goals[i]
		if claim.Name != g.Name || claim.Proved && claim.Value != g.Value || claim.Value < g.Value || g.Value < claim.Bound {
			return fmt.Errorf("the plan scores %d in %s, and %d in %s (bound %d) was claimed, which is a bug of this program",
				g.Value, g.Name, claim.Value, claim.Name, claim.Bound)
		}
		claim.Value = g.Value
	}
	plan.Proof.Hash = w.Fingerprint(plan)
	return nil
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
	for _, s := range w.HandsShort(r.Meeting) {
		if slices.Contains(s.Rides, r) {
			reasons = append(reasons, s.String())
		}
	}
	would, them := names[0], "it"
	if n := len(names) - 1; n > 0 {
		would, them = strings.Join(names[:n], ", ")+" or "+names[n], "them"
	}
	if len(reasons) > 0 {
		return append(reasons, "with enough of them "+would+" would do, unless other rides of the week need "+them)
	}
	return []string{would + " would do, but other rides of the week need " + them}
}
