package main

import (
	"context"
	"time"

	"tackwright/fixtures/smptsp"
	"tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver"
)

// week of a task, and how full it is.
func (t task) week() (*model.Week, weeks.Fill, error) {
	if t.Kind == "smptsp" {
		in, err := smptsp.Read(t.File)
		if err != nil {
			return nil, weeks.Fill{}, err
		}
		c := in.Centre()
		c.House.Goals = []model.GoalKind{model.GoalBringIn} // the fewest workers
		return c.Week(smptsp.Date, 1, model.Instant{}), weeks.Fill{}, nil
	}
	size, err := weeks.Named(t.Size)
	if err != nil {
		return nil, weeks.Fill{}, err
	}
	w := weeks.Week(size, t.Seed, t.Loose)
	return w, weeks.FillOf(w), nil
}

// plan has our solver plan the task's week. The clock runs from the week to the audited plan.
func (t task) plan(ctx context.Context) (outcome, error) {
	w, fill, err := t.week()
	if err != nil {
		return outcome{}, err
	}
	o := outcome{Task: t, Rides: len(w.Rides), Horses: len(w.Centre.Horses), Sessions: fill.Sessions}
	if fill.Allowance > 0 {
		o.Fill = fill.Percent()
	}
	ctx, cancel := context.WithTimeout(ctx, t.Limit)
	defer cancel()
	start := time.Now()
	plan, err := solver.Plan(ctx, w, solver.Options{})
	o.Seconds = time.Since(start).Seconds()
	if err != nil {
		return outcome{}, err
	}
	o.Goals = goalsOf(plan)
	return o, nil
}
