package sheet

import (
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
)

// Measures of the wall chart, in mm and points.
const (
	wallBold   = 14.0
	wallPlain  = 12.0
	wallEdge   = 1.2  // between a cell's edge and its words
	wallNarrow = 20.0 // least width of a column
	wallWide   = 55.0 // most: longer names are broken
	wallGap    = 2.0  // between cells, and beside each arrow
	wallLane   = 1.6  // for each arrow
)

// draw makes as many pictures as the page's size asks for: columns from left to
// right first, then rows.
func (c *wallChart) draw(w, first, other float64) (all []paper.Picture) {
	label := wallNarrow
	for _, r := range c.rows {
		label = max(label, min(wallWide, paper.Width(r.horse.Name, wallBold, true)+2*wallEdge))
	}
	label = max(label, paper.Width("on the ground", wallPlain, true)+2*wallEdge)
	for _, col := range c.columns {
		col.width = c.widthOf(col)
	}
	for _, columns := range c.across(w - label) {
		c.stretch(columns, w-label)
		rows := slices.DeleteFunc(slices.Clone(c.rows), func(r *wallRow) bool {
			return !slices.ContainsFunc(columns, func(x *wallColumn) bool { return len(r.cells[x]) > 0 })
		})
		for begun := false; !begun || len(rows) > 0; begun = true {
			g := &wallGrid{wallChart: c, columns: columns, label: label, width: w}
			high := other
			if len(all) == 0 {
				high = first
			}
			rows = g.place(rows, high)
			all = append(all, g.picture(len(rows) == 0))
		}
	}
	return all
}

// widthOf is what the words of a column ask for.
func (c *wallChart) widthOf(col *wallColumn) float64 {
	most := wallNarrow
	ask := func(words string, size float64, bold bool) {
		for _, line := range strings.Split(words, "\n") {
			most = max(most, min(wallWide, paper.Width(line, size, bold)+2*wallEdge+0.2))
		}
	}
	ask(col.head[0], wallBold, true)
	for _, word := range strings.Fields(col.head[1]) {
		ask(word, wallPlain, false)
	}
	for _, r := range c.rows {
		for _, x := range r.cells[col] {
			ask(x.bold, wallBold, true)
			ask(x.plain, wallPlain, false)
			for _, word := range strings.Fields(fromWords(x.from)) {
				ask(word, wallPlain, false)
			}
		}
	}
	if col.meeting != nil {
		for _, name := range c.groundedIn(col.meeting) {
			ask(name, wallPlain, false)
		}
	}
	return most
}

// across parts the columns into as many as a page takes side by side, with room
// for every arrow that could stand between them.
func (c *wallChart) across(width float64) (parts [][]*wallColumn) {
	var now []*wallColumn
	taken := 0.0
	for _, col := range c.columns {
		need := col.width + wallGap + float64(c.arrowsAt(col))*wallLane
		if len(now) > 0 && taken+need > width {
			parts, now, taken = append(parts, now), nil, 0
		}
		now, taken = append(now, col), taken+need
	}
	return append(parts, now)
}

// stretch gives columns the width that is left, up to what the widest may have:
// there is always something to pencil in.
func (c *wallChart) stretch(columns []*wallColumn, width float64) {
	for _, col := range columns {
		width -= col.width + wallGap + float64(c.arrowsAt(col))*wallLane
	}
	for _, col := range columns {
		col.width = max(col.width, min(wallWide, col.width+width/float64(len(columns))))
	}
}

// arrowsAt are the arrows that begin or end in a column: each takes a lane before
// it or behind it.
func (c *wallChart) arrowsAt(col *wallColumn) int { return c.ending(col) + c.beginning(col) }

func (c *wallChart) ending(col *wallColumn) (n int) {
	for _, m := range c.moves {
		n += b2i(c.columnOf(m.to) == col)
	}
	return n
}

func (c *wallChart) beginning(col *wallColumn) (n int) {
	for _, m := range c.moves {
		n += b2i(c.columnOf(m.from) == col)
	}
	return n
}

// wallGrid is one picture: where its columns and rows are.
type wallGrid struct {
	*wallChart
	columns      []*wallColumn
	rows         []*wallRow
	label, width float64
	x            map[*wallColumn]float64 // left edge of the cells
	y            map[*wallRow]float64    // upper edge of the cells
	high         map[*wallRow]float64
	below        float64
	head         float64
}

// place gives as many rows their place as fit in a height, and returns the rest.
func (g *wallGrid) place(rows []*wallRow, height float64) (rest []*wallRow) {
	g.x, g.y, g.high = map[*wallColumn]float64{}, map[*wallRow]float64{}, map[*wallRow]float64{}
	x := g.label
	for _, col := range g.columns {
		x += wallGap + float64(g.ending(col))*wallLane
		g.x[col] = x
		x += col.width + float64(g.beginning(col))*wallLane
		g.head = max(g.head, paper.LineOf(wallBold)+float64(len(paper.Broken(col.head[1], wallPlain, false, col.width)))*paper.LineOf(wallPlain)+2)
	}
	y := g.head
	room := height - g.groundHigh()
	for i, r := range rows {
		g.high[r] = g.rowHigh(r)
		next := y + wallGap + float64(g.enteringRow(r))*wallLane + g.high[r]
		if next+1 > room && i > 0 {
			rest = rows[i:]
			break
		}
		g.rows = append(g.rows, r)
		g.y[r] = next - g.high[r]
		y = next
	}
	g.below = y + 1
	return rest
}

func (g *wallGrid) enteringRow(r *wallRow) (n int) {
	for _, m := range g.moves {
		n += b2i(m.to.Turn.Horse == r.horse)
	}
	return n
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

func (g *wallGrid) rowHigh(r *wallRow) float64 {
	high := float64(len(paper.Broken(r.horse.Name, wallBold, true, g.label-2*wallEdge)))*paper.LineOf(wallBold) + 2
	for _, col := range g.columns {
		sum := 0.0
		for _, x := range r.cells[col] {
			sum += x.high(col.width)
		}
		high = max(high, sum)
	}
	return high
}

// groundHigh is the height of the row of those who are on the ground.
func (g *wallGrid) groundHigh() (high float64) {
	for _, col := range g.columns {
		if lines := g.groundLines(col); len(lines) > 0 {
			high = max(high, float64(len(lines))*paper.LineOf(wallPlain)+4)
		}
	}
	return high
}

func (g *wallGrid) groundLines(col *wallColumn) (lines []string) {
	if col.meeting == nil {
		return nil
	}
	for _, name := range g.groundedIn(col.meeting) {
		lines = append(lines, paper.Broken(name, wallPlain, false, col.width-2*wallEdge)...)
	}
	return lines
}

// picture draws the grid; the last of its columns has those on the ground too.
func (g *wallGrid) picture(last bool) paper.Picture {
	p := paper.Picture{About: "the day's lessons across, horses down, a cell a ride, an arrow where tack goes", W: g.width}
	for _, col := range g.columns {
		p.Write(g.x[col]+wallEdge, paper.LineOf(wallBold)-1.2, wallBold, true, col.head[0])
		for i, line := range paper.Broken(col.head[1], wallPlain, false, col.width) {
			p.Write(g.x[col]+wallEdge, paper.LineOf(wallBold)+float64(i+1)*paper.LineOf(wallPlain)-1, wallPlain, false, line)
		}
	}
	p.Line(0.7, 0, g.head-0.5, g.width, g.head-0.5)
	for i, r := range g.rows {
		if y := g.y[r] + g.high[r] + wallGap/2; i < len(g.rows)-1 {
			p.Line(0.15, 0, y, g.width, y).Dashed = true
		}
		for i, line := range paper.Broken(r.horse.Name, wallBold, true, g.label-2*wallEdge) {
			p.Write(0, g.y[r]+float64(i+1)*paper.LineOf(wallBold)-0.3, wallBold, true, line)
		}
		for _, col := range g.columns {
			g.drawCells(&p, r, col)
		}
	}
	p.H = g.below
	if high := g.groundHigh(); last && high > 0 {
		p.Line(0.35, 0, g.below, g.width, g.below)
		p.Write(0, g.below+paper.LineOf(wallPlain), wallPlain, true, "on the ground")
		for _, col := range g.columns {
			for i, line := range g.groundLines(col) {
				p.Write(g.x[col]+wallEdge, g.below+float64(i+1)*paper.LineOf(wallPlain), wallPlain, false, line)
			}
		}
		p.H += high
	}
	g.arrows(&p)
	return p
}

func (g *wallGrid) drawCells(p *paper.Picture, r *wallRow, col *wallColumn) {
	y := g.y[r]
	for _, x := range r.cells[col] {
		bold, plain := x.lines(col.width)
		top := y
		for _, line := range bold {
			y += paper.LineOf(wallBold)
			p.Write(g.x[col]+wallEdge, y-0.3, wallBold, true, line)
		}
		for _, line := range plain {
			y += paper.LineOf(wallPlain)
			p.Write(g.x[col]+wallEdge, y-0.1, wallPlain, false, line)
		}
		y += 2
		p.Rect(g.x[col], top, col.width, y-top, 0.35)
	}
}
