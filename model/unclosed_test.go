package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// noteOf is a note on Mia's ride on Star, posted for ten to eleven on Monday.
type noteOf func(b *fixtures.Barn, l *model.Lesson) model.Note

func riderAway(b *fixtures.Barn, l *model.Lesson) model.Note {
	return model.Note{Kind: model.NoteRiderAway, Rider: b.Mia}
}

func cancelled(b *fixtures.Barn, l *model.Lesson) model.Note {
	return model.Note{Kind: model.NoteCancelled, Lesson: l}
}

func movedTo(from, until string) noteOf {
	return func(b *fixtures.Barn, l *model.Lesson) model.Note {
		return model.Note{Kind: model.NoteMoved, Lesson: l, From: fixtures.At(from), Until: fixtures.At(until)}
	}
}

func shortenedTo(until string) noteOf {
	return func(b *fixtures.Barn, l *model.Lesson) model.Note {
		return model.Note{Kind: model.NoteShortened, Lesson: l, Until: fixtures.At(until)}
	}
}

func starOut(from string) noteOf {
	return func(b *fixtures.Barn, l *model.Lesson) model.Note {
		return model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, From: fixtures.At(from)}
	}
}

func ringClosed(b *fixtures.Barn, l *model.Lesson) model.Note {
	return model.Note{Kind: model.NoteArenaClosed, Arena: b.Ring}
}

func annAway(b *fixtures.Barn, l *model.Lesson) model.Note {
	return model.Note{Kind: model.NoteAway, Instructor: b.Ann}
}

func TestADateThatNobodyClosedCountsAsPostedAndNoted(t *testing.T) {
	for _, c := range []struct {
		name     string
		note     noteOf
		at       string // when it was written; "": not said, which is known from the start of its date
		minutes  int64  // of Star on Monday
		grounded bool   // Mia
	}{
		{"rider away", riderAway, "09:59", 0, false},
		{"rider away, nobody says since when", riderAway, "", 0, false},
		{"rider away, noted when she rode", riderAway, "10:00", 60, false},
		{"lesson cancelled", cancelled, "09:59", 0, false},
		{"lesson cancelled, noted when it was on", cancelled, "10:00", 60, false},
		{"lesson moved to a longer hour", movedTo("14:00", "15:10"), "09:59", 70, false},
		{"lesson shortened", shortenedTo("10:20"), "09:59", 20, false},
		{"lesson shortened while it was on", shortenedTo("10:20"), "10:20", 20, false},
		{"horse out since dawn", starOut("06:00"), "07:00", 0, true},
		{"horse out since dawn, noted when it was ridden", starOut("06:00"), "10:00", 60, false},
		{"horse out in the middle of the ride", starOut("10:45"), "10:50", 45, false},
		{"horse out as the ride ends", starOut("11:00"), "09:00", 60, false},
		{"arena closed", ringClosed, "07:00", 0, true},
		{"arena closed once she rode", ringClosed, "10:00", 60, false},
		{"instructor away", annAway, "07:00", 0, true},
	} {
		b := fixtures.New()
		b.From = fixtures.Monday + 1
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		n := c.note(b, l)
		if c.at != "" {
			n.At = monday(c.at)
		}
		b.Note(n)
		w := b.Week()
		if got := minutes(w, b.Star); got != c.minutes || w.Grounded(b.Mia) != c.grounded {
			t.Errorf("%s: %d min, on the ground %v", c.name, got, w.Grounded(b.Mia))
		}
	}
}

func TestWhatAPostedPlanWentByIsNotNotedAgain(t *testing.T) {
	b := fixtures.New()
	b.From = fixtures.Monday + 1
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	told := &b.Posted[0].Told[0]
	told.Start, told.End = fixtures.At("14:00"), fixtures.At("15:00")
	b.Note(movedTo("14:00", "15:00")(b, l))
	b.Posted[0].Notes = 1
	b.Note(movedTo("14:30", "15:00")(b, l))
	f := b.Week().Facts
	if len(f) != 1 || f[0].Start != fixtures.At("14:30") || minutes(b.Week(), b.Star) != 30 {
		t.Errorf("%+v", f[0])
	}
}

func TestAPartMovesWithItsLesson(t *testing.T) {
	for _, c := range []struct {
		note noteOf
		want string // start and end of what she rode; "": nothing
	}{
		{movedTo("14:00", "15:00"), "14:30 15:00"}, {movedTo("14:00", "14:40"), "14:30 14:40"}, {movedTo("14:00", "14:30"), ""},
		{shortenedTo("10:45"), "10:30 10:45"}, {shortenedTo("10:30"), ""},
	} {
		b := fixtures.New()
		b.From = fixtures.Monday + 1
		l := b.Lesson(fixtures.Monday, "10:00-11:00")
		b.Part(l, b.Mia, "10:30-11:00")
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Note(c.note(b, l))
		got := ""
		for _, f := range b.Week().Facts {
			got = f.Start.String() + " " + f.End.String()
		}
		if got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestARideThatTheRecordTellsOfWasRiddenWhateverWasNoted(t *testing.T) {
	for _, note := range []noteOf{riderAway, cancelled, starOut("06:00")} {
		b := fixtures.New()
		b.From = fixtures.Monday + 1
		bay := b.Horse("Bay")
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Note(note(b, l))
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{
			{How: model.OtherHorse, Lesson: l, Rider: b.Mia, Turn: b.Turn(bay, b.Oak)}}}}
		if w := b.Week(); minutes(w, bay) != 60 || minutes(w, b.Star) != 0 {
			t.Errorf("%s: Bay %d min, Star %d min", b.Notes[0].Kind, minutes(w, bay), minutes(w, b.Star))
		}
	}
}

func TestALessonMovedToTheAfternoonHasNotStartedAtNoon(t *testing.T) {
	for at, want := range map[string]model.RideState{"07:00": model.Open, "10:00": model.Started} {
		b := fixtures.New()
		b.Now = monday("12:00")
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		n := movedTo("14:00", "15:00")(b, l)
		n.At = monday(at)
		b.Note(n)
		if r := b.Week().Rides[0]; r.State != want {
			t.Errorf("moved at %s: state %v at %s", at, r.State, r.Start)
		}
	}
}

func TestACancelledLessonOfThisMorningIsNoFact(t *testing.T) {
	b := fixtures.New()
	b.Now = monday("12:00")
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	b.Note(cancelled(b, l))
	if w := b.Week(); w.Rides[0].State != model.Off || len(w.Facts) > 0 {
		t.Errorf("state %v, %d facts", w.Rides[0].State, len(w.Facts))
	}
}

func TestAWorkThatHadBegunWasDoneWhateverWasNotedSince(t *testing.T) {
	for _, note := range []noteOf{starOut("06:00"), ringClosed} {
		for at, want := range map[string]int64{"09:59": 0, "10:00": 60} {
			for _, from := range []model.Date{fixtures.Monday, fixtures.Monday + 1} {
				b := fixtures.New()
				b.From, b.Now = from, model.Instant{Date: from, Minute: fixtures.At("12:00")}
				b.Work(b.Star, fixtures.Monday, "10:00-11:00").Arena = b.Ring
				n := note(b, nil)
				n.At = monday(at)
				b.Note(n)
				if got := minutes(b.Week(), b.Star); got != want {
					t.Errorf("%s at %s, seen from %s: %d min", n.Kind, at, from.Words(), got)
				}
			}
		}
	}
}

func TestASuspendedWorkOfThePastLeavesNoContact(t *testing.T) {
	for _, out := range []bool{true, false} {
		b := fixtures.New()
		b.Star.OwnTack = []model.Span{{From: ago(9)}}
		if out {
			b.Star.Out = []model.Out{{Why: model.Lame, From: ago(9)}}
		}
		x := b.Work(b.Star, fixtures.Monday-1, "08:00-08:30")
		x.Seat, x.Girth = b.Oak, b.Tag("oak girth")
		if w := b.Week(); w.HasContact(x.Girth) == out {
			t.Errorf("out %v: contact %v", out, w.HasContact(x.Girth))
		}
	}
}
