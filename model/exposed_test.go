package model_test

import (
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// exposedBarn has Star, and Moss beside it on the same saddle, with Fern that
// shares one with Moss alone.
func exposedBarn() (b *fixtures.Barn, moss, fern *model.Horse, elm *model.Piece) {
	b = fixtures.New()
	moss, fern = b.Horse("Moss"), b.Horse("Fern")
	b.Row(moss, b.Oak)
	elm = b.Saddle("elm", moss, fern)
	return b, moss, fern, elm
}

// exposedNames are horses and tags, those over others behind a "+".
func exposedNames(all []model.Exposure) (out []string) {
	for _, x := range all {
		name := ""
		switch {
		case x.Horse != nil:
			name = x.Horse.Name
		default:
			name = x.Piece.Tag
		}
		if !x.Direct {
			name = "+" + name
		}
		out = append(out, name)
	}
	return out
}

func TestExposedIsWhoSharedSkinContactInTheFortnightBefore(t *testing.T) {
	b, moss, fern, elm := exposedBarn()
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-6, "10:00-11:00")
	b.Rode(b.Turn(moss, b.Oak), fixtures.Monday-5, "10:00-11:00")
	b.Rode(b.Turn(moss, elm), fixtures.Monday-4, "10:00-11:00")
	b.Rode(b.Turn(fern, elm), fixtures.Monday-3, "10:00-11:00")
	want := []string{"Moss", "oak pad", "oak girth", "+Fern", "+elm pad", "+elm girth"}
	if got := exposedNames(b.Exposed(b.Star, monday("08:00"))); !slices.Equal(got, want) {
		t.Errorf("exposed are %q, want %q", got, want)
	}
}

// Nobody knows who gave it to whom.
func TestExposedIsAlsoWhoWoreThePieceAhead(t *testing.T) {
	b, moss, _, elm := exposedBarn()
	b.Rode(b.Turn(moss, elm), fixtures.Monday-7, "10:00-11:00")
	b.Rode(b.Turn(moss, b.Oak), fixtures.Monday-6, "10:00-11:00")
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-5, "10:00-11:00")
	want := []string{"Moss", "oak pad", "oak girth"}
	if got := exposedNames(b.Exposed(b.Star, monday("08:00"))); !slices.Equal(got, want) {
		t.Errorf("exposed are %q, want %q", got, want)
	}
}

func TestAPieceThatWasCleanedPassesNothingOn(t *testing.T) {
	b, moss, _, _ := exposedBarn()
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-6, "10:00-11:00")
	b.Rode(b.Turn(moss, b.Oak), fixtures.Monday-5, "10:00-11:00")
	for _, tag := range []string{"oak pad", "oak girth"} {
		b.Tag(tag).Cleaned = []model.Cleaning{{At: model.Instant{Date: fixtures.Monday - 5, Minute: fixtures.At("08:00")}, By: "Ann"}}
	}
	want := []string{"oak pad", "oak girth"}
	if got := exposedNames(b.Exposed(b.Star, monday("08:00"))); !slices.Equal(got, want) {
		t.Errorf("exposed are %q, want %q", got, want)
	}
}

func TestWhatIsMoreThanAFortnightAgoOrStillToComeExposesNobody(t *testing.T) {
	b, _, _, _ := exposedBarn()
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday-15, "10:00-11:00")
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday, "10:00-11:00")
	if got := exposedNames(b.Exposed(b.Star, monday("08:00"))); len(got) > 0 {
		t.Errorf("exposed are %q", got)
	}
}
