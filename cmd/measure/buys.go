package main

import (
	"context"
	"slices"
	"time"

	"tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver"
)

// buys asks what one more of everything would bring to the task's week, twice:
// rides alone, and with whole plans for the best five. The clock runs from the
// centre to the last audited plan.
func (t task) buys(ctx context.Context) ([]outcome, error) {
	size, err := weeks.Named(t.Size)
	if err != nil {
		return nil, err
	}
	rides, err := t.buy(ctx, size, "rides", 0)
	if err != nil {
		return nil, err
	}
	best, err := t.buy(ctx, size, "five best", 5)
	return []outcome{rides, best}, err
}

func (t task) buy(ctx context.Context, size weeks.Size, part string, few int) (outcome, error) {
	t.Part = part
	ctx, cancel := context.WithTimeout(ctx, t.Limit)
	defer cancel()
	c := weeks.Centre(size, t.Seed, t.Loose)
	cpu, start := spent(), time.Now()
	found, err := solver.Buy(ctx, c, []solver.Dates{{From: c.Today, Days: 7}}, few, nil)
	o := outcome{Task: t, Horses: len(c.Horses), Seconds: time.Since(start).Seconds(), CPU: spent() - cpu}
	if err != nil {
		return o, err
	}
	o.Rides = len(found.Now[0].Week.Rides)
	seat := found.Ground[0]
	o.Goals = append(o.Goals, goal{seat.Name, seat.Value, seat.Bound, seat.Proved})
	bring := goal{Name: "spares that bring rides", Proved: seat.Proved}
	planned := goal{Name: "planned whole", Proved: found.Whole}
	for _, x := range found.Bought {
		if x.More > 0 {
			bring.Value++
		}
		bring.Proved = bring.Proved && x.Proved
		if x.Plans != nil {
			planned.Value++
			planned.Proved = planned.Proved && wishesProved(x.Plans[0].Plan)
		}
	}
	bring.Bound = bring.Value
	planned.Bound, planned.Proved = planned.Value, planned.Proved && bring.Proved && wishesProved(found.Now[0].Plan)
	o.Goals = append(o.Goals, bring)
	if few > 0 {
		o.Goals = append(o.Goals, planned)
	}
	return o, nil
}

// wishesProved reports whether no plan as good in the goals before leaves fewer
// unmet.
func wishesProved(p *model.Plan) bool {
	return slices.ContainsFunc(p.Proof.Goals, func(g model.GoalResult) bool { return g.Name == "wishes" && g.Proved })
}
