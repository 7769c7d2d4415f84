package solver

import (
	"context"
	"flag"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
	"tackwright/solver/sat"
)

var weeks = flag.Int("weeks", 400, "random weeks that are held against the oracle")

// smallWeeks are two of a seed: one of any kind, and a packed one.
func smallWeeks(seed uint64, most int) []*model.Week {
	return []*model.Week{random.Week(seed, most), random.Packed(seed, most)}
}

// every walks all plans of a week that the clauses allow, one for each choice of
// pools, and gives each with its tags settled.
func every(t *testing.T, e *encoder, visit func(*model.Plan)) {
	t.Helper()
	var choices []sat.Lit
	for _, p := range e.places {
		for _, on := range p.rides {
			choices = append(choices, on.lit)
		}
		for _, o := range p.saddle {
			choices = append(choices, o.lit)
		}
		for _, x := range slices.Concat(p.girths, p.extras) {
			choices = append(choices, x.lit)
		}
	}
	other := e.s.NewVar()
	for {
		switch e.s.Solve(context.Background(), other) {
		case sat.Unsat:
			return
		case sat.Unknown:
			t.Fatal("gave up")
		}
		model := e.s.Model()
		plan, err := e.decode(context.Background(), model)
		if err != nil {
			t.Fatal(err)
		}
		visit(plan)
		var not []sat.Lit
		for _, l := range choices {
			if model.Value(l) {
				not = append(not, l.Not())
			} else {
				not = append(not, l)
			}
		}
		e.s.Add(other, not...)
	}
}

// The oracle is a second reading of the rules that tries every assignment of
// tagged pieces and shares no code with rules, audit or clauses.
func TestTheClausesAllowTheVeryPlansThatTheOracleAllows(t *testing.T) {
	for seed := range uint64(*weeks) {
		for _, w := range smallWeeks(seed, 3000) {
			want, exact := oracle.Plans(w)
			got := map[string]bool{}
			every(t, encode(w), func(p *model.Plan) {
				got[oracle.Projected(w, p)] = true
				if !exact[oracle.Exact(p)] {
					t.Errorf("week %d (%s): tags settled to a plan that is not legal: %s\n%v", seed, w.Centre.Name, oracle.Exact(p), model.Broken(w.Audit(p)))
				}
			})
			for p := range want {
				if !got[p] {
					t.Errorf("week %d (%s): legal, and the clauses do not allow it: %s", seed, w.Centre.Name, p)
				}
			}
			if len(got) != len(want) {
				t.Errorf("week %d (%s): %d plans, and the oracle allows %d", seed, w.Centre.Name, len(got), len(want))
			}
		}
	}
}
