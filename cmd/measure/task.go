package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"tackwright/fixtures/weeks"
)

// child is the argument by which this program asks itself for one instance in a process of its own,
// so that memory and its upkeep are that instance's alone.
const child = "one-instance"

// task is one instance to be solved.
type task struct {
	Kind    string // "weeks", "repairs", "buys", "smptsp" or "wcnf"
	Part    string `json:",omitempty"` // of a repair: "keep", "all", "what-if" or "typed"; of a buy: "rides" or "five best"
	Size    string `json:",omitempty"` // of a week
	Seed    uint64 `json:",omitempty"`
	Loose   bool   `json:",omitempty"`
	File    string `json:",omitempty"`
	Limit   time.Duration
	Program string `json:",omitempty"` // of a repair by the command line
	Write   string `json:",omitempty"` // not to be solved: write it as a problem for peers to this file
}

// Name of the instance, for the table.
func (t task) Name() string {
	if t.File != "" {
		return strings.TrimSuffix(filepath.Base(t.File), filepath.Ext(t.File))
	}
	return fmt.Sprintf("%s %d", t.group(), t.Seed)
}

// group of instances whose medians are taken together.
func (t task) group() string {
	if t.File != "" {
		return t.Kind
	}
	words := t.Size
	if t.Loose {
		words += " loose"
	}
	if t.Part != "" {
		words += " " + t.Part
	}
	return words
}

// outcome is what a solver reached on an instance.
type outcome struct {
	Task          task
	By            string // "": ours
	Rides, Horses int    // or clauses wanted and variables of a wcnf instance
	Sessions      int
	Fill          float64 // percent; 0: not a week
	Goals         []goal
	Seconds       float64 // by the clock, to all proved or to the end
	CPU           float64 // seconds, of the whole process
	Memory        int64   // most that the process held, in bytes; 0: not known
	Vars, Clauses int
	Note          string // what went wrong
}

// goal is one goal's value in the best solution, and what was proved of it.
type goal struct {
	Name         string
	Value, Bound int
	Proved       bool
}

// proved reports whether every goal was.
func (o outcome) proved() bool { return len(o.Goals) > 0 && o.upTo() == len(o.Goals) }

// upTo is the number of goals proved, the first counting before all others.
func (o outcome) upTo() int {
	for i, g := range o.Goals {
		if !g.Proved {
			return i
		}
	}
	return len(o.Goals)
}

func (s settings) tasks(kind string) ([]task, error) {
	switch kind {
	case "weeks", "repairs", "buys":
		if kind == "buys" && len(s.peers) > 0 {
			return nil, errors.New("peers are asked about weeks alone")
		}
		return s.generated(kind)
	case "smptsp", "wcnf":
		if len(s.peers) > 0 {
			return nil, errors.New("peers are asked about weeks alone")
		}
		if len(s.files) == 0 {
			return nil, fmt.Errorf("measure %s: which files?", kind)
		}
		var ts []task
		for _, f := range s.files {
			ts = append(ts, task{Kind: kind, File: f, Limit: s.limit})
		}
		return ts, nil
	}
	return nil, fmt.Errorf("measure %q is not known\n%s", kind, usage)
}

// generated are the tasks of sizes and seeds.
func (s settings) generated(kind string) ([]task, error) {
	first, last, _ := strings.Cut(s.seeds, "-")
	from, err := strconv.ParseUint(first, 10, 64)
	to, err2 := strconv.ParseUint(cmp.Or(last, first), 10, 64)
	if err := errors.Join(err, err2); err != nil || from > to {
		return nil, fmt.Errorf("--seeds %s: not a number, nor a range like 1-10", s.seeds)
	}
	var ts []task
	for _, size := range s.sizes {
		if _, err := weeks.Named(size); err != nil {
			return nil, fmt.Errorf("--sizes: %w", err)
		}
		for seed := from; seed <= to; seed++ {
			ts = append(ts, task{Kind: kind, Size: size, Seed: seed, Loose: s.loose, Limit: s.limit})
		}
	}
	return ts, nil
}

// ask has the task done by another process of this program. A repair has two parts.
func (t task) ask(ctx context.Context) ([]outcome, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	words, err := json.Marshal(t)
	if err != nil {
		return nil, err
	}
	cmd := exec.CommandContext(ctx, self, child, string(words))
	var out, complaints bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("%w\n%s", err, tail(complaints.String()))
	}
	var parts []outcome
	if err := json.Unmarshal(out.Bytes(), &parts); err != nil {
		return nil, err
	}
	cpu, memory := used(cmd.ProcessState)
	for i := range parts {
		parts[i].Memory = memory
		if t.Kind != "repairs" && t.Kind != "buys" { // which count for themselves
			parts[i].CPU = cpu
		}
	}
	return parts, nil
}

func tail(s string) string { return s[max(0, len(s)-2000):] }

// answer is the other side of ask.
func answer(ctx context.Context, stdout, stderr io.Writer, words string) int {
	var t task
	err := json.Unmarshal([]byte(words), &t)
	var parts []outcome
	if err == nil {
		parts, err = t.do(ctx)
	}
	if err == nil {
		err = json.NewEncoder(stdout).Encode(parts)
	}
	if err != nil {
		fmt.Fprintln(stderr, err)
		return 3
	}
	return 0
}

// do the task in this process.
func (t task) do(ctx context.Context) ([]outcome, error) {
	var o outcome
	var err error
	switch {
	case t.Kind == "repairs":
		return t.repairs(ctx)
	case t.Kind == "buys":
		return t.buys(ctx)
	case t.Write != "":
		o, err = t.writeProblem()
	case t.Kind == "wcnf":
		o, err = t.wcnf(ctx)
	default:
		o, err = t.plan(ctx)
	}
	return []outcome{o}, err
}
