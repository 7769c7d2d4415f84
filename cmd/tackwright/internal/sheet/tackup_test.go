package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func clock(s string) Clock { return Clock(fixtures.At(s)) }

func TestAFirstTackUpIsOnTheReadyTimeBeforeTheLesson(t *testing.T) {
	b := fixtures.New()
	b.Lesson(monday, "10:00-10:45", b.Mia)
	u := pull(t, b, b.Turn(b.Star, b.Oak)).TackUps[0]
	if u.OnBy != clock("09:50") || u.Again {
		t.Errorf("on by %v, again %v", u.OnBy, u.Again)
	}
	if u.OffFrom != clock("10:45") {
		t.Errorf("off from %v", u.OffFrom)
	}
}

func TestAfterARestAHorseIsTackedUpAgainAndAfterLessItIsNot(t *testing.T) {
	for _, c := range []struct {
		second  string
		tackUps int
	}{{"11:15-12:00", 2}, {"11:14-12:00", 1}} { // the rest is 30 min
		b := fixtures.New()
		b.Lesson(monday, "10:00-10:45", b.Mia)
		b.Lesson(monday, c.second, b.Mia)
		ups := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)).TackUps
		if len(ups) != c.tackUps {
			t.Fatalf("%s: %d tack-ups, want %d", c.second, len(ups), c.tackUps)
		}
		if len(ups) == 2 && (ups[1].OnBy != clock("11:05") || !ups[1].Again) {
			t.Errorf("the second is on by %v, again %v", ups[1].OnBy, ups[1].Again)
		}
	}
}

func TestATackUpThatWaitsForASaddleIsOnByTheStart(t *testing.T) {
	b := bays(1)
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Mia)
	u := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak)).TackUps[1]
	if u.Horse != "Moss" || u.OnBy != clock("11:00") || *u.CrossTies != (Bay{clock("10:50"), clock("11:00")}) {
		t.Errorf("%s is on by %v, in the bay %v", u.Horse, u.OnBy, *u.CrossTies)
	}
	if p := u.Pieces[0]; p.From != "Star" || p.OffAt != clock("10:45") {
		t.Errorf("the saddle comes from %q at %v", p.From, p.OffAt)
	}
}

func TestAfterWorkThatNamesNoTackAHorseIsTackedUpByTheStart(t *testing.T) {
	b := bays(1)
	b.Work(b.Star, monday, "09:30-09:50")
	b.Lesson(monday, "10:00-10:45", b.Mia)
	u := pull(t, b, b.Turn(b.Star, b.Oak)).TackUps[0]
	if u.OnBy != clock("10:00") || *u.CrossTies != (Bay{clock("09:50"), clock("10:00")}) || u.Again {
		t.Errorf("on by %v, in the bay %v, again %v", u.OnBy, *u.CrossTies, u.Again)
	}
}

func TestATackUpDoesNotWaitForAnExtra(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	ash := b.Saddle("ash", moss)
	b.Mia.Extras = []model.ExtraNeed{{Kind: "loop reins"}}
	reins := b.Extra("L1", "loop reins", "")
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Mia)
	l := pull(t, b, b.Turn(b.Star, b.Oak, reins), b.Turn(moss, ash, reins))
	if u := l.TackUps[1]; u.OnBy != clock("10:50") {
		t.Errorf("%s is on by %v", u.Horse, u.OnBy)
	}
	if c := l.Changeovers[0]; c.On[0].Tag != "L1" || c.OffAt != clock("10:45") || c.OnBy != clock("11:00") {
		t.Errorf("the reins: %+v", c)
	}
}

func TestNoMoreHorsesAreTackedAtOnceThanThereAreBays(t *testing.T) {
	b := bays(2)
	turns := []*model.Turn{b.Turn(b.Star, b.Oak)}
	riders := []*model.Rider{b.Mia}
	for _, name := range []string{"Ash", "Birch", "Cob", "Dun"} {
		h := b.Horse(name)
		turns = append(turns, b.Turn(h, b.Saddle("saddle of "+name, h)))
		riders = append(riders, b.Rider("N "+name))
	}
	b.Lesson(monday, "10:00-10:45", riders...)
	l := pull(t, b, turns...)
	var begin []model.Minute
	for _, u := range l.TackUps {
		begin = append(begin, model.Minute(u.CrossTies.From))
	}
	want := []model.Minute{hm("09:20"), hm("09:30"), hm("09:30"), hm("09:40"), hm("09:40")}
	if !slices.Equal(begin, want) || l.CrossTies.First != clock("09:20") {
		t.Errorf("begin %v, first %v, want %v", begin, l.CrossTies.First, want)
	}
}

func hm(s string) model.Minute { return fixtures.At(s) }

// shared are two horses that wait for a saddle each, at the same hour.
func shared(n int) (*fixtures.Barn, []*model.Turn) {
	b := bays(n)
	moss, fern, dun := b.Horse("Moss"), b.Horse("Fern"), b.Horse("Dun")
	b.Row(moss, b.Oak)
	ash := b.Saddle("ash", dun, fern)
	b.Lesson(monday, "10:00-10:45", b.Mia, b.Rider("Leo"))
	b.Lesson(monday, "11:00-11:45", b.Mia, b.Riders[1])
	return b, []*model.Turn{b.Turn(dun, ash), b.Turn(b.Star, b.Oak), b.Turn(fern, ash), b.Turn(moss, b.Oak)}
}

func TestBaysThatAreTooFewAreSaidWithTheHorsesNames(t *testing.T) {
	b, turns := shared(1)
	l := pull(t, b, turns...)
	want := Crowd{Horses: []string{"Fern", "Moss"}, From: clock("10:45"), Until: clock("11:00"), Without: "Fern"}
	if len(l.CrossTies.TooFew) != 1 || !slices.Equal(l.CrossTies.TooFew[0].Horses, want.Horses) ||
		l.CrossTies.TooFew[0].From != want.From || l.CrossTies.TooFew[0].Until != want.Until || l.CrossTies.TooFew[0].Without != want.Without {
		t.Fatalf("too few: %+v, want %+v", l.CrossTies.TooFew, want)
	}
	for _, u := range l.TackUps {
		if u.NoBay != (u.Horse == "Fern") || u.NoBay == (u.CrossTies != nil) {
			t.Errorf("%s: no bay %v, bay %v", u.Horse, u.NoBay, u.CrossTies)
		}
	}
	golden(t, "too-few-bays.txt", l.Text())
}

func TestAHorseThatHasTooLittleTimeAloneIsSaid(t *testing.T) {
	b := bays(3)
	b.House.Tack = 16 // the gap is the 15 that a piece needs to move
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Mia)
	text := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak)).Text()
	want := "! Moss cannot be tacked up in time: it is free from 10:45 and must be ready at 11:00."
	if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
		t.Error(text)
	}
}

func TestAHorseIsNotTackedUpAgainBeforeItsRideHasEnded(t *testing.T) {
	for _, c := range []struct {
		tack  model.Minute
		inBay bool
	}{{20, true}, {21, false}} { // off at 10:45, ready at 11:05
		b := bays(1)
		b.House.Tack = c.tack
		ash := b.Saddle("ash", b.Star)
		b.Lesson(monday, "10:00-10:45", b.Mia)
		b.Lesson(monday, "11:15-12:00", b.Mia)
		l := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, ash))
		if u := l.TackUps[1]; (u.CrossTies != nil) != c.inBay {
			t.Errorf("%d min: bay %v", c.tack, u.CrossTies)
		}
	}
}

func TestTackUpsAreListedInTheOrderInWhichHelpersBegin(t *testing.T) {
	b := bays(1)
	b.House.Tack = 15
	moss := b.Horse("Moss")
	ash := b.Saddle("ash", moss)
	b.Lesson(monday, "10:22-11:07", b.Mia)
	b.Lesson(monday, "11:37-12:00", b.Mia)
	b.Lesson(monday, "11:42-12:00", b.Rider("Leo")).Instructor = b.Person("Bea")
	l := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak), b.Turn(moss, ash))
	var got []string
	for _, u := range l.TackUps {
		got = append(got, fmt.Sprintf("%s %s, on by %s", u.Horse, u.CrossTies.From, u.OnBy))
	}
	// Star is back at 11:07 only, so Moss, who is wanted later, has to go first.
	want := []string{"Star 09:57, on by 10:12", "Moss 10:57, on by 11:32", "Star 11:12, on by 11:27"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestEnoughBaysAreNotComplainedOf(t *testing.T) {
	b, turns := shared(2)
	if l := pull(t, b, turns...); len(l.CrossTies.TooFew) > 0 {
		t.Errorf("too few: %+v", l.CrossTies.TooFew)
	}
}

func TestACentreThatStatesNoBaysHasNoTimesInThem(t *testing.T) {
	b := fixtures.New()
	b.Lesson(monday, "10:00-10:45", b.Mia)
	l := pull(t, b, b.Turn(b.Star, b.Oak))
	if l.CrossTies != nil || l.TackUps[0].CrossTies != nil {
		t.Errorf("%+v, %+v", l.CrossTies, l.TackUps[0].CrossTies)
	}
}

func TestOtherWorkThatNamesTackIsTackedUpForAndWorkThatDoesNotIsNot(t *testing.T) {
	b := fixtures.New()
	work := b.Work(b.Star, monday, "08:00-08:30")
	work.Kind, work.Person = "schooling", b.Ann
	if l := pull(t, b); len(l.TackUps) != 0 || len(l.Works) != 1 {
		t.Errorf("%d tack-ups, %d works", len(l.TackUps), len(l.Works))
	}
	turn := b.Turn(b.Star, b.Oak)
	work.Seat, work.Pads, work.Girth = turn.Seat, turn.Pads, turn.Girth
	u := pull(t, b).TackUps[0]
	if r := u.Rides[0]; r.Work != "schooling" || r.By != "Ann" || r.Rider != "" || u.OnBy != clock("07:50") {
		t.Errorf("%+v", u)
	}
}

func TestAPieceIsFetchedFromWhereItIsKept(t *testing.T) {
	b := fixtures.New()
	b.Oak.Rack = "A3"
	b.Tag("oak girth").WithHorse, b.Tag("oak girth").Rack = b.Star, "G9"
	b.Mia.Extras = []model.ExtraNeed{{Kind: "hand hold"}}
	hold := b.Extra("H1", "hand hold", "")
	hold.WithSeat = b.Saddle("ash")
	hold.WithSeat.Rack = "A4"
	b.Lesson(monday, "10:00-10:45", b.Mia)
	got := map[string]string{}
	for _, p := range pull(t, b, b.Turn(b.Star, b.Oak, hold)).TackUps[0].Pieces {
		got[p.Tag] = where(p)
	}
	for tag, want := range map[string]string{"oak": "A3", "oak pad": "with oak", "oak girth": "at Star", "H1": "A4, with ash"} {
		if got[tag] != want {
			t.Errorf("%s: %q, want %q", tag, got[tag], want)
		}
	}
}

func TestPadsOfAStackSayWhichIsOnFirst(t *testing.T) {
	b := fixtures.New()
	riser := b.Piece(&model.Piece{Tag: "R1", Kind: model.Pad})
	b.Lesson(monday, "10:00-10:45", b.Mia)
	turn := pads(b, b.Turn(b.Star, b.Oak), riser, b.Tag("oak pad"))
	for _, p := range pull(t, b, turn).TackUps[0].Pieces {
		if want := map[string]int{"R1": 1, "oak pad": 2}[p.Tag]; p.Layer != want {
			t.Errorf("%s is layer %d, want %d", p.Tag, p.Layer, want)
		}
	}
}

func TestAGirthsSizeIsInTheCentresUnitsAndASeatsInInches(t *testing.T) {
	// Label in cm = inches x 2.5, not 2.54: 24/60, 26/65 (trade size charts).
	girth := &model.Piece{Kind: model.Girth, Label: model.Inches(26)}
	odd := &model.Piece{Kind: model.Girth, Label: model.Inches(25)}
	seat := &model.Piece{Kind: model.Saddle, Label: model.Inches(16.5)}
	pad := &model.Piece{Kind: model.Pad, Size: "full"}
	for _, c := range []struct {
		piece *model.Piece
		units model.Units
		want  string
	}{{girth, model.Metric, "65 cm"}, {girth, model.Imperial, "26 in"}, {odd, model.Metric, "62.5 cm"},
		{seat, model.Metric, "16.5 in"}, {pad, model.Metric, "full"}, {&model.Piece{Kind: model.Pad}, model.Metric, ""}} {
		if got := SizeOf(c.piece, c.units); got != c.want {
			t.Errorf("%s in %s units: %q, want %q", c.piece.Kind, c.units, got, c.want)
		}
	}
}
