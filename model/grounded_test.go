package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// Mia was told that she is on the ground, rode after all once, and once her horse went
// out before her hour; Leo rode each time, and was away once.
func TestWhoWasOnTheGroundGoesByWhatWasRidden(t *testing.T) {
	b := fixtures.New()
	leo := b.Rider("Leo")
	turn := b.Turn(b.Star, b.Oak)
	for i, mia := range []*model.Turn{nil, nil, turn, turn} {
		l := b.Lesson(fixtures.Monday+model.Date(i), "10:00-11:00", b.Mia, leo)
		b.Tell(l, b.Mia, mia)
		b.Tell(l, leo, turn)
	}
	b.Posted[0].Told[0].Ground = []string{"no girth"}
	b.Ridden = []*model.Ridden{{Date: fixtures.Monday + 1, Differs: []model.Differs{{How: model.ExtraRide, Lesson: b.Lessons[1], Rider: b.Mia, Turn: turn}}}}
	b.Note(model.Note{Kind: model.NoteRiderAway, Date: fixtures.Monday + 2, Rider: leo})
	b.Note(model.Note{Kind: model.NoteAway, Date: fixtures.Monday + 3, Instructor: b.Ann, From: fixtures.At("09:00")})
	b.Obey()
	all := b.GroundedOver(fixtures.Monday, fixtures.Monday+3)
	if len(all) != 2 || all[0].Rider != b.Mia || all[0].Rides != 4 || len(all[0].Times) != 2 || all[1].Rides != 3 || len(all[1].Times) != 1 {
		t.Fatalf("%+v and %+v", all[0], all[1])
	}
	var why []string
	for _, x := range all[0].Times {
		why = append(why, x.Date.Words()+": "+x.Ground[0])
	}
	if want := []string{"Mon 23 Nov: no girth", "Thu 26 Nov: Ann was away"}; !slices.Equal(why, want) {
		t.Errorf("%v, want %v", why, want)
	}
	if some := b.GroundedOver(fixtures.Monday+1, fixtures.Monday+2); len(some[0].Times)+len(some[1].Times) != 0 {
		t.Errorf("%+v and %+v", some[0], some[1])
	}
}
