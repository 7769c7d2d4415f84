package sheet

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// WallChart draws the day as a wall chart has it: lessons and other work across in
// order, horses down, a cell a ride with rider, seat and girth, and an arrow where
// tack goes from one horse to another.
func WallChart(w *model.Week, p *model.Plan, date model.Date, stamp Stamp) (*paper.Sheet, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	s := d.newSheet("Wall chart", stamp)
	s.Landscape = true
	c := d.wallChart()
	part := paper.Part{Table: paper.Table{Columns: []paper.Column{{Head: "horse"}, {Head: "from"}, {Head: "to"}, {Head: "lesson"}, {Head: "rider"},
		{Head: "seat"}, {Head: "girth"}, {Head: "tack comes from", Spread: true}}}}
	for _, row := range c.rows {
		for _, x := range d.horse[row.horse] {
			r := d.ride(x)
			cell := c.cellOf(x)
			part.Table.Rows = append(part.Table.Rows, paper.Row{Cells: paper.Texts(r.Horse, d.clock(x.Start), d.clock(x.End), r.Lesson, who(r),
				tagOf(x.Turn.Seat), tagOf(x.Turn.Girth), strings.Join(cell.from, ", "))})
		}
	}
	for _, g := range d.ground() {
		part.Table.Rows = append(part.Table.Rows, paper.Row{Cells: paper.Texts("on the ground", d.clock(model.Minute(g.Start)), d.clock(model.Minute(g.End)), g.Lesson, g.Rider, "", "", "")})
	}
	if len(c.rows) == 0 {
		part.Says = []string{"No horse works on this date."}
	} else {
		part.Pictures = c.draw(paper.Room(s))
	}
	s.Parts = []paper.Part{part}
	return s, nil
}

func tagOf(x *model.Piece) string {
	if x == nil {
		return ""
	}
	return x.Tag
}

// wallChart is a grid of lessons and horses.
type wallChart struct {
	*day
	columns []*wallColumn
	rows    []*wallRow
	moves   []wallMove // by time
}

// wallColumn is a lesson, or a horse's other work.
type wallColumn struct {
	meeting *model.Meeting
	start   model.Minute
	head    []string // time, then name
	width   float64
}

// wallRow is a horse with its cells, by column.
type wallRow struct {
	horse *model.Horse
	cells map[*wallColumn][]*wallCell
}

// wallCell is one ride.
type wallCell struct {
	stint *model.Stint
	from  []string // horses from which tack comes
	bold  string   // rider or work
	plain string   // tags
}

// wallMove is tack that goes from one cell to another.
type wallMove struct{ from, to *model.Stint }

func (d *day) wallChart() *wallChart {
	c := &wallChart{day: d}
	for _, m := range d.meetings() {
		if len(d.inLesson(m)) > 0 || len(d.groundedIn(m)) > 0 {
			c.columns = append(c.columns, &wallColumn{meeting: m, start: m.Start, head: []string{d.clock(m.Start), m.Name}})
		}
	}
	for _, h := range d.week.Centre.Horses {
		if len(d.horse[h]) == 0 {
			continue
		}
		row := &wallRow{horse: h, cells: map[*wallColumn][]*wallCell{}}
		for _, s := range d.horse[h] {
			col := c.columnOf(s)
			cell := &wallCell{stint: s, bold: called(s), plain: join(" ", tagOf(s.Turn.Seat), tagOf(s.Turn.Girth))}
			if s.Meeting == nil {
				cell.bold, _ = d.workOf(s)
			} else if s.Start != s.Meeting.Start {
				cell.plain = join("\n", cell.plain, "from "+d.clock(s.Start))
			}
			row.cells[col] = append(row.cells[col], cell)
		}
		c.rows = append(c.rows, row)
	}
	slices.SortStableFunc(c.columns, func(a, b *wallColumn) int { return int(a.start - b.start) })
	for _, s := range d.stints {
		for _, x := range s.Turn.Pieces() {
			g := d.giver(x, s)
			if cell := c.cellOf(s); g != nil && x.WithSeat == nil && !slices.Contains(cell.from, g.Turn.Horse.Name) {
				cell.from = append(cell.from, g.Turn.Horse.Name)
				c.moves = append(c.moves, wallMove{g, s})
			}
		}
	}
	return c
}

// columnOf is the column of a stint; a work without one gets one that works of the
// same kind and hours share.
func (c *wallChart) columnOf(s *model.Stint) *wallColumn {
	if s.Meeting != nil {
		i := slices.IndexFunc(c.columns, func(x *wallColumn) bool { return x.meeting == s.Meeting })
		return c.columns[i]
	}
	head := []string{c.clock(s.Start), "other work"}
	i := slices.IndexFunc(c.columns, func(x *wallColumn) bool { return x.meeting == nil && slices.Equal(x.head, head) })
	if i < 0 {
		i = len(c.columns)
		c.columns = append(c.columns, &wallColumn{start: s.Start, head: head})
	}
	return c.columns[i]
}

func (c *wallChart) cellOf(s *model.Stint) *wallCell {
	for _, r := range c.rows {
		if r.horse != s.Turn.Horse {
			continue
		}
		for _, cell := range r.cells[c.columnOf(s)] {
			if cell.stint == s {
				return cell
			}
		}
	}
	return &wallCell{stint: s}
}

// lines of a cell in a column of so many mm: the bold ones first.
func (x *wallCell) lines(width float64) (bold, plain []string) {
	width -= 2 * wallEdge
	bold = paper.Broken(x.bold, wallBold, true, width)
	if words := join("\n", x.plain, fromWords(x.from)); words != "" {
		plain = paper.Broken(words, wallPlain, false, width)
	}
	return bold, plain
}

// high is how high the cell is in a column of so many mm.
func (x *wallCell) high(width float64) float64 {
	bold, plain := x.lines(width)
	return float64(len(bold))*paper.LineOf(wallBold) + float64(len(plain))*paper.LineOf(wallPlain) + 2
}

func fromWords(horses []string) string {
	if len(horses) == 0 {
		return ""
	}
	return fmt.Sprintf("tack from %s", and(horses))
}
