package solver

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
	"tackwright/solver/sat"
)

// tagsKept counts the posted tags that rides on the horse that was posted have.
func tagsKept(w *model.Week, p *model.Plan) int {
	n := 0
	for i, r := range w.Rides {
		if t := p.Turns[i]; r.State == model.Open && t != nil && r.Posted != nil && r.Posted.Horse == t.Horse {
			for _, x := range t.Pieces() {
				if slices.Contains(r.Posted.Pieces(), x) {
					n++
				}
			}
		}
	}
	return n
}

// mixedUp is the plan with any pieces alike in the place of its own.
func mixedUp(g *rand.Rand, w *model.Week, p *model.Plan) []*model.Turn {
	other := func(x *model.Piece) *model.Piece {
		var alike []*model.Piece
		for _, y := range w.Centre.Pieces {
			if x != nil && w.Alike(y) == w.Alike(x) {
				alike = append(alike, y)
			}
		}
		if len(alike) == 0 {
			return nil
		}
		return alike[g.IntN(len(alike))]
	}
	turns := make([]*model.Turn, len(p.Turns))
	for i, t := range p.Turns {
		if t == nil {
			continue
		}
		turns[i] = &model.Turn{Horse: t.Horse, Seat: other(t.Seat), Girth: other(t.Girth)}
		for _, x := range t.Pads {
			turns[i].Pads = append(turns[i].Pads, other(x))
		}
		for _, x := range t.Extras {
			turns[i].Extras = append(turns[i].Extras, other(x))
		}
	}
	return turns
}

// settledBest holds a plan's tags against those of all legal plans that are the
// same but for pieces alike.
func settledBest(t *testing.T, w *model.Week, plan *model.Plan) (choices, kept, moves int) {
	t.Helper()
	kept, same := -1, oracle.Projected(w, plan)
	judge := oracle.For(w)
	judge.Choices().Each(func(p *model.Plan) bool {
		if oracle.Projected(w, p) == same && judge.Legal(p) {
			choices++
			if k, m := tagsKept(w, p), len(w.Moves(p)); k > kept || k == kept && m < moves {
				kept, moves = k, m
			}
		}
		return true
	})
	if k, m := tagsKept(w, plan), len(w.Moves(plan)); k != kept || m != moves {
		t.Fatalf("%s: %d tags kept and %d moves, where %d and %d can be: %s", w.Centre.Name, k, m, kept, moves, oracle.Exact(plan))
	}
	return choices, kept, moves
}

// None keeps more posted tags, and none that keeps as many makes fewer moves: in a
// new week, in one whose posted tags are at odds, and in a repair.
func TestTagsAreSettledAsWellAsTryingAllOfThem(t *testing.T) {
	settled := func(w *model.Week) (plan *model.Plan, choices, kept, moves int) {
		plan, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatalf("%s: %v", w.Centre.Name, err)
		}
		choices, kept, moves = settledBest(t, w, plan)
		return plan, choices, kept, moves
	}
	var chosen, kept, odds, moved int
	for seed := range uint64(*weeks) {
		g := rand.New(rand.NewPCG(seed, 7))
		w := random.Week(seed, 1000)
		if len(w.Rides) == 0 {
			continue
		}
		plan, choices, _, moves := settled(w)
		chosen += min(1, choices-1)
		moved += moves

		for i, was := range mixedUp(g, w, plan) {
			w.Rides[i].Posted = was
		}
		_, _, keeps, moves := settled(w)
		for i, r := range w.Rides {
			if r.State == model.Open && r.Posted != nil {
				odds += len(r.Posted.Pieces())
			}
			w.Rides[i].Posted = nil
		}
		odds -= keeps
		moved += moves

		_, _, keeps, moves = settled(random.Repair(seed, w, plan))
		kept += keeps
		moved += moves
	}
	if chosen < *weeks/4 || kept < *weeks || odds < *weeks/20 || moved < *weeks/20 {
		t.Errorf("%d weeks with a choice of tags, %d tags kept, %d at odds, %d moves: too few", chosen, kept, odds, moved)
	}
}

// Nobody goes without a plan for the sake of tags.
func TestTagsSettledWithNoTimeLeftBreakNoRule(t *testing.T) {
	late, stop := context.WithCancel(context.Background())
	stop()
	worse := 0
	for seed := range uint64(*weeks) {
		w := random.Week(seed, 1000)
		e := encode(w)
		var sits []sat.Lit
		for _, r := range w.Rides {
			if e.s.Solve(context.Background(), append(sits, e.isSeated(r))...) == sat.Sat {
				sits = append(sits, e.isSeated(r))
			}
		}
		if e.s.Solve(context.Background(), sits...) != sat.Sat {
			t.Fatalf("week %d: no plan", seed)
		}
		found := e.s.Model()
		first, err := e.decode(context.Background(), found)
		if err != nil {
			t.Fatal(err)
		}
		for i, was := range mixedUp(rand.New(rand.NewPCG(seed, 7)), w, first) {
			w.Rides[i].Posted = was
		}
		best, err := e.decode(context.Background(), found)
		if err != nil {
			t.Fatal(err)
		}
		plan, err := e.decode(late, found)
		if err != nil {
			t.Fatal(err)
		}
		if broken := model.Broken(w.Audit(plan)); len(broken) > 0 {
			t.Fatalf("week %d (%s): %v", seed, w.Centre.Name, broken)
		}
		if tagsKept(w, plan) > tagsKept(w, best) {
			t.Fatalf("week %d (%s): more tags kept with no time left", seed, w.Centre.Name)
		}
		if tagsKept(w, plan) < tagsKept(w, best) {
			worse++
		}
	}
	if worse == 0 {
		t.Error("time made no difference")
	}
}
