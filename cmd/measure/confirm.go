package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"tackwright/fixtures/random"
	"tackwright/model"
	"tackwright/solver"
)

// mostRaw assignments in a random week: more make it no harder to be right.
const mostRaw = 20_000

// confirm has clasp solve random weeks, and each again after something went wrong in it, from nothing but
// the exported problem, and compares every goal with what our plan proves. Differences are told on stderr.
func (s settings) confirm(ctx context.Context, stdout, stderr io.Writer) error {
	peers, err := findPeers([]string{"clasp"})
	if err != nil {
		fmt.Fprintf(stdout, "nothing is confirmed: %v\n", err)
		return nil
	}
	dir, err := os.MkdirTemp("", "measure")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	c := &confirmation{settings: s, clasp: peers[0], file: filepath.Join(dir, "week"), stderr: stderr}
	var plain, mended tally
	for seed := range uint64(s.weeks) {
		w := random.Week(seed, mostRaw)
		w.House.Goals = append(model.DefaultGoals(), model.GoalBringIn)
		posted, err := c.check(ctx, &plain, fmt.Sprint("week ", seed), w)
		if err == nil && len(w.Rides) > 0 {
			_, err = c.check(ctx, &mended, fmt.Sprint("repair of week ", seed), random.Repair(seed, w, posted))
		}
		if ctx.Err() != nil {
			break // what was compared stands
		}
		if err != nil {
			return fmt.Errorf("week %d: %w", seed, err)
		}
	}
	fmt.Fprintf(stdout, "weeks:   %s\nrepairs: %s\n", &plain, &mended)
	if plain.wrong+mended.wrong > 0 {
		return errWrong
	}
	return nil
}

// tally counts what was compared.
type tally struct {
	weeks, rides, goals int
	asked               int // goals whose value is above 0
	open                int // goals that one side did not prove
	wrong               int
}

func (t *tally) String() string {
	return fmt.Sprintf("%d with %d rides; %d proved values confirmed, %d of them above 0; %d not proved, %d different",
		t.weeks, t.rides, t.goals, t.asked, t.open, t.wrong)
}

type confirmation struct {
	settings
	clasp  peer
	file   string
	stderr io.Writer
}

// check compares one week and returns our plan of it.
func (c *confirmation) check(ctx context.Context, t *tally, name string, w *model.Week) (*model.Plan, error) {
	limited, cancel := context.WithTimeout(ctx, c.limit)
	defer cancel()
	plan, err := solver.Plan(limited, w, solver.Options{})
	if err != nil {
		return nil, err
	}
	p := solver.Export(w)
	if err := writeFile(c.file+".aspif", func(to io.Writer) { writeASPIF(to, p) }); err != nil {
		return nil, err
	}
	ours := outcome{Goals: goalsOf(plan)}
	theirs, err := c.clasp.solve(ctx, c.clasp.path, task{Limit: c.limit, Write: c.file}, slices.Clone(ours.Goals))
	if err != nil {
		return nil, err
	}
	t.weeks++
	t.rides += len(w.Rides)
	for i, g := range ours.Goals {
		switch x := theirs.Goals[i]; {
		case g.Name != p.Goals[i].Name:
			return nil, fmt.Errorf("%s is exported as %s", g.Name, p.Goals[i].Name)
		case !g.Proved || !x.Proved:
			t.open++
		case g.Value != x.Value:
			t.wrong++
			fmt.Fprintf(c.stderr, "%s (%s): %s: we prove %d, and clasp %d\n", name, w.Centre.Name, g.Name, g.Value, x.Value)
			return plan, nil // later goals depend on it
		default:
			t.goals++
			if g.Value > 0 {
				t.asked++
			}
		}
	}
	return plan, nil
}

func goalsOf(p *model.Plan) []goal {
	var goals []goal
	for _, g := range p.Proof.Goals {
		goals = append(goals, goal(g))
	}
	return goals
}
