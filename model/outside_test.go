package model_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// Published worked examples of lb = heart girth (in)^2 x length (in) / 330.
func TestTapeWeightsAgreeWithThePublishedExamples(t *testing.T) {
	for _, c := range []struct {
		girth, length model.Length
		lb            float64
	}{
		{71, 64, 977}, // truncated where it was published
		{75, 70, 1193},
		{75, 65, 1107.95},
	} {
		byPounds := float64(c.girth*c.girth*c.length) / 330
		if math.Abs(byPounds-c.lb) >= 1 {
			t.Errorf("%d x %d in: %.2f lb, published %.2f", c.girth, c.length, byPounds, c.lb)
		}
		// 330 in pounds and inches is 11,922 in kilograms and centimetres, not
		// 11,900: the two formulas agree within 0.2 % and the example's rounding.
		got := model.TapeWeight(c.girth*model.Inch, c.length*model.Inch).InPounds()
		if math.Abs(got-c.lb) > 0.002*c.lb+1 {
			t.Errorf("%d x %d in: %.2f lb, published %.2f", c.girth, c.length, got, c.lb)
		}
	}
	// The third is published as 502.56 kg too.
	if got := model.Pounds(1107.95); math.Abs(float64(got)-502_560) > 10 {
		t.Errorf("1,107.95 lb are %d g", got)
	}
}

// 11,900: Carroll & Huntington 1988, Equine Vet. J. 20:41-45; 11,877 and 11,880
// are in use for the same formula.
func TestTheConstantsOfTheTapeInUseAgreeWithinFourInAThousand(t *testing.T) {
	exact := func(c float64) float64 { return 180 * 180 * 160 / c * 1000 }
	got := float64(model.TapeWeight(180*model.Centimetre, 160*model.Centimetre))
	for _, c := range []float64{11877, 11880, 11900} {
		if math.Abs(got-exact(c))/exact(c) > 0.004 {
			t.Errorf("%.0f: %.0f g, and %.0f here", c, exact(c), got)
		}
	}
	if got > exact(11900) || got <= exact(11900)-1 {
		t.Errorf("%.0f g: it is truncated to the gram, so that it never allows more load", got)
	}
}

// Powell et al. 2008, J. Equine Vet. Sci.: little change at 15 and 20 % of body
// weight, strain at 25.
func TestLoadIsMarkedAbove15PercentAndStoppedAbove20(t *testing.T) {
	for _, c := range []struct {
		load            model.Grams // on a horse of 500 kg
		marked, stopped bool
	}{
		{75_000, false, false}, {75_001, true, false},
		{100_000, true, false}, {100_001, true, true},
		{125_000, true, true},
	} {
		b := fixtures.New()
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		turn := b.Turn(b.Star, b.Oak)
		tack, _ := (&model.Week{House: &b.House}).Load(&model.Rider{}, turn)
		b.Mia.Weight = c.load - tack
		w := b.Week()
		if got := len(w.Audit(fixtures.Plan(w, turn))) > 0; got != c.stopped {
			t.Errorf("%d g: stopped %v", c.load, got)
		}
		if got := b.Star.Marked(c.load, w.House); got != c.marked {
			t.Errorf("%d g: marked %v", c.load, got)
		}
	}
}

// standard are the limits for therapeutic horses: 6 h a day and 6 days a week
// (survey of the US therapeutic centres, J. Equine Vet. Sci. 2020, quoting the
// association's standard), three sessions in a row (a Texas Tech thesis).
var standard = model.Limits{DayMinutes: 360, WeekDays: 6, RunSessions: 3}

func TestUnderTheStandardSixHoursAreKeptAndAMinuteMoreIsStopped(t *testing.T) {
	for extra, want := range [][]string{nil, {"day's work"}} {
		b := fixtures.New()
		b.House.Limits = standard
		var turns []*model.Turn
		for i := range 6 {
			l := b.Lesson(fixtures.Monday, fmt.Sprintf("%02d:00-%02d:00", 8+2*i, 9+2*i), b.Mia)
			if i == 5 {
				l.End += model.Minute(extra)
			}
			turns = append(turns, b.Turn(b.Star, b.Oak))
		}
		w := b.Week()
		wantTold(t, w.Audit(fixtures.Plan(w, turns...)), want...)
	}
}

func TestUnderTheStandardTheSixthDateIsKeptAndTheSeventhIsStopped(t *testing.T) {
	for extra, want := range [][]string{nil, {"week's work"}} {
		b := fixtures.New()
		b.House.Limits = standard
		var turns []*model.Turn
		for d := range model.Date(6 + extra) {
			b.Lesson(fixtures.Monday+d, "10:00-11:00", b.Mia)
			turns = append(turns, b.Turn(b.Star, b.Oak))
		}
		w := b.Week()
		wantTold(t, w.Audit(fixtures.Plan(w, turns...)), want...)
	}
}

func TestUnderTheStandardTheThirdSessionInARowIsKeptAndTheFourthIsStopped(t *testing.T) {
	for extra, want := range [][]string{nil, {"run of work"}} {
		b := fixtures.New()
		b.House.Limits = standard
		var turns []*model.Turn
		for i := range 3 + extra {
			b.Lesson(fixtures.Monday, fmt.Sprintf("%02d:00-%02d:45", 8+i, 8+i), b.Mia)
			turns = append(turns, b.Turn(b.Star, b.Oak))
		}
		w := b.Week()
		wantTold(t, w.Audit(fixtures.Plan(w, turns...)), want...)
	}
}

// Trade size charts: labels in centimetres are inches x 2.5, not x 2.54.
func TestAGirthOf24InchesIsLabelled60Centimetres(t *testing.T) {
	for in, cm := range map[float64]int{24: 60, 26: 65, 28: 70, 48: 120, 54: 135} {
		if got := model.Inches(in).Centimetres(); got != cm*10 {
			t.Errorf("%g in: %d mm, want %d cm", in, got, cm)
		}
	}
}

// Common practice: long billets take a short girth, short billets a long one,
// western rigging a cinch, and nothing takes another.
func TestLongBilletsNeverTakeALongGirthNorShortBilletsAShortOne(t *testing.T) {
	billets := map[model.Family]string{model.ShortGirth: "long billets", model.LongGirth: "short billets", model.Cinch: "western rigging"}
	for seat, words := range billets {
		if got := seat.Takes(); got != words {
			t.Errorf("a seat that takes a %s girth has %s, want %s", seat, got, words)
		}
		for girth := range billets {
			b := fixtures.New()
			b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
			turn := b.Turn(b.Star, b.Oak)
			b.Oak.Family, turn.Girth.Family = seat, girth
			w := b.Week()
			if got := len(w.Audit(fixtures.Plan(w, turn))) == 0; got != (seat == girth) {
				t.Errorf("%s with a girth of the %s family: allowed %v", words, girth, got)
			}
		}
	}
}

// Trade chart: English seat by thigh, buttock to knee.
func TestTheSeatForAThighIsTheTradeCharts(t *testing.T) {
	for _, c := range []struct {
		tenths model.Length // of an inch
		seat   float64
	}{
		{140, 15}, {165, 15}, {166, 16}, {185, 16}, {186, 16.5}, {200, 16.5}, {201, 17}, {215, 17},
		{216, 17.5}, {230, 17.5}, {231, 18}, {260, 18},
	} {
		if got := model.SeatByThigh((c.tenths*model.Inch + 5) / 10); got != model.Inches(c.seat) {
			t.Errorf("%d tenths of an inch: %s, want %g in", c.tenths, got, c.seat)
		}
	}
}

// Trade chart: a western seat is labelled 2 in less than an English one.
func TestAWesternSeatIsLabelledTwoInchesLess(t *testing.T) {
	r := &model.Rider{SeatMin: model.Inches(17), SeatMax: model.Inches(17)}
	for _, c := range []struct {
		kind model.Kind
		in   float64
		fits bool
	}{{model.Western, 15, true}, {model.Western, 17, false}, {model.Saddle, 17, true}, {model.Saddle, 15, false}} {
		if fits, known := r.SeatFits(&model.Piece{Kind: c.kind, Label: model.Inches(c.in)}); fits != c.fits || !known {
			t.Errorf("%s of %g in: fits %v", c.kind, c.in, fits)
		}
	}
}

// A hand is four inches: 15.2 is 15 hands 2 inches, which is 157.48 cm.
func TestAHandIsFourInches(t *testing.T) {
	if got := 15*model.Hand + 2*model.Inch; got != 15748 {
		t.Errorf("15.2 hands are %d tenths of a millimetre", got)
	}
}

// The pound is 0.45359237 kg by the agreement of 1959.
func TestPoundsAreExactToTheGram(t *testing.T) {
	for lb, g := range map[float64]model.Grams{1: 454, 1000: 453_592, 1040: 471_736, 2204.6226: 1_000_000} {
		if got := model.Pounds(lb); got != g {
			t.Errorf("%g lb: %d g, want %d", lb, got, g)
		}
	}
}

// Ages: SI 2018/486 Sch. 5 para 6(4), 3 years; RDA UK, 5 for adaptive riding.
// Ceilings: 6 h a day (Certified Horsemanship Association), 3 h in a row (from
// memory). Load: Equestrian Australia 2022, 20 %.
func TestTheDefaultsLieWithinWhatIsPublished(t *testing.T) {
	h := model.DefaultHouse()
	if h.AgeRidden != 3 || h.AgeAdaptive != 5 || h.LoadPercent != 20 || h.MarkPercent != 15 {
		t.Errorf("%+v", h)
	}
	if h.Limits.DayMinutes > model.MostDayMinutes || h.Limits.RunMinutes > model.MostRunMinutes || h.Limits.WeekDays > 6 {
		t.Errorf("%+v", h.Limits)
	}
	if model.MostDayMinutes != 6*60 || model.MostRunMinutes != 3*60 {
		t.Error("the ceilings are 6 h and 3 h")
	}
	if gaps := []model.Minute{h.Stay, h.Same, h.Other, h.Move}; !slices.IsSorted(gaps) {
		t.Errorf("gaps %v", gaps)
	}
}
