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

// rules.md: a ride under way when its horse goes out ends that minute, and what
// facts break is inherited; so a day that was repaired after that can be printed.
func TestWhatHadStartedWhenItWasPostedIsAFactOfIt(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn)
		now    model.Instant
		broken int
	}{
		{"posted ahead", func(*fixtures.Barn) {}, model.Instant{}, 1},
		{"posted after it started", func(b *fixtures.Barn) { b.Posted[0].At = monday("10:35") }, model.Instant{}, 0},
		{"posted for a later hour", func(b *fixtures.Barn) { b.Posted[0].Now = monday("10:00") }, model.Instant{}, 0},
		{"looked at since", func(*fixtures.Barn) {}, monday("10:35"), 0},
		{"and the day is closed", func(b *fixtures.Barn) {
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{{How: model.CutShort, Lesson: b.Lessons[0], Rider: b.Mia, End: fixtures.At("10:20")}}}}
		}, monday("10:35"), 0},
	} {
		b := fixtures.New()
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Star.Out = []model.Out{{Why: model.Lame, From: monday("10:30"), At: monday("10:30")}}
		c.change(b)
		_, w, p, gone := b.PostedAt(fixtures.Monday, c.now)
		if broken := model.Broken(w.Audit(p)); len(broken) != c.broken || len(gone) > 0 || p.Turns[0] == nil || w.Rides[0].End != fixtures.At("11:00") {
			t.Errorf("%s: broken %v, gone %v, to %s", c.name, broken, gone, w.Rides[0].End)
		}
	}
}
