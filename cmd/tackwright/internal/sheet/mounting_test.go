package sheet

import (
	"fmt"
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// order is where and when the riders of a barn's Monday mount, by rider.
func order(t *testing.T, b *fixtures.Barn, turns ...*model.Turn) map[string]string {
	t.Helper()
	pull(t, b, turns...) // the plan keeps every rule
	w := b.Week()
	d := newDay(w, fixtures.Plan(w, turns...), monday)
	got := map[string]string{}
	for s, m := range d.mounts() {
		got[s.Rider.First] = fmt.Sprintf("%s %d %s", m.place, m.turn, m.at)
	}
	return got
}

func TestARampServesOneRiderAtATimeAndTheQuickestFirst(t *testing.T) {
	b := fixtures.New()
	b.Ring.Mounting = []string{"ramp", "block", "ground"}
	var turns []*model.Turn
	l := b.Lesson(monday, "09:00-09:45")
	for _, r := range []struct {
		name    string
		minutes int
		places  []string
	}{{"Slow", 7, []string{"ramp"}}, {"Quick", 3, []string{"ramp", "block"}}, {"Unknown", 0, []string{"ramp"}}, {"Block", 5, []string{"block"}},
		{"Ground A", 1, []string{"ground"}}, {"Ground B", 1, []string{"ground"}}} {
		rider := b.Rider(r.name)
		rider.MountMinutes, rider.Mounting = r.minutes, r.places
		l.Places = append(l.Places, model.Place{Rider: rider})
		h := b.Horse("horse of " + r.name)
		turns = append(turns, b.Turn(h, b.Saddle("saddle of "+r.name, h)))
	}
	// By start, lesson and rider: Block, Ground A, Ground B, Quick, Slow, Unknown.
	byName := []*model.Turn{turns[3], turns[4], turns[5], turns[1], turns[0], turns[2]}
	got := order(t, b, byName...)
	for rider, want := range map[string]string{
		"Quick": "ramp 1 09:00", "Unknown": "ramp 2 09:03", "Slow": "ramp 3 09:07",
		"Block": "block 1 09:00", "Ground A": "ground 0 09:00", "Ground B": "ground 0 09:00",
	} {
		if got[rider] != want {
			t.Errorf("%s: %q, want %q", rider, got[rider], want)
		}
	}
}

// A lesson of two rides that need one leader and three sidewalkers between them.
func TestALessonSaysOfWhatItIsShortForAllItsRidersToRide(t *testing.T) {
	for _, x := range []struct {
		have  model.Hands
		seats int
		want  string
	}{
		{model.NoHands, 2, "[needs 1 leader and 3 sidewalkers at once; nobody gave the number that it can count on]"},
		{model.Hands{Leaders: 1, Sidewalkers: 3}, 2, "[needs 1 leader and 3 sidewalkers at once; can count on 1 leader and 3 sidewalkers]"},
		{model.Hands{Leaders: 1, Sidewalkers: 1}, 1, "[needs 0 leaders and 1 sidewalker at once; can count on 1 leader and 1 sidewalker " +
			"! SHORT by 2 sidewalkers for all its riders to ride]"},
	} {
		b := fixtures.New()
		zoe := b.Rider("Zoe")
		b.Mia.Sidewalkers, zoe.Leader, zoe.Sidewalkers = 1, true, 2
		moss := b.Horse("Moss")
		ash := b.Saddle("ash", moss)
		l := b.Lesson(monday, "09:00-09:45", b.Mia, zoe)
		l.Hands = x.have
		turns := []*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(moss, ash)}[:x.seats]
		pull(t, b, turns...)
		w := b.Week()
		d := newDay(w, fixtures.Plan(w, turns...), monday)
		if got := fmt.Sprint(d.helperWords(w.Meetings[0])); got != x.want {
			t.Errorf("%+v: %s, want %s", x.have, got, x.want)
		}
	}
}

// The fit chart says what is wrong with a row on the day it is printed.
func TestTheFitChartMarksWhatIsDue(t *testing.T) {
	for until, want := range map[model.Date]string{
		0: "! NOT KNOWN", monday - 1: "22 Nov 2026\n! OUT OF DATE", monday: "23 Nov 2026\n! SOON",
		monday + 60: "22 Jan 2027\n! SOON", monday + 61: "23 Jan 2027",
	} {
		b := fixtures.New()
		b.Chart[0].Until = until
		s := FitChart(b.Centre, monday, posted, nil)
		cells := s.Parts[0].Table.Rows[1].Cells
		if got := cells[5].Text; got != want {
			t.Errorf("%s: %q, want %q", until, got, want)
		}
	}
	b := fixtures.New()
	b.House.Elsewhere.FitDates = true
	if got := paper.Written(FitChart(b.Centre, monday, posted, nil)); !strings.Contains(got, "not checked") {
		t.Error(got)
	}
}
