package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// change is what a repair says of Mia's ride, posted on Star for Monday at ten,
// after something has happened; "" is that it is as posted. The plan keeps her on
// Star where she rides at all.
func change(t *testing.T, posted bool, happens func(b *fixtures.Barn)) (how, why string) {
	t.Helper()
	b := fixtures.New()
	b.Arena("field")
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Week()
	turn := b.Turn(b.Star, b.Oak)
	if posted {
		fixtures.Post(w, fixtures.Plan(w, turn))
	} else {
		fixtures.Post(w, fixtures.Plan(w))
	}
	happens(b)
	w = b.Centre.Repair(fixtures.Monday, 1, b.Now)
	p := fixtures.Plan(w)
	for i, r := range w.Rides {
		if r.State == model.Open && posted && r.Rider == b.Mia && len(model.Broken(w.Audit(fixtures.Plan(w, turn)))) == 0 {
			p.Turns[i], p.Ground[i] = turn, nil
		}
	}
	changes := w.Changes(p)
	if len(changes) == 0 {
		return "", ""
	}
	if len(changes) > 1 {
		t.Fatalf("%d changes", len(changes))
	}
	return changes[0].How(), changes[0].Why
}

func TestAChangeSaysWhatIsNotAsPostedAndWhy(t *testing.T) {
	lesson := func(b *fixtures.Barn) *model.Lesson { return b.Lessons[0] }
	for _, c := range []struct {
		name     string
		posted   bool
		happens  func(b *fixtures.Barn)
		how, why string
	}{
		{"nothing", true, func(b *fixtures.Barn) {}, "", ""},
		{"moved", true, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteMoved, Lesson: lesson(b), From: fixtures.At("10:15"), Until: fixtures.At("11:15")})
		}, "another time", "it is from 10:15 to 11:15, not from 10:00 to 11:00"},
		{"shortened", true, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteShortened, Lesson: lesson(b), Until: fixtures.At("10:30")})
		}, "another time", "it is from 10:00 to 10:30, not from 10:00 to 11:00"},
		{"another arena", true, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteMoved, Lesson: lesson(b), Arena: b.Arenas[1]})
		}, "another arena", "the lesson is in field"},
		{"another instructor", true, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteInstructor, Lesson: lesson(b), Instructor: b.Person("Bea")})
		}, "another instructor", "Bea takes the lesson"},
		{"moved, and on the ground as before", false, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteMoved, Lesson: lesson(b), From: fixtures.At("10:15"), Until: fixtures.At("11:15")})
		}, "another time", "it is from 10:15 to 11:15, not from 10:00 to 11:00"},
		{"the horse is lame", true, func(b *fixtures.Barn) { b.Star.Out = []model.Out{{Why: model.Lame}} },
			"on the ground", "Star is out (lame) until a named person ends it; left out"},
		{"helpers are short", true, func(b *fixtures.Barn) {
			b.Mia.Sidewalkers = 1
			lesson(b).Hands = model.Hands{}
		}, "on the ground", "1 sidewalker needed, and 0 can be counted on; left out"},
		{"her instructor is away", true, func(b *fixtures.Barn) { b.Ann.Away = []model.Period{{}} }, "on the ground", "Ann is away; left out"},
		{"away, with a word for why", true, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, Words: "ill"})
		}, "does not ride", "Mia is away (ill)"},
		{"away", true, func(b *fixtures.Barn) { b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia}) }, "does not ride", "Mia is away"},
		{"cancelled, who was on the ground", false, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteCancelled, Lesson: lesson(b), Words: "storm"})
		}, "does not ride", "the lesson is not held (storm)"},
		{"a rider is added who gets no horse", true, func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteRiderAdded, Rider: b.Rider("Zoe"), Lesson: lesson(b)})
		}, "on the ground", "left out"},
		{"a rider joins by her file and gets no horse", true, func(b *fixtures.Barn) {
			lesson(b).Places = append(lesson(b).Places, model.Place{Rider: b.Rider("Zoe")})
		}, "", ""},
		{"away, and noted when she was already riding", true, func(b *fixtures.Barn) {
			b.Now = monday("10:30")
			b.Note(model.Note{Kind: model.NoteRiderAway, Rider: b.Mia})
		}, "", ""},
		{"the hour of a rider who was added is past", true, func(b *fixtures.Barn) {
			b.Now = monday("10:30")
			b.Note(model.Note{Kind: model.NoteRiderAdded, Rider: b.Rider("Zoe"), Lesson: lesson(b)})
		}, "", ""},
	} {
		if how, why := change(t, c.posted, c.happens); how != c.how || why != c.why {
			t.Errorf("%s: %q because %q, want %q because %q", c.name, how, why, c.how, c.why)
		}
	}
}

func TestAChangeSaysWhyAboutAHorseOnce(t *testing.T) {
	lame := " is out (lame) until a named person ends it"
	for _, c := range []struct{ reason, why string }{
		{"the horse" + lame + ": Star", "Star" + lame},
		{"the horse" + lame + ": Moss, Star", "Star" + lame + "; the horse" + lame + ": Moss"},
		{"the horse has the day off: Star", "Star" + lame + "; the horse has the day off: Star"},
	} {
		b := fixtures.New()
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		w := b.Week()
		fixtures.Post(w, fixtures.Plan(w, b.Turn(b.Star, b.Oak)))
		b.Star.Out = []model.Out{{Why: model.Lame}}
		w = b.Centre.Repair(fixtures.Monday, 1, b.Now)
		p := fixtures.Plan(w)
		p.Ground[0] = []string{c.reason}
		if why := w.Changes(p)[0].Why; why != c.why {
			t.Errorf("%q: %q, want %q", c.reason, why, c.why)
		}
	}
}

func TestAChangeTellsWhoWasNotPostedFromWhoWasOnTheGround(t *testing.T) {
	for _, c := range []struct {
		note      func(b *fixtures.Barn) model.Note
		then, now string
	}{
		{func(b *fixtures.Barn) model.Note {
			return model.Note{Kind: model.NoteRiderAdded, Rider: b.Rider("Zoe"), Lesson: b.Lessons[0]}
		}, "not posted", "on the ground"},
		{func(b *fixtures.Barn) model.Note { return model.Note{Kind: model.NoteRiderAway, Rider: b.Mia} }, "on the ground", "does not ride"},
	} {
		b := fixtures.New()
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		w := b.Week()
		fixtures.Post(w, fixtures.Plan(w))
		b.Note(c.note(b))
		w = b.Centre.Repair(fixtures.Monday, 1, b.Now)
		changes := w.Changes(fixtures.Plan(w))
		if len(changes) != 1 {
			t.Fatalf("%d changes", len(changes))
		}
		if then, now := changes[0].ThenAndNow(); then != c.then || now != c.now {
			t.Errorf("%q, then %q; want %q, then %q", then, now, c.then, c.now)
		}
	}
}

func TestNobodyTakesALessonThatIsNotHeld(t *testing.T) {
	for name, happens := range map[string]func(b *fixtures.Barn){
		"arena closed":    func(b *fixtures.Barn) { b.Ring.Closures = []model.Period{{Why: "storm"}} },
		"instructor away": func(b *fixtures.Barn) { b.Ann.Away = []model.Period{{Why: "storm"}} },
		"cancelled": func(b *fixtures.Barn) {
			b.Note(model.Note{Kind: model.NoteCancelled, Lesson: b.Lessons[0], Words: "storm"})
		},
	} {
		b := fixtures.New()
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		if why := model.NoLesson(b.Week().Rides[0]); why != "" {
			t.Errorf("%s: %q before it", name, why)
		}
		happens(b)
		if why := model.NoLesson(b.Centre.Week(fixtures.Monday, 1, model.Instant{}).Rides[0]); !slices.Contains([]string{"storm", "Ann is away"}, why) {
			t.Errorf("%s: %q", name, why)
		}
	}
}
