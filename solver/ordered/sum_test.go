package ordered

import (
	"context"
	"testing"

	"tackwright/solver/sat"
)

// Three groups, one literal true of each: what is below a target is allowed, and where the grain is fine enough nothing else.
func TestASumForbidsWhatTogetherCostsTooMuch(t *testing.T) {
	more := [3][3]int{{0, 3, 7}, {1, 2, 5}, {0, 0, 40}}
	for _, grain := range []int{1, 10, 1000} {
		forbidden, coarse := 0, 0
		for target := range 60 {
			s := sat.New()
			var lits [3][3]sat.Lit
			b := Beside{Base: 4*grain - grain/3, Grain: grain}
			for i := range lits {
				for k := range lits[i] {
					lits[i][k] = s.NewVar()
					b.Priced = append(b.Priced, Priced{Lit: lits[i][k], Group: i, More: more[i][k] * grain})
				}
			}
			sel := s.NewVar()
			sumOf(b).below(&query{s: s}, sel, target)
			for pick := range 27 {
				at := [3]int{pick / 9, pick / 3 % 3, pick % 3}
				cost, assume := b.Base, []sat.Lit{sel}
				for i, k := range at {
					cost += more[i][k] * grain
					assume = append(assume, lits[i][k])
				}
				allowed := s.Solve(context.Background(), assume...) == sat.Sat
				if fits := cost <= (target-1)*grain; fits && !allowed {
					t.Errorf("grain %d, below %d: %v adds up to %d and is forbidden", grain, target, at, cost)
				} else if !fits && !allowed {
					forbidden++
				} else if !fits {
					coarse++
				}
			}
		}
		if forbidden < 500 || coarse > forbidden/10 {
			t.Errorf("grain %d: %d forbidden, and %d that should be were not", grain, forbidden, coarse)
		}
	}
}

func TestWhatTwoLiteralsCostTogetherCountsWhereBothAreTrue(t *testing.T) {
	s := sat.New()
	sel, a, b, c := s.NewVar(), s.NewVar(), s.NewVar(), s.NewVar()
	sumOf(Beside{Grain: 1, Priced: []Priced{{Lit: a, And: b, More: 3}, {Lit: a, And: c, More: 9}, {Lit: c, Group: 1, More: 2}}}).below(&query{s: s}, sel, 5)
	for mask := range 8 {
		is := []sat.Lit{sel, a.Not(), b.Not(), c.Not()}
		cost := map[int]int{0b011: 3, 0b100: 2, 0b110: 2, 0b101: 11, 0b111: 11}[mask]
		for i, l := range []sat.Lit{a, b, c} {
			if mask>>i&1 == 1 {
				is[i+1] = l
			}
		}
		if got := s.Solve(context.Background(), is...); (got == sat.Sat) != (cost < 5) {
			t.Errorf("%b costs %d: %v", mask, cost, got)
		}
	}
	two := s.NewVar()
	sumOf(Beside{Grain: 1, Priced: []Priced{{Lit: a, And: b, More: 3}, {Lit: c, Group: 1, More: 2}}}).below(&query{s: s}, two, 5)
	if s.Solve(context.Background(), two, a, b, c) != sat.Unsat || s.Solve(context.Background(), two, a, b.Not(), c) != sat.Sat {
		t.Error("what two groups cost together is not added")
	}
}

func TestOfASumThatIsNotKnownNothingIsForbidden(t *testing.T) {
	s := sat.New()
	sel, l := s.NewVar(), s.NewVar()
	sumOf(Beside{Priced: []Priced{{Lit: l, Least: 9}}}).below(&query{s: s}, sel, 1)
	if s.Solve(context.Background(), sel, l) != sat.Sat {
		t.Error("it says what was not told")
	}
}
