package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// twins are two saddles that are charted alike for Star, each with a pad and a
// girth.
func twins(change func(b *fixtures.Barn)) (*fixtures.Barn, *model.Week) {
	b := fixtures.New()
	b.Saddle("elm", b.Star)
	if change != nil {
		change(b)
	}
	return b, b.Week()
}

func TestPiecesThatNothingTellsApartAreAlike(t *testing.T) {
	b, w := twins(nil)
	for _, pair := range [][2]string{{"oak", "elm"}, {"oak pad", "elm pad"}, {"oak girth", "elm girth"}} {
		if w.Alike(b.Tag(pair[0])) != w.Alike(b.Tag(pair[1])) {
			t.Errorf("%s and %s are not alike", pair[0], pair[1])
		}
	}
	if w.Alike(b.Tag("oak pad")) == w.Alike(b.Tag("oak girth")) {
		t.Error("a pad is like a girth")
	}
	oak, elm := b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Tag("elm"))
	if !w.AlikeAll(oak.Pieces(), elm.Pieces()) || w.AlikeAll(oak.Pads, elm.Pieces()) {
		t.Error("alike place by place")
	}
}

func TestWhatTellsPiecesApart(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn)
		tag    string
	}{
		{"kind", func(b *fixtures.Barn) { b.Tag("elm").Kind = model.Western }, "elm"},
		{"style", func(b *fixtures.Barn) { b.Tag("elm").Style = "dressage" }, "elm"},
		{"family", func(b *fixtures.Barn) { b.Tag("elm girth").Family = model.LongGirth }, "elm girth"},
		{"size", func(b *fixtures.Barn) { b.Tag("elm girth").Label += 20 }, "elm girth"},
		{"weight", func(b *fixtures.Barn) { b.Tag("elm").Weight = 9001 }, "elm"},
		{"skin", func(b *fixtures.Barn) { b.Tag("elm girth").Skin = false }, "elm girth"},
		{"kept with another horse", func(b *fixtures.Barn) { b.Tag("elm girth").WithHorse = b.Star }, "elm girth"},
		{"kept with a seat", func(b *fixtures.Barn) { b.Tag("elm girth").WithSeat = b.Oak }, "elm girth"},
		{"the pad that is kept with it", func(b *fixtures.Barn) { b.Tag("elm pad").Size = "full" }, "elm"},
		{"the seat that it is kept with", func(b *fixtures.Barn) { b.Tag("elm").Label += 5 }, "elm pad"},
		{"another horse in the chart", func(b *fixtures.Barn) { b.Row(b.Horse("Bay"), b.Tag("elm")) }, "elm"},
		{"girths by size in its row", func(b *fixtures.Barn) { b.Chart[1].GirthMax += 20 }, "elm"},
		{"a row that ends in the week", func(b *fixtures.Barn) { b.Chart[1].Until = fixtures.Monday + 3 }, "elm"},
		{"named by tag", func(b *fixtures.Barn) { b.Chart[0].Girths = []*model.Piece{b.Tag("elm girth")} }, "elm girth"},
	} {
		b, w := twins(c.change)
		oak := b.Tag("oak" + c.tag[len("elm"):])
		if w.Alike(oak) == w.Alike(b.Tag(c.tag)) {
			t.Errorf("%s: still alike", c.name)
		}
	}
}

func TestWhatDoesNotTellPiecesApart(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn)
	}{
		{"tag, rack and looks", func(b *fixtures.Barn) { b.Tag("elm").Rack, b.Tag("elm").Looks = "B4", "blue tape" }},
		{"the weight assumed, stated", func(b *fixtures.Barn) { b.Tag("elm").Weight = b.House.Assumed.Saddle }},
		{"check due", func(b *fixtures.Barn) { b.Tag("elm").CheckDue = fixtures.Monday + 3 }},
		{"a row that ends after the week", func(b *fixtures.Barn) { b.Chart[1].Until = fixtures.Monday + 30 }},
		{"who approved it and when", func(b *fixtures.Barn) { b.Chart[1].By, b.Chart[1].Approved = "somebody", fixtures.Monday-7 }},
		{"pads named, each its own", func(b *fixtures.Barn) {
			b.Chart[0].Pads = []*model.Piece{b.Tag("oak pad")}
			b.Chart[1].Pads = []*model.Piece{b.Tag("elm pad")}
		}},
	} {
		b, w := twins(c.change)
		if w.Alike(b.Oak) != w.Alike(b.Tag("elm")) {
			t.Errorf("%s: no longer alike", c.name)
		}
	}
}

// tags are pad choices by tag.
func tags(choices [][]*model.Piece) [][]string {
	var out [][]string
	for _, c := range choices {
		var tags []string
		for _, p := range c {
			tags = append(tags, p.Tag)
		}
		out = append(out, tags)
	}
	return out
}

func TestPadsAreTheRowsElseTheHorsesElseTheSeatsElseLooseOnes(t *testing.T) {
	b := fixtures.New()
	pad := func(tag, size string) *model.Piece {
		return b.Piece(&model.Piece{Tag: tag, Kind: model.Pad, Size: size, Skin: true})
	}
	b.Tag("oak pad").WithSeat = nil
	b.Tag("oak pad").Size = "cob"
	full, riser := pad("full", "full"), pad("riser", "")
	row := b.Chart[0]
	w := b.Week()
	for _, step := range []struct {
		name   string
		change func()
		want   [][]string
	}{
		{"loose ones, where nothing else is", func() {}, [][]string{{"oak pad"}, {"full"}, {"riser"}}},
		{"loose ones of a size that the row allows", func() { row.PadSizes = []string{"full"} }, [][]string{{"full"}}},
		{"those kept with the seat, whatever size the row allows", func() { b.Tag("oak pad").WithSeat = b.Oak }, [][]string{{"oak pad"}}},
		{"the horse's own before them", func() { full.WithHorse = b.Star }, [][]string{{"full"}}},
		{"none, where the seat needs none", func() { b.Oak.NoPad = true }, [][]string{nil}},
		{"those that the row names, in its order, before all", func() { row.Pads = []*model.Piece{riser, full} }, [][]string{{"riser", "full"}}},
	} {
		step.change()
		if got := tags(w.PadChoices(b.Star, b.Oak, row)); !slices.EqualFunc(got, step.want, slices.Equal) {
			t.Errorf("%s: %q, want %q", step.name, got, step.want)
		}
	}
}
