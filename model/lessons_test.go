package model_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"tackwright/fixtures"
	"tackwright/model"
)

// weekly is Mia's lesson of every Wednesday from ten to eleven.
func weekly(b *fixtures.Barn) *model.Lesson {
	l := b.Lesson(0, "10:00-11:00", b.Mia)
	l.Name, l.Weekday = "Wednesday", time.Wednesday
	return l
}

// rides writes the week's rides: "25 10:00-11:00 Mia", those that are off in brackets.
func rides(w *model.Week) []string {
	var out []string
	for _, r := range w.Rides {
		s := fmt.Sprintf("%s %s-%s %s", r.Date().String()[8:], r.Start, r.End, r.Rider.Name)
		if r.State == model.Off {
			s = "(" + s + ")"
		}
		out = append(out, s)
	}
	return out
}

func wantRides(t *testing.T, w *model.Week, want ...string) {
	t.Helper()
	if got := rides(w); !slices.Equal(got, want) {
		t.Errorf("rides %q, want %q", got, want)
	}
}

func TestAPartialWeekHasTheRidesOfItsDatesAlone(t *testing.T) {
	b := fixtures.New()
	for d := range model.Date(9) {
		b.Lesson(fixtures.Monday-1+d, "10:00-11:00", b.Mia)
	}
	b.From, b.Days = fixtures.Monday+2, 2
	wantRides(t, b.Week(), "25 10:00-11:00 Mia", "26 10:00-11:00 Mia")
}

func TestAWeekMayRunOverTheCalendarWeeksEdge(t *testing.T) {
	b := fixtures.New()
	weekly(b)
	b.From = fixtures.Monday + 5 // Saturday to Friday
	wantRides(t, b.Week(), "02 10:00-11:00 Mia")
}

func TestAWeekHasOneToSevenDates(t *testing.T) {
	for days, want := range map[int]int{0: 1, 1: 1, 7: 7, 9: 7} {
		b := fixtures.New()
		b.Days = days
		if got := len(b.Week().Dates()); got != want {
			t.Errorf("%d days: %d dates", days, got)
		}
	}
}

func TestRidesAreInTheOrderOfDateStartLessonAndRider(t *testing.T) {
	b := fixtures.New()
	ada := b.Rider("Ada")
	b.Lesson(fixtures.Monday+1, "09:00-10:00", b.Mia)
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, ada).Name = "lesson b"
	b.Lesson(fixtures.Monday, "10:00-10:30", b.Rider("Zoe")).Name = "lesson a"
	w := b.Week()
	wantRides(t, w, "23 10:00-10:30 Zoe", "23 10:00-11:00 Ada", "23 10:00-11:00 Mia", "24 09:00-10:00 Mia")
	for i, r := range w.Rides {
		if r.Index != i {
			t.Errorf("ride %d says it is %d", i, r.Index)
		}
	}
}

func TestAPlaceEveryOtherWeekIsTakenInTheWeeksOfItsFirstDate(t *testing.T) {
	for weeks, taken := range []bool{true, false, true, false} {
		b := fixtures.New()
		l := weekly(b)
		l.Places[0].From, l.Places[0].EveryOther = fixtures.Monday+4, true // from Friday on, in that week
		b.From = fixtures.Monday + 7*model.Date(weeks)
		got := len(b.Week().Rides) == 1
		if weeks == 0 {
			taken = false // Wednesday is before its first date
		}
		if got != taken {
			t.Errorf("%d weeks on: taken %v", weeks, got)
		}
	}
}

func TestAPlaceIsTakenFromItsFirstDateThroughItsLast(t *testing.T) {
	for _, c := range []struct {
		from, until model.Date
		want        int
	}{{2, 2, 1}, {3, 0, 0}, {-99, 1, 0}} {
		b := fixtures.New()
		l := weekly(b)
		l.Places[0].From = fixtures.Monday + c.from
		if c.until != 0 {
			l.Places[0].Until = fixtures.Monday + c.until
		}
		if got := len(b.Week().Rides); got != c.want {
			t.Errorf("%+v: %d rides", c, got)
		}
	}
}

func TestABookingAddsARideOnItsDate(t *testing.T) {
	b := fixtures.New()
	l := weekly(b)
	guest := b.Rider("Guest")
	b.Bookings = []*model.Booking{
		{Date: fixtures.Monday + 2, Lesson: l, Rider: guest},
		{Date: fixtures.Monday + 9, Lesson: l, Rider: b.Rider("next week")},
		{Date: fixtures.Monday + 2, Lesson: l, Rider: b.Mia}, // has her place already
	}
	wantRides(t, b.Week(), "25 10:00-11:00 Guest", "25 10:00-11:00 Mia")
}

func TestPartsOfALessonMoveWithItAndAreCutWithIt(t *testing.T) {
	for _, c := range []struct {
		name string
		note model.Note
		want []string
	}{
		{"as it stands", model.Note{Kind: model.NoteWeather}, []string{"23 10:00-10:30 Mia", "23 10:30-11:00 Noor"}},
		{"moved", model.Note{Kind: model.NoteMoved, From: fixtures.At("14:10"), Until: fixtures.At("15:10")}, []string{"23 14:10-14:40 Mia", "23 14:40-15:10 Noor"}},
		{"moved and cut", model.Note{Kind: model.NoteMoved, From: fixtures.At("14:10"), Until: fixtures.At("15:00")}, []string{"23 14:10-14:40 Mia", "23 14:40-15:00 Noor"}},
		{"another arena", model.Note{Kind: model.NoteMoved}, []string{"23 10:00-10:30 Mia", "23 10:30-11:00 Noor"}},
		{"shortened", model.Note{Kind: model.NoteShortened, Until: fixtures.At("10:45")}, []string{"23 10:00-10:30 Mia", "23 10:30-10:45 Noor"}},
		{"a part cut away", model.Note{Kind: model.NoteShortened, Until: fixtures.At("10:30")}, []string{"23 10:00-10:30 Mia", "(23 10:30-11:00 Noor)"}},
	} {
		b := fixtures.New()
		l := b.Lesson(fixtures.Monday, "10:00-11:00")
		b.Part(l, b.Mia, "10:00-10:30")
		b.Part(l, b.Rider("Noor"), "10:30-11:00")
		c.note.Lesson = l
		if c.name == "another arena" {
			c.note.Arena = b.Arena("hall")
		}
		b.Note(c.note)
		if got := rides(b.Week()); !slices.Equal(got, c.want) {
			t.Errorf("%s: rides %q, want %q", c.name, got, c.want)
		}
	}
}

func TestTwoRidersMayShareOneHorsesHour(t *testing.T) {
	b := fixtures.New()
	l := b.Lesson(fixtures.Monday, "10:00-11:00")
	b.Part(l, b.Mia, "10:00-10:30")
	b.Part(l, b.Rider("Noor"), "10:30-11:00")
	w := b.Week()
	wantTold(t, w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak))))
}

func TestStandingLessonsAreHeldInTheirTermsOnly(t *testing.T) {
	in, before := &model.Term{Name: "in", First: fixtures.Monday + 2, Last: fixtures.Monday + 2},
		&model.Term{Name: "before", First: fixtures.Monday - 50, Last: fixtures.Monday - 1}
	for _, c := range []struct {
		name  string
		terms []*model.Term
		of    *model.Term
		want  int
	}{
		{"no terms at all", nil, nil, 1},
		{"a lesson of every term", []*model.Term{before, in}, nil, 1},
		{"no term on that date", []*model.Term{before}, nil, 0},
		{"a lesson of that term", []*model.Term{before, in}, in, 1},
		{"a lesson of another term", []*model.Term{before, in}, before, 0},
	} {
		b := fixtures.New()
		weekly(b).Term = c.of
		b.Terms = c.terms
		if got := len(b.Week().Rides); got != c.want {
			t.Errorf("%s: %d rides", c.name, got)
		}
	}
}

func TestAClosedDayAndACancelledLessonCountInNoGoal(t *testing.T) {
	for _, change := range []func(*fixtures.Barn){
		func(b *fixtures.Barn) {
			b.Terms = []*model.Term{{First: fixtures.Monday, Last: fixtures.Monday + 6, Closures: []model.Period{{From: fixtures.Monday + 2, Until: fixtures.Monday + 2, Why: "holiday"}}}}
		},
		func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteCancelled, Lesson: b.Lessons[0], Date: fixtures.Monday + 2})
		},
		func(b *fixtures.Barn) { b.Mia.Away = []model.Period{{From: fixtures.Monday + 2}} },
	} {
		b := fixtures.New()
		weekly(b)
		b.Mia.RideFirst = true
		w := b.Also(change).Week()
		wantRides(t, w, "(25 10:00-11:00 Mia)")
		for _, g := range w.Score(fixtures.Plan(w)) {
			if g.Value != 0 {
				t.Errorf("%s: %d", g.Name, g.Value)
			}
		}
	}
}

func TestHelpersOfALessonMayBeOthersOnADateAndANoteComesLast(t *testing.T) {
	b := fixtures.New()
	l := weekly(b)
	l.Hands = model.Hands{Leaders: 3, Sidewalkers: 3}
	l.HandsOn = map[model.Date]model.Hands{fixtures.Monday + 2: {Leaders: 2, Sidewalkers: 2}}
	if got := b.Centre.Week(fixtures.Monday+9, 1, model.Instant{}).Meetings[0].Hands.Leaders; got != 3 {
		t.Errorf("%d leaders as a rule", got)
	}
	if got := b.Centre.Week(fixtures.Monday, 7, model.Instant{}).Meetings[0].Hands.Leaders; got != 2 {
		t.Errorf("%d leaders on that date", got)
	}
	b.Note(model.Note{Kind: model.NoteHands, Lesson: l, Date: fixtures.Monday + 2, Hands: model.Hands{Leaders: 1}})
	if got := b.Week().Meetings[0].Hands; got != (model.Hands{Leaders: 1}) {
		t.Errorf("%+v by note", got)
	}
}

func TestALessonIsHeldFromItsFirstDateThroughItsLast(t *testing.T) {
	wednesday := fixtures.Monday + 2
	for _, c := range []struct {
		from, until model.Date
		want        int
	}{{0, 0, 1}, {wednesday, wednesday, 1}, {wednesday + 1, 0, 0}, {0, wednesday - 1, 0}} {
		b := fixtures.New()
		l := weekly(b)
		l.From, l.Until = c.from, c.until
		if got := len(b.Week().Rides); got != c.want {
			t.Errorf("%+v: %d rides", c, got)
		}
	}
}
