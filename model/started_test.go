package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// toldTo writes what the started rides were told: "10:00 Mia Star".
func toldTo(w *model.Week) []string {
	var out []string
	for _, r := range w.Rides {
		switch {
		case r.State != model.Started:
			continue
		case r.Told == nil:
			out = append(out, r.Start.String()+" "+r.Rider.Name+" ground")
		default:
			out = append(out, r.Start.String()+" "+r.Rider.Name+" "+r.Told.Horse.Name)
		}
	}
	return out
}

func TestEachStartedRideFindsWhatItWasTold(t *testing.T) {
	for _, c := range []struct {
		name  string
		stage func(b *fixtures.Barn, star, bay *model.Turn)
		want  []string
		facts int
	}{
		{"two riders of one lesson", func(b *fixtures.Barn, star, bay *model.Turn) {
			noor := b.Rider("Noor")
			l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, noor)
			b.Tell(l, noor, bay)
			b.Tell(l, b.Mia, star)
		}, []string{"10:00 Mia Star", "10:00 Noor Bay"}, 2},
		{"one on the ground", func(b *fixtures.Barn, star, bay *model.Turn) {
			noor := b.Rider("Noor")
			l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, noor)
			b.Tell(l, noor, nil)
			b.Tell(l, b.Mia, star)
		}, []string{"10:00 Mia Star", "10:00 Noor ground"}, 1},
		{"one rider in two lessons", func(b *fixtures.Barn, star, bay *model.Turn) {
			first, second := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia), b.Lesson(fixtures.Monday, "11:00-12:00", b.Mia)
			b.Tell(second, b.Mia, bay)
			b.Tell(first, b.Mia, star)
		}, []string{"10:00 Mia Star", "11:00 Mia Bay"}, 2},
		{"one rider in two parts of a lesson", func(b *fixtures.Barn, star, bay *model.Turn) {
			l := b.Lesson(fixtures.Monday, "10:00-11:00")
			b.Part(l, b.Mia, "10:00-10:30")
			b.Tell(l, b.Mia, star)
			b.Part(l, b.Mia, "10:30-11:00")
			told := &b.Posted[0].Told[0]
			later := *told
			later.Start, later.End, later.Turn = told.End, l.End, bay
			b.Posted[0].Told = []model.Told{later, *told}
		}, []string{"10:00 Mia Star", "10:30 Mia Bay"}, 2},
		{"a lesson noted as moved when it had started", func(b *fixtures.Barn, star, bay *model.Turn) {
			l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
			b.Tell(l, b.Mia, star)
			b.Note(model.Note{Kind: model.NoteMoved, Lesson: l, From: fixtures.At("10:10"), Until: fixtures.At("11:00"), At: monday("10:00")})
		}, []string{"10:00 Mia Star"}, 1},
		{"a lesson moved since it was posted", func(b *fixtures.Barn, star, bay *model.Turn) {
			l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
			b.Tell(l, b.Mia, star)
			b.Note(model.Note{Kind: model.NoteMoved, Lesson: l, From: fixtures.At("10:10"), Until: fixtures.At("11:00")})
		}, []string{"10:10 Mia Star"}, 1},
		{"an extra ride in the morning of the lesson that is to come", func(b *fixtures.Barn, star, bay *model.Turn) {
			l := b.Lesson(fixtures.Monday, "14:00-15:00", b.Mia)
			b.Tell(l, b.Mia, star)
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{
				{How: model.ExtraRide, Lesson: l, Rider: b.Mia, Turn: bay, Start: fixtures.At("09:00"), End: fixtures.At("09:30")}}}}
		}, nil, 1},
		{"two parts of a lesson noted as moved when both had started", func(b *fixtures.Barn, star, bay *model.Turn) {
			l := b.Lesson(fixtures.Monday, "10:00-11:00")
			b.Part(l, b.Mia, "10:00-10:30")
			b.Tell(l, b.Mia, star)
			b.Part(l, b.Mia, "10:30-11:00")
			later := b.Posted[0].Told[0]
			later.Start, later.End, later.Turn = later.End, l.End, bay
			b.Posted[0].Told = append(b.Posted[0].Told, later)
			b.Note(model.Note{Kind: model.NoteMoved, Lesson: l, From: fixtures.At("14:00"), Until: fixtures.At("15:00"), At: monday("11:30")})
		}, []string{"10:00 Mia Star", "10:30 Mia Bay"}, 2},
		{"a rider who has left the lesson since, and a lesson that is gone", func(b *fixtures.Barn, star, bay *model.Turn) {
			l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
			b.Tell(l, b.Mia, star)
			l.Places = nil
			b.Posted[0].Told = append(b.Posted[0].Told, model.Told{Date: fixtures.Monday, Start: fixtures.At("11:00"), End: fixtures.At("12:00"), LessonName: "gone", Turn: bay})
		}, nil, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := fixtures.New()
			b.Now = monday("12:00")
			bay := b.Horse("Bay")
			c.stage(b, b.Turn(b.Star, b.Oak), b.Turn(bay, b.Saddle("elm", bay)))
			w := b.Week()
			if got := toldTo(w); !slices.Equal(got, c.want) {
				t.Errorf("told %q, want %q", got, c.want)
			}
			if len(w.Facts) != c.facts {
				t.Errorf("%d facts, want %d", len(w.Facts), c.facts)
			}
		})
	}
}

func TestWhatIsPostedForTheDatesPlannedIsNoFactUntilItStarts(t *testing.T) {
	b := fixtures.New()
	for d := range model.Date(7) {
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+d, "10:00-11:00")
	}
	b.Now = model.Instant{Date: fixtures.Monday + 2, Minute: fixtures.At("10:00")}
	if got := len(b.Week().Facts); got != 3 {
		t.Errorf("%d facts by Wednesday at ten", got)
	}
}

func TestAPostedRideThatIsPlannedAnewLeavesNoContact(t *testing.T) {
	_, w, p := onBay(func(b *fixtures.Barn) {
		b.Star.OwnTack = []model.Span{{From: ago(9)}}
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday, "08:00-09:00")
	})
	p.Turns[0], p.Turns[1] = nil, p.Turns[0] // the posted ride stays on the ground this time
	wantTold(t, w.Audit(p))
}

func TestPartsOfALessonAreOneSessionEvenWhenOneIsAFact(t *testing.T) {
	for _, c := range []struct {
		name string
		part bool // Noor rides in another part of Mia's lesson; else in one of its own
		left bool // Mia has left the lesson since
		want []string
	}{
		{"a part of hers", true, false, nil},
		{"a part of hers, which she has left", true, true, nil},
		{"a lesson of its own", false, false, []string{"day's work"}},
	} {
		b := fixtures.New()
		b.House.Limits.DaySessions = 1
		noor := b.Rider("Noor")
		l := b.Lesson(fixtures.Monday, "10:00-11:00")
		b.Part(l, b.Mia, "10:00-10:30")
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		if c.part {
			b.Part(l, noor, "10:30-11:00")
		} else {
			b.Lesson(fixtures.Monday, "11:00-11:30", noor)
		}
		if c.left {
			l.Places = l.Places[1:]
		}
		b.Now = monday("10:10")
		w := b.Week()
		p := fixtures.Plan(w)
		for i, r := range w.Rides {
			p.Turns[i] = b.Turn(b.Star, b.Oak)
			if r.State == model.Started {
				p.Turns[i] = r.Told
			}
		}
		t.Run(c.name, func(t *testing.T) { wantTold(t, w.Audit(p), c.want...) })
	}
}

func TestPostedPartsOfALessonThatIsGoneAreStillOneSession(t *testing.T) {
	for second, want := range map[string][]string{"gone": nil, "gone too": {"(day's work)"}} {
		b := fixtures.New()
		b.House.Limits.DaySessions = 1
		turn := b.Turn(b.Star, b.Oak)
		told := model.Told{Date: fixtures.Monday, Start: fixtures.At("10:00"), End: fixtures.At("10:30"), LessonName: "gone", Arena: b.Ring, Turn: turn}
		later := told
		later.Start, later.End, later.LessonName = told.End, told.End+30, second
		b.Posted = []*model.Posted{{Version: 1, From: fixtures.Monday, Until: fixtures.Monday, Told: []model.Told{told, later}}}
		b.Now = monday("12:00")
		w := b.Week()
		wantTold(t, w.Audit(fixtures.Plan(w)), want...)
	}
}

func TestOnlyAnOutThatBeginsInTheMiddleOfARideEndsIt(t *testing.T) {
	for _, c := range []struct {
		name string
		out  model.Out
		want string // when the ride ends
	}{
		{"in the middle", model.Out{From: monday("10:40")}, "10:40"},
		{"in the middle, for ten minutes", model.Out{Why: model.Appointment, From: monday("10:40"), End: monday("10:50")}, "10:40"},
		{"in its first minute, and noted then", model.Out{From: monday("10:00"), At: monday("10:00")}, "11:00"},
		{"as it ends", model.Out{From: monday("11:00")}, "11:00"},
		{"another day at that hour, and ended", model.Out{From: model.Instant{Date: fixtures.Monday - 5, Minute: fixtures.At("10:40")}, End: ago(4)}, "11:00"},
	} {
		b := fixtures.New()
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday, "10:00-11:00")
		b.Star.Out = []model.Out{c.out}
		b.Now = monday("12:00")
		if got := b.Week().Facts[0].End.String(); got != c.want {
			t.Errorf("%s: ends at %s", c.name, got)
		}
	}
}

func TestAWorkToComeIsSuspendedWholeAndToldOnlyOnTheDatesPlanned(t *testing.T) {
	b := fixtures.New()
	for _, d := range []model.Date{-1, 0, 6, 7} {
		b.Work(b.Star, fixtures.Monday+d, "10:00-11:00")
		b.Star.Out = append(b.Star.Out, model.Out{Why: model.Appointment, From: model.Instant{Date: fixtures.Monday + d, Minute: fixtures.At("10:30")},
			End: model.Instant{Date: fixtures.Monday + d, Minute: fixtures.At("10:40")}})
	}
	w := b.Week()
	if len(w.Suspended) != 2 {
		t.Errorf("suspended %q", w.Suspended)
	}
	if len(w.Facts) != 1 || w.Facts[0].End != fixtures.At("10:30") { // yesterday's was done until then
		t.Errorf("%d facts", len(w.Facts))
	}
}
