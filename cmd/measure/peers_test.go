package main

import (
	"bytes"
	"strings"
	"testing"

	"tackwright/solver"
)

func values(goals ...goal) outcome { return outcome{Goals: goals} }

func TestTwoOutcomesDisagreeWhereAValueRefutesAClaim(t *testing.T) {
	proved := func(v int) goal { return goal{Value: v, Bound: v, Proved: true} }
	open := func(v, bound int) goal { return goal{Value: v, Bound: bound} }
	for _, c := range []struct {
		name string
		a, b outcome
		want bool
	}{
		{"both proved the same", values(proved(2), proved(5)), values(proved(2), proved(5)), false},
		{"both proved another value", values(proved(2), proved(5)), values(proved(2), proved(6)), true},
		{"less was found than is claimed", values(proved(2), proved(5)), values(open(2, 0), open(4, 0)), true},
		{"less was found than a bound", values(open(7, 5)), values(open(4, 0)), true},
		{"more was found", values(proved(2)), values(open(3, 0)), false},
		{"a later goal is worse after a better one", values(proved(2), proved(5)), values(open(3, 0), open(1, 0)), false},
		{"nothing was found", values(proved(2)), values(open(unknown, 0)), false},
		{"a bound of a goal that is not open yet says nothing", values(open(7, 1), open(3, 3)), values(open(7, 1), open(2, 0)), false},
	} {
		if got := disagree(c.a, c.b) != ""; got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
		if got := disagree(c.b, c.a) != ""; got != c.want {
			t.Errorf("%s, turned round: %v", c.name, got)
		}
	}
}

// small is: 1 or not 2; unless 3, 4 times variable 1 and 6 times not 2 are at most 7; 5 is lost while 2 is
// false, and 1 while 3 is true.
var small = &solver.Problem{Vars: 3, Clauses: [][]int{{1, -2}},
	Sums: []solver.Sum{{Unless: 3, Terms: []solver.Wish{{Lit: 1, Weight: 4}, {Lit: -2, Weight: 6}}, Most: 7}},
	Goals: []solver.ProblemGoal{{Name: "first", Wishes: []solver.Wish{{Lit: 2, Weight: 5}}},
		{Name: "second", Wishes: []solver.Wish{{Lit: -3, Weight: 1}}}},
	Words: map[int]string{2: "Mia on Star"}}

func TestAProblemIsWrittenAsASPIF(t *testing.T) {
	var out bytes.Buffer
	writeASPIF(&out, small)
	want := "asp 1 0 0\n1 1 2 1 2 0 0\n1 0 0 0 2 -1 2\n1 0 1 3 1 4 2 1 2 -2 3\n2 2 1 -2 5\n2 1 1 3 1\n0\n"
	if out.String() != want {
		t.Errorf("%s\nwant\n%s", &out, want)
	}
}

// Of 2x1 + 3(1-x2) <= 3 the most is 5, so x3 lifts the limit by 2.
func TestAProblemIsWrittenAsALinearProgram(t *testing.T) {
	var out bytes.Buffer
	writeLP(&out, small, 1)
	want := `\ constant 0
Minimize
obj: +1 x3
Subject To
\ @0 constant 5
c1: -5 x2 <= @0
c2: +1 x1 -1 x2 >= 0
c3: +2 x1 -3 x2 -2 x3 <= 0
Binaries
 x1
 x2
 x3
End
`
	if out.String() != want {
		t.Errorf("%s\nwant\n%s", &out, want)
	}
}

func TestVariablesAreToldInWords(t *testing.T) {
	var out bytes.Buffer
	writeWords(&out, small)
	if strings.TrimSpace(out.String()) != "2 Mia on Star" {
		t.Error(out.String())
	}
}

func TestMedianAndGeometricMean(t *testing.T) {
	if median([]float64{3, 1, 2}) != 2 || median([]float64{4, 1, 2, 3}) != 2.5 {
		t.Error("median")
	}
	if g := geometric([]float64{1, 4}); g < 1.999 || g > 2.001 {
		t.Error("geometric mean", g)
	}
}
