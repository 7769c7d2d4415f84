package sheet

import (
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// mended is a Monday that was posted with Mia on Star at 10:00 and Leo on Star at
// 11:00; now Mia rides Moss in Star's saddle, and Leo as posted.
func mended(t *testing.T) *Moved {
	t.Helper()
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Rider("Leo"))
	w := b.Week()
	told := &model.Posted{Version: 1, From: monday, Until: monday}
	for _, r := range w.Rides {
		told.Told = append(told.Told, model.Told{Date: monday, Start: r.Start, End: r.End, Lesson: r.Meeting.Lesson, Rider: r.Rider, Turn: b.Turn(b.Star, b.Oak)})
	}
	b.Posted = append(b.Posted, told)
	w = b.Centre.Repair(monday, 1, model.Instant{})
	return WhatMoved(w, fixtures.Plan(w, b.Turn(moss, b.Oak), b.Turn(b.Star, b.Oak)), monday, posted)
}

func TestTheBarnIsToldWhatTheOtherHorseWears(t *testing.T) {
	m := mended(t)
	if len(m.Moves) != 1 {
		t.Fatalf("%+v", m.Moves)
	}
	x := m.Moves[0]
	if x.Rider != "Mia" || x.How != "another horse" || x.Was != "Star" || x.Now != "Moss" || x.Start != clock("10:00") {
		t.Errorf("%+v", x)
	}
	if !slices.Equal(tags(x.Fetch), []string{"oak", "oak pad", "oak girth"}) || len(x.Return) != 0 {
		t.Errorf("fetch %v, return %v", tags(x.Fetch), tags(x.Return))
	}
}

func TestWhoIsNotTouchedIsNotTold(t *testing.T) {
	m := mended(t)
	for _, n := range m.People {
		if n.To == "Leo" {
			t.Errorf("Leo rides as posted, and is told %q", n.Words)
		}
	}
	i := slices.IndexFunc(m.People, func(n Note) bool { return n.To == "Mia" })
	if i < 0 || !slices.Equal(m.People[i].Words, []string{"still rides at 10:00, on another horse"}) {
		t.Errorf("%+v", m.People)
	}
}

func TestTheSheetOfWhatMovedFitsThePage(t *testing.T) {
	text := mended(t).Text()
	for _, want := range []string{"WHAT MOVED", "10:00  Mia", "fetch   oak", "TO BE TOLD", "still rides at 10:00", "saddle fitter"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if columns(line) > pageColumns {
			t.Errorf("too wide: %s", line)
		}
	}
}
