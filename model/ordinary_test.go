package model_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"tackwright/fixtures"
	"tackwright/model"
)

// termBarn is a barn with a term of four weeks from Monday on and one lesson
// that is held each Tuesday at ten.
func termBarn() (*fixtures.Barn, *model.Lesson) {
	b := fixtures.New()
	b.Terms = []*model.Term{{Name: "winter", First: fixtures.Monday, Last: fixtures.Monday + 27}}
	l := b.Lesson(0, "10:00-11:00")
	l.Name, l.Weekday = "Tue", time.Tuesday
	return b, l
}

func ordinary(b *fixtures.Barn, from model.Date) []string {
	b.Obey()
	var out []string
	for _, w := range b.OrdinaryWeeks(b.Terms[0], from) {
		riders := w.From.Words()
		for _, r := range w.Rides {
			riders += fmt.Sprintf(", %s in %s", r.Rider.Name, r.Meeting.Name)
			if r.State != model.Open {
				riders += " off"
			}
		}
		out = append(out, riders)
	}
	return out
}

func TestAnOrdinaryWeekHasWhatIsHeldEveryWeekAndNothingThatComesAndGoes(t *testing.T) {
	for _, c := range []struct {
		name  string
		stage func(b *fixtures.Barn, l *model.Lesson)
		want  string
	}{
		{"a standing rider", func(b *fixtures.Barn, l *model.Lesson) {}, "Mon 23 Nov, Mia in Tue"},
		{"a booking", func(b *fixtures.Barn, l *model.Lesson) {
			b.Bookings = []*model.Booking{{Date: fixtures.Monday + 1, Lesson: l, Rider: b.Rider("guest")}}
		}, "Mon 23 Nov, Mia in Tue"},
		{"a lesson of one date", func(b *fixtures.Barn, l *model.Lesson) { b.Lesson(fixtures.Monday, "12:00-13:00", b.Mia) }, "Mon 23 Nov, Mia in Tue"},
		{"a lesson of another term", func(b *fixtures.Barn, l *model.Lesson) {
			spring := &model.Term{Name: "spring", First: fixtures.Monday, Last: fixtures.Monday + 27}
			b.Terms = append(b.Terms, spring)
			other := b.Lesson(0, "12:00-13:00", b.Mia)
			other.Weekday, other.Term = time.Tuesday, spring
		}, "Mon 23 Nov, Mia in Tue"},
		{"closures, absences and a note", func(b *fixtures.Barn, l *model.Lesson) {
			month := []model.Period{{From: fixtures.Monday, Until: fixtures.Monday + 30}}
			b.Terms[0].Closures, b.Mia.Away, b.Ring.Closures, b.Ann.Away = month, month, month, month
			b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, Date: fixtures.Monday + 1, Through: fixtures.Monday + 30})
			b.Note(model.Note{Kind: model.NoteCancelled, Lesson: l, Date: fixtures.Monday + 1, Through: fixtures.Monday + 30})
		}, "Mon 23 Nov, Mia in Tue"},
		{"a rider who comes from the second week on makes that the fullest", func(b *fixtures.Barn, l *model.Lesson) {
			l.Places = append(l.Places, model.Place{Rider: b.Rider("Noor"), From: fixtures.Monday + 7})
		}, "Mon 30 Nov, Mia in Tue, Noor in Tue"},
		{"a rider who is away each Tuesday", func(b *fixtures.Barn, l *model.Lesson) {
			b.Mia.Away = []model.Period{{Weekdays: []time.Weekday{time.Tuesday}}}
		}, ""},
		{"a rider who is away each Tuesday from a date before the term on", func(b *fixtures.Barn, l *model.Lesson) {
			b.Mia.Away = []model.Period{{From: fixtures.Monday - 7, Weekdays: []time.Weekday{time.Tuesday}}}
		}, ""},
		{"a rider who is away each Tuesday until the term has ended", func(b *fixtures.Barn, l *model.Lesson) {
			b.Mia.Away = []model.Period{{Until: fixtures.Monday + 27, Weekdays: []time.Weekday{time.Tuesday}}}
		}, ""},
		{"a rider who is away on some Tuesdays of the term", func(b *fixtures.Barn, l *model.Lesson) {
			b.Mia.Away = []model.Period{{Until: fixtures.Monday + 7, Weekdays: []time.Weekday{time.Tuesday}}}
		}, "Mon 23 Nov, Mia in Tue"},
	} {
		b, l := termBarn()
		l.Places = []model.Place{{Rider: b.Mia}}
		c.stage(b, l)
		got := ordinary(b, 0)
		if c.want == "" && len(got) > 0 || c.want != "" && !slices.Equal(got, []string{c.want}) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestRidersOfEveryOtherWeekHaveAWeekOfTheirOwnWhereTheFullestHasThemNot(t *testing.T) {
	b, l := termBarn()
	noor, zoe, ada := b.Rider("Noor"), b.Rider("Zoe"), b.Rider("Ada")
	l.Places = []model.Place{{Rider: b.Mia},
		{Rider: noor, EveryOther: true, From: fixtures.Monday},
		{Rider: zoe, EveryOther: true, From: fixtures.Monday + 7}, {Rider: ada, EveryOther: true, From: fixtures.Monday + 7}}
	want := []string{"Mon 30 Nov, Ada in Tue, Mia in Tue, Zoe in Tue", "Mon 23 Nov, Mia in Tue, Noor in Tue"}
	if got := ordinary(b, 0); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	want = []string{"Mon 14 Dec, Ada in Tue, Mia in Tue, Zoe in Tue", "Mon 7 Dec, Mia in Tue, Noor in Tue"}
	if got := ordinary(b, fixtures.Monday+16); !slices.Equal(got, want) {
		t.Errorf("from the third week on: %q, want %q", got, want)
	}
	l.Places = slices.Delete(l.Places, 1, 2)
	if got := ordinary(b, 0); len(got) != 1 {
		t.Errorf("who rides every week needs no second one: %q", got)
	}
}

func TestInAnOrdinaryWeekAHorseIsOutByThePersonsOwnFilesAlone(t *testing.T) {
	b, l := termBarn()
	l.Places = []model.Place{{Rider: b.Mia}}
	bay, roan := b.Horse("Bay"), b.Horse("Roan")
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame})
	bay.Out = []model.Out{{Why: model.Lame, From: ago(3)}}
	roan.Out = []model.Out{{Why: model.Appointment, From: monday("08:00"), End: ago(-5)}}
	b.Obey()
	w := b.OrdinaryWeeks(b.Terms[0], 0)[0]
	for i, want := range []bool{false, true, false} {
		h := w.Centre.Horses[i]
		if out := w.NotThere(h, fixtures.Monday+1, 600, 660) != ""; out != want {
			t.Errorf("%s is out: %t", h.Name, out)
		}
	}
	if len(b.Star.Out) != 1 || b.Week().NotThere(b.Star, fixtures.Monday+1, 600, 660) == "" {
		t.Error("the centre itself has changed")
	}
}

func TestAPlanOfTheOrdinaryWeekMakesThePairingsOfTheTerm(t *testing.T) {
	b, l := termBarn()
	noor := b.Rider("Noor")
	l.Places = []model.Place{{Rider: b.Mia, Start: l.Start, End: l.Start + 30}, {Rider: b.Mia, Start: l.Start + 30, End: l.End}, {Rider: noor}}
	b.Obey()
	w := b.OrdinaryWeeks(b.Terms[0], 0)[0]
	horse, seat := w.Centre.Horses[0], w.Centre.Pieces[0]
	p := &model.Plan{Turns: []*model.Turn{{Horse: horse, Seat: seat}, nil, {Horse: horse, Seat: seat}}} // Mia, Noor, Mia
	got := w.Pairings(p)
	if len(got) != 1 || got[0].Rider.Name != "Mia" || got[0].Lesson.Name != "Tue" || got[0].Horse != horse || got[0].Seat != seat {
		t.Errorf("%+v", got)
	}
}
