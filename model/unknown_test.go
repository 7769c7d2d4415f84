package model_test

import (
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// ridden audits Mia's ride on Star under Oak, after a change.
func ridden(change func(b *fixtures.Barn)) []model.Violation {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	turn := b.Turn(b.Star, b.Oak)
	w := b.Also(change).Week()
	return w.Audit(fixtures.Plan(w, turn))
}

func TestWhatIsNotKnownIsAllowedWhereItIsNotAMatterOfWeightAgeFormOrFit(t *testing.T) {
	for _, c := range []struct {
		name    string
		wish    func(b *fixtures.Barn) // that the horse or the piece would not meet
		broken  string
		unknown func(b *fixtures.Barn)
	}{
		{"height", func(b *fixtures.Barn) { b.Mia.HorseMin = 16 * model.Hand }, "horse suits rider",
			func(b *fixtures.Barn) { b.Star.Height = 0 }},
		{"barrel", func(b *fixtures.Barn) { b.Mia.Barrels = []model.Barrel{model.Wide} }, "horse suits rider",
			func(b *fixtures.Barn) { b.Star.Barrel = "" }},
		{"level of the rider", func(b *fixtures.Barn) { b.Mia.Level, b.Star.Levels = "beginner", []string{"novice"} }, "horse suits rider",
			func(b *fixtures.Barn) { b.Mia.Level = "" }},
		{"levels of the horse: all", func(b *fixtures.Barn) { b.Mia.Level, b.Star.Levels = "beginner", []string{"novice"} }, "horse suits rider",
			func(b *fixtures.Barn) { b.Star.Levels = nil }},
		{"size of the rider's seat", func(b *fixtures.Barn) { b.Mia.SeatMin, b.Mia.SeatMax = 150, 150 }, "seat fits rider",
			func(b *fixtures.Barn) { b.Mia.SeatMin = 0 }},
		{"size of the saddle", func(b *fixtures.Barn) { b.Mia.SeatMin, b.Mia.SeatMax = 150, 150 }, "seat fits rider",
			func(b *fixtures.Barn) { b.Oak.Label = 0 }},
		{"when the check is due", func(b *fixtures.Barn) { b.Oak.CheckDue = fixtures.Monday - 1 }, "piece in use",
			func(b *fixtures.Barn) { b.Oak.CheckDue = 0 }},
		{"helpers of the lesson", func(b *fixtures.Barn) { b.Mia.Leader, b.Lessons[0].Hands.Leaders = true, 0 }, "hands in the ring",
			func(b *fixtures.Barn) { b.Lessons[0].Hands = model.NoHands }},
		{"mounting places, which the house does not record", func(b *fixtures.Barn) { b.Mia.Mounting, b.Star.Mounting = []string{"ramp"}, []string{"block"} }, "horse suits rider",
			func(b *fixtures.Barn) { b.House.Mounting = false }},
		{"skills, which the house does not record", func(b *fixtures.Barn) { b.Mia.Skills = []string{"trots"} }, "horse suits rider",
			func(b *fixtures.Barn) { b.House.Skills = false }},
	} {
		t.Run(c.name, func(t *testing.T) {
			wantTold(t, ridden(c.wish), c.broken)
			wantTold(t, ridden(func(b *fixtures.Barn) { b.Also(c.wish, c.unknown) }))
		})
	}
}

func TestASizeOfAnExtraThatIsNotKnownIsAllowed(t *testing.T) {
	for _, c := range []struct{ need, size string }{{"short", ""}, {"", "short"}, {"", ""}} {
		if !(model.ExtraNeed{Kind: reins, Size: c.need}).MetBy(&model.Piece{Kind: reins, Size: c.size}) {
			t.Errorf("%+v", c)
		}
	}
}

func TestWhatACentreKeepsElsewhereIsNotAskedHere(t *testing.T) {
	for _, c := range []struct {
		name      string
		expired   func(b *fixtures.Barn)
		broken    string
		elsewhere model.Elsewhere
	}{
		{"forms expired", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday - 1 }, "form in date", model.Elsewhere{Forms: true}},
		{"forms unknown", func(b *fixtures.Barn) { b.Mia.FormUntil = 0 }, "form in date", model.Elsewhere{Forms: true}},
		{"fit dates past", func(b *fixtures.Barn) { b.Chart[0].Until = fixtures.Monday - 1 }, "seat fits horse", model.Elsewhere{FitDates: true}},
		{"fit dates unknown", func(b *fixtures.Barn) { b.Chart[0].Until = 0 }, "seat fits horse", model.Elsewhere{FitDates: true}},
		{"tack checks", func(b *fixtures.Barn) { b.Oak.CheckDue = fixtures.Monday - 1 }, "piece in use", model.Elsewhere{TackChecks: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			wantTold(t, ridden(c.expired), c.broken)
			wantTold(t, ridden(func(b *fixtures.Barn) { b.Also(c.expired); b.House.Elsewhere = c.elsewhere }))
		})
	}
}

func TestAPieceThatIsOutIsOutWhereverItsChecksAreKept(t *testing.T) {
	wantTold(t, ridden(func(b *fixtures.Barn) {
		b.House.Elsewhere.TackChecks = true
		b.Oak.Out = []model.PieceOut{{}}
	}), "piece in use")
}

func TestNoRecordKeptElsewhereLetsLoadGo(t *testing.T) {
	wantTold(t, ridden(func(b *fixtures.Barn) {
		b.House.Elsewhere = model.Elsewhere{Forms: true, FitDates: true, TackChecks: true}
		b.Star.Weight = 0
	}), "load")
}

// House rules assume 9, 16, 3, 1.5, 1 and 0.5 kg: estimates of ours (rules.md).
func TestAWeightThatAPieceDoesNotStateIsAssumedByItsKind(t *testing.T) {
	house := model.DefaultHouse()
	for kind, want := range map[model.Kind]model.Grams{model.Saddle: 9000, model.Western: 16000, model.BarebackPad: 3000,
		model.Surcingle: 3000, model.Pad: 1500, model.Girth: 1000, reins: 500} {
		if got, assumed := (&model.Piece{Kind: kind}).WeightIn(&house); got != want || !assumed {
			t.Errorf("%s: %d g, assumed %v", kind, got, assumed)
		}
		if got, assumed := (&model.Piece{Kind: kind, Weight: 42}).WeightIn(&house); got != 42 || assumed {
			t.Errorf("%s that states its own: %d g, assumed %v", kind, got, assumed)
		}
	}
}

func TestNoViolationTellsAWeight(t *testing.T) {
	for _, v := range ridden(func(b *fixtures.Barn) { b.Mia.Weight = 123_456 }) {
		for _, s := range []string{"123", "kg", "lb"} {
			if strings.Contains(v.Words, s) {
				t.Errorf("%q", v.Words)
			}
		}
	}
}
