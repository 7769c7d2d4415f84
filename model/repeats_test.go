package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestANoteThatSaysTheVerySameIsARepeat(t *testing.T) {
	b := fixtures.New()
	l := b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	lame := model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, Date: fixtures.Monday, From: fixtures.At("07:40")}
	back := model.Note{Kind: model.NoteHorseBack, Horse: b.Star, Date: fixtures.Monday, From: fixtures.At("08:00")}
	away := model.Note{Kind: model.NoteRiderAway, Rider: b.Mia, Date: fixtures.Monday}
	tuesday := away
	tuesday.Date++
	said := away
	said.Words, said.At = "a cold", monday("07:10")
	to := func(from, until string) model.Note {
		return model.Note{Kind: model.NoteMoved, Lesson: l, Date: fixtures.Monday, From: fixtures.At(from), Until: fixtures.At(until)}
	}
	hot := model.Note{Kind: model.NoteWeather, Date: fixtures.Monday, Warmth: 90, Humidity: 60}
	for _, c := range []struct {
		name  string
		notes []model.Note
		want  int // number of the note that the last one repeats
	}{
		{"nothing before", []model.Note{lame}, 0},
		{"twice", []model.Note{lame, lame}, 1},
		{"with other words", []model.Note{away, lame, said}, 1},
		{"for another date", []model.Note{away, tuesday}, 0},
		{"out again", []model.Note{lame, back, lame}, 0},
		{"moved there and back", []model.Note{to("11:00", "12:00"), to("10:00", "11:00"), to("11:00", "12:00")}, 0},
		{"after it was undone", []model.Note{away, {Undoes: 1}, away}, 0},
		{"as hot as before", []model.Note{hot, hot}, 0},
	} {
		b.Notes = nil
		for _, n := range c.notes[:len(c.notes)-1] {
			n.Number = len(b.Notes) + 1
			b.Notes = append(b.Notes, &n)
		}
		got := 0
		if x := b.Repeats(&c.notes[len(c.notes)-1]); x != nil {
			got = x.Number
		}
		if got != c.want {
			t.Errorf("%s: it repeats note %d, want %d", c.name, got, c.want)
		}
	}
}
