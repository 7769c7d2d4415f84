package sheet

import (
	"math"
	"slices"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Measures of a tag in mm; ten go on a page of A4 or Letter, eight below the title.
const (
	tagWide, tagHigh = 92.0, 47.0
	tagsAcross       = 2
)

// Tags are to be cut out and tied on pieces: the tag in letters to be read from
// across the tack room, what it is, its size and where it hangs.
func Tags(c *model.Centre, today model.Date, stamp Stamp) *paper.Sheet {
	s := plainSheet(c, "Tags", today, stamp)
	s.Facts = append(s.Facts, paper.Fact{Name: "cut", Words: "along the lines; punch the ring, and tie where no strap runs"})
	pieces := slices.Clone(c.Pieces)
	slices.SortStableFunc(pieces, func(a, b *model.Piece) int { return natural(a.Tag, b.Tag) })
	part := paper.Part{NewPage: true, Table: paper.Table{Columns: []paper.Column{{Head: "tag"}, {Head: "what"}, {Head: "size"}, {Head: "where"}}}}
	_, first, other := paper.Room(s)
	rest := pieces
	for high := first; len(rest) > 0; high = other {
		n := min(len(rest), int(high/tagHigh)*tagsAcross)
		part.Pictures = append(part.Pictures, tagPage(rest[:n], c.House.Units))
		rest = rest[n:]
	}
	for _, x := range pieces {
		part.Table.Rows = append(part.Table.Rows, paper.Row{Cells: paper.Texts(x.Tag, string(x.Kind), SizeOf(x, c.House.Units), hangs(x))})
	}
	if len(pieces) == 0 {
		part.Says = []string{"The folder has no piece of tack."}
	}
	s.Parts = []paper.Part{part}
	return s
}

// tagPage are tags side by side.
func tagPage(pieces []*model.Piece, units model.Units) paper.Picture {
	page := paper.Picture{About: "tags to cut out", W: tagsAcross * tagWide, H: float64((len(pieces)+tagsAcross-1)/tagsAcross) * tagHigh}
	for i, x := range pieces {
		drawTag(&page, float64(i%tagsAcross)*tagWide, float64(i/tagsAcross)*tagHigh, x, units)
	}
	return page
}

// hangs is where a piece is kept, for its tag.
func hangs(x *model.Piece) string {
	switch {
	case x.WithSeat != nil:
		return "with " + x.WithSeat.Tag
	case x.WithHorse != nil:
		return "at " + x.WithHorse.Name
	case x.Rack != "":
		return "rack " + x.Rack
	}
	return ""
}

func drawTag(p *paper.Picture, x, y float64, piece *model.Piece, units model.Units) {
	const ring, edge = 6.0, 5.0
	p.Rect(x, y, tagWide, tagHigh, 0.2)
	var round []float64
	for i := range 17 {
		angle := float64(i) * math.Pi / 8
		round = append(round, x+edge+ring/2+ring/2*math.Cos(angle), y+tagHigh/2+ring/2*math.Sin(angle))
	}
	p.Line(0.35, round...)
	left := x + edge + ring + 4
	wide := tagWide - (left - x) - edge
	small := []string{join(", ", string(piece.Kind), SizeOf(piece, units)), hangs(piece), piece.Looks}
	for _, sizes := range [][2]float64{{54, 15}, {40, 14}, {30, 12}, {16, 12}} {
		lines := paper.Broken(piece.Tag, sizes[0], true, wide)
		names := len(lines)
		for _, words := range small {
			if words != "" {
				lines = append(lines, paper.Broken(words, sizes[1], false, wide)...)
			}
		}
		high := float64(names)*paper.LineOf(sizes[0]) + float64(len(lines)-names)*paper.LineOf(sizes[1])
		if high > tagHigh-edge && sizes[0] > 16 || names > 1 && sizes[0] > 30 {
			continue
		}
		at := y + edge/2
		for k, words := range lines {
			of, high := 1, paper.LineOf(sizes[1])
			if k < names {
				of, high = 0, paper.LineOf(sizes[0])
			}
			if at += high; at < y+tagHigh-1 {
				p.Write(left, at-high/5, sizes[of], of == 0, words)
			}
		}
		return
	}
}
