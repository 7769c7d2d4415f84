package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// onBay is Bay on Monday at two with Oak's girth, beside what history did with it.
func onBay(history func(b *fixtures.Barn)) (*fixtures.Barn, *model.Week, *model.Plan) {
	b := fixtures.New()
	bay := b.Horse("Bay")
	turn := b.Turn(bay, b.Saddle("elm", bay))
	turn.Girth = b.Tag("oak girth")
	b.Lesson(fixtures.Monday, "14:00-15:00", b.Mia)
	w := b.Also(history).Week()
	return b, w, fixtures.Plan(w, turn)
}

func ago(days model.Date) model.Instant { return model.Instant{Date: fixtures.Monday - days} }

func TestAContactIsRememberedUntilSomebodyCleans(t *testing.T) {
	for _, c := range []struct {
		name    string
		history func(b *fixtures.Barn)
		want    []string
	}{
		{"a year ago", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(400), End: ago(300)}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-350, "10:00-11:00")
		}, []string{"own tack only"}},
		{"a year ago, told after something later", func(b *fixtures.Barn) {
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-3, "10:00-11:00")
			b.Star.OwnTack = []model.Span{{From: ago(400), End: ago(300)}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-350, "10:00-11:00")
		}, []string{"own tack only"}},
		{"cleaned since", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(400), End: ago(300)}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-350, "10:00-11:00")
			b.Note(model.Note{Kind: model.NoteCleaned, Piece: b.Tag("oak girth"), Date: fixtures.Monday - 3})
		}, nil},
		{"cleaned since, and worn again", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(400)}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-350, "10:00-11:00")
			b.Note(model.Note{Kind: model.NoteCleaned, Piece: b.Tag("oak girth"), Date: fixtures.Monday - 3})
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-2, "10:00-11:00")
		}, []string{"own tack only"}},
		{"a mark without a beginning", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-20, "10:00-11:00")
		}, []string{"own tack only"}},
		{"a work before anything was posted", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(30)}}
			b.Work(b.Star, fixtures.Monday-20, "10:00-10:30").Girth = b.Tag("oak girth")
			b.Rode(b.Turn(b.Horses[1], b.Tag("elm")), fixtures.Monday-2, "10:00-11:00")
		}, []string{"own tack only"}},
		{"a standing work of every week", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(30), End: ago(20)}}
			work := b.Work(b.Star, 0, "10:00-10:30")
			work.Girth, work.Weekday = b.Tag("oak girth"), fixtures.Monday.Weekday()
		}, []string{"own tack only"}},
		{"a ride recorded on a date for which nothing was posted", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(30)}}
			l := b.Lesson(fixtures.Monday-20, "10:00-11:00")
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday - 20, Differs: []model.Differs{
				{How: model.ExtraRide, Lesson: l, Rider: b.Mia, Turn: b.Turn(b.Star, b.Oak)}}}}
		}, []string{"own tack only"}},
		{"a no-show", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(30)}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-20, "10:00-11:00")
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday - 20, Differs: []model.Differs{
				{How: model.NoShow, Lesson: b.Lessons[len(b.Lessons)-1], Rider: b.Mia}}}}
		}, nil},
		{"a second mark, 14 dates after the wear, that no cleaning follows", func(b *fixtures.Barn) {
			b.Star.OwnTack = []model.Span{{From: ago(20), End: ago(15)}, {From: ago(3)}}
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-16, "10:00-11:00")
			b.Note(model.Note{Kind: model.NoteCleaned, Piece: b.Tag("oak girth"), Date: fixtures.Monday - 5})
		}, []string{"own tack only"}},
		{"its own horse", func(b *fixtures.Barn) {
			b.Horses[1].OwnTack = []model.Span{{From: ago(30)}}
			turn := b.Turn(b.Horses[1], b.Tag("elm"))
			turn.Girth = b.Tag("oak girth")
			b.Rode(turn, fixtures.Monday-2, "10:00-11:00")
		}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, w, p := onBay(c.history)
			wantTold(t, w.Audit(p), c.want...)
		})
	}
}

func TestTheHorsesAndPiecesBehindAContactAreNamed(t *testing.T) {
	b, w, _ := onBay(func(b *fixtures.Barn) {
		b.Star.OwnTack = []model.Span{{From: ago(30)}}
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-2, "10:00-11:00")
	})
	girth := b.Tag("oak girth")
	if got := w.Contacted(girth, monday("10:00")); len(got) != 1 || got[0] != b.Star {
		t.Errorf("contacted by %v", got)
	}
	if w.HasContact(b.Tag("oak")) {
		t.Error("the saddle touches no skin")
	}
	if w.HasContact(b.Tag("elm girth")) {
		t.Error("the other girth was not there")
	}
}

func TestQuarantineIsOfTheHousesDatesUnlessTheHorseStatesItsOwn(t *testing.T) {
	house := model.DefaultHouse()
	house.Quarantine = 14
	arrived := model.Horse{Arrived: fixtures.Monday}
	if got := arrived.QuarantineEnds(&house); got != fixtures.Monday+13 {
		t.Errorf("14 dates end on %s", got)
	}
	arrived.QuarantineUntil = fixtures.Monday + 30
	if got := arrived.QuarantineEnds(&house); got != fixtures.Monday+30 {
		t.Errorf("its own ends on %s", got)
	}
	if got := (&model.Horse{}).QuarantineEnds(&house); got != 0 {
		t.Errorf("one that was always here ends on %s", got)
	}
}

func TestAHouseThatKeepsNoQuarantineMarksNoArrival(t *testing.T) {
	house := model.DefaultHouse()
	house.Quarantine = 0
	if got := (&model.Horse{Arrived: fixtures.Monday}).QuarantineEnds(&house); got != 0 {
		t.Errorf("ends on %s", got)
	}
}
