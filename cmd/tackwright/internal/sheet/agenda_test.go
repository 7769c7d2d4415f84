package sheet

import (
	"slices"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/sheet/calendar"
	"tackwright/fixtures"
	"tackwright/model"
)

// agendaOf is what a calendar of a barn's posted Monday holds.
func agendaOf(b *fixtures.Barn, of Whose) []calendar.Event {
	b.Week() // obeys the notes
	p, w, plan, _ := b.Centre.PostedOn(monday)
	day := PostedDay{Week: w, Plan: plan, Date: monday, Stamp: Stamp{Version: p.Version, By: p.By.Name, At: p.At, Notes: b.Centre.NotesSince(p, monday)}}
	return Agenda(b.Centre, []PostedDay{day}, of).Events
}

// miaOnStar is a Monday on which Mia is posted on Star at 10:00, in version 1.
func miaOnStar() (*fixtures.Barn, *model.Lesson) {
	b := fixtures.New()
	l := b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	b.Posted[0].At = model.Instant{Date: monday - 2, Minute: 600}
	return b, l
}

func TestAnInstructorHasHerLessonsAndAHorseItsRides(t *testing.T) {
	b, _ := miaOnStar()
	b.Work(b.Star, monday, "14:00-14:20").Person = b.Ann
	lessons, rides := agendaOf(b, Whose{Instructor: b.Ann}), agendaOf(b, Whose{Horse: b.Star})
	if len(lessons) != 1 || lessons[0].Summary != "Mon 23 Nov 10:00, 1 rider" || lessons[0].Where != "ring" || !lessons[0].Busy {
		t.Errorf("%+v", lessons)
	}
	if !strings.HasPrefix(lessons[0].Words, "Mia: Star, oak, oak pad, oak girth\nversion 1, posted by Ann") {
		t.Errorf("%q", lessons[0].Words)
	}
	if len(rides) != 2 || rides[0].Summary != "Star: Mia, Mon 23 Nov 10:00" || rides[1].Summary != "Star: lunging" || rides[0].Busy {
		t.Errorf("%+v", rides)
	}
}

func TestALaterVersionChangesTheSameEventsAndTakesBackWhatItDropped(t *testing.T) {
	b, l := miaOnStar()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	before := agendaOf(b, Whose{Instructor: b.Ann})
	again := &model.Posted{Version: 2, By: b.Ann, At: model.Instant{Date: monday - 1, Minute: 600}, From: monday, Until: monday,
		Told: []model.Told{{Date: monday, Start: l.Start, End: l.End, Lesson: l, LessonName: l.Name, Rider: b.Mia, Arena: l.Arena, Instructor: b.Ann, Turn: b.Turn(moss, b.Oak)}}}
	b.Posted = append(b.Posted, again)
	after := agendaOf(b, Whose{Instructor: b.Ann})
	if after[0].UID != before[0].UID || after[0].Sequence != 2 || before[0].Sequence != 1 || !before[0].Revised.Before(after[0].Revised) {
		t.Errorf("before %+v, after %+v", before, after)
	}
	star, new := agendaOf(b, Whose{Horse: b.Star}), agendaOf(b, Whose{Horse: moss})
	if len(star) != 1 || !star[0].Off || star[0].Sequence != 2 || len(new) != 1 || new[0].Off {
		t.Errorf("Star %+v, Moss %+v", star, new)
	}
	b.Posted = b.Posted[:1]
	if was := agendaOf(b, Whose{Horse: b.Star}); was[0].UID != star[0].UID || was[0].Off {
		t.Errorf("%+v is taken back as %+v", was, star)
	}
}

func TestALessonThatIsCancelledIsOffWithoutItsReason(t *testing.T) {
	b, l := miaOnStar()
	b.Note(model.Note{Kind: model.NoteCancelled, Lesson: l, Words: "Zreason", At: model.Instant{Date: monday - 1, Minute: 700}})
	e := agendaOf(b, Whose{Instructor: b.Ann})[0]
	if !e.Off || e.Summary != "Mon 23 Nov 10:00, not held" || strings.Contains(e.Words, "Zreason") {
		t.Errorf("%+v", e)
	}
	if want := (model.Instant{Date: monday - 1, Minute: 700}); e.Revised != want {
		t.Errorf("revised %s", e.Revised)
	}
}

func TestACalendarTellsNoSurnameNoWeightAndNoCaution(t *testing.T) {
	b, _ := miaOnStar()
	b.Mia.Name, b.Mia.Cautions, b.Mia.Weight = "Mia Zsecret", []string{"Zcaution"}, 54321
	for _, of := range []Whose{{Instructor: b.Ann}, {Horse: b.Star}} {
		b.Week()
		text := (&calendar.Calendar{Name: "x", Events: agendaOf(b, of)}).ICS(time.UTC)
		if slices.ContainsFunc([]string{"Zsecret", "Zcaution", "54321", "54.3"}, func(s string) bool { return strings.Contains(text, s) }) || !strings.Contains(text, "CLASS:PRIVATE") {
			t.Error(text)
		}
	}
}
