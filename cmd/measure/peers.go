package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// peer is a solver of others, asked the same: the same rules, the same goals in the same order.
type peer struct {
	name, path string
	solve      func(ctx context.Context, path string, t task, names []goal) (outcome, error)
}

// unknown is the value of a goal that a peer did not come to.
const unknown = -1

// findPeers looks for the peers on the search path.
func findPeers(names []string) ([]peer, error) {
	known := []peer{{name: "clasp", solve: clasp}, {name: "cbc", solve: cbc}}
	var found []peer
next:
	for _, name := range names {
		for _, p := range known {
			if p.name != name {
				continue
			}
			path, err := exec.LookPath(name)
			if err != nil {
				return nil, fmt.Errorf("%s is not installed; on Debian: apt-get install clasp coinor-cbc", name)
			}
			p.path = path
			found = append(found, p)
			continue next
		}
		return nil, fmt.Errorf("no peer is called %q; there are clasp and cbc", name)
	}
	return found, nil
}

// disagree says in what two outcomes cannot both be right; "" is that they can. Values found are read
// up to the first goal in which they differ: there the smaller one refutes whoever claims more as best,
// or as a bound.
func disagree(a, b outcome) string {
	for i := range min(len(a.Goals), len(b.Goals)) {
		x, y := a.Goals[i], b.Goals[i]
		if x.Value == unknown || y.Value == unknown {
			return ""
		}
		least := min(x.Value, y.Value)
		for _, o := range []outcome{a, b} {
			claim := o.Goals[i].Bound
			if i < o.upTo() {
				claim = o.Goals[i].Value
			}
			if i <= o.upTo() && claim > least {
				return fmt.Sprintf("%s: %d is claimed to be least, and %d was found", x.Name, claim, least)
			}
		}
		if x.Value != y.Value {
			return ""
		}
	}
	return ""
}

// clasp solves all goals by itself, core-guided as we do, on one processor. Of ten settings tried on
// four median and large weeks this proved most, soonest.
func clasp(ctx context.Context, path string, t task, names []goal) (outcome, error) {
	o := outcome{By: "clasp", Goals: names}
	out, err := timed(ctx, &o, exec.Command(path, "--outf=2", "--quiet=1", "--opt-strategy=usc,oll,stratify",
		"--opt-usc-shrink=min", "--parallel-mode=1",
		fmt.Sprintf("--time-limit=%d", max(1, int(t.Limit.Seconds()))), t.Write+".aspif"))
	var answer struct {
		Result string
		Models struct{ Costs []int }
	}
	if bad := json.Unmarshal(out, &answer); bad != nil {
		return o, errors.Join(err, bad)
	}
	if answer.Result == "UNSATISFIABLE" {
		return o, errors.New("finds no plan at all, and everybody on the ground is one")
	}
	for i := range o.Goals {
		o.Goals[i].Value = unknown
		if i < len(answer.Models.Costs) {
			o.Goals[i].Value = answer.Models.Costs[i]
		}
		if o.Goals[i].Proved = answer.Result == "OPTIMUM FOUND"; o.Goals[i].Proved {
			o.Goals[i].Bound = o.Goals[i].Value
		}
	}
	return o, nil
}

// cbc solves goal after goal, each with those before held at their values.
func cbc(ctx context.Context, path string, t task, names []goal) (outcome, error) {
	o := outcome{By: "cbc", Goals: names}
	for i := range o.Goals {
		o.Goals[i].Value = unknown
	}
	for i := range o.Goals {
		left := t.Limit.Seconds() - o.Seconds
		if left <= 0 {
			return o, nil
		}
		program, constants, err := heldAt(t.Write, i, o.Goals[:i])
		if err != nil {
			return o, err
		}
		solution := t.Write + ".solution"
		out, err := timed(ctx, &o, exec.Command(path, program, "ratioGap", "0", "allowableGap", "0",
			"seconds", fmt.Sprintf("%.1f", left), "timeMode", "elapsed", "solve", "solution", solution))
		if err != nil {
			return o, fmt.Errorf("%w\n%s", err, tail(string(out)))
		}
		text, err := os.ReadFile(solution)
		if err != nil {
			return o, fmt.Errorf("%w\n%s", err, tail(string(out)))
		}
		var value float64
		head, _, _ := strings.Cut(string(text), "\n")
		_, figure, found := strings.Cut(head, "objective value")
		if _, err := fmt.Sscan(figure, &value); !found || err != nil || strings.HasPrefix(head, "Infeasible") {
			return o, fmt.Errorf("goal %s: %s", o.Goals[i].Name, head)
		}
		if !strings.HasPrefix(head, "Optimal") {
			return o, nil // what it stopped at may be no solution
		}
		o.Goals[i].Value = int(value+float64(constants)+1e6+0.5) - 1e6
		o.Goals[i].Bound, o.Goals[i].Proved = o.Goals[i].Value, true
	}
	return o, nil
}

// heldAt fills the limits of the goals solved into the linear program of goal i. It returns the file to
// be read, and what is to be added to its objective.
func heldAt(write string, i int, solved []goal) (file string, constant int, err error) {
	text, err := os.ReadFile(fmt.Sprintf("%s.goal%d.lp", write, i))
	if err != nil {
		return "", 0, err
	}
	var out bytes.Buffer
	rest := make([]int, len(solved))
	for line := range strings.Lines(string(text)) {
		var j, c int
		switch {
		case strings.HasPrefix(line, "\\ @"):
			if _, err := fmt.Sscanf(line, "\\ @%d constant %d", &j, &c); err != nil {
				return "", 0, err
			}
			rest[j] = solved[j].Value - c
		case strings.HasPrefix(line, "\\ constant"):
			if _, err := fmt.Sscanf(line, "\\ constant %d", &constant); err != nil {
				return "", 0, err
			}
		case strings.Contains(line, "@"):
			before, after, _ := strings.Cut(line, "@")
			if _, err := fmt.Sscan(after, &j); err != nil {
				return "", 0, err
			}
			line = fmt.Sprintf("%s%d\n", before, rest[j])
			fallthrough
		default:
			out.WriteString(line)
		}
	}
	file = fmt.Sprintf("%s.held%d.lp", write, i)
	return file, constant, os.WriteFile(file, out.Bytes(), 0o666)
}

// timed runs a peer and adds what it took to the outcome. A peer tells by its exit status what it
// found, so that is no error.
func timed(ctx context.Context, o *outcome, cmd *exec.Cmd) ([]byte, error) {
	var out bytes.Buffer
	cmd.Stdout = &out
	start := time.Now()
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	stop := context.AfterFunc(ctx, func() { cmd.Process.Kill() })
	defer stop()
	err := cmd.Wait()
	o.Seconds += time.Since(start).Seconds()
	cpu, memory := used(cmd.ProcessState)
	o.CPU += cpu
	o.Memory = max(o.Memory, memory)
	var status *exec.ExitError
	if errors.As(err, &status) && status.Exited() {
		err = nil
	}
	return out.Bytes(), err
}

// export writes the task's problem into the directory, and returns the task that did it with its sizes.
func (t task) export(ctx context.Context, dir string) (outcome, error) {
	parts, err := t.into(dir).ask(ctx)
	if err != nil {
		return outcome{}, err
	}
	return parts[0], nil
}

// into is the task that writes to the directory, or nowhere.
func (t task) into(dir string) task {
	t.Write = "-"
	if dir != "" {
		t.Write = filepath.Join(dir, strings.ReplaceAll(t.Name(), " ", "-"))
	}
	return t
}
