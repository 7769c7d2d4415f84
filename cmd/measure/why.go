package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"time"

	"tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver"
)

// why plans weeks, no longer than the limit each, and times the answer to why a
// ride is on the ground: for each such ride, as far as ten of a week, first and in all.
func (s settings) why(ctx context.Context, stdout io.Writer) error {
	tasks, err := s.generated("weeks")
	if err != nil {
		return err
	}
	fmt.Fprintf(stdout, "%-16s %5s %6s %7s %7s %9s %9s %9s\n", "instance", "rides", "ground", "asked", "reasons", "choices", "median s", "longest s")
	var all []float64
	for _, t := range tasks {
		w, p, err := t.seated(ctx)
		if err != nil {
			return err
		}
		var times []float64
		ground, reasons, choices := 0, 0, 0
		for _, r := range w.Rides {
			if r.State != model.Open || p.Turns[r.Index] != nil {
				continue
			}
			if ground++; len(times) == mostAsked {
				continue
			}
			limited, cancel := context.WithTimeout(ctx, whyLimit)
			start := time.Now()
			found, err := solver.WhyGround(limited, w, p, r)
			times = append(times, time.Since(start).Seconds())
			cancel()
			switch {
			case err != nil:
				return err
			case found.Together != nil || len(found.Free) == 0 || found.Better != nil:
				reasons++
			}
			if len(found.Free) == 0 || found.Better != nil || found.Choice != nil && found.Choice.Proved && (found.Choice.Price != nil && found.Choice.Price.Settled || found.Choice.With > found.Choice.Ground) {
				choices++
			}
		}
		if ctx.Err() != nil {
			return nil // what is printed stands
		}
		all = append(all, times...)
		if len(times) == 0 {
			times = []float64{0}
		}
		fmt.Fprintf(stdout, "%-16s %5d %6d %7d %7d %9d %9.3f %9.3f\n", t.Name(), len(w.Rides), ground, len(times), reasons, choices, median(times), slices.Max(times))
	}
	if len(all) > 0 {
		fmt.Fprintf(stdout, "\n%d asked; median %.3f s, longest %.3f s\n", len(all), median(all), slices.Max(all))
	}
	return nil
}

const (
	mostAsked = 10
	whyLimit  = 10 * time.Second // as the command has it
)

// seated is the task's week planned.
func (t task) seated(ctx context.Context) (*model.Week, *model.Plan, error) {
	size, err := weeks.Named(t.Size)
	if err != nil {
		return nil, nil, err
	}
	w := weeks.Week(size, t.Seed, t.Loose)
	ctx, cancel := context.WithTimeout(ctx, t.Limit)
	defer cancel()
	p, err := solver.Plan(ctx, w, solver.Options{})
	return w, p, err
}
