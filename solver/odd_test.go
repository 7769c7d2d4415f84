package solver

import (
	"context"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// planOf is the plan of the barn's week; that it came through the audit with the
// score that the solver claims is asked by Plan itself.
func planOf(t *testing.T, b *fixtures.Barn) *model.Plan {
	t.Helper()
	p, err := Plan(context.Background(), b.Week(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestOfTwoAlikePadsKeptWithASeatThoseThatTheChartNamesAreWorn(t *testing.T) {
	for _, named := range [][]string{{"oak pad"}, {"oak pad 2"}, {"oak pad", "oak pad 2"}, {"oak pad 2", "oak pad"}, nil} {
		b := fixtures.New()
		b.Piece(&model.Piece{Tag: "oak pad 2", Kind: model.Pad, Skin: true, WithSeat: b.Oak})
		for _, tag := range named {
			b.Chart[0].Pads = append(b.Chart[0].Pads, b.Tag(tag))
		}
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		turn := planOf(t, b).Turns[0]
		if turn == nil || len(turn.Pads) != max(1, len(named)) {
			t.Fatalf("%q: %+v", named, turn)
		}
		for i, tag := range named {
			if turn.Pads[i].Tag != tag {
				t.Errorf("%q: wears %s", named, turn.Pads[i].Tag)
			}
		}
	}
}

func TestARideOfWhichTheRecordNamesTheHorseAloneIsPlannedAround(t *testing.T) {
	for _, how := range []model.DiffersHow{model.OtherHorse, model.ExtraRide} {
		b := fixtures.New()
		b.Saddle("elm", b.Star).Style = "jumping"
		b.Mia.Styles = []string{"english", "jumping"}
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Lesson(fixtures.Monday, "12:00-13:00", b.Mia)
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{
			{How: how, Lesson: l, Rider: b.Mia, Turn: &model.Turn{Horse: b.Star}}}}}
		b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("11:00")}
		if p := planOf(t, b); p.Turns[1] == nil {
			t.Errorf("%s: on the ground: %v", how, p.Ground[1])
		}
	}
}

func TestAWorkBringsItsHorseInSoThatARideOnItBringsInNoOther(t *testing.T) {
	b := fixtures.New()
	b.House.Goals = []model.GoalKind{model.GoalBringIn}
	bay := b.Horse("Bay")
	b.Row(bay, b.Oak)
	b.Work(bay, fixtures.Monday, "08:00-08:30")
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	if p := planOf(t, b); p.Turns[0].Horse != bay {
		t.Errorf("on %s", p.Turns[0].Horse.Name)
	}
}
