package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// yesterday is Mia's posted ride on Star the day before the week, on which it
// works too, and what the ridden record says of that day.
func yesterday(differs func(b *fixtures.Barn, l *model.Lesson) []model.Differs) (*fixtures.Barn, *model.Week) {
	b := fixtures.New()
	b.From, b.Days = fixtures.Monday+1, 1
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	if differs != nil {
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, By: b.Ann, Differs: differs(b, l)}}
	}
	return b, b.Week()
}

// minutes are a horse's minutes of work in the facts of a week.
func minutes(w *model.Week, h *model.Horse) (n int64) {
	for _, s := range w.Facts {
		if s.Turn.Horse == h {
			n += s.Work / 100 / 100
		}
	}
	return n
}

func TestADateThatNobodyClosedCountsAsPosted(t *testing.T) {
	b, w := yesterday(nil)
	if got := minutes(w, b.Star); got != 60 {
		t.Errorf("%d min", got)
	}
}

func TestANoShowDidNoWork(t *testing.T) {
	b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
		return []model.Differs{{How: model.NoShow, Lesson: l, Rider: b.Mia}}
	})
	if got := minutes(w, b.Star); got != 0 {
		t.Errorf("%d min", got)
	}
	if w.Grounded(b.Mia) {
		t.Error("she stayed away, and was not stood down")
	}
}

func TestAnotherHorseDidTheWork(t *testing.T) {
	b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
		bay := b.Horse("Bay")
		bay.Factor = 50
		return []model.Differs{{How: model.OtherHorse, Lesson: l, Rider: b.Mia, Turn: &model.Turn{Horse: bay}}}
	})
	if star, bay := minutes(w, b.Star), minutes(w, b.Horses[1]); star != 0 || bay != 30 {
		t.Errorf("Star %d min, Bay %d min", star, bay)
	}
}

func TestARideCutShortCountsForWhatItWas(t *testing.T) {
	b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
		return []model.Differs{{How: model.CutShort, Lesson: l, Rider: b.Mia, End: fixtures.At("10:20")}}
	})
	if got := minutes(w, b.Star); got != 20 {
		t.Errorf("%d min", got)
	}
}

func TestAnExtraRideCountsBesideThePostedOnes(t *testing.T) {
	b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
		return []model.Differs{
			{How: model.ExtraRide, Lesson: l, Rider: b.Rider("guest"), Turn: b.Turn(b.Star, b.Oak), Start: fixtures.At("11:00"), End: fixtures.At("11:30")},
			{How: model.ExtraRide, Lesson: l, Rider: b.Rider("whole"), Turn: b.Turn(b.Horse("Bay"), b.Oak)},
		}
	})
	if star, bay := minutes(w, b.Star), minutes(w, b.Horses[1]); star != 90 || bay != 60 {
		t.Errorf("Star %d min, Bay %d min", star, bay)
	}
}

func TestSheWhoWasStoodDownAndRodeAfterAllWasNotOnTheGround(t *testing.T) {
	for _, rode := range []bool{false, true} {
		b := fixtures.New()
		b.From = fixtures.Monday + 1
		l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		b.Tell(l, b.Mia, nil)
		if rode {
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday, By: b.Ann, Differs: []model.Differs{
				{How: model.ExtraRide, Lesson: l, Rider: b.Mia, Turn: b.Turn(b.Star, b.Oak)}}}}
		}
		w := b.Week()
		if w.Grounded(b.Mia) == rode || (minutes(w, b.Star) == 60) != rode {
			t.Errorf("rode %v: grounded %v, %d min", rode, w.Grounded(b.Mia), minutes(w, b.Star))
		}
	}
}

func TestOnlyHerLatestRideSaysWhetherSheWasOnTheGround(t *testing.T) {
	for _, c := range []struct {
		first, second bool // seated
		want          bool
	}{{true, false, true}, {false, true, false}, {false, false, true}, {true, true, false}} {
		b := fixtures.New()
		for i, seated := range []bool{c.first, c.second} {
			l := b.Lesson(fixtures.Monday-10+model.Date(3*i), "10:00-11:00", b.Mia)
			var turn *model.Turn
			if seated {
				turn = b.Turn(b.Star, b.Oak)
			}
			b.Tell(l, b.Mia, turn)
		}
		if got := b.Week().Grounded(b.Mia); got != c.want {
			t.Errorf("%+v: grounded %v", c, got)
		}
	}
}

func TestALaterVersionReplacesAnEarlierOneOnTheDatesThatItCovers(t *testing.T) {
	b := fixtures.New()
	b.From = fixtures.Monday + 2
	turn := b.Turn(b.Star, b.Oak)
	for d := range model.Date(2) {
		b.Rode(turn, fixtures.Monday+d, "10:00-11:00")
	}
	b.Posted = append(b.Posted, &model.Posted{Version: 3, By: b.Ann, From: fixtures.Monday + 1, Until: fixtures.Monday + 1})
	if got := minutes(b.Week(), b.Star); got != 60 {
		t.Errorf("%d min, want Monday's 60 alone", got)
	}
}

func TestWorkThatWasRecordedBesideThePlanWasDone(t *testing.T) {
	b := fixtures.New()
	b.From = fixtures.Monday + 1
	b.Star.Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: fixtures.Monday - 9}}}
	b.Work(b.Star, fixtures.Monday, "09:00-09:20") // planned: its horse was out
	b.Ridden = []*model.Ridden{{Date: fixtures.Monday, By: b.Ann, Works: []*model.Work{
		{Horse: b.Star, Kind: "in hand", On: fixtures.Monday, Start: fixtures.At("14:00"), End: fixtures.At("14:15")}}}}
	w := b.Week()
	if got := minutes(w, b.Star); got != 15 {
		t.Errorf("%d min", got)
	}
	if len(w.Suspended) != 0 {
		t.Errorf("past work listed: %q", w.Suspended)
	}
}

func TestAStartedRideIsAsTheRiddenRecordHasIt(t *testing.T) {
	b := fixtures.New()
	bay := b.Horse("Bay")
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	other := b.Turn(bay, b.Saddle("elm", bay))
	b.Ridden = []*model.Ridden{{Date: fixtures.Monday, By: b.Ann, Differs: []model.Differs{
		{How: model.OtherHorse, Lesson: l, Rider: b.Mia, Turn: other}}}}
	b.Now = model.Instant{Date: fixtures.Monday, Minute: fixtures.At("12:00")}
	w := b.Week()
	if !w.Rides[0].Told.Equal(other) || minutes(w, b.Star) != 0 || minutes(w, bay) != 60 {
		t.Errorf("told %+v", w.Rides[0].Told)
	}
}

func TestARecordOfARideThatNobodyPostedChangesNothing(t *testing.T) {
	for _, how := range []model.DiffersHow{model.NoShow, model.OtherHorse, model.CutShort} {
		b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
			return []model.Differs{{How: how, Lesson: l, Rider: b.Rider("stranger"), Turn: &model.Turn{Horse: b.Horse("Bay")}, End: fixtures.At("10:10")}}
		})
		if got := minutes(w, b.Star); got != 60 || len(w.Facts) != 1 {
			t.Errorf("%s: %d min in %d facts", how, got, len(w.Facts))
		}
	}
}

func TestWhatDiffersCountsByTheLessonsFactor(t *testing.T) {
	b := fixtures.New()
	b.From = fixtures.Monday + 1
	b.House.Factors = map[string]model.Percent{"group": 50}
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
	b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{{How: model.CutShort, Lesson: l, Rider: b.Mia, End: fixtures.At("10:20")}}}}
	if got := minutes(b.Week(), b.Star); got != 10 {
		t.Errorf("%d min", got)
	}
}

func TestAnExtraRideCountsBesideOneThatSheHad(t *testing.T) {
	b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
		return []model.Differs{{How: model.ExtraRide, Lesson: l, Rider: b.Mia, Turn: b.Turn(b.Star, b.Oak), Start: fixtures.At("11:00"), End: fixtures.At("11:30")}}
	})
	if got := minutes(w, b.Star); got != 90 {
		t.Errorf("%d min", got)
	}
}

func TestAnExtraRideThatWasPostedSinceCountsOnce(t *testing.T) {
	b, w := yesterday(func(b *fixtures.Barn, l *model.Lesson) []model.Differs {
		extra := b.Posted[0].Told[0]
		extra.Start, extra.End, extra.Work = fixtures.At("11:00"), fixtures.At("11:30"), extra.Work/2
		b.Posted[0].Told = append(b.Posted[0].Told, extra)
		return []model.Differs{{How: model.ExtraRide, Lesson: l, Rider: b.Mia, Turn: extra.Turn, Start: extra.Start, End: extra.End}}
	})
	if got := minutes(w, b.Star); got != 90 {
		t.Errorf("%d min", got)
	}
}

func TestWhatAnExtraRideDoesNotSayOfItsHoursIsTheLessons(t *testing.T) {
	for _, c := range []struct{ start, end, want string }{
		{"00:00", "10:20", "10:00 10:20"}, {"10:30", "00:00", "10:30 11:00"}, {"00:00", "00:00", "10:00 11:00"},
		{"11:15", "00:00", "11:15 12:15"}, // after the lesson: as long as one
	} {
		b := fixtures.New()
		b.From = fixtures.Monday + 1
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{{How: model.ExtraRide,
			Lesson: b.Lesson(fixtures.Monday, "10:00-11:00"), Rider: b.Mia, Turn: b.Turn(b.Star, b.Oak), Start: fixtures.At(c.start), End: fixtures.At(c.end)}}}}
		if f := b.Week().Facts[0]; f.Start.String()+" "+f.End.String() != c.want {
			t.Errorf("%s to %s, want %s", f.Start, f.End, c.want)
		}
	}
}

func TestACutFindsItsPartAndNeverLengthens(t *testing.T) {
	for _, c := range []struct {
		start, end string
		want       int64 // minutes of Star, who goes from 10:00 to 10:20 and from 10:30 to 11:00
	}{
		{"10:30", "10:40", 30}, {"00:00", "10:40", 30}, {"00:00", "10:10", 40}, {"10:00", "10:10", 40},
		{"10:30", "11:20", 50}, {"00:00", "09:50", 50}, {"10:15", "10:18", 50},
	} {
		b := fixtures.New()
		b.From = fixtures.Monday + 1
		l := b.Lesson(fixtures.Monday, "10:00-11:00")
		b.Part(l, b.Mia, "10:00-10:20")
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Part(l, b.Mia, "10:30-11:00")
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak)) // told of the last part
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{
			{How: model.CutShort, Lesson: l, Rider: b.Mia, Start: fixtures.At(c.start), End: fixtures.At(c.end)}}}}
		if got := minutes(b.Week(), b.Star); got != c.want {
			t.Errorf("%s cut at %s: %d min, want %d", c.start, c.end, got, c.want)
		}
	}
}
