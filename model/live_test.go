package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// A lesson that has left the folder after its ride began still takes its instructor's eyes and the ring.
func TestAWeekStandsOnWhatIsLeftOfALessonThatHasGone(t *testing.T) {
	mark := func(change func(b *fixtures.Barn, x *model.Told)) string {
		b := fixtures.New()
		b.Now = monday("10:30")
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Lessons = nil
		x := &b.Posted[0].Told[0]
		x.Lesson = nil
		change(b, x)
		return b.Week().Bedrock()
	}
	same := func(*fixtures.Barn, *model.Told) {}
	if again := mark(same); mark(same) != again {
		t.Error("the same week has two marks")
	}
	for name, change := range map[string]func(b *fixtures.Barn, x *model.Told){
		"its instructor":           func(b *fixtures.Barn, x *model.Told) { x.Instructor = b.Person("Eve") },
		"how many she has at once": func(b *fixtures.Barn, x *model.Told) { b.Ann.RidersAtOnce = 1 },
		"its arena":                func(b *fixtures.Barn, x *model.Told) { x.Arena = b.Arena("hall") },
		"its end":                  func(b *fixtures.Barn, x *model.Told) { x.End += 15 },
	} {
		if mark(change) == mark(same) {
			t.Errorf("%s is not in the mark", name)
		}
	}
}
