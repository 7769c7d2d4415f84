package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
)

// table prints a line for each solver on each instance, and medians and ratios at the end.
type table struct {
	to     io.Writer
	csv    *csv.Writer // nil: as text
	groups []string    // in the order in which they came
	all    map[string][][]outcome
}

func newTable(to io.Writer, asCSV bool) *table {
	t := &table{to: to, all: map[string][][]outcome{}}
	if asCSV {
		t.csv = csv.NewWriter(to)
		t.csv.Write([]string{"instance", "by", "rides", "horses", "fill %", "sessions", "seconds", "cpu seconds",
			"memory MB", "variables", "clauses", "goals proved", "goals", "values", "bounds"})
	} else {
		fmt.Fprintf(to, "%-16s %-6s %5s %6s %6s %8s %8s %8s %8s %8s %9s  %s\n", "instance", "by", "rides", "horses", "fill %",
			"sessions", "s", "cpu s", "MB", "vars", "clauses", "proved; values, bounds of what is not")
	}
	return t
}

// add prints the outcomes of one instance, ours first.
func (t *table) add(outcomes []outcome) {
	ours := outcomes[0]
	name := ours.Task.Name()
	group := ours.Task.group()
	if t.all[group] == nil {
		t.groups = append(t.groups, group)
	}
	t.all[group] = append(t.all[group], outcomes)
	for _, o := range outcomes {
		by := o.By
		if by == "" {
			by = "ours"
		}
		if t.csv != nil {
			var values, bounds []string
			for _, g := range o.Goals {
				values = append(values, fmt.Sprint(g.Value))
				bounds = append(bounds, fmt.Sprint(g.Bound))
			}
			t.csv.Write([]string{name, by, fmt.Sprint(ours.Rides), fmt.Sprint(ours.Horses), fmt.Sprintf("%.1f", ours.Fill),
				fmt.Sprint(ours.Sessions), fmt.Sprintf("%.3f", o.Seconds), fmt.Sprintf("%.3f", o.CPU),
				fmt.Sprint(o.Memory >> 20), fmt.Sprint(ours.Vars), fmt.Sprint(ours.Clauses), fmt.Sprint(o.upTo()),
				fmt.Sprint(len(o.Goals)), strings.Join(values, " "), strings.Join(bounds, " ")})
			t.csv.Flush()
			continue
		}
		fmt.Fprintf(t.to, "%-16s %-6s %5d %6d %6.1f %8d %8.3f %8.3f %8d %8d %9d  %s\n", name, by, ours.Rides, ours.Horses, ours.Fill,
			ours.Sessions, o.Seconds, o.CPU, o.Memory>>20, ours.Vars, ours.Clauses, o.words())
	}
}

// words say what is proved and the value of each goal: "all; seat a 2, wishes 92", or "1 of 3; seat a
// 2, wishes 142 (least 133), carry 46 (open)".
func (o outcome) words() string {
	var goals []string
	for i, g := range o.Goals {
		word := fmt.Sprintf("%s %d", g.Name, g.Value)
		switch {
		case g.Value == unknown:
			word = g.Name + " ?"
		case i < o.upTo():
		case i == o.upTo() && o.By == "":
			word += fmt.Sprintf(" (least %d)", g.Bound)
		default:
			word += " (open)"
		}
		goals = append(goals, word)
	}
	proved := "all"
	if !o.proved() {
		proved = fmt.Sprintf("%d of %d", o.upTo(), len(o.Goals))
	}
	return proved + "; " + strings.Join(goals, ", ")
}

// summary says for each group how many were proved and the median times, and for each peer the ratios
// of its times to ours where both proved all.
func (t *table) summary() {
	if t.csv != nil {
		return
	}
	for _, group := range t.groups {
		fmt.Fprintln(t.to)
		races := t.all[group]
		for i := range races[0] {
			var seconds, cpu, ratios, cpuRatios []float64
			proved := 0
			for _, race := range races {
				ours, o := race[0], race[i]
				limit := math.Inf(1) // what is not proved counts as longer than all that is
				if o.proved() {
					proved++
					limit = 0
				}
				seconds, cpu = append(seconds, o.Seconds+limit), append(cpu, o.CPU+limit)
				if i > 0 && o.proved() && ours.proved() {
					ratios = append(ratios, o.Seconds/ours.Seconds)
					cpuRatios = append(cpuRatios, o.CPU/ours.CPU)
				}
			}
			by := races[0][i].By
			if by == "" {
				by = "ours"
			}
			fmt.Fprintf(t.to, "%-16s %-6s proved %d of %d; median to all proved %s s, %s s of CPU", group, by, proved, len(races),
				figure(median(seconds)), figure(median(cpu)))
			if len(ratios) > 0 {
				fmt.Fprintf(t.to, "; our speed / its speed where both proved (%d): %.2f, by CPU %.2f", len(ratios), geometric(ratios), geometric(cpuRatios))
			}
			fmt.Fprintln(t.to)
		}
	}
}

func figure(x float64) string {
	if math.IsInf(x, 1) {
		return "-"
	}
	return fmt.Sprintf("%.3f", x)
}

// median of an even number is the mean of the middle two.
func median(xs []float64) float64 {
	xs = slices.Sorted(slices.Values(xs))
	n := len(xs)
	if n == 0 {
		return math.Inf(1)
	}
	return (xs[(n-1)/2] + xs[n/2]) / 2
}

// geometric is the geometric mean.
func geometric(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += math.Log(x)
	}
	return math.Exp(sum / float64(len(xs)))
}
