package sat

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What is left of clauses over 2 to 6 (1 is the root) where some variables are kept.
func TestClausesAreMadeFewerAndShorter(t *testing.T) {
	for _, c := range []struct {
		name    string
		clauses []Lit
		keep    []Lit
		want    []Lit
	}{
		{"a clause that another says is left out", []Lit{2, -3, 0, 2, -3, 4, 0}, []Lit{2, 3, 4}, []Lit{2, -3, 0}},
		{"a literal that another clause makes needless goes", []Lit{2, -3, 0, 3, 2, -4, 0}, []Lit{2, 3, 4}, []Lit{2, -3, 0, -4, 2, 0}},
		{"what follows from a single literal is worked in", []Lit{2, -1, 0, -2, 3, -4, 0}, []Lit{2, 3, 4}, []Lit{-4, 3, 0}},
		{"a middle link goes", []Lit{-2, 3, 0, -3, 4, 0}, []Lit{2, 4}, []Lit{4, -2, 0}},
		{"a variable that nothing speaks against takes its clauses along", []Lit{2, -3, 0, 2, -4, 0}, []Lit{3, 4}, nil},
		{"positive clauses keep the root in", []Lit{2, 3, -1, 0, -3, 4, 0}, []Lit{2, 4}, []Lit{4, 2, -1, 0}},
		{"what is always true goes", []Lit{2, -2, 3, 0}, []Lit{2, 3}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			set := newClauseSet(c.clauses, make([]int8, 7), 1, 1000)
			keep := make([]bool, 7)
			keep[1] = true
			for _, v := range c.keep {
				keep[v] = true
			}
			set.eliminate(keep)
			if diff := cmp.Diff(c.want, set.store(), cmp.Transformer("none", func(l []Lit) []Lit { return append([]Lit{}, l...) })); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestAVariableIsKeptWhereItsClausesWouldBecomeMore(t *testing.T) {
	var clauses []Lit
	for v := Lit(3); v <= 8; v++ { // 2 is at odds with six, and so is its negation with six others
		clauses = append(clauses, -2, -v, 0, 2, -v-6, 0)
	}
	set := newClauseSet(clauses, make([]int8, 15), 1, 1000)
	keep := slices.Repeat([]bool{true}, 15)
	keep[2] = false
	if gone := set.eliminate(keep); len(gone) > 0 {
		t.Errorf("%v went, for 36 clauses", gone)
	}
}

func TestAtOddsIsToldOfClausesThatCannotHold(t *testing.T) {
	set := newClauseSet([]Lit{2, -1, 0, -2, 3, 0, -2, -3, 0}, make([]int8, 4), 1, 1000)
	set.eliminate(make([]bool, 4))
	if !set.odds {
		t.Error("they seem to be possible")
	}
}
