package sheet

import (
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// follow is Moss riding under Oak at an hour, when Star has had it until 10:45.
func follow(t *testing.T, hours string, change ...func(*fixtures.Barn)) *PullList {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	b.Oak.Rack = "A4"
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, hours, b.Mia)
	b.Also(change...)
	return pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak))
}

func TestAHorseThatWaitsForSharedTackSaysSoAndHasAllElseAtTheReadyTime(t *testing.T) {
	l := follow(t, "11:00-11:45", func(b *fixtures.Barn) {
		b.Row(b.Horses[1], b.Oak).Pads = nil
		b.Mia.Extras = []model.ExtraNeed{}
	})
	u := l.TackUps[1]
	if u.OnBy != clock("11:00") || u.OthersBy != clock("10:50") || !slices.Equal(tags(u.WaitsFor), []string{"oak", "oak pad", "oak girth"}) {
		t.Errorf("%+v", u)
	}
	text := strings.Join(strings.Fields(l.Text()), " ")
	for _, want := range []string{"! waits for oak and oak girth from Star (off 10:45): no ready time", "all else at the horse by 10:50",
		"> saddle oak 17 in from Star, 10:45"} {
		if !strings.Contains(text, want) {
			t.Errorf("does not say %q:\n%s", want, l.Text())
		}
	}
	if !strings.Contains(l.CSV(), "pull,10:50,Moss,,bridle or halter") {
		t.Error(l.CSV())
	}
}

func TestWhatHungAtItsRackMeanwhileIsFetchedThere(t *testing.T) {
	l := follow(t, "14:00-14:45")
	u := l.TackUps[1]
	if len(u.WaitsFor) > 0 || !u.Pieces[0].Waits {
		t.Errorf("%+v", u)
	}
	text := l.Text()
	if strings.Contains(text, "from Star") || strings.Count(text, "A4 (after Star)") != 2 {
		t.Error(text)
	}
}

// rules.md: a horse that stays in the ring needs no time where seat, pads and
// girth stay, whatever extras it gets.
func TestAnExtraThatChangesInNoTimeIsFlaggedAsDoneInTheRing(t *testing.T) {
	b := fixtures.New()
	leo := b.Rider("Leo")
	leo.Extras = []model.ExtraNeed{{Kind: "hand hold"}}
	hold := b.Extra("X1", "hand hold", "")
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "10:45-11:30", leo)
	l := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak, hold))
	if len(l.Changeovers) != 1 || !l.Changeovers[0].NoTime || !strings.Contains(l.Text(), "! NO TIME BETWEEN: done in the ring") {
		t.Errorf("%+v\n%s", l.Changeovers, l.Text())
	}
}

func TestAPadThatCameOffBeforeItsSeatIsPutAwayByItsOwnLastUse(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Piece(&model.Piece{Tag: "thick pad", Kind: model.Pad, Skin: true, WithHorse: moss})
	b.Row(moss, b.Oak)
	b.Lesson(monday, "09:00-09:45", b.Mia)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	var got []string
	for _, a := range pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak)).PutAway {
		got = append(got, a.Piece.Tag+" "+a.From.String()+" "+a.Horse)
		if len(a.With) > 0 {
			t.Errorf("%s takes %v along", a.Piece.Tag, tags(a.With))
		}
	}
	slices.Sort(got)
	want := []string{"oak 10:45 Moss", "oak girth 10:45 Moss", "oak pad 09:45 Star", "thick pad 10:45 Moss"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestWhereNoMountingPlaceIsRecordedTheSheetSaysSo(t *testing.T) {
	b := fixtures.New()
	b.Ring.Mounting, b.House.Mounting = []string{"ramp", "block"}, false
	b.Lesson(monday, "10:00-10:45", b.Mia)
	if text := pull(t, b, b.Turn(b.Star, b.Oak)).Text(); !strings.Contains(text, "mounts: not recorded") || strings.Contains(text, "ramp") {
		t.Error(text)
	}
}

func TestWhatComesOffAtAChangeoverIsInTheSpreadsheetWithItsTimes(t *testing.T) {
	b, turns := ordinary()
	text := pull(t, b, turns...).CSV()
	for _, want := range []string{
		"pull,08:50,Juniper,oak,saddle,17 in,A10,,,\"brown, blue tape on the cantle\",Mia K,Bluebell,2026-11-23,\"version 3, posted by Ana Reyes on Fri 20 Nov, 17:05\",2026-11-23 07:10,,08:30,08:40\r\n",
		"\"changeover, off\",09:45,Moss,fleece,",
		"changeover,10:00,Moss,ash,saddle,17 in,A2,,Pebble,,Ada,Heron,2026-11-23,\"version 3, posted by Ana Reyes on Fri 20 Nov, 17:05\",2026-11-23 07:10,09:45,,\r\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no row %q in\n%s", want, text)
		}
	}
}
