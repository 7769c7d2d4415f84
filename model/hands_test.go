package model_test

import (
	"fmt"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestALessonWhoseRidersNeedMoreHelpersThanItHasIsShort(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn, l *model.Lesson)
		want   string
	}{
		{"no number given", func(b *fixtures.Barn, l *model.Lesson) { l.Hands = model.NoHands }, "[]"},
		{"enough", func(b *fixtures.Barn, l *model.Lesson) { l.Hands = model.Hands{Leaders: 2, Sidewalkers: 3} }, "[]"},
		{"one leader", func(b *fixtures.Barn, l *model.Lesson) { l.Hands = model.Hands{Leaders: 1, Sidewalkers: 3} }, "[leaders 2 1 over 1]"},
		{"two sidewalkers", func(b *fixtures.Barn, l *model.Lesson) { l.Hands = model.Hands{Leaders: 2, Sidewalkers: 2} }, "[sidewalkers 3 2 over 1]"},
		{"none of either", func(b *fixtures.Barn, l *model.Lesson) { l.Hands = model.Hands{} }, "[leaders 2 0 over 2 sidewalkers 3 0 over 2]"},
		{"another number that date", func(b *fixtures.Barn, l *model.Lesson) {
			l.HandsOn = map[model.Date]model.Hands{l.On: {Leaders: 1, Sidewalkers: 3}}
		}, "[leaders 2 1 over 1]"},
		{"one of them away", func(b *fixtures.Barn, l *model.Lesson) {
			l.Hands = model.Hands{Leaders: 1, Sidewalkers: 2}
			b.Mia.Away = []model.Period{{}}
		}, "[]"},
		{"one after the other", func(b *fixtures.Barn, l *model.Lesson) {
			l.Hands = model.Hands{Leaders: 1, Sidewalkers: 2}
			l.Places[0].Start, l.Places[0].End = l.Start, l.Start+30
			l.Places[1].Start, l.Places[1].End = l.Start+30, l.End
		}, "[]"},
	} {
		b := fixtures.New()
		leo := b.Rider("Leo")
		b.Mia.Leader, b.Mia.Sidewalkers, leo.Leader, leo.Sidewalkers = true, 1, true, 2
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, leo)
		c.change(b, l)
		w := b.Week()
		var got []string
		for _, s := range w.HandsShort(w.Meetings[0]) {
			got = append(got, fmt.Sprintf("%s %d %d over %d", s.What, s.Need, s.Have, s.Over))
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
}
