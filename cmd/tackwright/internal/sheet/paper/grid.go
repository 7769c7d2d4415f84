package paper

import "strings"

// printed measures what stands in a printed table.
var printed = scale{
	text: func(s string, bold bool) float64 { return Width(s, cellSize(bold), bold) },
	head: func(s string) float64 { return Width(s, headSize, true) },
	room: func(mm float64) float64 { return mm },
	box:  tick + cellEdge,
	line: func(what string) float64 { return labelled(what) + leastLine },
	edge: 2*cellEdge + 0.1,
}

// labelled is the room that the words before an empty line take.
func labelled(what string) float64 {
	if what == "" {
		return 0
	}
	return Width(what, headSize, false) + cellEdge
}

func cellSize(bold bool) float64 {
	if bold {
		return boldSize
	}
	return bodySize
}

// heads are the strip that names the columns.
func (l *layout) heads(t *Table) []strip {
	widths := t.share(l.wide(), printed)
	cells := make([]Cell, len(t.Columns))
	named := false
	for i, c := range t.Columns {
		cells[i].Text = c.Head
		named = named || c.Head != ""
	}
	if !named {
		return nil
	}
	return []strip{l.rule(thin), l.cells(Row{Cells: cells}, widths, func(int) (float64, bool) { return headSize, true }, thick)}
}

// table is the strips of each block of rows.
func (l *layout) table(t *Table) (blocks [][]strip) {
	widths := t.share(l.wide(), printed)
	as := func(i int) (float64, bool) { return cellSize(t.Columns[i].Bold), t.Columns[i].Bold }
	for _, rows := range t.blocks() {
		var strips []strip
		for _, r := range rows {
			if r.Over != "" {
				strips = append(strips, l.over(r)...)
			}
			if len(r.Cells) > 0 {
				for _, part := range l.torn(r, widths, as) {
					strips = append(strips, l.cells(part, widths, as, thin))
				}
			}
			if len(r.Write) > 0 {
				strips = append(strips, l.write(r.Write))
			}
		}
		blocks = append(blocks, strips)
	}
	return blocks
}

// torn is a row in as many as it takes for each to fit on a page below its heads.
func (l *layout) torn(r Row, widths []float64, as func(column int) (size float64, bold bool)) (parts []Row) {
	_, high := Area(l.Paper, l.Landscape)
	most := int(0.8 * high / LineOf(boldSize)) // lines
	lines := make([][]string, len(r.Cells))
	rows := 1
	for i, c := range r.Cells {
		lead := 0.0
		if c.Box {
			lead = printed.box
		}
		size, bold := as(i)
		lines[i] = Broken(c.Text, size, bold, widths[i]-2*cellEdge-lead)
		rows = max(rows, (len(lines[i])+most-1)/most)
	}
	if rows == 1 {
		return []Row{r}
	}
	for k := range rows {
		part := Row{Room: r.Room, Cells: make([]Cell, len(r.Cells))}
		for i, c := range r.Cells {
			now := lines[i][min(k*most, len(lines[i])):min((k+1)*most, len(lines[i]))]
			part.Cells[i] = Cell{Text: strings.Join(now, "\n"), Box: c.Box && k == 0}
			if k == rows-1 {
				part.Cells[i].Lines = c.Lines
			}
		}
		parts = append(parts, part)
	}
	return parts
}

// over is what stands across the table, between its edges.
func (l *layout) over(r Row) []strip {
	lines := append([]strip{space(1)}, l.text(r.Over, overSize, true, cellEdge)...)
	for _, s := range r.Says {
		lines = append(lines, l.text(s, bodySize, false, cellEdge)...)
	}
	lines = append(lines, space(1))
	high := heightOf(lines)
	frame := strip{0, func(p *Picture, y float64) {
		p.Line(thick, margin, y, l.w-margin, y)
		p.Line(thin, margin, y, margin, y+high)
		p.Line(thin, l.w-margin, y, l.w-margin, y+high)
		p.Line(thin, margin, y+high, l.w-margin, y+high)
	}}
	return append([]strip{frame}, lines...)
}

// write is lines to write on across the table, side by side.
func (l *layout) write(what []string) strip {
	high, wide := writeLine+cellEdge, l.wide()/float64(len(what))
	return strip{high, func(p *Picture, y float64) {
		for i, w := range what {
			x := margin + float64(i)*wide
			p.Write(x+cellEdge, y+writeLine-1.6, headSize, false, w)
			p.Line(thin, x+cellEdge+labelled(w), y+writeLine-1.2, x+wide-cellEdge, y+writeLine-1.2)
		}
		p.Line(thin, margin, y, l.w-margin, y)
		p.Line(thin, margin, y, margin, y+high)
		p.Line(thin, l.w-margin, y, l.w-margin, y+high)
		p.Line(thin, margin, y+high, l.w-margin, y+high)
	}}
}

func (l *layout) rule(thick float64) strip {
	return strip{0, func(p *Picture, y float64) { p.Line(thick, margin, y, l.w-margin, y) }}
}

// cells are one row within its grid.
func (l *layout) cells(r Row, widths []float64, as func(column int) (size float64, bold bool), below float64) strip {
	cells := r.Cells
	lines := make([][]string, len(cells))
	high := r.Room
	for i, c := range cells {
		lead := 0.0
		if c.Box {
			lead = printed.box
			high = max(high, tick+2*cellEdge)
		}
		h := float64(len(c.Lines)) * writeLine
		if c.Text != "" {
			size, bold := as(i)
			lines[i] = Broken(c.Text, size, bold, widths[i]-2*cellEdge-lead)
			h += float64(len(lines[i])) * LineOf(size)
		}
		high = max(high, h+2*cellEdge)
	}
	return strip{high, func(p *Picture, y float64) {
		x := margin
		for i, c := range cells {
			left, at := x+cellEdge, y+cellEdge
			size, bold := as(i)
			if c.Box {
				p.Rect(left, at, tick, tick, 0.35)
				left += printed.box
			}
			for _, line := range lines[i] {
				p.Write(left, at+size*point, size, bold, line)
				at += LineOf(size)
			}
			for _, what := range c.Lines {
				at += writeLine
				p.Write(left, at-1.6, headSize, false, what)
				p.Line(thin, left+labelled(what), at-1.2, x+widths[i]-cellEdge, at-1.2)
			}
			p.Line(thin, x, y, x, y+high)
			x += widths[i]
		}
		p.Line(thin, x, y, x, y+high)
		p.Line(below, margin, y+high, l.w-margin, y+high)
	}}
}
