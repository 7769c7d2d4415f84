package model_test

import (
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// Each begins with a note that Ann wrote on Monday morning and takes back at noon.
func TestASlipIsTakenBackByWhoWroteItOnItsDayWhileNobodyGoesByIt(t *testing.T) {
	posted := func(notes int, from, until model.Date) func(*fixtures.Barn, *model.Note) {
		return func(b *fixtures.Barn, n *model.Note) {
			b.Posted = []*model.Posted{{Version: 4, From: fixtures.Monday + from, Until: fixtures.Monday + until, Notes: notes}}
		}
	}
	for _, x := range []struct {
		name   string
		change func(b *fixtures.Barn, n *model.Note)
		says   string
	}{
		{"nothing since", func(*fixtures.Barn, *model.Note) {}, ""},
		{"of another", func(b *fixtures.Barn, n *model.Note) { n.By = &model.Person{Name: "Bo"} }, "written by somebody else"},
		{"of yesterday", func(b *fixtures.Barn, n *model.Note) { n.At.Date-- }, "written on another day"},
		{"a vet's stop", func(b *fixtures.Barn, n *model.Note) { n.Why = model.VetStop }, "is a vet's stop"},
		{"one that undoes another", func(b *fixtures.Barn, n *model.Note) { n.Kind = "" }, "noted anew"},
		{"posted before it", posted(0, 0, 6), ""},
		{"posted with it", posted(1, 0, 6), "version 4 was posted with note 1 in it"},
		{"a later day posted with it", posted(1, 5, 6), "version 4 was posted"},
		{"an earlier day posted with it", posted(1, -3, -1), ""},
		{"a later day, which the note is not for", func(b *fixtures.Barn, n *model.Note) {
			posted(1, 5, 6)(b, n)
			n.Kind = model.NoteArenaClosed
		}, ""},
		{"closed with it", func(b *fixtures.Barn, n *model.Note) {
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday, At: monday("11:00")}}
		}, "was closed with note 1 in it"},
		{"closed before it", func(b *fixtures.Barn, n *model.Note) {
			b.Ridden = []*model.Ridden{{Date: fixtures.Monday, At: monday("07:00")}}
		}, ""},
	} {
		b := fixtures.New()
		n := b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, At: monday("08:00")})
		x.change(b, n)
		switch got := b.NoSlip(n, b.Ann, fixtures.Monday); {
		case x.says == "" && got != "", !strings.Contains(got, x.says):
			t.Errorf("%s: %q", x.name, got)
		}
	}
}

func TestANoteThatIsUndoneAgainChangesNothingOfWhatIsPosted(t *testing.T) {
	b := fixtures.New()
	p := &model.Posted{Version: 1, From: fixtures.Monday, Until: fixtures.Monday, Notes: 1}
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame})
	b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Ill})
	for _, x := range []struct {
		undoes  int
		changed bool
	}{{0, true}, {2, false}, {3, true}, {4, false}, {1, true}} {
		if x.undoes > 0 {
			b.Note(model.Note{Undoes: x.undoes})
		}
		if got := b.ChangedSince(p, fixtures.Monday); got != x.changed {
			t.Errorf("after %d was undone: %v", x.undoes, got)
		}
	}
	if b.ChangedSince(p, fixtures.Monday+1) {
		t.Error("another date has changed")
	}
}
