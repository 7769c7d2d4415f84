package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// told names the rules of the violations, inherited ones in brackets, each once.
func told(vs []model.Violation) []string {
	var names []string
	for _, v := range vs {
		name := v.Rule.Name
		if v.Inherited {
			name = "(" + name + ")"
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func wantTold(t *testing.T, vs []model.Violation, want ...string) {
	t.Helper()
	if got := told(vs); !slices.Equal(got, want) {
		t.Errorf("told %q, want %q", got, want)
		for _, v := range vs {
			t.Log(v.Rule.Name+":", v.Words)
		}
	}
}

// overworked is a barn whose horse has lunged 70 min on Monday, of 60 allowed,
// and a lesson at three.
func overworked() *fixtures.Barn {
	b := fixtures.New()
	b.House.Limits.DayMinutes = 60
	b.Work(b.Star, fixtures.Monday, "09:00-10:10")
	b.Lesson(fixtures.Monday, "15:00-15:30", b.Mia)
	return b
}

func TestASumThatFactsAloneExceedIsInherited(t *testing.T) {
	w := overworked().Week()
	wantTold(t, w.Audit(fixtures.Plan(w)), "(day's work)")
}

func TestASumThatFactsAloneExceedAdmitsNoFurtherRide(t *testing.T) {
	b := overworked()
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak))), "day's work")
}

func TestAnInheritedViolationBesideAPlanThatAddsNothingToItIsNotBroken(t *testing.T) {
	b := overworked()
	bay := b.Horse("Bay")
	elm := b.Saddle("elm", bay)
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w, b.Turn(bay, elm))), "(day's work)")
}

func TestWhatIsInheritedOnOtherDatesIsNotTold(t *testing.T) {
	b := overworked()
	b.From, b.Days = fixtures.Monday+1, 2
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w)))
}

func TestBrokenOnesComeBeforeInheritedOnes(t *testing.T) {
	b := overworked()
	b.Mia.FormUntil = fixtures.Monday - 1
	b.Star.Out = []model.Out{{Why: model.Ill, From: model.Instant{Date: fixtures.Monday, Minute: fixtures.At("14:00")}}}
	bay := b.Horse("Bay")
	elm := b.Saddle("elm", bay)
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w, b.Turn(bay, elm))), "form in date", "(day's work)")
}

func TestPostedWorkOfTheSameWeekCountsAndThatOfAnotherDoesNot(t *testing.T) {
	for _, c := range []struct {
		name   string
		posted model.Date // from the Monday of the week
		want   []string
	}{
		{"the Sunday before", -1, nil},
		{"the Monday of the week", 0, []string{"week's work"}},
		{"the Sunday of the week", 6, []string{"week's work"}},
		{"the Monday after", 7, nil},
	} {
		b := fixtures.New()
		b.House.Limits.WeekMinutes = 100
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+c.posted, "10:00-11:00")
		b.From, b.Days = fixtures.Monday+2, 1
		b.Lesson(b.From, "10:00-11:00", b.Mia)
		w := b.Week()
		if got := told(w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak)))); !slices.Equal(got, c.want) {
			t.Errorf("%s: told %q, want %q", c.name, got, c.want)
		}
	}
}

func TestDatesInARowRunOverBothEdgesOfTheDatesPlanned(t *testing.T) {
	b := fixtures.New()
	b.House.Limits.RowDates = 6
	for _, d := range []model.Date{-3, -2, -1, 1, 2, 3} {
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+d, "10:00-11:00")
	}
	b.Days = 1
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Week()
	vs := w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak)))
	wantTold(t, vs, "week's work")
	if len(vs) > 0 && len(vs[0].Stints) != 7 {
		t.Errorf("%d stints take part, want 7", len(vs[0].Stints))
	}
}

func TestAStartedRideIsAFactAsItWasTold(t *testing.T) {
	b := fixtures.New()
	first := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Lesson(fixtures.Monday, "11:00-12:00", b.Rider("Noor"))
	b.Tell(first, b.Mia, b.Turn(b.Star, b.Oak))
	b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("10:00")}
	b.House.Limits.DaySessions = 1
	w := b.Week()
	if got := []model.RideState{w.Rides[0].State, w.Rides[1].State}; !slices.Equal(got, []model.RideState{model.Started, model.Open}) {
		t.Fatalf("states %v", got)
	}
	same := b.Turn(b.Star, b.Oak)
	wantTold(t, w.Audit(fixtures.Plan(w, same)))
	wantTold(t, w.Audit(fixtures.Plan(w, same, b.Turn(b.Star, b.Oak))), "day's work")
	wantTold(t, w.Audit(fixtures.Plan(w)), "as told")
}

func TestARideAMinuteAheadIsStillOpen(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("09:59")}
	if w := b.Week(); w.Rides[0].State != model.Open {
		t.Errorf("state %v", w.Rides[0].State)
	}
}

func TestARideOfAPastHourForWhichNothingWasPostedIsOff(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("10:01")}
	w := b.Week()
	if w.Rides[0].State != model.Off {
		t.Errorf("state %v", w.Rides[0].State)
	}
	if got := w.Score(fixtures.Plan(w)); got[0].Value != 0 {
		t.Errorf("%d on the ground", got[0].Value)
	}
}

func TestARideUnderWayEndsInTheMinuteInWhichItsHorseGoesOut(t *testing.T) {
	b := fixtures.New()
	b.House.Limits.WeekMinutes = 40
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("10:41")}
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, From: fixtures.At("10:40")})
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak))))
	if s := w.Facts[0]; s.End != fixtures.At("10:40") || s.Work != 40*100*100 {
		t.Errorf("ends %s after %d of work", s.End, s.Work)
	}
}

func TestAWorkUnderWayEndsWithItsHorseAndOneToComeIsSuspended(t *testing.T) {
	b := fixtures.New()
	b.Work(b.Star, fixtures.Monday, "10:00-11:00")
	b.Work(b.Star, fixtures.Monday+1, "10:00-11:00")
	b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("10:41")}
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, From: fixtures.At("10:40")})
	w := b.Week()
	if len(w.Facts) != 1 || w.Facts[0].End != fixtures.At("10:40") {
		t.Errorf("facts %v", w.Facts)
	}
	if len(w.Suspended) != 1 {
		t.Errorf("suspended %q", w.Suspended)
	}
}

func TestAWorkInAClosedArenaIsSuspended(t *testing.T) {
	b := fixtures.New()
	b.Work(b.Star, fixtures.Monday, "10:00-11:00").Arena = b.Ring
	b.Note(model.Note{Kind: model.NoteArenaClosed, Arena: b.Ring, Words: "storm"})
	w := b.Week()
	if len(w.Facts) != 0 || len(w.Suspended) != 1 {
		t.Errorf("facts %v, suspended %q", w.Facts, w.Suspended)
	}
}

func TestWorkAndItsFactorsAreNeverRounded(t *testing.T) {
	b := fixtures.New()
	b.House.Factors = map[string]model.Percent{"group": 33}
	b.Star.Factor = 33
	b.Lesson(fixtures.Monday, "10:00-11:01", b.Mia)
	w := b.Week()
	if got := w.WorkOf(w.Rides[0], b.Star); got != 61*33*33 {
		t.Errorf("%d, want 61 min x 33 %% x 33 %%", got)
	}
}

func TestATurnWithNoHorseIsNotAWholeSet(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Week()
	turn := b.Turn(b.Star, b.Oak)
	turn.Horse = nil
	wantTold(t, w.Audit(fixtures.Plan(w, turn)), "whole set")
}

func TestWhatIsInheritedIsToldOnTheLastDatePlannedToo(t *testing.T) {
	b := overworked()
	b.From, b.Days = fixtures.Monday-2, 3
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w)), "(day's work)")
}

func TestAPlanThatIsTooShortLeavesTheRestOnTheGround(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Week()
	wantTold(t, w.Audit(&model.Plan{}))
}

func TestAViolationNamesTheRidesThatTakePart(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Lesson(fixtures.Monday, "12:00-13:00", b.Rider("Noor"))
	w := b.Week()
	bare := b.Turn(b.Star, b.Oak)
	bare.Girth = nil
	vs := w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak), bare))
	if len(vs) != 1 || len(vs[0].Stints) != 1 || vs[0].Stints[0].Ride != w.Rides[1] {
		t.Errorf("%+v", vs)
	}
}
