package model_test

import (
	"fmt"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestThoseOnTheirUsualHorseAreCountedAmongThoseWhoHaveOne(t *testing.T) {
	b := fixtures.New()
	bay := b.Horse("Bay")
	noor, zoe, ada := b.Rider("Noor"), b.Rider("Zoe"), b.Rider("Ada")
	b.Mia.Usual, noor.Usual, ada.Usual = b.Star, b.Star, b.Star // Zoe has none
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Lesson(fixtures.Monday, "11:00-12:00", noor)
	b.Lesson(fixtures.Monday, "12:00-13:00", zoe)
	b.Lesson(fixtures.Monday, "13:00-14:00", ada)
	w := b.Week()
	star := b.Turn(b.Star, b.Oak)
	p := fixtures.Plan(w, star, b.Turn(bay, b.Saddle("elm", bay)), star) // Ada is on the ground
	if on, have := w.OnUsual(p); on != 1 || have != 2 {
		t.Errorf("%d of %d on their usual horse", on, have)
	}
}

func TestAPieceMovesWhereItGoesToAnotherHorseWithinADate(t *testing.T) {
	b := fixtures.New()
	bay := b.Horse("Bay")
	b.Row(bay, b.Oak)
	for _, hours := range []string{"09:00-10:00", "11:00-12:00", "13:00-14:00"} {
		b.Lesson(fixtures.Monday, hours, b.Mia)
	}
	b.Lesson(fixtures.Monday+1, "09:00-10:00", b.Mia)
	star, on := b.Turn(b.Star, b.Oak), b.Turn(bay, b.Oak)
	w := b.Week()
	for _, c := range []struct {
		name  string
		turns []*model.Turn
		want  []string
	}{
		{"on one horse all day", []*model.Turn{star, star, star}, nil},
		{"to Bay and back, with its girth; its pad travels with it", []*model.Turn{star, on, star},
			[]string{"oak Star to Bay", "oak Bay to Star", "oak girth Star to Bay", "oak girth Bay to Star"}},
		{"overnight", []*model.Turn{star, nil, nil, on}, nil},
		{"over a ride on the ground", []*model.Turn{star, nil, on}, []string{"oak Star to Bay", "oak girth Star to Bay"}},
	} {
		var got []string
		for _, m := range w.Moves(fixtures.Plan(w, c.turns...)) {
			got = append(got, fmt.Sprintf("%s %s to %s", m.Piece.Tag, m.From.Turn.Horse.Name, m.To.Turn.Horse.Name))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: moves are %q", c.name, got)
		}
	}
}

// The limit of 10 h is a figure of this test; 61 min of 600 are 10.17 %.
func TestTheBusiestHorseIsTheOneWithLeastOfItsWeekLeft(t *testing.T) {
	b := fixtures.New()
	bay := b.Horse("Bay")
	elm := b.Saddle("elm", bay)
	b.House.Limits.WeekMinutes = 600
	bay.Limits.WeekMinutes = 1200
	b.Lesson(fixtures.Monday, "10:00-11:01", b.Mia)
	b.Lesson(fixtures.Monday, "12:00-13:50", b.Mia)
	w := b.Week()
	for _, c := range []struct {
		turns []*model.Turn
		want  string
	}{
		{nil, "none 0"},
		{[]*model.Turn{b.Turn(b.Star, b.Oak)}, "Star 11"},
		{[]*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(bay, elm)}, "Star 11"}, // 110 of 1200 are 9.2 %
	} {
		h, percent := w.Busiest(fixtures.Plan(w, c.turns...))
		name := "none"
		if h != nil {
			name = h.Name
		}
		if got := fmt.Sprint(name, " ", percent); got != c.want {
			t.Errorf("busiest is %s, want %s", got, c.want)
		}
	}
}

func TestTheGapOfEveryGoalIsSaidInWordsOfItsOwnUntilItIsProved(t *testing.T) {
	b := fixtures.New()
	b.House.Goals = append(model.DefaultGoals(), model.GoalBringIn)
	w := b.Week()
	seen := map[string]bool{}
	for _, g := range w.Score(fixtures.Plan(w)) {
		open := model.GoalResult{Name: g.Name, Value: 5, Bound: 3}
		words := open.Gap()
		if words == "" || seen[words] {
			t.Errorf("%s: %q", g.Name, words)
		}
		seen[words] = true
		if best := (model.GoalResult{Name: g.Name, Value: 5, Bound: 5, Proved: true}).Gap(); best != "" {
			t.Errorf("%s: %q of what is proved", g.Name, best)
		}
	}
}
