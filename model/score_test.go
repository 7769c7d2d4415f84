package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestTheFirstGoalCountsThoseOnTheGroundByWhoTheyAre(t *testing.T) {
	b := fixtures.New()
	noor, zoe, ada := b.Rider("Noor"), b.Rider("Zoe"), b.Rider("Ada")
	noor.RideFirst = true
	b.Tell(b.Lesson(fixtures.Monday-3, "10:00-11:00", zoe), zoe, nil)
	ada.Away = []model.Period{{}}
	b.Lesson(fixtures.Monday, "10:00-11:00", ada, b.Mia, noor, zoe)
	w := b.Week() // Ada, Mia, Noor, Zoe
	for _, c := range []struct {
		name   string
		seated []int
		want   [3]int
	}{
		{"nobody rides: Ada, who is away, counts nowhere", nil, [3]int{3, 1, 1}},
		{"Mia rides", []int{1}, [3]int{2, 1, 1}},
		{"Noor, who rides first", []int{2}, [3]int{2, 0, 1}},
		{"Zoe, who was on the ground last time", []int{3}, [3]int{2, 1, 0}},
		{"all", []int{1, 2, 3}, [3]int{0, 0, 0}},
	} {
		p := fixtures.Plan(w)
		for _, i := range c.seated {
			p.Turns[i] = b.Turn(b.Star, b.Oak)
		}
		for i, g := range w.Score(p)[:3] {
			if g.Value != c.want[i] {
				t.Errorf("%s: %s is %d, want %d", c.name, g.Name, g.Value, c.want[i])
			}
		}
	}
}

func TestEveryGoalHasANameOfItsOwnAndWords(t *testing.T) {
	w := fixtures.New().Week()
	seen := map[string]bool{}
	for _, g := range w.Score(fixtures.Plan(w)) {
		if g.Name == "" || g.Words == "" || seen[g.Name] {
			t.Errorf("%+v", g)
		}
		seen[g.Name] = true
	}
}
