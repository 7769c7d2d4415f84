package paper

import "math"

// Picture is a drawing in black on white, in millimetres from its upper left
// corner. Boxes lie below lines, and lines below texts.
type Picture struct {
	About string // what it shows, for those who cannot see it
	W, H  float64
	Boxes []Box
	Lines []Line
	Texts []Text
}

// Box is a rectangle.
type Box struct {
	X, Y, W, H float64
	Thick      float64 // of its edge, in mm; 0 none
	Blank      bool    // it hides what lies below it
}

// Line goes from point to point.
type Line struct {
	Points [][2]float64
	Thick  float64 // in mm
	Dashed bool
	Arrow  bool // its end has a head
}

// Text stands with its baseline at Y.
type Text struct {
	X, Y  float64
	Size  float64 // of the type in points
	Bold  bool
	Words string
}

// width of the text in mm.
func (t Text) width() float64 { return Width(t.Words, t.Size, t.Bold) }

// Rect adds a rectangle.
func (p *Picture) Rect(x, y, w, h, thick float64) {
	p.Boxes = append(p.Boxes, Box{X: x, Y: y, W: w, H: h, Thick: thick})
}

// Line adds a line; its arguments are x, y, x, y, ...
func (p *Picture) Line(thick float64, at ...float64) *Line {
	l := Line{Thick: thick}
	for i := 0; i+1 < len(at); i += 2 {
		l.Points = append(l.Points, [2]float64{at[i], at[i+1]})
	}
	p.Lines = append(p.Lines, l)
	return &p.Lines[len(p.Lines)-1]
}

// Write adds a text whose baseline begins at x, y.
func (p *Picture) Write(x, y, size float64, bold bool, words string) {
	if words = printable(words); words != "" {
		p.Texts = append(p.Texts, Text{x, y, size, bold, words})
	}
}

// Centre adds a text around x.
func (p *Picture) Centre(x, y, size float64, bold bool, words string) {
	p.Write(x-Width(words, size, bold)/2, y, size, bold, words)
}

// Hatch fills a rectangle with slanting lines, so that it is told from a plain
// one in black and white.
func (p *Picture) Hatch(x, y, w, h, apart float64) {
	for c := apart; c < w+h; c += apart { // the line on which (X-x) + (Y-y) is c
		p.Line(0.2, x+math.Min(c, w), y+math.Max(0, c-w), x+math.Max(0, c-h), y+math.Min(c, h))
	}
}

// put lays a picture onto another.
func (p *Picture) put(x, y float64, q *Picture) {
	for _, b := range q.Boxes {
		b.X, b.Y = b.X+x, b.Y+y
		p.Boxes = append(p.Boxes, b)
	}
	for _, l := range q.Lines {
		moved := l
		moved.Points = nil
		for _, at := range l.Points {
			moved.Points = append(moved.Points, [2]float64{at[0] + x, at[1] + y})
		}
		p.Lines = append(p.Lines, moved)
	}
	for _, t := range q.Texts {
		t.X, t.Y = t.X+x, t.Y+y
		p.Texts = append(p.Texts, t)
	}
}

// head is the tip of an arrow and the two ends of its barbs.
func (l Line) head() (tip, left, right [2]float64) {
	n := len(l.Points)
	tip, from := l.Points[n-1], l.Points[n-2]
	angle := math.Atan2(tip[1]-from[1], tip[0]-from[0])
	barb := func(turn float64) [2]float64 {
		return [2]float64{tip[0] - arrow*math.Cos(angle+turn), tip[1] - arrow*math.Sin(angle+turn)}
	}
	return tip, barb(0.45), barb(-0.45)
}

// arrow is how long the head of an arrow is, in mm.
const arrow = 2.8
