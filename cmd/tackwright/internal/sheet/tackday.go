package sheet

import (
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Measures of the tack room's day, in mm and points.
const (
	tackSize = 12.0
	tackRow  = 8.0 // least height of a piece's row
	tackHead = 9.0 // above the rows, for the hours
	tackMost = 1.1 // mm a minute at most; a name that needs more is broken
)

// TackDay draws the tack room's day to time: a row for each piece, a bar for each
// ride with the name of the horse that wears it, and an arrow where it goes to
// another horse.
func TackDay(w *model.Week, p *model.Plan, date model.Date, stamp Stamp) (*paper.Sheet, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	s := d.newSheet("Tack room's day", stamp)
	s.Landscape = true
	part := paper.Part{Table: paper.Table{Columns: []paper.Column{{Head: "piece"}, {Head: "what"}, {Head: "from"}, {Head: "to"}, {Head: "on"}, {Head: "comes from", Spread: true}}}}
	var pieces []*model.Piece
	for _, x := range w.Centre.Pieces {
		if len(d.piece[x]) > 0 && !(x.WithSeat != nil && alwaysWith(d, x)) {
			pieces = append(pieces, x)
		}
	}
	slices.SortStableFunc(pieces, func(a, b *model.Piece) int { return natural(a.Tag, b.Tag) })
	for _, x := range pieces {
		for i, use := range d.piece[x] {
			from := ""
			if i > 0 && d.piece[x][i-1].Turn.Horse != use.Turn.Horse {
				from = d.piece[x][i-1].Turn.Horse.Name
			}
			part.Table.Rows = append(part.Table.Rows, paper.Row{Cells: paper.Texts(x.Tag, string(x.Kind), d.clock(use.Start), d.clock(use.End), use.Turn.Horse.Name, from)})
		}
	}
	if len(pieces) == 0 {
		part.Says = []string{"No tack is used on this date."}
	} else {
		part.Pictures = d.drawTack(pieces, s)
	}
	s.Parts = []paper.Part{part}
	return s, nil
}

// alwaysWith reports whether a piece is used only with the seat it is kept with,
// so that its row would be that of the seat.
func alwaysWith(d *day, x *model.Piece) bool {
	return slices.Equal(d.piece[x], d.piece[x.WithSeat])
}

// tackPlan is how the day is laid out on the page.
type tackPlan struct {
	*day
	label, scale float64 // mm, mm a minute
	width        float64
	first, other float64 // height of a picture
}

func (d *day) drawTack(pieces []*model.Piece, sheet *paper.Sheet) (all []paper.Picture) {
	t := &tackPlan{day: d}
	t.width, t.first, t.other = paper.Room(sheet)
	for _, x := range pieces {
		t.label = min(60, max(t.label, paper.Width(x.Tag, 13, true)+3))
	}
	first, last, longest := d.stints[0].Start, model.Minute(0), model.Minute(1)
	var need float64
	for _, x := range pieces {
		for _, s := range d.piece[x] {
			last, longest = max(last, s.End), max(longest, s.End-s.Start)
			for _, word := range strings.Fields(s.Turn.Horse.Name) {
				need = max(need, (paper.Width(word, tackSize, false)+2)/float64(s.End-s.Start))
			}
		}
	}
	first -= first % 60
	room := t.width - t.label
	t.scale = min(tackMost, max(need, room/float64(max(last-first, 60))), room/float64(longest))
	for from := first; from < last; {
		until := from + model.Minute(room/t.scale) // as late as the page is wide
		if until < last {
			until = max(from+1, until-longest) // what begins by then ends on the page
		}
		all = t.window(all, pieces, from, until)
		from = until
	}
	return all
}

// window draws what begins in [from, until), as many pieces to a picture as a page
// holds.
func (t *tackPlan) window(all []paper.Picture, pieces []*model.Piece, from, until model.Minute) []paper.Picture {
	var p *paper.Picture
	y := 0.0
	x := func(m model.Minute) float64 { return t.label + float64(m-from)*t.scale }
	for _, piece := range pieces {
		var uses []*model.Stint
		for _, s := range t.piece[piece] {
			if from <= s.Start && s.Start < until {
				uses = append(uses, s)
			}
		}
		if len(uses) == 0 {
			continue
		}
		names := paper.Broken(piece.Tag, 13, true, t.label-2)
		high := max(tackRow, float64(len(names))*paper.LineOf(13)+2)
		words := map[*model.Stint][]string{}
		for _, s := range uses {
			words[s] = paper.Broken(s.Turn.Horse.Name, tackSize, false, x(s.End)-x(s.Start)-1.6)
			high = max(high, float64(len(words[s]))*paper.LineOf(tackSize)+2.4)
		}
		most := t.other
		if len(all) <= 1 {
			most = t.first
		}
		if p == nil || y+high+1 > most {
			all = append(all, paper.Picture{About: "when each piece of tack is on which horse", W: t.width})
			p = &all[len(all)-1]
			y = tackHead
			t.hours(p, from, until, x)
		}
		for i, s := range names {
			p.Write(0, y+float64(i+1)*paper.LineOf(13), 13, true, s)
		}
		t.bars(p, piece, uses, words, y, high, from, until, x)
		y += high
		p.Line(0.2, 0, y, t.width, y)
		p.H = y + 1
	}
	return all
}

// hours are written above the rows.
func (t *tackPlan) hours(p *paper.Picture, from, until model.Minute, x func(model.Minute) float64) {
	p.Line(0.5, 0, tackHead, t.width, tackHead)
	free := 0.0 // right of what is written
	for m := (from + 59) / 60 * 60; m < until; m += 60 {
		words := t.clock(m)
		left := min(x(m), t.width-paper.Width(words, tackSize, false))
		p.Line(0.35, x(m), tackHead-2, x(m), tackHead)
		if left >= free {
			p.Write(left, tackHead-3, tackSize, false, words)
			free = left + paper.Width(words, tackSize, false) + 2
		}
	}
}

func (t *tackPlan) bars(p *paper.Picture, piece *model.Piece, uses []*model.Stint, words map[*model.Stint][]string,
	y, high float64, from, until model.Minute, x func(model.Minute) float64) {
	mid := y + high/2
	for i, s := range uses {
		left, right := x(s.Start), x(s.End)
		p.Rect(left, y+0.8, right-left, high-1.6, 0.5)
		for k, line := range words[s] {
			p.Write(left+0.8, y+0.4+float64(k+1)*paper.LineOf(tackSize), tackSize, false, line)
		}
		last := before(t.piece[piece], s)
		switch {
		case last == nil:
			continue
		case i == 0: // it was drawn on another picture
			if last.Turn.Horse != s.Turn.Horse && left-t.label > 3 {
				p.Line(0.5, t.label, mid, left, mid).Arrow = true
			}
			continue
		}
		switch gap := left - x(last.End); {
		case last.Turn.Horse != s.Turn.Horse && gap > 0.5:
			p.Line(0.5, x(last.End), mid, left, mid).Arrow = gap > 3
		case last.Turn.Horse == s.Turn.Horse && !t.rested(last, s) && gap > 0.5:
			p.Line(0.35, x(last.End), mid, left, mid).Dashed = true
		}
	}
	for m := (from + 59) / 60 * 60; m < until; m += 60 { // where no bar is, the hour goes on
		if !slices.ContainsFunc(uses, func(s *model.Stint) bool { return s.Start <= m && m <= s.End }) {
			p.Line(0.15, x(m), y+high-1.5, x(m), y+high)
		}
	}
}
