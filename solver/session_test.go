package solver

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/fixtures"
	drawn "tackwright/fixtures/weeks"
	"tackwright/model"
)

// morning is a small centre with a week posted, read anew under some notes.
type morning struct {
	seed uint64
	told []model.Told // of the nouns of an earlier reading
	on   int          // the only date planned anew, from 0; -1: all seven
}

func (m *morning) read(t *testing.T) *model.Centre {
	t.Helper()
	size, err := drawn.Named("small")
	if err != nil {
		t.Fatal(err)
	}
	return drawn.Centre(size, m.seed, false)
}

func (m *morning) under(t *testing.T, notes []model.Note) *model.Week {
	c := m.read(t)
	first := c.Today
	there := translator{nouns(c.Horses, func(h *model.Horse) string { return h.Name }), nouns(c.Pieces, func(x *model.Piece) string { return x.Tag })}
	riders, lessons := nouns(c.Riders, func(r *model.Rider) string { return r.Name }), nouns(c.Lessons, func(l *model.Lesson) string { return l.Name })
	posted := &model.Posted{Version: 1, From: first, Until: first + 6}
	for _, x := range m.told {
		x.Turn, x.Rider, x.Lesson = there.turn(x.Turn), riders[x.Rider.Name], lessons[x.Lesson.Name]
		posted.Told = append(posted.Told, x)
	}
	if m.told != nil {
		c.Posted = append(c.Posted, posted)
	}
	for _, n := range notes {
		if n.Horse != nil {
			n.Horse = there.horses[n.Horse.Name]
		}
		if n.Piece != nil {
			n.Piece = there.pieces[n.Piece.Tag]
		}
		if n.Rider != nil {
			n.Rider = riders[n.Rider.Name]
		}
		if n.Lesson != nil {
			n.Lesson = lessons[n.Lesson.Name]
		}
		c.Notes = append(c.Notes, &n)
	}
	c.Obey()
	if m.on < 0 {
		return c.Repair(first, 7, model.Instant{})
	}
	return c.Repair(first+model.Date(m.on), 1, model.Instant{})
}

// noteFor is something that goes wrong in the week.
func noteFor(g *rand.Rand, number int, w *model.Week) model.Note {
	r := w.Rides[g.IntN(len(w.Rides))]
	c := w.Centre
	n := model.Note{Number: number, Date: r.Date()}
	horse := c.Horses[g.IntN(len(c.Horses))]
	switch g.IntN(12) {
	case 0, 1, 2:
		n.Kind, n.Horse, n.Why = model.NoteHorseOut, horse, model.Lame
	case 3, 4:
		n.Kind, n.Rider = model.NoteRiderAway, r.Rider
	case 5:
		n.Kind, n.Lesson = model.NoteCancelled, r.Meeting.Lesson
	case 6, 7:
		n.Kind, n.Rider, n.Horse = model.NoteNever, r.Rider, horse
	case 8, 9:
		n.Kind, n.Rider, n.Horse = model.NoteKeep, r.Rider, horse
	case 10:
		n.Kind, n.Piece = model.NotePieceOut, c.Pieces[g.IntN(len(c.Pieces))]
	default:
		n.Kind, n.Lesson, n.From, n.Until = model.NoteMoved, r.Meeting.Lesson, r.Meeting.Start+15, r.Meeting.End+15
	}
	return n
}

func TestASessionOfNotesDoneAndUndoneScoresAsFreshSolvesDo(t *testing.T) {
	scoreAsFresh(t, 3, -1, 200)
}

// What a horse does on other dates goes with it when it is out, and the rules stay written.
func TestASessionAboutOneDateScoresAsFreshSolvesDo(t *testing.T) {
	for seed := range uint64(4) {
		for on := range 7 {
			scoreAsFresh(t, 3+seed, on, 40)
		}
	}
}

func scoreAsFresh(t *testing.T, seed uint64, on, questions int) {
	t.Helper()
	m := &morning{seed: seed, on: on}
	g := rand.New(rand.NewPCG(3, 11))
	first := m.read(t)
	w := first.Week(first.Today, 7, model.Instant{})
	plan, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	fixtures.Post(w, plan)
	m.told = first.Posted[len(first.Posted)-1].Told
	var s Session
	var notes []model.Note
	if on >= 0 {
		w = m.under(t, nil)
		if len(w.Rides) == 0 {
			return
		}
	}
	for q := range questions {
		if len(notes) > 3 || len(notes) > 0 && g.IntN(3) == 0 { // one is undone
			i := g.IntN(len(notes))
			notes = slices.Delete(notes, i, i+1)
		} else {
			notes = append(notes, noteFor(g, q+1, w))
		}
		live, err := s.Plan(context.Background(), m.under(t, notes), Options{})
		if err != nil {
			t.Fatalf("question %d: %v", q, err)
		}
		fresh, err := Plan(context.Background(), m.under(t, notes), Options{})
		if err != nil {
			t.Fatalf("question %d: %v", q, err)
		}
		if !slices.Equal(live.Proof.Goals, fresh.Proof.Goals) {
			t.Fatalf("question %d, with %+v: live %+v, fresh %+v", q, notes, live.Proof.Goals, fresh.Proof.Goals)
		}
	}
	if s.Written() > questions/2 {
		t.Errorf("the rules were written %d times for %d questions", s.Written(), questions)
	}
	t.Logf("written %d times", s.Written())
}

// On Monday Star is marked; on Tuesday Luna is to wear what Star would. Whether she
// does is a matter of a note, and Luna is out on Monday.
func TestASessionHeedsWhatOtherHorsesWearOnOtherDates(t *testing.T) {
	asked := func(away bool) *model.Week {
		b := fixtures.New()
		luna := b.Horse("Luna")
		b.Row(luna, b.Oak)
		b.Star.OwnTack = []model.Span{{From: model.Instant{Date: b.From}}}
		luna.Out = []model.Out{{Why: model.Appointment, From: model.Instant{Date: b.From}, End: model.Instant{Date: b.From + 1}}}
		b.Lesson(b.From, "10:00-10:30", b.Mia)
		leo := b.Rider("Leo")
		tuesday := b.Lesson(b.From+1, "10:00-10:30", leo)
		b.Tell(tuesday, leo, b.Turn(luna, b.Oak))
		if away {
			b.Note(model.Note{Kind: model.NoteRiderAway, Rider: leo, Date: b.From + 1})
		}
		b.Obey()
		return b.Centre.Week(b.From, 1, model.Instant{})
	}
	for _, away := range []bool{false, true} {
		var s Session
		for _, away := range []bool{away, !away} {
			live, err := s.Plan(context.Background(), asked(away), Options{})
			if err != nil {
				t.Fatal(err)
			}
			if rides := live.Turns[0] != nil; rides != away {
				t.Errorf("Leo away on Tuesday: %v; Mia rides on Monday: %v", away, rides)
			}
		}
	}
}
