package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"github.com/spf13/pflag"
)

const usage = `measure weeks  [--sizes median,large] [--seeds 1-10] [--loose] [--limit 60s] [--peers clasp,cbc] [--csv]
measure repairs [--sizes median,large] [--seeds 1-10] [--loose] [--limit 60s] [--peers clasp,cbc] [--csv] [--tackwright FILE]
measure buys   [--sizes median,large] [--seeds 1-10] [--loose] [--limit 60s] [--csv]
measure smptsp [--limit 60s] [--csv] FILE...
measure wcnf   [--limit 60s] [--csv] FILE...
measure why    [--sizes median,large] [--seeds 1-10] [--loose] [--limit 60s]
measure confirm [--weeks 200] [--limit 60s]
`

// settings of a run.
type settings struct {
	sizes   []string
	seeds   string
	loose   bool
	limit   time.Duration // for each instance, and for each peer on it
	peers   []string
	csv     bool
	program string // tackwright, for repairs by its command line; "": one is built
	keep    string // directory in which what the peers are given is left; "": nowhere
	files   []string
	weeks   int // random ones, to be confirmed
}

// errWrong is the error of a run in which two solvers cannot both be right; which two is told already.
var errWrong = errors.New("what was measured is wrong")

// run answers the command and returns its exit status: 0 measured, 1 a value is wrong, 2 wrong use, 3
// it could not be done.
func run(ctx context.Context, stdout, stderr io.Writer, args []string) int {
	if len(args) > 1 && args[0] == child {
		return answer(ctx, stdout, stderr, args[1])
	}
	var s settings
	flags := pflag.NewFlagSet("measure", pflag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringSliceVar(&s.sizes, "sizes", []string{"small", "median"}, "")
	flags.StringVar(&s.seeds, "seeds", "1-10", "")
	flags.BoolVar(&s.loose, "loose", false, "")
	flags.DurationVar(&s.limit, "limit", 60*time.Second, "")
	flags.StringSliceVar(&s.peers, "peers", nil, "")
	flags.BoolVar(&s.csv, "csv", false, "")
	flags.StringVar(&s.program, "tackwright", "", "")
	flags.StringVar(&s.keep, "keep", "", "")
	flags.IntVar(&s.weeks, "weeks", 200, "")
	err := flags.Parse(args)
	if err == nil && flags.NArg() == 0 {
		err = errors.New("measure what?")
	}
	if err != nil {
		fmt.Fprintf(stderr, "%v\n%s", err, usage)
		return 2
	}
	s.files = flags.Args()[1:]
	switch flags.Arg(0) {
	case "confirm":
		err = s.confirm(ctx, stdout, stderr)
	case "why":
		err = s.why(ctx, stdout)
	default:
		tasks, wrongUse := s.tasks(flags.Arg(0))
		if wrongUse != nil {
			fmt.Fprintln(stderr, wrongUse)
			return 2
		}
		err = s.measure(ctx, stdout, stderr, tasks)
	}
	switch {
	case errors.Is(err, errWrong):
		return 1
	case err != nil:
		fmt.Fprintln(stderr, err)
		return 3
	}
	return 0
}

// measure works through the tasks, one at a time, and prints lines for each as it is done.
func (s settings) measure(ctx context.Context, stdout, stderr io.Writer, tasks []task) error {
	peers, err := findPeers(s.peers)
	if err != nil {
		return err
	}
	dir := s.keep
	if dir == "" && len(peers) > 0 {
		if dir, err = os.MkdirTemp("", "measure"); err != nil {
			return err
		}
		defer os.RemoveAll(dir)
	}
	if len(tasks) > 0 && tasks[0].Kind == "repairs" {
		if s.program == "" {
			temp, err := os.MkdirTemp("", "measure")
			if err != nil {
				return err
			}
			defer os.RemoveAll(temp)
			if s.program, err = build(ctx, temp); err != nil {
				return err
			}
		}
		for i := range tasks {
			tasks[i].Program = s.program
		}
	}
	t := newTable(stdout, s.csv)
	var wrong error
	for _, x := range tasks {
		races, err := x.races(ctx, peers, dir)
		if ctx.Err() != nil {
			break // what is printed stands
		}
		if err != nil {
			return fmt.Errorf("%s: %w", x.Name(), err)
		}
		for _, outcomes := range races {
			t.add(outcomes)
			for _, theirs := range outcomes[1:] {
				if why := disagree(outcomes[0], theirs); why != "" {
					fmt.Fprintf(stderr, "%s: we and %s: %s\n", outcomes[0].Task.Name(), theirs.By, why)
					wrong = errWrong
				}
			}
		}
	}
	t.summary()
	return wrong
}

// races are one task done by us and then by each peer, in turn; a repair is two. Files for peers go to the
// directory.
func (t task) races(ctx context.Context, peers []peer, dir string) ([][]outcome, error) {
	if t.Kind == "repairs" { // the week mended is in that process alone
		t = t.into(dir)
	}
	parts, err := t.ask(ctx)
	if err != nil {
		return nil, err
	}
	var races [][]outcome
	for _, ours := range parts {
		asked := ours.Task
		if t.Kind == "weeks" || t.Kind == "smptsp" {
			problem, err := t.export(ctx, dir)
			if err != nil {
				return nil, err
			}
			ours.Vars, ours.Clauses, asked = problem.Vars, problem.Clauses, problem.Task
		}
		outcomes := []outcome{ours}
		for _, p := range peers {
			if ours.Task.Part == "typed" {
				break // they have none
			}
			var names []goal
			for _, g := range ours.Goals {
				names = append(names, goal{Name: g.Name})
			}
			theirs, err := p.solve(ctx, p.path, asked, names)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", p.name, err)
			}
			outcomes = append(outcomes, theirs)
		}
		races = append(races, outcomes)
	}
	return races, nil
}
