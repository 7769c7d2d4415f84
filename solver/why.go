package solver

import (
	"context"
	"errors"
	"fmt"
	"time"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// Why a ride is on the ground in a plan. Only the first of its answers that says
// so stands: Alone, then Better or Together, and beside Together the Choice.
type Why struct {
	Ride  *model.Ride
	Alone []string       // what stands in its way with every other open ride on the ground
	Free  []*model.Horse // that could carry it then
	// Better seats it with all that ride in the plan: where Seat was not proved, it can be.
	Better *model.Plan
	// Together is why it cannot ride with all that ride in the plan; nil where ctx ended first.
	Together *Reason
	// Choice is what there is with it riding; nil where ctx ended first.
	Choice *Choice
}

// Choice is what a plan would be like with something in it that is asked for.
type Choice struct {
	Ground    int  // rides on the ground in the plan
	With      int  // the least on the ground with what is asked for
	Proved    bool // With is the least there is
	Displaced []*model.Ride
	// Fewest: no plan with so many riding displaces fewer of those who ride now.
	Fewest bool
	Price  *Price // nil where fewer would ride, or ctx ended first
}

// Price is a plan with what is asked for, the best in all goals as far as its
// proof tells, beside the scores before and after.
type Price struct {
	Plan          *model.Plan
	Before, After []model.GoalValue
	// Decides is the index of the first goal in which the two differ; -1: in none, a tie.
	Decides int
	// Settled: that goal's value, or the tie, is proved.
	Settled bool
	// Near: of the plans that leave other dates as they are; those that do not were
	// not looked at long enough.
	Near bool
}

// WhyGround says why a ride is on the ground in a plan of the week. When ctx ends
// first it says what it has.
func WhyGround(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride) (*Why, error) {
	if p.Turns[r.Index] != nil {
		return nil, fmt.Errorf("%s rides %s", r, p.Turns[r.Index].Horse.Name)
	}
	why := &Why{Ride: r}
	if r.State == model.Started {
		why.Alone = groundWords(w, r)
		return why, nil
	}
	if why.Alone, why.Free = w.Alone(r); len(why.Free) == 0 {
		return why, nil
	}
	var err error
	part, cancel := half(ctx)
	why.Together, why.Better, err = whyNotTogether(part, w, p, r, toRide(r))
	cancel()
	if err != nil || why.Better != nil {
		return why, err
	}
	apart := 0
	if why.Together != nil {
		apart = 1
	}
	why.Choice, err = choose(ctx, w, p, r, toRide(r), apart, enough)
	return why, err
}

// enough is the work, in ticks, that goes into a price of all dates where one of few
// dates is known.
const enough = 20

// half ends when half of the time is over.
func half(ctx context.Context) (context.Context, context.CancelFunc) {
	end, ok := ctx.Deadline()
	if !ok {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, time.Now().Add(time.Until(end)/2))
}

// toRide asks that a ride be seated, on any horse.
func toRide(r *model.Ride) asking {
	return func(e *encoder) ([]sat.Lit, bool) {
		l, ok := e.seated[e.w.Rides[r.Index]]
		return []sat.Lit{l}, ok
	}
}

// choose looks for the plans in which something asked of a ride is so: how many can
// ride then, the fewest of those who ride now that would not, at least so many, and
// the price. Where effort is not 0, no more ticks of work go into a price of all dates,
// and one of the dates that have to change is looked for first.
func choose(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, ask asking, displaces, effort int) (*Choice, error) {
	e := encode(w)
	asked, ok := ask(e)
	if !ok {
		return nil, nil
	}
	ground := ordered.Goal{Name: "ground", Counts: e.counts(), Least: groundProved(w, p)}
	displaced := ordered.Goal{Name: "displaced", Least: displaces}
	c := &Choice{}
	for i, r := range w.Rides {
		if r.State != model.Open {
			continue
		}
		soft := ordered.Soft{Lit: e.isSeated(r), Weight: 1, Stratum: e.stratum(r.Date())}
		ground.Softs = append(ground.Softs, soft)
		if p.Turns[i] == nil {
			c.Ground++
		} else {
			displaced.Softs = append(displaced.Softs, soft)
		}
	}
	best, results, err := ordered.Minimise(ctx, e.s, asked, []ordered.Goal{ground, displaced}, ordered.Options{Start: e.asIn(p)})
	var odds *ordered.Unsatisfiable
	switch {
	case errors.As(err, &odds), err != nil && ctx.Err() != nil:
		return nil, nil
	case err != nil:
		return nil, err
	}
	c.With, c.Proved, c.Fewest = results[0].Value, results[0].Proved, results[1].Proved
	for i, r := range w.Rides {
		if r.State == model.Open && p.Turns[i] != nil && !best.Value(e.isSeated(r)) {
			c.Displaced = append(c.Displaced, r)
		}
	}
	if c.Price, err = c.price(ctx, e, p, r, ask, effort); c.Price != nil {
		var down []*model.Ride
		for i, r := range w.Rides {
			if r.State == model.Open && p.Turns[i] != nil && c.Price.Plan.Turns[i] == nil {
				down = append(down, r)
			}
		}
		if len(down) == len(c.Displaced) { // as few, and those of the plan that is shown
			c.Displaced = down
		}
	}
	return c, err
}

// groundProved are the open rides that no plan seats, as far as was proved when the
// plan was made.
func groundProved(w *model.Week, p *model.Plan) int {
	if len(p.Proof.Goals) == 0 || p.Proof.Goals[0].Name != "seat a" || !w.ProofCovers(p) {
		return 0
	}
	least := p.Proof.Goals[0].Bound
	for i, r := range w.Rides {
		if r.State == model.Started && p.Turns[i] == nil {
			least--
		}
	}
	return max(least, 0)
}

// price is what a plan costs in which what is asked for is so.
func (c *Choice) price(ctx context.Context, e *encoder, p *model.Plan, r *model.Ride, ask asking, effort int) (*Price, error) {
	var near *Price
	if effort > 0 {
		dates := []model.Date{r.Date()}
		for _, x := range c.Displaced {
			dates = append(dates, x.Date())
		}
		var err error
		if near, err = priceIn(ctx, encode(e.w.Beside(p, dates...)), e.w, p, ask, 0); err != nil {
			return nil, err
		}
		if near != nil && onGround(e.w, near.Plan) != c.With {
			near = nil
		}
	}
	whole, err := priceIn(ctx, e, e.w, p, ask, effort)
	if near != nil && (whole == nil || !whole.Settled) {
		near.Near, near.Plan.Proof = true, model.Proof{}
		return near, err
	}
	return whole, err
}

// onGround counts the open rides that a plan does not seat.
func onGround(w *model.Week, p *model.Plan) (n int) {
	for i, r := range w.Rides {
		if r.State == model.Open && p.Turns[i] == nil {
			n++
		}
	}
	return n
}

// priceIn is that of the plans of what is written down, as plans of the week.
func priceIn(ctx context.Context, e *encoder, w *model.Week, p *model.Plan, ask asking, effort int) (*Price, error) {
	asked, ok := ask(e)
	if !ok {
		return nil, nil
	}
	goals := e.goals()
	for i := range goals {
		goals[i].Beside = nil // it knows nothing of what is assumed
	}
	plan, err := e.solve(ctx, asked, goals, Options{start: e.asIn(p), effort: effort})
	var odds *ordered.Unsatisfiable
	switch {
	case errors.As(err, &odds):
		return nil, nil
	case err != nil || ctx.Err() != nil && len(plan.Proof.Goals) == 0:
		return nil, err
	}
	if err := finish(w, plan); err != nil {
		return nil, err
	}
	x := &Price{Plan: plan, After: w.Score(plan)}
	x.compare(w.Score(p))
	return x, nil
}

// asIn are the literals that hold in a plan: who rides what, those first.
func (e *encoder) asIn(p *model.Plan) []sat.Lit {
	var lits []sat.Lit
	for _, r := range e.w.Rides {
		for _, on := range e.on_[r] {
			if t := p.Turns[r.Index]; t != nil && t.Horse == on.at.horse {
				lits = append(lits, on.lit)
			}
		}
	}
	return lits
}
