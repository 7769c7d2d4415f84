package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func tags(pieces []Piece) []string {
	var out []string
	for _, p := range pieces {
		out = append(out, p.Tag)
	}
	return out
}

func TestWhatStaysOnTheHorseIsNoChangeover(t *testing.T) {
	b := fixtures.New()
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "10:45-11:30", b.Rider("Leo"))
	l := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak))
	if len(l.Changeovers) != 0 || len(l.TackUps) != 1 || len(l.TackUps[0].Rides) != 2 || l.TackUps[0].Rides[1].NewTack {
		t.Errorf("%+v", l)
	}
}

func TestASaddleGoesFromOneHorseToAnotherInTheWindowBetweenTheirRides(t *testing.T) {
	b := fixtures.New()
	moss, ash := b.Horse("Moss"), b.Saddle("ash")
	b.Row(moss, b.Oak)
	b.Row(moss, ash)
	b.Lesson(monday, "10:00-10:45", b.Mia, b.Rider("Leo"))
	b.Lesson(monday, "11:00-11:45", b.Riders[1])
	l := pull(t, b, b.Turn(moss, ash), b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak))
	if len(l.Changeovers) != 2 {
		t.Fatalf("%+v", l.Changeovers)
	}
	own, got := l.Changeovers[0], l.Changeovers[1]
	if !own.SameHorse() || own.To.Horse != "Moss" || !slices.Equal(tags(own.Off), []string{"ash", "ash pad", "ash girth"}) || len(own.On) > 0 {
		t.Errorf("Moss takes off %+v", own)
	}
	if got.From.Horse != "Star" || got.To.Horse != "Moss" || got.From.Rider != "Mia" || got.To.Rider != "Leo" || got.Waits ||
		got.OffAt != clock("10:45") || got.OnBy != clock("11:00") || !slices.Equal(tags(got.On), []string{"oak", "oak pad", "oak girth"}) {
		t.Errorf("Moss gets %+v", got)
	}
	if r := l.TackUps[0].Rides[1]; r.Rider != "Leo" || !r.NewTack {
		t.Errorf("Moss's second ride: %+v", r)
	}
}

func TestAPadComesWithTheSeatThatItIsKeptWith(t *testing.T) {
	b := fixtures.New()
	moss, fern := b.Horse("Moss"), b.Horse("Fern")
	own := b.Piece(&model.Piece{Tag: "thick pad", Kind: model.Pad, Skin: true, WithHorse: moss})
	b.Row(moss, b.Oak)
	b.Row(fern, b.Oak)
	b.Lesson(monday, "09:00-09:45", b.Mia)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Mia)
	turn := b.Turn(moss, b.Oak)
	if turn.Pads[0] != own {
		t.Fatalf("Moss wears %s", turn.Pads[0].Tag)
	}
	var got []string
	for _, c := range pull(t, b, b.Turn(b.Star, b.Oak), turn, b.Turn(fern, b.Oak)).Changeovers {
		got = append(got, c.From.Horse+" to "+c.To.Horse+": "+strings.Join(tags(c.On), ", "))
	}
	want := []string{"Star to Moss: oak, oak girth", "Moss to Fern: oak, oak pad, oak girth"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestTackThatWaitsARestIsOnTheReadyTimeBeforeAndMayHangMeanwhile(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "14:00-14:45", b.Mia)
	c := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak)).Changeovers[0]
	if c.OffAt != clock("10:45") || c.OnBy != clock("13:50") || !c.Waits {
		t.Errorf("%+v", c)
	}
}

func TestChangeoversComeInTheOrderInWhichTackComesOff(t *testing.T) {
	b := fixtures.New()
	moss, fern := b.Horse("Moss"), b.Horse("Fern")
	ash := b.Saddle("ash", moss, fern)
	b.Row(fern, b.Oak)
	b.Lesson(monday, "09:00-09:45", b.Mia)
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Mia)
	b.Lesson(monday, "14:00-14:45", b.Mia)
	var got []string
	for _, c := range pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(moss, ash), b.Turn(fern, ash), b.Turn(fern, b.Oak)).Changeovers {
		got = append(got, fmt.Sprintf("%s %s to %s by %s", c.OffAt, c.From.Horse, c.To.Horse, c.OnBy))
	}
	if want := []string{"09:45 Star to Fern by 13:50", "10:45 Moss to Fern by 11:00"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAHorsePutsOnAndTakesOffBetweenTwoRidesOfARun(t *testing.T) {
	b := fixtures.New()
	fleece := b.Bareback("fleece", b.Star)
	fleece.Rack = "A11"
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Mia)
	b.Lesson(monday, "12:00-12:45", b.Mia)
	l := pull(t, b, b.Turn(b.Star, b.Oak), b.Turn(b.Star, fleece), b.Turn(b.Star, b.Oak))
	if len(l.Changeovers) != 2 {
		t.Fatalf("%+v", l.Changeovers)
	}
	first, second := l.Changeovers[0], l.Changeovers[1]
	if !slices.Equal(tags(first.On), []string{"fleece"}) || !slices.Equal(tags(first.Off), []string{"oak", "oak pad", "oak girth"}) {
		t.Errorf("first: %+v", first)
	}
	if first.OffAt != clock("10:45") || first.OnBy != clock("11:00") || first.Off[0].OnAgain != clock("12:00") {
		t.Errorf("first: %v to %v, again by %v", first.OffAt, first.OnBy, first.Off[0].OnAgain)
	}
	if !slices.Equal(tags(second.On), []string{"oak", "oak pad", "oak girth"}) || second.Off[0].OnAgain != 0 {
		t.Errorf("second: %+v", second)
	}
	golden(t, "there-and-back.txt", l.Text())
}

// TestEveryPieceIsCarriedFromWhereItIs follows each piece through the sheet as a
// helper would, tick by tick, and finds it on the horse of every ride.
func TestEveryPieceIsCarriedFromWhereItIs(t *testing.T) {
	b, turns := ordinary()
	l := pull(t, b, turns...)
	at := map[string]string{} // where each tag is now; "" in the tack room
	type event struct {
		at   Clock
		do   func()
		want int // events of one minute: off before on before rides
	}
	var events []event
	for _, u := range l.TackUps {
		for _, p := range u.Pieces {
			if p.From == "" {
				events = append(events, event{u.OnBy, func() { at[p.Tag] = u.Horse }, 1})
			}
		}
	}
	for _, c := range l.Changeovers {
		for _, p := range c.Off {
			events = append(events, event{c.OffAt, func() { at[p.Tag] = "" }, 0})
		}
		for _, p := range c.On {
			events = append(events, event{c.OnBy, func() {
				if p.From != "" && at[p.Tag] != p.From {
					t.Errorf("%s is to come from %s, and is %q", p.Tag, p.From, at[p.Tag])
				}
				at[p.Tag] = c.To.Horse
			}, 1})
		}
	}
	week := b.Week()
	for _, s := range week.Stints(fixtures.Plan(week, turns...)) {
		events = append(events, event{Clock(s.Start), func() {
			for _, p := range s.Turn.Pieces() {
				if at[p.Tag] != s.Turn.Horse.Name {
					t.Errorf("%s: %s is %q", s.Name, p.Tag, at[p.Tag])
				}
			}
		}, 2})
	}
	slices.SortStableFunc(events, func(a, b event) int {
		if a.at != b.at {
			return int(a.at - b.at)
		}
		return a.want - b.want
	})
	for _, e := range events {
		e.do()
	}
	back := map[string]bool{}
	for _, a := range l.PutAway {
		back[a.Piece.Tag] = true
		for _, p := range a.With {
			back[p.Tag] = true
		}
	}
	for tag := range at {
		if !back[tag] {
			t.Errorf("%s is not put away", tag)
		}
	}
}

func TestPutAwayGoesByRackSpotInWalkingOrder(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	ash := b.Saddle("ash", moss)
	b.Oak.Rack, ash.Rack, b.Tag("oak girth").Rack = "A10", "A9", "G1"
	b.Tag("ash girth").WithHorse = moss
	b.Row(moss, b.Oak)
	b.Lesson(monday, "10:00-10:45", b.Mia, b.Rider("Leo"))
	b.Lesson(monday, "12:00-12:45", b.Mia)
	var got []string
	for _, a := range pull(t, b, b.Turn(moss, ash), b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak)).PutAway {
		got = append(got, a.Piece.Tag+" "+a.From.String()+" "+a.Horse)
	}
	want := []string{"ash 10:45 Moss", "oak 12:45 Moss", "oak girth 12:45 Moss", "ash girth 10:45 Moss"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestRackSpotsComeInTheOrderOfTheWall(t *testing.T) {
	wall := []string{"", "A", "A1", "A2", "A2b", "A010", "A10", "B1", "wall 2, hook 5", "wall 2, hook 12"}
	shuffled := slices.Clone(wall)
	slices.Reverse(shuffled)
	slices.SortFunc(shuffled, natural)
	if !slices.Equal(shuffled, wall) {
		t.Errorf("got %q, want %q", shuffled, wall)
	}
}

func TestARiderBesideTheRingFindsWhatSheWears(t *testing.T) {
	b := fixtures.New()
	b.Mia.Wears = []string{"helmet M", "gait belt"}
	leo := b.Rider("Leo")
	leo.Wears = []string{"helmet S"}
	b.Lesson(monday, "10:00-10:45", b.Mia, leo)
	l := pull(t, b, nil, b.Turn(b.Star, b.Oak)) // Leo is on the ground
	if len(l.BesideTheRing) != 1 || l.BesideTheRing[0].Rider != "Mia" || !slices.Equal(l.BesideTheRing[0].Things, b.Mia.Wears) {
		t.Errorf("%+v", l.BesideTheRing)
	}
	if l.Rides != 1 || len(l.Ground) != 1 || l.Ground[0].Rider != "Leo" {
		t.Errorf("%d rides, on the ground %+v", l.Rides, l.Ground)
	}
}

func TestHelpersNeededAndTheMountingPlaceAreSaid(t *testing.T) {
	b := fixtures.New()
	b.Star.MustLead, b.Star.Mounting, b.Ring.Mounting = true, []string{"block", "ramp"}, []string{"ramp"}
	b.Mia.Sidewalkers = 2
	b.Lesson(monday, "10:00-10:45", b.Mia)
	r := pull(t, b, b.Turn(b.Star, b.Oak)).TackUps[0].Rides[0]
	if r.Leaders != 1 || r.Sidewalkers != 2 || !slices.Equal(r.Mounting, []string{"ramp"}) {
		t.Errorf("%+v", r)
	}
}
