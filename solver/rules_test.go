package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/fixtures/rules"
	"tackwright/model"
	"tackwright/solver/sat"
)

func TestEveryRuleIsEncodedAndHasItsPair(t *testing.T) {
	if len(encodings) != len(model.Rules) {
		t.Errorf("%d rules, %d encodings", len(model.Rules), len(encodings))
	}
	for i, r := range model.Rules {
		c := encodings[i]
		if c.rule != r.Name {
			t.Errorf("encoding %d is of %q, and the rule is %q", i, c.rule, r.Name)
		}
		if !c.built && c.ride == nil && c.pair == nil && c.wear == nil && c.seat == nil && c.clauses == nil {
			t.Errorf("%q is not encoded", r.Name)
		}
		if len(rules.Of(r.Name)) == 0 {
			t.Errorf("%q has no pair of weeks", r.Name)
		}
	}
}

func TestTheClausesRefuseWhatJustBreaksARuleAndAllowWhatJustKeepsIt(t *testing.T) {
	for _, p := range rules.Pairs() {
		t.Run(p.Rule+"/"+p.Name, func(t *testing.T) {
			if allows(p.Breaks) {
				t.Error("what just breaks the rule is allowed")
			}
			if !allows(p.Keeps) {
				t.Error("what just keeps the rule is refused")
			}
		})
	}
}

// allows reports whether the clauses allow the very plan of a case, tag by tag.
func allows(c rules.Case) bool {
	e := encodeBut(c.Week, nil, true)
	var assume []sat.Lit
	for i, r := range c.Week.Rides {
		turn := c.Plan.Turns[i]
		switch {
		case r.State == model.Started:
			if !turn.Equal(r.Told) {
				return false // not a matter of clauses: a started ride is a fact
			}
		case turn == nil:
			assume = append(assume, e.isSeated(r).Not())
		default:
			lits, ok := e.turnLits(r, turn)
			if !ok {
				return false
			}
			assume = append(assume, lits...)
		}
	}
	return e.s.Solve(context.Background(), assume...) == sat.Sat
}

// turnLits are the literals that say that a ride gets a turn; ok is false where
// some choice of it does not exist.
func (e *encoder) turnLits(r *model.Ride, t *model.Turn) (lits []sat.Lit, ok bool) {
	i := slices.IndexFunc(e.on_[r], func(on rideOn) bool { return on.at.horse == t.Horse })
	if i < 0 {
		return nil, false
	}
	on := e.on_[r][i]
	lits = append(lits, on.lit)
	pools := func(pieces []*model.Piece) (ps []*pool) {
		for _, x := range pieces {
			ps = append(ps, e.poolOf[x])
		}
		return ps
	}
	j := slices.IndexFunc(on.at.saddle, func(o saddled) bool {
		return o.seat == e.poolOf[t.Seat] && slices.Equal(o.pads, pools(t.Pads)) && (len(o.girths) > 0) == (t.Girth != nil)
	})
	if j < 0 {
		return nil, false
	}
	lits = append(lits, on.at.saddle[j].lit)
	if len(t.Extras) != len(r.Rider.Extras) {
		return nil, false
	}
	wears := func(worn []pooled, x *model.Piece, n need) {
		k := slices.IndexFunc(worn, func(w pooled) bool { return w.pool == e.poolOf[x] && w.need == n })
		if k < 0 {
			ok = false
			return
		}
		lits = append(lits, worn[k].lit)
	}
	ok = true
	if t.Girth != nil {
		wears(on.at.girths, t.Girth, need{})
	}
	for i, n := range needsOf(r.Rider) {
		wears(on.at.extras, t.Extras[i], n)
	}
	return lits, ok
}

// A rule that could be left out with no difference would not be tested by the
// comparison with the oracle.
func TestEachRuleLeftOutAllowsPlansThatTheOracleDoesNot(t *testing.T) {
	const enough = 4 // that a ride is held otherwise is seldom drawn
	differ := map[string]int{}
	missing := func() bool {
		return slices.ContainsFunc(encodings, func(c encoding) bool { return differ[c.rule] < enough && couldBeLeftOut(c) })
	}
	for seed := uint64(0); seed < 3000 && missing(); seed++ {
		w := random.Week(seed, 300)
		want, _ := oracle.Plans(w)
		for _, c := range encodings {
			if couldBeLeftOut(c) && differ[c.rule] < enough && len(plansWithout(t, w, c.rule)) != len(want) {
				differ[c.rule]++
			}
		}
	}
	for _, c := range encodings {
		if couldBeLeftOut(c) && differ[c.rule] < enough {
			t.Errorf("%q left out makes a difference in %d weeks", c.rule, differ[c.rule])
		}
	}
}

// couldBeLeftOut is false for the rules that the choices themselves are made of.
func couldBeLeftOut(c encoding) bool {
	return c.rule != "whole set" && c.rule != "rider here" && c.rule != "extras fit"
}

// plansWithout are the plans, by pools, that the clauses allow without a rule.
func plansWithout(t *testing.T, w *model.Week, rule string) map[string]bool {
	plans := map[string]bool{}
	every(t, encodeBut(w, map[string]bool{rule: true}, false), func(p *model.Plan) { plans[oracle.Projected(w, p)] = true })
	return plans
}
