package model_test

import (
	"slices"
	"testing"
	"time"

	"tackwright/fixtures"
	"tackwright/model"
)

// more is the barn with one more of something, and its week.
func more(b *fixtures.Barn, s model.Spare) (*model.Centre, *model.Week) {
	c := b.Centre.With(s)
	return c, c.Week(b.From, 7, model.Instant{})
}

func pieceOf(c *model.Centre, tag string) *model.Piece {
	i := slices.IndexFunc(c.Pieces, func(p *model.Piece) bool { return p.Tag == tag })
	return c.Pieces[i]
}

func TestACopyOfASaddleComesNewWithItsPadAndIsAlike(t *testing.T) {
	b := fixtures.New()
	b.Oak.Out = []model.PieceOut{{Why: "torn", From: model.Instant{Date: b.From}}}
	b.Oak.CheckDue = b.From
	c, w := more(b, model.Spare{Piece: b.Oak})
	oak, copied := pieceOf(c, "oak"), pieceOf(c, "oak (2)")
	if w.Alike(oak) != w.Alike(copied) || pieceOf(c, "oak pad (2)").WithSeat != copied {
		t.Error("the copy is not alike, or has no pad of its own")
	}
	if copied.Out != nil || copied.CheckDue != 0 || oak.Out == nil {
		t.Errorf("the copy is out as %v until %v", copied.Out, copied.CheckDue)
	}
	if len(b.Pieces) != 3 || len(b.Chart) != 1 {
		t.Error("the centre itself has changed")
	}
}

func TestACopyOfAGirthGoesWhereverTheChartNamesTheOne(t *testing.T) {
	b := fixtures.New()
	b.Chart[0].GirthMin, b.Chart[0].GirthMax = 0, 0
	b.Chart[0].Girths = []*model.Piece{b.Tag("oak girth")}
	c, w := more(b, model.Spare{Piece: b.Tag("oak girth")})
	copied := pieceOf(c, "oak girth (2)")
	if !c.Chart[0].HasGirth(copied) || w.Alike(copied) != w.Alike(pieceOf(c, "oak girth")) {
		t.Error("the chart does not name the copy")
	}
}

func TestAHorseLikeOneIsApprovedAndKeptFromRidersAsThatIs(t *testing.T) {
	b := fixtures.New()
	luna := b.Horse("Luna")
	b.Star.Apart = []*model.Horse{luna}
	b.Star.Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: b.From}}}
	b.Star.Arrived = b.From
	b.Star.DaysOff = []model.Period{{Weekdays: []time.Weekday{time.Friday}}, {From: b.From, Until: b.From + 2}}
	b.Mia.Bans = []*model.Horse{b.Star}
	wool := b.Piece(&model.Piece{Tag: "wool", Kind: model.Pad, Skin: true, WithHorse: b.Star})
	c, w := more(b, model.Spare{Horse: b.Star})
	star := c.Horses[len(c.Horses)-1]
	if star.Name != "Star (2)" || !star.IsApart(c.Horses[1]) || !c.Riders[0].IsBanned(star) || star.Out != nil || star.Arrived != 0 {
		t.Errorf("the horse is %+v", star)
	}
	if len(star.DaysOff) != 1 || len(star.DaysOff[0].Weekdays) != 1 {
		t.Errorf("it is off in %v", star.DaysOff)
	}
	pads := w.PadChoices(star, pieceOf(c, "oak"), c.Chart[1])
	if len(w.RowsFor(star, pieceOf(c, "oak"), b.From)) != 1 || len(pads) != 1 || pads[0][0].Tag != "wool (2)" || wool.WithHorse != b.Star {
		t.Errorf("it wears %v", pads)
	}
}

// Girths are sold in 2-inch steps (trade size charts).
func TestAGirthSizeOfTheChartThatTheCentreHasNoneOfIsASpare(t *testing.T) {
	b := fixtures.New() // has one girth of 24 in
	b.Chart[0].GirthMax = model.Inches(28)
	var sizes []model.Label
	for _, s := range b.Spares() {
		if s.Girth != nil {
			sizes = append(sizes, s.Girth.Label)
			c, _ := more(b, s)
			if g := c.Pieces[len(c.Pieces)-1]; !c.Chart[0].HasGirth(g) || !g.Buckles(pieceOf(c, "oak")) {
				t.Errorf("%+v does not go with the saddle", g)
			}
		}
	}
	if !slices.Equal(sizes, []model.Label{model.Inches(26), model.Inches(28)}) {
		t.Errorf("sizes are %v", sizes)
	}
}

func TestAPadKeptWithASeatIsNoSpareByItself(t *testing.T) {
	for _, s := range fixtures.New().Spares() {
		if s.Piece != nil && s.Piece.Tag == "oak pad" {
			t.Error("it is")
		}
	}
}
