package sheet

import (
	"fmt"

	"tackwright/cmd/tackwright/internal/sheet/paper"
)

// margin is what is left free on every side of a page, in mm.
const margin = 10.0

// clashes are the texts of a sheet's pages that stand on one another, or not
// wholly on the page within its margins: there must be none.
func clashes(s *paper.Sheet) (wrong []string) {
	for n, p := range paper.Pages(s) {
		for i, t := range p.Texts {
			x, y, right, below := extent(t)
			if x < margin-0.01 || y < margin-2 || right > p.W-margin+0.01 || below > p.H-margin+2 {
				wrong = append(wrong, fmt.Sprintf("page %d: %q leaves the page", n+1, t.Words))
			}
			for _, u := range p.Texts[:i] {
				ux, uy, uright, ubelow := extent(u)
				if x < uright && ux < right && y < ubelow && uy < below {
					wrong = append(wrong, fmt.Sprintf("page %d: %q stands on %q", n+1, t.Words, u.Words))
				}
			}
			for _, l := range p.Lines {
				if crosses(l, x, y, right, below) {
					wrong = append(wrong, fmt.Sprintf("page %d: a line goes through %q", n+1, t.Words))
				}
			}
		}
	}
	return wrong
}

// extent of a text from the top of its small letters to its baseline: what must
// stay free.
func extent(t paper.Text) (x, y, right, below float64) {
	high := t.Size * 25.4 / 72
	return t.X, t.Y - 0.55*high, t.X + paper.Width(t.Words, t.Size, t.Bold), t.Y
}

// crosses reports whether a line goes through a rectangle.
func crosses(l paper.Line, x, y, right, below float64) bool {
	for i := range l.Points[1:] {
		a, b := l.Points[i], l.Points[i+1]
		if max(a[0], b[0]) <= x || min(a[0], b[0]) >= right || max(a[1], b[1]) <= y || min(a[1], b[1]) >= below {
			continue
		}
		const steps = 64
		for k := range steps + 1 {
			f := float64(k) / steps
			px, py := a[0]+f*(b[0]-a[0]), a[1]+f*(b[1]-a[1])
			if px > x && px < right && py > y && py < below {
				return true
			}
		}
	}
	return false
}
