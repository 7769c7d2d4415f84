package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestWhatWasPostedForADateIsAPlanOfThatDate(t *testing.T) {
	for _, c := range []struct {
		name           string
		change         func(b *fixtures.Barn, l *model.Lesson)
		version        int
		seated, nomore int
	}{
		{"as it was posted", func(*fixtures.Barn, *model.Lesson) {}, 1, 1, 0},
		{"a later version of the date", func(b *fixtures.Barn, l *model.Lesson) {
			b.Posted = append(b.Posted, &model.Posted{Version: 2, From: fixtures.Monday, Until: fixtures.Monday})
		}, 2, 0, 0},
		{"a later version of another date", func(b *fixtures.Barn, l *model.Lesson) {
			b.Posted = append(b.Posted, &model.Posted{Version: 2, From: fixtures.Monday + 1, Until: fixtures.Monday + 1})
		}, 1, 1, 0},
		{"the rider is away since", func(b *fixtures.Barn, l *model.Lesson) { b.Mia.Away = []model.Period{{}} }, 1, 0, 0},
		{"the rider has left the lesson since", func(b *fixtures.Barn, l *model.Lesson) { l.Places = nil }, 1, 0, 1},
		{"the lesson has another hour since", func(b *fixtures.Barn, l *model.Lesson) { l.End += 15 }, 1, 0, 1},
		{"nothing was posted", func(b *fixtures.Barn, l *model.Lesson) { b.Posted = nil }, 0, 0, 0},
	} {
		b := fixtures.New()
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		c.change(b, l)
		posted, w, p, gone := b.PostedOn(fixtures.Monday)
		version, seated := 0, 0
		if posted != nil {
			version = posted.Version
			for i := range w.Rides {
				if p.Turns[i] != nil {
					seated++
				}
			}
		}
		if version != c.version || seated != c.seated || len(gone) != c.nomore {
			t.Errorf("%s: version %d, %d seated, %d gone", c.name, version, seated, len(gone))
		}
	}
}
