package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// touches reports whether what the audit found is against the limit.
func (l Limit) touches(w *model.Week, v model.Violation) bool {
	if v.Inherited || v.Rule != l.Rule {
		return false
	}
	has := func(is func(*model.Stint) bool) bool { return slices.ContainsFunc(v.Stints, is) }
	wears := func(s *model.Stint) bool {
		return slices.ContainsFunc(l.Pieces, func(p *model.Piece) bool { return slices.Contains(s.Turn.Pieces(), p) })
	}
	twoHorses := func() bool { return has(func(s *model.Stint) bool { return s.Turn.Horse != v.Stints[0].Turn.Horse }) }
	on := func(h *model.Horse) bool {
		return h == nil || has(func(s *model.Stint) bool { return s.Turn.Horse == h })
	}
	theFact := func() bool {
		return has(func(s *model.Stint) bool {
			return l.fact != nil && !s.Open && s.Start == l.fact.Start && s.Name == l.fact.Name
		})
	}
	open := !has(func(s *model.Stint) bool { return !s.Open })
	switch l.rule {
	case "horse in one place":
		return on(l.horse) && v.Stints[0].Date == l.date && (theFact() || open && l.fact == nil)
	case "piece in one place":
		away := has(func(s *model.Stint) bool { return s.Start > l.at || l.at >= s.End+w.House.Move })
		ended := has(func(s *model.Stint) bool { return l.at >= s.End })
		return has(wears) && (theFact() || open && l.fact == nil && !away && (twoHorses() || !ended))
	case "own tack only":
		return has(wears)
	case "load":
		return on(l.horse) && v.Stints[0].Rider == l.ride.Rider
	case "day's work", "run of work":
		return on(l.horse) && v.Stints[0].Date == l.date
	}
	return on(l.horse)
}

// breaks reports whether a plan breaks one of the limits.
func breaks(limits []Limit, w *model.Week, p *model.Plan) bool {
	return slices.ContainsFunc(w.Audit(p), func(v model.Violation) bool {
		return slices.ContainsFunc(limits, func(l Limit) bool { return l.touches(w, v) })
	})
}

// turnsFor are, by ride, all turns that break no rule but such as a reason can
// name: those that clauses keep, and one more. Facts of the
// dates planned are left out.
func turnsFor(w *model.Week, but string) [][]*model.Turn {
	bare := w.Copy()
	bare.Facts = slices.DeleteFunc(slices.Clone(w.Facts), func(f *model.Stint) bool { return f.Date >= w.From })
	judge := oracle.For(bare)
	nameable := func(rule string) bool {
		return rule == but || slices.ContainsFunc(encodings, func(c encoding) bool {
			return c.rule == rule && c.clauses != nil && c.ride == nil && c.seat == nil && c.wear == nil
		})
	}
	c := judge.Mutate(oracle.Mutation{Drop: but}).Choices()
	alone := &model.Plan{Turns: make([]*model.Turn, len(w.Rides))}
	for i := range w.Rides {
		for _, t := range c.Bad[i] {
			alone.Turns[i] = t
			if !slices.ContainsFunc(judge.Broken(alone), func(rule string) bool { return !nameable(rule) }) {
				c.Good[i] = append(c.Good[i], t)
			}
			alone.Turns[i] = nil
		}
	}
	return c.Good
}

// rideAll reports whether the rides can all get one of their turns so that no
// limit is broken, every other open ride being on the ground.
func rideAll(w *model.Week, turns [][]*model.Turn, rides []*model.Ride, limits []Limit) bool {
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides))}
	for i, r := range w.Rides {
		if r.State == model.Started {
			p.Turns[i] = r.Told
		}
	}
	var from func(k int) bool
	from = func(k int) bool {
		if k == len(rides) {
			return !breaks(limits, w, p)
		}
		for _, t := range turns[rides[k].Index] {
			if p.Turns[rides[k].Index] = t; t != nil && from(k+1) {
				return true
			}
		}
		return false
	}
	return from(0)
}

// All assignments of tagged pieces to the rides that a reason names are tried, and
// held against the rules that it names by the audit, which shares nothing with the
// clauses.
func TestAReasonForbidsAndWithoutAnyOneOfItsMembersForbidsNothing(t *testing.T) {
	told := map[string]int{}
	for seed := range uint64(*weeks) {
		w := random.Week(seed, 1000)
		p, err := Plan(context.Background(), w, Options{Goals: 3})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range w.Rides {
			if r.State != model.Open || p.Turns[r.Index] != nil {
				continue
			}
			why, err := WhyGround(context.Background(), w, p, r)
			switch {
			case err != nil:
				t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, err)
			case len(why.Free) == 0:
				if len(why.Alone) == 0 {
					t.Errorf("week %d: no word why %s cannot ride", seed, r)
				}
				continue
			case why.Together == nil || !why.Together.Irreducible:
				t.Fatalf("week %d (%s): %s, and why is %+v", seed, w.Centre.Name, r, why)
			}
			m := why.Together
			all := append(slices.Clone(m.Rides), r)
			c := turnsFor(w, "")
			if rideAll(w, c, all, m.Limits) {
				t.Errorf("week %d (%s): %s: %q does not forbid it", seed, w.Centre.Name, r, m.Sentences(w))
			}
			for i := range m.Rides {
				if !rideAll(w, c, slices.Delete(slices.Clone(all), i, i+1), m.Limits) {
					t.Errorf("week %d (%s): %s: %q forbids it without %s", seed, w.Centre.Name, r, m.Sentences(w), m.Rides[i])
				}
			}
			for i, l := range m.Limits {
				told[l.rule]++
				c := turnsFor(w, l.rule)
				if l.rule != "own tack only" && rideAll(w, c, all, m.Limits) { // that forbids single turns too
					t.Errorf("week %d (%s): %s: %q does not forbid it", seed, w.Centre.Name, r, m.Sentences(w))
				}
				if !rideAll(w, c, all, slices.Delete(slices.Clone(m.Limits), i, i+1)) {
					t.Errorf("week %d (%s): %s: %q forbids it without the %s of limit %d", seed, w.Centre.Name, r, m.Sentences(w), l.rule, i)
				}
			}
		}
	}
	t.Log(told)
	if len(told) < 5 {
		t.Errorf("reasons of %d rules were held against the audit", len(told))
	}
}

// A search that stops at the first answer that seats the rides would not tell the
// fewest that are displaced: all legal plans are tried.
func TestAChoiceIsTheMostThatCanRideAndTheFewestDisplaced(t *testing.T) {
	asked := 0
	for seed := range uint64(*weeks) {
		w := random.Week(seed, 1000)
		p, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range w.Rides {
			if r.State != model.Open || p.Turns[r.Index] != nil {
				continue
			}
			why, err := WhyGround(context.Background(), w, p, r)
			if err != nil {
				t.Fatal(err)
			}
			if why.Choice == nil {
				continue
			}
			asked++
			ground, displaced, best := tryAll(w, p, func(q *model.Plan) bool { return q.Turns[r.Index] != nil })
			c := why.Choice
			if !c.Proved || !c.Fewest || c.With != ground || len(c.Displaced) != displaced {
				t.Errorf("week %d (%s): %s: %d on the ground and %d displaced; trying all: %d and %d", seed, w.Centre.Name, r, c.With, len(c.Displaced), ground, displaced)
			}
			if !slices.EqualFunc(c.Price.After, best, func(a, b model.GoalValue) bool { return a.Value == b.Value }) {
				t.Errorf("week %d (%s): %s: %v; trying all: %v", seed, w.Centre.Name, r, c.Price.After, best)
			}
		}
	}
	if asked < 20 {
		t.Errorf("%d choices were asked for", asked)
	}
}

// tryAll finds among all legal plans in which something is so the fewest on the
// ground, of those the fewest that are displaced, and the best score.
func tryAll(w *model.Week, now *model.Plan, so func(*model.Plan) bool) (ground, displaced int, best []model.GoalValue) {
	ground = len(w.Rides) + 1
	judge := oracle.For(w)
	judge.Choices().Each(func(p *model.Plan) bool {
		if !so(p) || !judge.Legal(p) {
			return true
		}
		g, d := 0, 0
		for i, x := range w.Rides {
			if x.State == model.Open && p.Turns[i] == nil {
				g++
				if now.Turns[i] != nil {
					d++
				}
			}
		}
		if g < ground || g == ground && d < displaced {
			ground, displaced = g, d
		}
		if score := w.Score(p); best == nil || better(score, best) {
			best = score
		}
		return true
	})
	return ground, displaced, best
}

func TestTheSelectorsOfAFineGrainMeanTheSameRulesTogether(t *testing.T) {
	for seed := range uint64(*weeks) / 4 {
		w := random.Week(seed, 300)
		want, _ := oracle.Plans(w)
		e := encodeFine(w)
		for _, a := range e.fine.about {
			e.s.Add(e.s.Root(), e.fine.lit[a])
		}
		got := map[string]bool{}
		every(t, e, func(p *model.Plan) { got[oracle.Projected(w, p)] = true })
		if len(got) != len(want) {
			t.Errorf("week %d (%s): %d plans, and the oracle allows %d", seed, w.Centre.Name, len(got), len(want))
		}
	}
}

// Zoe rides Luna alone, and Mia could go from Luna to Star. Star works at half: its lunging, a gap of 40
// minutes and Mia are more than it may do in a day, and with Leo in the gap they are not. Leo rides
// earlier than is near.
func TestARideThatFillsAGapOfTheHorseIsNotLookedPast(t *testing.T) {
	b := fixtures.New()
	b.House.Stay, b.House.Same, b.House.Other, b.House.Move, b.House.Rest = 0, 0, 0, 0, 45
	b.Star.Factor, b.Star.Limits.DayMinutes = 50, 50
	luna := b.Horse("Luna")
	elm := b.Saddle("elm", luna)
	b.Work(b.Star, b.From, "10:00-10:20")
	zoe := b.Rider("Zoe")
	zoe.Bans = []*model.Horse{b.Star}
	b.Lesson(b.From, "10:20-10:50", b.Rider("Leo"))
	b.Lesson(b.From, "11:00-11:30", zoe, b.Mia)
	w := b.Week()
	p := fixtures.Plan(w, b.Turn(b.Star, b.Oak), b.Turn(luna, elm))
	why, err := WhyGround(context.Background(), w, p, w.Rides[2])
	if err != nil || why.Better == nil {
		t.Fatalf("%v, %+v", err, why)
	}
}
