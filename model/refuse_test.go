package model_test

import (
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// Mia rides on Monday at ten; Noor in the same lesson.
func TestANewHoldThatHarmsOrContradictsIsRefusedAndBothAreNamed(t *testing.T) {
	keep := func(r *model.Rider, h *model.Horse) model.Note {
		return model.Note{Kind: model.NoteKeep, Rider: r, Horse: h}
	}
	for _, x := range []struct {
		name string
		with func(b *fixtures.Barn, noor *model.Rider, moss *model.Horse)
		note func(b *fixtures.Barn, moss *model.Horse) model.Note
		want []string
	}{
		{"a horse that is out", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {
			b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame})
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{"Mia on Star", `"horse at work"`}},
		{"a horse that she must not ride", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {
			b.Mia.Bans = []*model.Horse{b.Star}
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{`"horse suits rider"`}},
		{"a rider too heavy", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {
			b.Mia.Weight = 101 * model.Kilogram
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{`"load"`}},
		{"a form that has run out", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {
			b.Mia.FormUntil = fixtures.Monday - 1
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{`"form in date"`}},
		{"a horse that no seat is charted for", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {},
			func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Horse("Bare")) }, []string{`"seat fits horse"`}},
		{"a horse that has worked enough", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {
			b.House.Limits.DayMinutes = 90
			b.Work(b.Star, fixtures.Monday, "14:00-14:45")
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{`"day's work"`}},
		{"another horse kept for her", func(b *fixtures.Barn, _ *model.Rider, moss *model.Horse) { b.Note(keep(b.Mia, moss)) },
			func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{"Mia on Star", "note 1", "Mia on Moss"}},
		{"the horse kept for somebody else then", func(b *fixtures.Barn, noor *model.Rider, _ *model.Horse) { b.Note(keep(noor, b.Star)) },
			func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{"note 1", "Noor on Star"}},
		{"kept off it", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) {
			b.Note(model.Note{Kind: model.NoteNever, Rider: b.Mia, Horse: b.Star})
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{"note 1", "Mia off Star"}},
		{"horses that are kept apart", func(b *fixtures.Barn, noor *model.Rider, moss *model.Horse) {
			b.Star.Apart = []*model.Horse{moss}
			b.Note(keep(noor, moss))
		}, func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, []string{"note 1", "horses apart"}},
		{"kept on the horse that she is to be kept off", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) { b.Note(keep(b.Mia, b.Star)) },
			func(b *fixtures.Barn, _ *model.Horse) model.Note {
				return model.Note{Kind: model.NoteNever, Rider: b.Mia, Horse: b.Star}
			}, []string{"Mia off Star", "note 1"}},
		{"nothing in its way", func(b *fixtures.Barn, noor *model.Rider, moss *model.Horse) { b.Note(keep(noor, moss)) },
			func(b *fixtures.Barn, _ *model.Horse) model.Note { return keep(b.Mia, b.Star) }, nil},
		{"health, whatever is kept", func(b *fixtures.Barn, _ *model.Rider, _ *model.Horse) { b.Note(keep(b.Mia, b.Star)) },
			func(b *fixtures.Barn, _ *model.Horse) model.Note {
				return model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame}
			}, nil},
	} {
		b := fixtures.New()
		noor, moss := b.Rider("Noor"), b.Horse("Moss")
		b.Row(moss, b.Oak)
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, noor)
		x.with(b, noor, moss)
		n := x.note(b, moss)
		n.Date = fixtures.Monday
		b.Obey()
		got := b.RefusesHold(&n)
		if x.want == nil && got != "" {
			t.Errorf("%s: refused: %s", x.name, got)
		}
		for _, part := range x.want {
			if !strings.Contains(got, part) {
				t.Errorf("%s: %q does not say %s", x.name, got, part)
			}
		}
	}
}
