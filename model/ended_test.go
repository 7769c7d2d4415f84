package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// A horse's stop, a piece's and a horse's own tack end alike.
var endings = []struct {
	name       string
	begin, end func(b *fixtures.Barn) model.Note
	spans      func(b *fixtures.Barn) (ends []model.Instant)
}{
	{"horse", func(b *fixtures.Barn) model.Note {
		return model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.VetStop}
	}, func(b *fixtures.Barn) model.Note { return model.Note{Kind: model.NoteHorseBack, Horse: b.Star} },
		func(b *fixtures.Barn) (ends []model.Instant) {
			for _, o := range b.Star.Out {
				ends = append(ends, o.End)
			}
			return ends
		}},
	{"piece", func(b *fixtures.Barn) model.Note { return model.Note{Kind: model.NotePieceOut, Piece: b.Oak} },
		func(b *fixtures.Barn) model.Note { return model.Note{Kind: model.NotePieceBack, Piece: b.Oak} },
		func(b *fixtures.Barn) (ends []model.Instant) {
			for _, o := range b.Oak.Out {
				ends = append(ends, o.End)
			}
			return ends
		}},
	{"own tack", func(b *fixtures.Barn) model.Note { return model.Note{Kind: model.NoteOwnTack, Horse: b.Star} },
		func(b *fixtures.Barn) model.Note { return model.Note{Kind: model.NoteOwnTackEnd, Horse: b.Star} },
		func(b *fixtures.Barn) (ends []model.Instant) {
			for _, o := range b.Star.OwnTack {
				ends = append(ends, o.End)
			}
			return ends
		}},
}

func TestOnlyWhatHasBegunIsEnded(t *testing.T) {
	for _, e := range endings {
		b := fixtures.New()
		for _, d := range []model.Date{0, 3} {
			n := e.begin(b)
			n.Date = fixtures.Monday + d
			b.Note(n)
		}
		n := e.end(b)
		n.Date = fixtures.Monday + 1
		b.Note(n)
		b.Week()
		if got := e.spans(b); got[0] != (model.Instant{Date: n.Date}) || !got[1].IsZero() {
			t.Errorf("%s: ends %v", e.name, got)
		}
	}
}

func TestWhatIsEndedOnTheDateOnWhichItBeganDoesNotEndBeforeIt(t *testing.T) {
	for _, e := range endings {
		b := fixtures.New()
		n := e.begin(b)
		n.From = fixtures.At("10:00")
		b.Note(n)
		b.Note(e.end(b)) // of the date, with no hour
		b.Week()
		if got := e.spans(b); got[0] != monday("10:00") {
			t.Errorf("%s: ends %v", e.name, got)
		}
	}
}

func TestNothingIsEndedAheadOfItsTime(t *testing.T) {
	for _, e := range endings {
		b := fixtures.New()
		b.Note(e.begin(b))
		n := e.end(b)
		n.From, n.At = fixtures.At("15:00"), monday("14:59")
		b.Note(n)
		b.Week()
		if got := e.spans(b); !got[0].IsZero() {
			t.Errorf("%s: ends %v", e.name, got)
		}
	}
	b := fixtures.New()
	b.Note(model.Note{Kind: model.NoteCleaned, Piece: b.Oak, Date: fixtures.Monday + 2, At: monday("07:30")})
	if b.Week(); len(b.Oak.Cleaned) > 0 {
		t.Error("a plan assumes no cleaning to come")
	}
}
