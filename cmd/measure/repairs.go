package main

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"time"

	"tackwright/fixtures"
	"tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver"
)

// told are the goals of a repair before the house's own: Seat and Keep.
var told = []string{"told a", "told b", "keep a", "keep b", "besides"}

// repairs plans the task's week, posts it, has the busiest horse go lame and mends that date, twice: until
// Seat and Keep are proved, as what follows may go on as long as there is time, and until all is. Both
// times the clock runs from the centre to the audited plan. What peers are to mend is written to files.
func (t task) repairs(ctx context.Context) ([]outcome, error) {
	c, at, err := t.mishap(ctx)
	if err != nil {
		return nil, err
	}
	keep, err := t.mend(ctx, c, at, "keep")
	if err != nil {
		return nil, err
	}
	all, err := t.mend(ctx, c, at, "all")
	return []outcome{keep, all}, err
}

func (t task) mend(ctx context.Context, c *model.Centre, at model.Instant, part string) (outcome, error) {
	ctx, cancel := context.WithTimeout(ctx, t.Limit)
	defer cancel()
	t.Part = part
	runtime.GC() // what went before is not to be paid for here
	cpu, start := spent(), time.Now()
	w := c.Repair(at.Date, 1, at)
	plan, err := solver.Plan(ctx, w, solver.Options{Progress: func(goal string, _, _ int) {
		if part == "keep" && !slices.Contains(told, goal) {
			cancel()
		}
	}})
	o := outcome{Task: t, Rides: len(w.Rides), Horses: len(c.Horses), Seconds: time.Since(start).Seconds(), CPU: spent() - cpu}
	if err != nil {
		return outcome{}, err
	}
	o.Goals = goalsOf(plan)
	if part == "keep" {
		o.Goals = o.Goals[:len(told)]
		goals := c.House.Goals
		c.House.Goals = nil
		defer func() { c.House.Goals = goals }()
	}
	p := solver.Export(w)
	o.Vars, o.Clauses = p.Vars, len(p.Clauses)+len(p.Sums)
	if t.Write != "-" {
		o.Task.Write += "-" + part
		err = o.Task.write(p)
	}
	return o, err
}

// mishap posts the task's week and has a horse go lame on Wednesday at 10:00: the one that has most to do
// on that date from then on. How good the plan posted is does not matter, but somebody must ride.
func (t task) mishap(ctx context.Context) (*model.Centre, model.Instant, error) {
	size, err := weeks.Named(t.Size)
	if err != nil {
		return nil, model.Instant{}, err
	}
	w := weeks.Week(size, t.Seed, t.Loose)
	c, at := w.Centre, model.Instant{Date: w.From + 2, Minute: 10 * 60}
	var busiest *model.Horse
	for limit := 5 * time.Second; busiest == nil && limit < 3*time.Minute; limit *= 2 {
		limited, cancel := context.WithTimeout(ctx, limit)
		plan, err := solver.Plan(limited, w, solver.Options{})
		cancel()
		if err != nil {
			return nil, at, err
		}
		if busiest = busiestFrom(w, plan, at); busiest != nil {
			fixtures.Post(w, plan)
		}
	}
	if busiest == nil {
		return nil, at, fmt.Errorf("nobody rides on %s from 10:00 on", at.Date.Words())
	}
	c.Notes = append(c.Notes, &model.Note{Number: 1, Kind: model.NoteHorseOut, At: at, Date: at.Date, From: at.Minute,
		Horse: busiest, Why: model.Lame})
	c.Obey()
	return c, at, nil
}

// busiestFrom is the horse with most work on the date of an instant after it, the first of those that
// have as much; nil where none has any.
func busiestFrom(w *model.Week, p *model.Plan, at model.Instant) *model.Horse {
	var busiest *model.Horse
	work := map[*model.Horse]int64{}
	for i, r := range w.Rides {
		if turn := p.Turns[i]; turn != nil && r.Date() == at.Date && r.Start > at.Minute {
			work[turn.Horse] += w.WorkOf(r, turn.Horse)
		}
	}
	for _, h := range w.Centre.Horses {
		if work[h] > 0 && (busiest == nil || work[h] > work[busiest]) {
			busiest = h
		}
	}
	return busiest
}
