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
	sel, a, b := s.NewVar(), s.NewVar(), s.NewVar()
	sumOf(Beside{Grain: 1, Priced: []Priced{{Lit: a, And: b, More: 3}}}).below(&query{s: s}, sel, 3)
	for _, c := range []struct {
		assume []sat.Lit
		want   sat.Status
	}{{[]sat.Lit{sel, a, b.Not()}, sat.Sat}, {[]sat.Lit{sel, a.Not(), b}, sat.Sat}, {[]sat.Lit{sel, a, b}, sat.Unsat}} {
		if got := s.Solve(context.Background(), c.assume...); got != c.want {
			t.Errorf("%v: %v, want %v", c.assume, got, c.want)
		}
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
