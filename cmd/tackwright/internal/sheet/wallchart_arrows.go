package sheet

import (
	"slices"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// arrows go from the right of the cell that gives, in lanes of their own between
// columns and above rows, to the left of the cell that gets: never through words.
// Where one end is on another picture there is none; the cell names the horse.
func (g *wallGrid) arrows(p *paper.Picture) {
	begun, ended, entered := map[*wallColumn]int{}, map[*wallColumn]int{}, map[*wallRow]int{}
	into := map[*model.Stint]int{}
	out := map[*model.Stint]int{}
	for _, m := range g.moves {
		from, to := g.columnOf(m.from), g.columnOf(m.to)
		a, b := g.rowOf(m.from), g.rowOf(m.to)
		if a == nil || b == nil || !slices.Contains(g.columns, from) || !slices.Contains(g.columns, to) {
			continue
		}
		begun[from]++
		ended[to]++
		entered[b]++
		into[m.to]++
		out[m.from]++
		x1, x2 := g.x[from]+from.width, g.x[to]
		y1 := g.top(a, from, m.from) + 2.5 + float64(out[m.from])*wallLane
		y2 := g.top(b, to, m.to) + 2.5 + float64(into[m.to])*wallLane
		lane1 := x1 + float64(begun[from])*wallLane
		lane2 := x2 - float64(ended[to])*wallLane - 0.4
		over := g.y[b] - float64(entered[b])*wallLane
		p.Line(0.5, x1, y1, lane1, y1, lane1, over, lane2, over, lane2, y2, x2, y2).Arrow = true
	}
}

func (g *wallGrid) rowOf(s *model.Stint) *wallRow {
	for _, r := range g.rows {
		if r.horse == s.Turn.Horse {
			return r
		}
	}
	return nil
}

// top is the upper edge of a ride's cell.
func (g *wallGrid) top(r *wallRow, col *wallColumn, s *model.Stint) float64 {
	y := g.y[r]
	for _, x := range r.cells[col] {
		if x.stint == s {
			break
		}
		y += x.high(col.width)
	}
	return y
}
