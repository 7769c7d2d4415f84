package solver

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// post makes a plan what was posted.
func post(w *model.Week, p *model.Plan) {
	x := &model.Posted{Version: len(w.Centre.Posted) + 1, From: w.From, Until: w.Until}
	for i, r := range w.Rides {
		t := model.Told{Date: r.Date(), Start: r.Start, End: r.End, Lesson: r.Meeting.Lesson, LessonName: r.Meeting.Name,
			Rider: r.Rider, Arena: r.Meeting.Arena, Instructor: r.Meeting.Instructor, Turn: p.Turns[i]}
		if t.Turn != nil {
			t.Work = w.WorkOf(r, t.Turn.Horse)
		}
		x.Told = append(x.Told, t)
	}
	w.Centre.Posted = append(w.Centre.Posted, x)
}

// mishap notes something that goes wrong on the first date.
func mishap(g *rand.Rand, c *model.Centre, w *model.Week) *model.Note {
	n := &model.Note{Number: 1 + len(c.Notes), Date: w.From, Through: w.Until}
	switch g.IntN(4) {
	case 0, 1:
		n.Kind, n.Horse, n.Why = model.NoteHorseOut, c.Horses[g.IntN(len(c.Horses))], model.Lame
	case 2:
		n.Kind, n.Piece = model.NotePieceOut, c.Pieces[g.IntN(len(c.Pieces))]
	default:
		r := w.Rides[g.IntN(len(w.Rides))]
		n.Kind, n.Rider = model.NoteNever, r.Rider
		n.Horse = c.Horses[g.IntN(len(c.Horses))]
	}
	return n
}

// A repair has the least value in every goal that any plan has which is as good
// in the goals before: found by trying all plans of a small week.
func TestARepairChangesNoMoreThanTryingAllPlansDoes(t *testing.T) {
	moved, kept := 0, 0
	for seed := range uint64(*weeks) {
		g := rand.New(rand.NewPCG(seed, 7))
		before := random.Week(seed, 1000)
		if len(before.Rides) == 0 {
			continue
		}
		posted, err := Plan(context.Background(), before, Options{})
		if err != nil {
			t.Fatal(err)
		}
		post(before, posted)
		c := before.Centre
		c.Notes = append(c.Notes, mishap(g, c, before))
		c.Obey()
		w := c.Repair(before.From, int(before.Until-before.From)+1, before.Now)
		var best []model.GoalValue
		judge := oracle.For(w)
		judge.Choices().Each(func(p *model.Plan) bool {
			if judge.Legal(p) {
				if score := w.Score(p); best == nil || better(score, best) {
					best = score
				}
			}
			return true
		})
		plan, err := Plan(context.Background(), w, Options{})
		if err != nil {
			t.Fatalf("week %d (%s): %v", seed, c.Name, err)
		}
		for i, x := range plan.Proof.Goals {
			if !x.Proved || x.Value != best[i].Value {
				t.Fatalf("week %d (%s): %+v, and the best is %+v", seed, c.Name, plan.Proof.Goals, best)
			}
		}
		for i, r := range w.Rides {
			if r.State == model.Started && !r.Told.Equal(plan.Turns[i]) {
				t.Fatalf("week %d: %s had started, and is changed", seed, r)
			}
		}
		if slices.ContainsFunc(best[2:4], func(x model.GoalValue) bool { return x.Value > 0 }) {
			moved++
		} else {
			kept++
		}
	}
	if moved < kept/20 || kept == 0 {
		t.Errorf("of the weeks %d changed and %d stayed: the mishaps test nothing", moved, kept)
	}
}
