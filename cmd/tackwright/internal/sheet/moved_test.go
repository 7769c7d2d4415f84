package sheet

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// wrong is a Monday that goes wrong: a barn, how its rides were posted, what
// happens then, and how they are now, each in the order of the rides.
type wrong struct {
	*fixtures.Barn
	moss *model.Horse
	elm  *model.Piece
}

func goWrong(t *testing.T, lessons func(b *wrong) (posted []*model.Turn), happens func(b *wrong) (now []*model.Turn)) *Moved {
	t.Helper()
	b := &wrong{Barn: fixtures.New()}
	b.moss = b.Horse("Moss")
	b.Row(b.moss, b.Oak)
	b.elm = b.Saddle("elm", b.Star, b.moss)
	was := lessons(b)
	w := b.Week()
	fixtures.Post(w, fixtures.Plan(w, was...))
	now := happens(b)
	w = b.Centre.Repair(monday, 1, b.Now)
	return WhatMoved(w, fixtures.Plan(w, now...), monday, posted)
}

// twoOnStar are Mia at 10:00 and Leo at 11:00, both on Star in oak.
func twoOnStar(b *wrong) []*model.Turn {
	b.Lesson(monday, "10:00-10:45", b.Mia)
	b.Lesson(monday, "11:00-11:45", b.Rider("Leo"))
	return []*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)}
}

// mended is a Monday on which Mia rides Moss in Star's saddle, and Leo as posted.
func mended(t *testing.T) *Moved {
	t.Helper()
	return goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
		return []*model.Turn{b.Turn(b.moss, b.Oak), b.Turn(b.Star, b.Oak)}
	})
}

// said is what a person is to be told.
func said(m *Moved, to string) []string {
	for _, n := range m.People {
		if n.To == to {
			return n.Words
		}
	}
	return nil
}

func TestTheBarnIsToldWhatTheOtherHorseWears(t *testing.T) {
	m := mended(t)
	if len(m.Moves) != 2 {
		t.Fatalf("%+v", m.Moves)
	}
	x := m.Moves[0]
	if x.Rider != "Mia" || x.How != "another horse" || x.Was != "Star" || x.Now != "Moss" || x.Start != clock("10:00") || x.OnBy != clock("09:50") {
		t.Errorf("%+v", x)
	}
	if !slices.Equal(tags(x.Fetch), []string{"oak", "oak pad", "oak girth"}) || len(x.Return) != 0 {
		t.Errorf("fetch %v, return %v", tags(x.Fetch), tags(x.Return))
	}
}

func TestAShorterLessonIsNoOtherTimeForWhoHasNoHorse(t *testing.T) {
	m := goWrong(t, func(b *wrong) []*model.Turn {
		b.Lesson(monday, "10:00-10:45", b.Mia)
		return []*model.Turn{nil}
	}, func(b *wrong) []*model.Turn {
		b.Note(model.Note{Kind: model.NoteShortened, Lesson: b.Lessons[0], Until: fixtures.At("10:30")})
		return []*model.Turn{nil}
	})
	if s := m.words(m.Moves[0]); !strings.HasSuffix(s, "): on the ground, as posted, until 10:30 and not 10:45") {
		t.Error(s)
	}
}

// The posted list has the saddle on Star from before ten: now it has to come over.
func TestARideThatGoesAsPostedIsNamedWhereItsTackComesFromElsewhere(t *testing.T) {
	x := mended(t).Moves[1]
	if x.Rider != "Leo" || x.How != "as posted" || x.Now != "Star" || len(x.Fetch) != 3 || x.Fetch[0].From != "Moss" || x.Fetch[0].OffAt != clock("10:45") {
		t.Errorf("%+v", x)
	}
}

func TestWhatComesToTheHorseByThePostedListIsNotFetched(t *testing.T) {
	m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn { return []*model.Turn{nil, b.Turn(b.Star, b.Oak)} })
	if len(m.Moves) != 1 || m.Moves[0].Rider != "Mia" || len(m.Moves[0].Fetch)+len(m.Moves[0].Return) != 0 {
		t.Errorf("oak is on Star from before ten, and stays until noon: %+v", m.Moves)
	}
}

func TestAPieceGoesBackOnceAfterItsLastRide(t *testing.T) {
	m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
		return []*model.Turn{b.Turn(b.Star, b.elm), b.Turn(b.Star, b.elm)}
	})
	if len(m.Moves) != 2 {
		t.Fatalf("%+v", m.Moves)
	}
	mia, leo := m.Moves[0], m.Moves[1]
	if !slices.Equal(tags(mia.Fetch), []string{"elm", "elm pad", "elm girth"}) || len(leo.Fetch) != 0 {
		t.Errorf("fetch %v for Mia, %v for Leo", tags(mia.Fetch), tags(leo.Fetch))
	}
	if len(mia.Return) != 0 || !slices.Equal(tags(leo.Return), []string{"elm", "elm pad", "elm girth", "oak", "oak pad", "oak girth"}) && !slices.Equal(tags(leo.Return), []string{"oak", "oak pad", "oak girth", "elm", "elm pad", "elm girth"}) {
		t.Fatalf("return %v with Mia, %v with Leo", tags(mia.Return), tags(leo.Return))
	}
	for _, p := range leo.Return {
		if used := strings.HasPrefix(p.Tag, "elm"); used != (p.OffAt == clock("11:45")) || !used && p.OffAt != 0 {
			t.Errorf("%s goes back from %v on", p.Tag, p.OffAt)
		}
	}
}

func TestWhatIsWornLaterThanPostedIsLeftUntilThen(t *testing.T) {
	m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
		return []*model.Turn{b.Turn(b.Star, b.elm), b.Turn(b.Star, b.Oak)}
	})
	if !slices.Equal(tags(m.Moves[0].Leave), []string{"oak", "oak pad", "oak girth"}) || m.Moves[0].Leave[0].OnAgain != clock("11:00") {
		t.Errorf("%+v", m.Moves[0])
	}
}

func TestAMovedLessonIsToldToAllWithItsNewHour(t *testing.T) {
	m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
		b.Note(model.Note{Kind: model.NoteMoved, Lesson: b.Lessons[0], From: fixtures.At("09:30"), Until: fixtures.At("10:15"), Arena: b.Arena("field")})
		return []*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)}
	})
	if len(m.Moves) != 1 || m.Moves[0].How != "another time" || m.Moves[0].WasStart != clock("10:00") || m.Moves[0].OnBy != clock("09:20") || len(m.Moves[0].Fetch) != 0 {
		t.Fatalf("%+v", m.Moves)
	}
	if got := said(m, "Mia"); !slices.Equal(got, []string{"rides at 09:30, not at 10:00, in field"}) {
		t.Errorf("%q", got)
	}
	if got := said(m, "Ann"); !slices.Equal(got, []string{"09:30 Mia: Star in oak, not at 10:00, in field"}) {
		t.Errorf("%q", got)
	}
	if text := strings.Join(strings.Fields(m.Text()), " "); !strings.Contains(text, "Star, at 09:30 and not 10:00, in field; on by 09:20") {
		t.Error(text)
	}
}

func TestAShortenedLessonIsToldByItsEnd(t *testing.T) {
	m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
		b.Note(model.Note{Kind: model.NoteShortened, Lesson: b.Lessons[1], Until: fixtures.At("11:30")})
		return []*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)}
	})
	if got := said(m, "Leo"); !slices.Equal(got, []string{"rides at 11:00 until 11:30, not 11:45"}) {
		t.Errorf("%q", got)
	}
	if text := m.Text(); !strings.Contains(text, "Star, until 11:30 and not 11:45") {
		t.Error(text)
	}
}

func TestBothInstructorsAreTold(t *testing.T) {
	m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
		b.Note(model.Note{Kind: model.NoteInstructor, Lesson: b.Lessons[0], Instructor: b.Person("Bea")})
		return []*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)}
	})
	for to, want := range map[string]string{
		"Ann": "lesson Mon 23 Nov 10:00: Bea takes it",
		"Bea": "10:00 Mia: Star in oak; you take the lesson",
		"Mia": "still rides at 10:00, with Bea",
	} {
		if got := said(m, to); !slices.Equal(got, []string{want}) {
			t.Errorf("%s: %q", to, got)
		}
	}
}

func TestAFamilyIsToldThatThereIsNoLesson(t *testing.T) {
	for name, happens := range map[string]func(b *wrong){
		"arena closed": func(b *wrong) {
			b.Ring.Closures = []model.Period{{From: monday, Until: monday, End: fixtures.At("10:30")}}
		},
		"instructor away": func(b *wrong) { b.Ann.Away = []model.Period{{From: monday, Until: monday, End: fixtures.At("10:30")}} },
		"cancelled":       func(b *wrong) { b.Note(model.Note{Kind: model.NoteCancelled, Lesson: b.Lessons[0]}) },
	} {
		m := goWrong(t, twoOnStar, func(b *wrong) []*model.Turn {
			happens(b)
			return []*model.Turn{nil, b.Turn(b.Star, b.Oak)}
		})
		if got := said(m, "Mia"); !slices.Equal(got, []string{"no lesson at 10:00"}) {
			t.Errorf("%s: %q", name, got)
		}
	}
}

func TestWhoIsNotTouchedIsNotTold(t *testing.T) {
	m := mended(t)
	if got := said(m, "Leo"); got != nil {
		t.Errorf("Leo rides as posted, and is told %q", got)
	}
	if got := said(m, "Mia"); !slices.Equal(got, []string{"still rides at 10:00, on another horse"}) {
		t.Errorf("%q", got)
	}
}

func TestTheSheetOfWhatMovedFitsThePage(t *testing.T) {
	text := mended(t).Text()
	for _, want := range []string{"WHAT MOVED", "10:00  Mia", "fetch   oak", "from Moss, off at 10:45", "TO BE TOLD", "still rides at 10:00", "saddle fitter"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if paper.Columns(line) > paper.MonoColumns {
			t.Errorf("too wide: %s", line)
		}
	}
}

// Whatever goes wrong, the list can be carried out from top to bottom: a piece
// goes back at most once, after whoever wears it last, and is fetched for none
// after that.
func TestNoPieceIsFetchedAfterItGoesBack(t *testing.T) {
	fetched, returned := 0, 0
	for seed := range uint64(300) {
		g := rand.New(rand.NewPCG(seed, 5))
		b := fixtures.New()
		seats := []*model.Piece{b.Oak, b.Saddle("elm", b.Star), b.Saddle("fir", b.Star)}
		herd := []*model.Horse{b.Star, b.Horse("Moss"), b.Horse("Bay")}
		for i, hours := range []string{"09:00-09:45", "10:00-10:45", "10:00-10:45", "11:00-11:45", "14:00-14:45"} {
			b.Lesson(monday, hours, b.Rider(string(rune('A'+i))))
		}
		w := b.Week()
		day := func() *model.Plan { // at ten two ride, on other horses in other saddles
			p := fixtures.Plan(w)
			h, s := g.Perm(len(herd)), g.Perm(len(seats))
			for i := range w.Rides {
				if g.IntN(4) > 0 {
					p.Turns[i] = b.Turn(herd[h[i%3]], seats[s[(i+g.IntN(2)*i/3)%3]])
				}
			}
			return p
		}
		fixtures.Post(w, day())
		w = b.Centre.Repair(monday, 1, model.Instant{})
		p := day()
		m := WhatMoved(w, p, monday, posted)
		last := map[string]Clock{}
		for i, r := range w.Rides {
			if p.Turns[i] != nil {
				for _, x := range p.Turns[i].Pieces() {
					last[x.Tag] = max(last[x.Tag], Clock(r.End))
				}
			}
		}
		back := map[string]bool{}
		for _, x := range m.Moves {
			for _, f := range x.Fetch {
				fetched++
				if x.Start >= last[f.Tag] {
					t.Errorf("seed %d: %s is fetched at %v, and worn last until %v", seed, f.Tag, x.Start, last[f.Tag])
				}
			}
			for _, f := range x.Return {
				returned++
				if back[f.Tag] {
					t.Errorf("seed %d: %s goes back twice", seed, f.Tag)
				}
				if back[f.Tag] = true; f.OffAt != last[f.Tag] {
					t.Errorf("seed %d: %s goes back from %v on, and is worn until %v", seed, f.Tag, f.OffAt, last[f.Tag])
				}
			}
		}
	}
	if fetched == 0 || returned == 0 {
		t.Errorf("%d fetched, %d returned", fetched, returned)
	}
}

// schooled is a Monday on which Star is to be schooled in oak at three.
func schooled(b *wrong) []*model.Turn {
	x := b.Work(b.Star, monday, "15:00-15:45")
	t := b.Turn(b.Star, b.Oak)
	x.Kind, x.Arena, x.Seat, x.Pads, x.Girth = "schooling", b.Ring, t.Seat, t.Pads, t.Girth
	b.Lesson(monday, "10:00-10:45", b.Mia)
	return []*model.Turn{b.Turn(b.moss, b.elm)}
}

func TestTheTackOfAWorkThatASuspendingNoteStopsGoesBackAtOnce(t *testing.T) {
	same := func(b *wrong) []*model.Turn { return []*model.Turn{b.Turn(b.moss, b.elm)} }
	for name, note := range map[string]model.Note{
		"its horse is lame":    {Kind: model.NoteHorseOut, Why: model.Lame},
		"it is left out":       {Kind: model.NoteWorkOff},
		"its arena is closed":  {Kind: model.NoteArenaClosed, From: 14 * 60, Until: 18 * 60},
		"a note of other days": {Kind: model.NoteHorseOut, Why: model.Lame, Date: monday + 1},
	} {
		m := goWrong(t, schooled, func(b *wrong) []*model.Turn {
			note.At = model.Instant{Date: monday, Minute: 8 * 60}
			if note.Kind == model.NoteArenaClosed {
				note.Arena = b.Ring
			} else {
				note.Horse = b.Star
			}
			b.Note(note)
			b.Obey()
			return same(b)
		})
		if note.Date == monday+1 {
			if len(m.Moves) > 0 {
				t.Errorf("%s: %+v", name, m.Moves)
			}
			continue
		}
		if len(m.Moves) != 1 {
			t.Errorf("%s: %+v", name, m.Moves)
			continue
		}
		x := m.Moves[0]
		if x.How != "is not done" || x.Was != "Star" || x.Now != "" || x.Start != clock("15:00") ||
			!slices.Equal(tags(x.Return), []string{"oak", "oak pad", "oak girth"}) || x.Return[0].OffAt != 0 {
			t.Errorf("%s: %+v", name, x)
		}
	}
}

// What the posted list never had is not looked for.
func TestAWorkThatWasStoppedWhenTheDayWasPostedIsNoneOfTheBarns(t *testing.T) {
	m := goWrong(t, func(b *wrong) []*model.Turn {
		turns := schooled(b)
		b.Star.Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: monday - 9}}}
		return turns
	}, func(b *wrong) []*model.Turn {
		b.Posted[0].At = model.Instant{Date: monday - 2, Minute: 12 * 60}
		return []*model.Turn{b.Turn(b.moss, b.elm)}
	})
	if len(m.Moves) != 0 {
		t.Errorf("%+v", m.Moves)
	}
}

// Who was on the ground comes to the lesson, and asks whether there is one.
func TestARiderOnTheGroundIsToldThatTheArenaHasClosedSince(t *testing.T) {
	ground := func(b *wrong) []*model.Turn { return []*model.Turn{nil} }
	one := func(b *wrong) []*model.Turn {
		b.Lesson(monday, "10:00-10:45", b.Mia)
		return ground(b)
	}
	closes := func(b *wrong) {
		b.Note(model.Note{Kind: model.NoteArenaClosed, Arena: b.Ring, At: model.Instant{Date: monday, Minute: 8 * 60}})
		b.Obey()
	}
	m := goWrong(t, one, func(b *wrong) []*model.Turn { closes(b); return ground(b) })
	if got := said(m, "Mia"); !slices.Equal(got, []string{"no lesson at 10:00"}) {
		t.Errorf("closed since: %q", got)
	}
	if got := said(m, "Ann"); !slices.Equal(got, []string{"10:00 Mia: does not ride"}) {
		t.Errorf("closed since, her instructor: %q", got)
	}
	m = goWrong(t, func(b *wrong) []*model.Turn {
		turns := one(b)
		b.Ring.Closures = []model.Period{{}}
		return turns
	}, ground)
	if len(m.People) > 0 {
		t.Errorf("closed all along: %+v", m.People)
	}
}

// Sheets call two riders the same where nobody gave one a mark: still two families
// have to be told.
func TestTwoRidersOfOneFirstNameAreTwoFamiliesToBeTold(t *testing.T) {
	m := goWrong(t, func(b *wrong) []*model.Turn {
		b.Lesson(monday, "10:00-10:45", b.Mia)
		b.Lesson(monday, "11:00-11:45", b.Rider("Mia Two"))
		b.Riders[len(b.Riders)-1].First = b.Mia.First
		return []*model.Turn{b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)}
	}, func(b *wrong) []*model.Turn { return []*model.Turn{nil, nil} })
	families := 0
	for _, n := range m.People {
		if n.Role == "family" {
			families++
		}
	}
	if families != 2 {
		t.Errorf("%d families are told: %v", families, m.People)
	}
}
