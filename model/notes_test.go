package model_test

import (
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// noted is what a kind of note does: done reports whether a week shows it.
type noted struct {
	kind model.NoteKind
	note func(b *fixtures.Barn) model.Note
	done func(b *fixtures.Barn, w *model.Week) bool
}

func monday(clock string) model.Instant {
	return model.Instant{Date: fixtures.Monday, Minute: fixtures.At(clock)}
}

// breaks reports whether Mia's ride on Star breaks just that rule.
func breaks(rule string) func(*fixtures.Barn, *model.Week) bool {
	return func(b *fixtures.Barn, w *model.Week) bool {
		return slices.Equal(told(w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak)))), []string{rule})
	}
}

// keeps reports whether Mia's ride on Star breaks nothing.
func keeps(b *fixtures.Barn, w *model.Week) bool {
	return len(w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak)))) == 0
}

// Every note is of Monday, on which Mia rides from ten to eleven.
var notes = []noted{
	{model.NoteHorseOut, func(b *fixtures.Barn) model.Note { return model.Note{Horse: b.Star, Why: model.Lame} },
		breaks("horse at work")},
	{model.NoteHorseBack, func(b *fixtures.Barn) model.Note {
		b.Star.Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: fixtures.Monday - 3}}}
		return model.Note{Horse: b.Star, From: fixtures.At("10:00")}
	}, keeps},
	{model.NoteOwnTack, func(b *fixtures.Barn) model.Note { return model.Note{Horse: b.Star} },
		func(b *fixtures.Barn, w *model.Week) bool {
			return leavesContact(b, w)
		}},
	{model.NoteOwnTackEnd, func(b *fixtures.Barn) model.Note {
		b.Star.OwnTack = []model.Span{{From: model.Instant{Date: fixtures.Monday - 30}}}
		return model.Note{Horse: b.Star}
	}, func(b *fixtures.Barn, w *model.Week) bool {
		return !leavesContact(b, w)
	}},
	{model.NotePieceOut, func(b *fixtures.Barn) model.Note { return model.Note{Piece: b.Tag("oak girth"), Words: "elastic torn"} },
		breaks("piece in use")},
	{model.NotePieceBack, func(b *fixtures.Barn) model.Note {
		b.Oak.Out = []model.PieceOut{{From: model.Instant{Date: fixtures.Monday - 3}}}
		return model.Note{Piece: b.Oak}
	}, keeps},
	{model.NoteCleaned, func(b *fixtures.Barn) model.Note { return model.Note{Piece: b.Oak, From: fixtures.At("08:00")} },
		func(b *fixtures.Barn, w *model.Week) bool {
			return slices.Equal(b.Oak.Cleaned, []model.Cleaning{{At: monday("08:00"), By: "Ann"}})
		}},
	{model.NoteRiderAway, func(b *fixtures.Barn) model.Note { return model.Note{Rider: b.Mia, Words: "a cold"} },
		func(b *fixtures.Barn, w *model.Week) bool {
			return w.Rides[0].State == model.Off && w.Rides[0].OffWhy == "a cold"
		}},
	{model.NoteRiderAdded, func(b *fixtures.Barn) model.Note {
		return model.Note{Rider: b.Rider("Noor"), Lesson: b.Lessons[0]}
	}, func(b *fixtures.Barn, w *model.Week) bool { return len(w.Rides) == 2 }},
	{model.NoteCancelled, func(b *fixtures.Barn) model.Note { return model.Note{Lesson: b.Lessons[0]} },
		breaks("centre open")},
	{model.NoteMoved, func(b *fixtures.Barn) model.Note {
		return model.Note{Lesson: b.Lessons[0], From: fixtures.At("12:00"), Until: fixtures.At("12:45"), Arena: b.Arena("hall")}
	}, func(b *fixtures.Barn, w *model.Week) bool {
		r := w.Rides[0]
		return r.Start == fixtures.At("12:00") && r.Minutes() == 45 && r.Meeting.Arena.Name == "hall"
	}},
	{model.NoteShortened, func(b *fixtures.Barn) model.Note {
		return model.Note{Lesson: b.Lessons[0], Until: fixtures.At("10:30")}
	}, func(b *fixtures.Barn, w *model.Week) bool { return w.Rides[0].Minutes() == 30 }},
	{model.NoteHands, func(b *fixtures.Barn) model.Note {
		b.Mia.Leader = true
		return model.Note{Lesson: b.Lessons[0], Hands: model.Hands{Leaders: 0, Sidewalkers: -1}}
	}, breaks("hands in the ring")},
	{model.NoteWeather, func(b *fixtures.Barn) model.Note { return model.Note{Warmth: 95, Humidity: 90} }, keeps}, // it closes nothing by itself
	{model.NoteArenaClosed, func(b *fixtures.Barn) model.Note { return model.Note{Arena: b.Ring, From: fixtures.At("10:59")} },
		breaks("centre open")},
	{model.NoteInstructor, func(b *fixtures.Barn) model.Note {
		return model.Note{Lesson: b.Lessons[0], Instructor: b.Person("Bea")}
	}, func(b *fixtures.Barn, w *model.Week) bool { return w.Meetings[0].Instructor.Name == "Bea" }},
	{model.NoteAway, func(b *fixtures.Barn) model.Note { return model.Note{Instructor: b.Ann} },
		breaks("instructor in one place")},
	{model.NoteKeep, func(b *fixtures.Barn) model.Note { return model.Note{Rider: b.Mia, Horse: b.Horse("Bay")} },
		breaks("as told")},
	{model.NoteNever, func(b *fixtures.Barn) model.Note { return model.Note{Rider: b.Mia, Horse: b.Star} },
		breaks("horse suits rider")},
	{model.NoteForm, func(b *fixtures.Barn) model.Note {
		b.Mia.FormUntil = fixtures.Monday - 1
		return model.Note{Rider: b.Mia, Through: fixtures.Monday}
	}, keeps},
	{model.NoteWorkOff, func(b *fixtures.Barn) model.Note {
		b.Work(b.Star, fixtures.Monday, "10:30-11:00")
		return model.Note{Horse: b.Star, From: fixtures.At("10:30")}
	}, keeps},
}

func TestEveryKindOfNoteIsObeyedOnItsDate(t *testing.T) {
	seen := map[model.NoteKind]bool{}
	for _, n := range notes {
		seen[n.kind] = true
		b := fixtures.New()
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		note := n.note(b)
		note.Kind = n.kind
		b.Note(note)
		if w := b.Week(); !n.done(b, w) {
			t.Errorf("%s: not obeyed", n.kind)
		}
	}
	for _, k := range model.NoteKinds {
		if !seen[k] {
			t.Errorf("%s: no case", k)
		}
	}
}

func TestAnUndoneNoteDoesNothing(t *testing.T) {
	for _, n := range notes {
		if n.kind == model.NoteWeather {
			continue // does nothing anyway
		}
		b := fixtures.New()
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		note := n.note(b)
		note.Kind = n.kind
		b.Note(note)
		b.Note(model.Note{Undoes: 1})
		if w := b.Week(); n.done(b, w) {
			t.Errorf("%s: obeyed though undone", n.kind)
		}
	}
}

func TestANoteThatIsUndoneUndoesNothing(t *testing.T) {
	b := fixtures.New()
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame})
	b.Note(model.Note{Undoes: 1})
	b.Note(model.Note{Undoes: 2})
	if got := model.Standing(b.Notes); len(got) != 2 || got[0].Number != 1 {
		t.Errorf("%d stand", len(got))
	}
}

func TestOnlyAPersonWhoMayEndAThingEndsIt(t *testing.T) {
	b := fixtures.New()
	groom := b.Person("Gus")
	groom.MayEnd = []model.Ends{model.EndsCheck}
	out := model.Instant{Date: fixtures.Monday - 3}
	b.Star.Out = []model.Out{{Why: model.Ill, From: out}}
	b.Oak.Out = []model.PieceOut{{From: out}}
	b.Star.OwnTack = []model.Span{{From: out}}
	formUntil := b.Mia.FormUntil
	for _, n := range []model.Note{
		{Kind: model.NoteHorseBack, Horse: b.Star}, {Kind: model.NoteOwnTackEnd, Horse: b.Star},
		{Kind: model.NoteCleaned, Piece: b.Oak}, {Kind: model.NoteForm, Rider: b.Mia, Through: formUntil + 9},
		{Kind: model.NotePieceBack, Piece: b.Oak},
	} {
		n.By = groom
		b.Note(n)
	}
	b.Week()
	if !b.Star.Out[0].End.IsZero() || !b.Star.OwnTack[0].End.IsZero() || len(b.Oak.Cleaned) > 0 || b.Mia.FormUntil != formUntil {
		t.Error("ended by somebody who may not")
	}
	if b.Oak.Out[0].End.IsZero() {
		t.Error("the check that he may end was not ended")
	}
}

func TestAnAppointmentEndsByItselfAndALamenessDoesNot(t *testing.T) {
	for _, c := range []struct {
		why  model.OutWhy
		want bool // out the next date
	}{{model.Appointment, false}, {model.Lame, true}, {model.Ill, true}, {model.VetStop, true}} {
		b := fixtures.New()
		b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: c.why, From: fixtures.At("09:00"), Until: fixtures.At("10:00"), Review: fixtures.Monday + 1})
		w := b.Week()
		if got := w.NotThere(b.Star, fixtures.Monday+1, fixtures.At("10:00"), fixtures.At("11:00")) != ""; got != c.want {
			t.Errorf("%s: out the next date %v", c.why, got)
		}
		if got := w.NotThere(b.Star, fixtures.Monday, fixtures.At("10:00"), fixtures.At("11:00")) != ""; got != c.want {
			t.Errorf("%s: out afterwards %v", c.why, got)
		}
	}
}

func TestAHoldThatItsHorseOutMakesImpossibleIsSuspendedAndListed(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Lesson(fixtures.Monday+1, "10:00-11:00", b.Mia)
	bay := b.Horse("Bay")
	elm := b.Saddle("elm", bay)
	b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Horse: b.Star, Through: fixtures.Monday + 1})
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Appointment})
	w := b.Week()
	if w.Rides[0].Held != nil || w.Rides[1].Held == nil {
		t.Errorf("held %v and %v", w.Rides[0].Held, w.Rides[1].Held)
	}
	if len(w.Suspended) != 1 {
		t.Errorf("suspended %q", w.Suspended)
	}
	wantTold(t, w.Audit(fixtures.Plan(w, b.Turn(bay, elm), b.Turn(b.Star, b.Oak))))
}

func TestAHoldThatAbsenceOrWeatherMakesImpossibleIsSuspendedAndListed(t *testing.T) {
	for _, note := range []noteOf{riderAway, ringClosed, annAway, cancelled, starOut("06:00")} {
		b := fixtures.New()
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Horse: b.Star})
		n := note(b, l)
		n.Words = "a fever"
		b.Note(n)
		w := b.Week()
		if len(w.Suspended) != 1 || w.Rides[0].Held != nil {
			t.Errorf("%s: suspended %q, held %v", n.Kind, w.Suspended, w.Rides[0].Held)
		} else if (n.Kind == model.NoteRiderAway || n.Kind == model.NoteAway) && strings.Contains(w.Suspended[0], n.Words) {
			t.Errorf("%s: what was written of an absence is repeated: %s", n.Kind, w.Suspended[0])
		}
	}
}

func TestARiderAwayForAnHourRidesBeforeAndAfterIt(t *testing.T) {
	b := fixtures.New()
	for _, h := range []string{"09:00-10:00", "10:30-11:00", "11:00-12:00"} {
		b.Lesson(fixtures.Monday, h, b.Mia)
	}
	b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, From: fixtures.At("10:00"), Until: fixtures.At("11:00")})
	w := b.Week()
	var states []model.RideState
	for _, r := range w.Rides {
		states = append(states, r.State)
	}
	if !slices.Equal(states, []model.RideState{model.Open, model.Off, model.Open}) {
		t.Errorf("states %v", states)
	}
}

// leavesContact is whether a ride of Star at ten leaves its tack unclean.
func leavesContact(b *fixtures.Barn, w *model.Week) bool {
	ride := &model.Stint{Date: fixtures.Monday, Start: fixtures.At("10:00"), End: fixtures.At("10:30"), Turn: &model.Turn{Horse: b.Star}}
	return len(ride.LeavesContact(w.House)) > 0
}

func TestANoteForOneLessonLeavesTheRidersOtherLessonsAlone(t *testing.T) {
	b := fixtures.New()
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, b.Rider("Noor"))
	other := b.Lesson(fixtures.Monday, "12:00-13:00", b.Mia)
	b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Lesson: l, Horse: b.Star})
	b.Note(model.Note{Kind: model.NoteNever, Rider: b.Mia, Lesson: l, Horse: b.Star})
	b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, Lesson: other})
	for _, r := range b.Week().Rides {
		want, away := r.Rider == b.Mia && r.Meeting.Lesson == l, r.Meeting.Lesson == other
		if (r.Held != nil) != want || (len(r.Never) > 0) != want || (r.State == model.Off) != away {
			t.Errorf("%s: held %v, never %v, state %v", r, r.Held, r.Never, r.State)
		}
	}
}

func TestANoteForARiderWithNoLessonCountsInAllOfHers(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, b.Rider("Noor"))
	b.Lesson(fixtures.Monday, "12:00-13:00", b.Mia)
	b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Horse: b.Star})
	b.Note(model.Note{Kind: model.NoteNever, Rider: b.Mia, Horse: b.Star})
	for _, r := range b.Week().Rides {
		if want := r.Rider == b.Mia; (r.Held != nil) != want || (len(r.Never) > 0) != want {
			t.Errorf("%s: held %v, never %v", r, r.Held, r.Never)
		}
	}
}

func TestWhatHasEndedIsNotEndedAgain(t *testing.T) {
	b := fixtures.New()
	from, end := ago(9), ago(5)
	b.Star.Out = []model.Out{{Why: model.Ill, From: from, End: end}}
	b.Star.OwnTack = []model.Span{{From: from, End: end}}
	b.Oak.Out = []model.PieceOut{{From: from, End: end}}
	b.Note(model.Note{Kind: model.NoteHorseBack, Horse: b.Star})
	b.Note(model.Note{Kind: model.NoteOwnTackEnd, Horse: b.Star})
	b.Note(model.Note{Kind: model.NotePieceBack, Piece: b.Oak})
	b.Week()
	if b.Star.Out[0].End != end || b.Star.OwnTack[0].End != end || b.Oak.Out[0].End != end {
		t.Errorf("%v, %v, %v", b.Star.Out[0].End, b.Star.OwnTack[0].End, b.Oak.Out[0].End)
	}
}
