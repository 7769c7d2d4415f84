package main

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"time"

	"tackwright/fixtures"
	"tackwright/fixtures/weeks"
	"tackwright/model"
	"tackwright/solver"
)

// told are the goals of a repair before the house's own: Seat and Keep.
var told = []string{"told a", "told b", "keep a", "keep b", "besides"}

// repairs plans the task's week, posts it, has the busiest horse go lame and mends that date: until Seat
// and Keep are proved, as what follows may go on as long as there is time, and until all is, the clock
// running from the centre to the audited plan; then, in a live session that has answered that, with the
// next busiest horse lame too; and, where there is a program, by its command line, on a folder with three
// years of posted weeks, until all is proved and written. What peers are to mend is written to files.
func (t task) repairs(ctx context.Context) ([]outcome, error) {
	m, err := t.mishap(ctx)
	if err != nil {
		return nil, err
	}
	var parts []outcome
	for _, part := range []func() (outcome, error){
		func() (outcome, error) { return t.mend(ctx, m.c, m.at, "keep") },
		func() (outcome, error) { return t.mend(ctx, m.c, m.at, "all") },
		func() (outcome, error) { return t.whatIf(ctx, m) },
		func() (outcome, error) { return t.commandLine(ctx, m) },
	} {
		o, err := part()
		if err != nil {
			return nil, err
		}
		parts = append(parts, o)
	}
	return parts, nil
}

// mend mends a date until Seat and Keep are proved, or all is.
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
	return o, o.export(w, part == "keep")
}

// export counts what a peer is given, and writes it where that is wanted; of what was told alone, or with
// the house's own goals.
func (o *outcome) export(w *model.Week, toldAlone bool) error {
	if toldAlone {
		o.Goals = o.Goals[:len(told)]
		house := &w.Centre.House
		goals := house.Goals
		house.Goals = nil
		defer func() { house.Goals = goals }()
	}
	p := solver.Export(w)
	o.Vars, o.Clauses = p.Vars, len(p.Clauses)+len(p.Sums)
	if o.Task.Write == "-" {
		return nil
	}
	o.Task.Write += "-" + strings.ReplaceAll(o.Task.Part, " ", "-")
	return o.Task.write(p)
}

// whatIf asks a session that has answered the mishap for the date with another horse lame too, until Seat
// and Keep are proved.
func (t task) whatIf(ctx context.Context, m *mishap) (outcome, error) {
	t.Part = "what-if"
	var s solver.Session
	ask := func() (*model.Week, *model.Plan, error) {
		ctx, cancel := context.WithTimeout(ctx, t.Limit)
		defer cancel()
		w := m.c.Repair(m.at.Date, 1, m.at)
		plan, err := s.Plan(ctx, w, solver.Options{Goals: len(told)})
		return w, plan, err
	}
	if _, _, err := ask(); err != nil {
		return outcome{}, err
	}
	next := busiestFrom(m.w, m.plan, m.at, m.lame)
	if next == nil {
		return outcome{}, fmt.Errorf("one horse alone works on %s", m.at.Date.Words())
	}
	out := next.Out
	next.Out = append(slices.Clone(out), model.Out{Why: model.Lame, From: m.at, At: m.at})
	defer func() { next.Out = out }()
	runtime.GC()
	cpu, start := spent(), time.Now()
	w, plan, err := ask()
	o := outcome{Task: t, Rides: len(w.Rides), Horses: len(m.c.Horses), Seconds: time.Since(start).Seconds(), CPU: spent() - cpu}
	if err != nil {
		return outcome{}, err
	}
	o.Goals = goalsOf(plan)
	return o, o.export(w, true)
}

// mishap is a posted week in which a horse has gone lame.
type mishap struct {
	c    *model.Centre
	w    *model.Week // as it was posted
	plan *model.Plan
	at   model.Instant
	lame *model.Horse
}

// mishap posts the task's week and has a horse go lame on Wednesday at 10:00: the one that has most to do
// on that date from then on. How good the plan posted is does not matter, but somebody must ride.
func (t task) mishap(ctx context.Context) (*mishap, error) {
	size, err := weeks.Named(t.Size)
	if err != nil {
		return nil, err
	}
	w := weeks.Week(size, t.Seed, t.Loose)
	c, at := w.Centre, model.Instant{Date: w.From + 2, Minute: 10 * 60}
	var busiest *model.Horse
	var plan *model.Plan
	for limit := 5 * time.Second; busiest == nil && limit < 3*time.Minute; limit *= 2 {
		limited, cancel := context.WithTimeout(ctx, limit)
		plan, err = solver.Plan(limited, w, solver.Options{})
		cancel()
		if err != nil {
			return nil, err
		}
		if busiest = busiestFrom(w, plan, at, nil); busiest != nil {
			fixtures.Post(w, plan)
		}
	}
	if busiest == nil {
		return nil, fmt.Errorf("nobody rides on %s from 10:00 on", at.Date.Words())
	}
	c.Notes = append(c.Notes, &model.Note{Number: 1, Kind: model.NoteHorseOut, At: at, Date: at.Date, From: at.Minute,
		Horse: busiest, Why: model.Lame})
	c.Obey()
	return &mishap{c, w, plan, at, busiest}, nil
}

// busiestFrom is the horse with most work on the date of an instant after it, the first of those that
// have as much, but for one; nil where none has any.
func busiestFrom(w *model.Week, p *model.Plan, at model.Instant, but *model.Horse) *model.Horse {
	var busiest *model.Horse
	work := map[*model.Horse]int64{}
	for i, r := range w.Rides {
		if turn := p.Turns[i]; turn != nil && r.Date() == at.Date && r.Start > at.Minute {
			work[turn.Horse] += w.WorkOf(r, turn.Horse)
		}
	}
	for _, h := range w.Centre.Horses {
		if h != but && work[h] > 0 && (busiest == nil || work[h] > work[busiest]) {
			busiest = h
		}
	}
	return busiest
}
