package paper

import (
	"fmt"
	"slices"
	"strings"
)

// Measures of a printed page, in mm and points. Nothing is smaller than 12 points.
const (
	margin = 10.0

	titleSize = 24.0
	daySize   = 16.0
	partSize  = 16.0
	overSize  = 14.0
	bodySize  = 13.0
	boldSize  = 15.0 // of what is looked for first
	headSize  = 12.0
	footSize  = 12.0

	leading   = 1.25 // of a line, by its size
	cellEdge  = 1.4  // between a cell's edge and what stands in it
	tick      = 5.0  // side of a box to tick
	writeLine = 9.0  // height of an empty line to write on, in gloves
	leastLine = 30.0 // length of one
	partGap   = 4.0  // above a part
	thin      = 0.2
	thick     = 0.7
)

// Area is how much of a page can be printed on, in mm: A4 is 210 x 297 (ISO
// 216), Letter 8.5 x 11 in (ANSI Y14.1: from memory).
func Area(paper string, landscape bool) (w, h float64) {
	w, h = size(paper, landscape)
	return w - 2*margin, h - 2*margin - 2*LineOf(footSize) - 2
}

// Room is how large pictures may be that fill pages: how wide, how high beneath
// the title and the facts that the sheet has so far, and how high on other pages.
// It is for a part without a title.
func Room(s *Sheet) (w, first, other float64) {
	w, other = Area(s.Paper, s.Landscape)
	l := &layout{Sheet: s}
	l.w, l.h = size(s.Paper, s.Landscape)
	return w, other - heightOf(l.head()) - partGap, other - partGap
}

func size(paper string, landscape bool) (w, h float64) {
	w, h = 210, 297
	if paper == "Letter" {
		w, h = 8.5*25.4, 11*25.4
	}
	if landscape {
		w, h = h, w
	}
	return w, h
}

// LineOf is how high a line of that size is, in mm.
func LineOf(size float64) float64 { return size * point * leading }

// strip goes across a page.
type strip struct {
	h    float64
	draw func(p *Picture, y float64)
}

// run is strips that are kept on one page where it holds them. above stand over
// them where they begin a page, torn where they go on on one.
type run struct {
	strips, above, torn []strip
	newPage             bool
}

// Pages are the sheet's pages as pictures, all of one size. Cautions stand at the
// beginning; at the end where all is then on one page, where a picture comes first,
// or where they would stand alone before parts that are each for somebody else.
func Pages(s *Sheet) []Picture {
	l := &layout{Sheet: s}
	l.w, l.h = size(s.Paper, s.Landscape)
	last := l.pages()
	if len(last) == 1 || len(s.Parts) > 0 && len(s.Parts[0].Pictures) > 0 {
		return last
	}
	l.cautionsFirst = true
	if first := l.pages(); l.begins == 0 || len(s.Parts) == 0 || !s.Parts[0].NewPage {
		return first
	}
	return last
}

// layout is a sheet being laid out.
type layout struct {
	*Sheet
	w, h          float64
	cautionsFirst bool
	begins        int // page on which the first part begins behind cautions
}

func (l *layout) wide() float64 { return l.w - 2*margin }

// pages places the runs, and then draws what says which page of how many it is.
func (l *layout) pages() []Picture {
	_, high := Area(l.Paper, l.Landscape)
	bottom := margin + high
	pages := []Picture{{W: l.w, H: l.h}}
	y := margin
	place := func(strips []strip) {
		for _, s := range strips {
			s.draw(&pages[len(pages)-1], y)
			y += s.h
		}
	}
	turn := func(above []strip) {
		pages = append(pages, Picture{W: l.w, H: l.h})
		y = margin
		place(above)
	}
	for n, r := range l.runs() {
		next := y + heightOf(r.strips)
		holds := margin+heightOf(r.above)+heightOf(r.strips) <= bottom // a page does
		switch {
		case y == margin:
		case r.newPage, next > bottom && holds:
			turn(r.above)
		}
		if n == 2 { // behind the head and the cautions
			l.begins = len(pages) - 1
		}
		for _, s := range r.strips {
			if y+s.h > bottom && y > margin+heightOf(r.torn) {
				turn(r.torn) // no page holds the run
			}
			place([]strip{s})
		}
	}
	for i := range pages {
		l.foot(&pages[i], i+1, len(pages))
	}
	return pages
}

func heightOf(strips []strip) (h float64) {
	for _, s := range strips {
		h += s.h
	}
	return h
}

// head is the title and the facts. On a wide page the day stands beside the title,
// where there is room.
func (l *layout) head() (head []strip) {
	head = append(head, l.text(l.Title, titleSize, true, 0)...)
	facts := l.Facts
	if beside := l.besideTitle(); beside != "" {
		head[0] = strip{head[0].h, func(p *Picture, y float64) {
			p.Write(margin, y+titleSize*point, titleSize, true, Plain(l.Title))
			p.Write(l.w-margin-Width(beside, daySize, true), y+titleSize*point, daySize, true, beside)
		}}
		facts = slices.DeleteFunc(slices.Clone(facts), func(f Fact) bool { return f.Name == "" })
	}
	for _, f := range facts {
		if f.Name == "" {
			head = append(head, l.text(f.Words, daySize, true, 0)...)
			continue
		}
		head = append(head, l.text(f.Name+": "+f.Words, bodySize, false, 0)...)
	}
	return append(head, space(2))
}

// besideTitle is what of the facts can stand on the line of the title; "" nothing.
func (l *layout) besideTitle() string {
	var words []string
	for _, f := range l.Facts {
		if f.Name == "" {
			words = append(words, f.Words)
		}
	}
	beside := Plain(strings.Join(words, ", "))
	if !l.Landscape || Width(Plain(l.Title), titleSize, true)+10+Width(beside, daySize, true) > l.wide() {
		return ""
	}
	return beside
}

func (l *layout) runs() []run {
	runs := []run{{strips: l.head()}}
	if l.cautionsFirst {
		runs = append(runs, l.cautions()...)
	}
	for i := range l.Parts {
		part := l.part(&l.Parts[i])
		if i == 0 && l.Parts[0].NewPage { // the first follows the head where it fits
			part[0].newPage = false
		}
		runs = append(runs, part...)
	}
	if !l.cautionsFirst {
		runs = append(runs, l.cautions()...)
	}
	return runs
}

func space(h float64) strip { return strip{h, func(*Picture, float64) {}} }

// text is a paragraph between indents on both sides, a strip a line.
func (l *layout) text(words string, size float64, bold bool, indent float64) (strips []strip) {
	for _, line := range Broken(words, size, bold, l.wide()-2*indent) {
		strips = append(strips, strip{LineOf(size), func(p *Picture, y float64) {
			p.Write(margin+indent, y+size*point, size, bold, line)
		}})
	}
	return strips
}

func (l *layout) part(x *Part) (runs []run) {
	head, again := []strip{space(partGap)}, []strip(nil)
	if x.Title != "" {
		head = append(append(head, l.text(x.Title, partSize, true, 0)...), space(1))
		again = append(l.text(x.Title+", continued", partSize, true, 0), space(1))
	}
	for _, s := range x.Says {
		head = append(head, l.text(s, bodySize, false, 0)...)
	}
	if len(x.Says) > 0 {
		head = append(head, space(2))
	}
	for i := range x.Pictures {
		q := &x.Pictures[i]
		strips := []strip{{q.H, func(p *Picture, y float64) { p.put(margin, y, q) }}}
		runs = append(runs, run{strips: strips, above: again})
	}
	if len(x.Pictures) == 0 {
		above := slices.Concat(again, l.heads(&x.Table))
		blocks := x.Table.blocks()
		group := above // what stands over rows of a group on a new page
		for i, strips := range l.table(&x.Table) {
			r := run{strips: strips, above: group, torn: group}
			if over := blocks[i][0].Over; over != "" {
				group = slices.Concat(above, l.over(Row{Over: over + ", continued"}))
				r.above, r.torn = above, group
			}
			runs = append(runs, r)
		}
		if len(x.Table.Rows) > 0 {
			head = append(head, l.heads(&x.Table)...)
		}
	}
	if len(runs) == 0 { // it says all in words
		runs = []run{{}}
	}
	runs[0].strips = append(head, runs[0].strips...)
	runs[0].above = nil
	runs[0].newPage = x.NewPage
	return runs
}

// cautions are kept together in a frame, at the end.
func (l *layout) cautions() []run {
	if len(l.Cautions) == 0 && l.Deferral == "" {
		return nil
	}
	var inside []strip
	for _, c := range l.Cautions {
		lines := l.text("! "+c, bodySize, true, 3)
		inside = append(inside, lines...)
	}
	inside = append(inside, l.text(l.Deferral, headSize, false, 3)...)
	high := heightOf(inside) + 4
	frame := strip{2, func(p *Picture, y float64) { p.Rect(margin, y, l.wide(), high, thick) }}
	return []run{{strips: slices.Concat([]strip{space(2), frame}, inside, []strip{space(2)})}}
}

// foot says on every page what it is of.
func (l *layout) foot(p *Picture, n, of int) {
	page := fmt.Sprintf("page %d of %d", n, of)
	right := l.w - margin - Width(page, footSize, false)
	y := l.h - margin
	p.Line(thin, margin, y-2*LineOf(footSize)-0.5, l.w-margin, y-2*LineOf(footSize)-0.5)
	p.Write(right, y, footSize, false, page)
	p.Write(margin, y, footSize, false, cut("printed "+l.Printed, right-margin-3))
	p.Write(margin, y-LineOf(footSize), footSize, true, cut(l.Title+", "+l.Short, l.wide()))
}

// cut is as much of a line as fits, for what stands whole on the first page.
func cut(s string, width float64) string {
	if Width(s, footSize, true) <= width {
		return s
	}
	lines := Broken(s, footSize, true, width-Width(" ...", footSize, true))
	return lines[0] + " ..."
}
