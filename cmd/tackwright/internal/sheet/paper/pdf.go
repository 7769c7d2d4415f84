package paper

import (
	"bytes"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// PDF is the sheet as PDF 1.3 or later, black on white, with its type in it. It
// has no date but made, so that the same sheet gives the same bytes.
func PDF(s *Sheet, made time.Time) ([]byte, error) {
	orientation := "P"
	if s.Landscape {
		orientation = "L"
	}
	f := withFont(fpdf.New(orientation, "mm", s.paper(), ""))
	f.SetCatalogSort(true)
	f.SetCreationDate(made)
	f.SetModificationDate(made)
	f.SetTitle(s.Title+", "+s.Short, true)
	f.SetCreator("tackwright", true)
	f.SetAutoPageBreak(false, 0)
	f.SetLineCapStyle("butt")
	for _, p := range Pages(s) {
		f.AddPage()
		draw(f, &p)
	}
	var out bytes.Buffer
	err := f.Output(&out)
	return out.Bytes(), err
}

// paper is the size of the sheet's paper.
func (s *Sheet) paper() string {
	if s.Paper == "Letter" {
		return "Letter"
	}
	return "A4"
}

func draw(f *fpdf.Fpdf, p *Picture) {
	for _, b := range p.Boxes {
		how := ""
		if b.Blank {
			f.SetFillColor(255, 255, 255)
			how = "F"
		}
		if b.Thick > 0 {
			f.SetLineWidth(b.Thick)
			how += "D"
		}
		f.Rect(b.X, b.Y, b.W, b.H, how)
	}
	f.SetFillColor(0, 0, 0)
	for _, l := range p.Lines {
		f.SetLineWidth(l.Thick)
		if l.Dashed {
			f.SetDashPattern([]float64{1.5, 1.2}, 0)
		}
		for i := range l.Points[1:] {
			f.Line(l.Points[i][0], l.Points[i][1], l.Points[i+1][0], l.Points[i+1][1])
		}
		f.SetDashPattern([]float64{}, 0)
		if l.Arrow {
			tip, left, right := l.head()
			f.Polygon([]fpdf.PointType{{X: tip[0], Y: tip[1]}, {X: left[0], Y: left[1]}, {X: right[0], Y: right[1]}}, "F")
		}
	}
	for _, t := range p.Texts {
		f.SetFont(family, style(t.Bold), t.Size)
		f.Text(t.X, t.Y, t.Words)
	}
}
