package paper

import (
	"fmt"
	"html"
	"strconv"
	"strings"
)

// SVG is the picture, in millimetres. Each text says how long it is, so that it
// keeps to its place in whatever type the reader has.
func (p *Picture) SVG() string {
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="%smm" height="%smm" viewBox="0 0 %s %s" font-family="%s">`,
		mm(p.W), mm(p.H), mm(p.W), mm(p.H), html.EscapeString(webFonts))
	b.WriteByte('\n')
	if p.About != "" {
		fmt.Fprintf(&b, "<title>%s</title>\n", html.EscapeString(Plain(p.About)))
	}
	for _, x := range p.Boxes {
		fill := "none"
		if x.Blank {
			fill = "white"
		}
		edge := ""
		if x.Thick > 0 {
			edge = fmt.Sprintf(` stroke="black" stroke-width="%s"`, mm(x.Thick))
		}
		fmt.Fprintf(&b, `<rect x="%s" y="%s" width="%s" height="%s" fill="%s"%s/>`+"\n", mm(x.X), mm(x.Y), mm(x.W), mm(x.H), fill, edge)
	}
	for _, l := range p.Lines {
		dash := ""
		if l.Dashed {
			dash = ` stroke-dasharray="1.5 1.2"`
		}
		fmt.Fprintf(&b, `<polyline points="%s" fill="none" stroke="black" stroke-width="%s"%s/>`+"\n", points(l.Points), mm(l.Thick), dash)
		if l.Arrow {
			tip, left, right := l.head()
			fmt.Fprintf(&b, `<polygon points="%s" fill="black"/>`+"\n", points([][2]float64{tip, left, right}))
		}
	}
	for _, t := range p.Texts {
		weight := ""
		if t.Bold {
			weight = ` font-weight="bold"`
		}
		fmt.Fprintf(&b, `<text x="%s" y="%s" font-size="%s"%s textLength="%s" lengthAdjust="spacingAndGlyphs">%s</text>`+"\n",
			mm(t.X), mm(t.Y), mm(t.Size*point), weight, mm(t.width()), html.EscapeString(t.Words))
	}
	b.WriteString("</svg>\n")
	return b.String()
}

// SVG is the sheet's pages as one picture, one below the other.
func SVG(s *Sheet) string {
	var all Picture
	for _, p := range Pages(s) {
		all.put(0, all.H, &p)
		all.W, all.H = p.W, all.H+p.H
	}
	all.About = s.Title + ", " + s.Short
	return all.SVG()
}

// webFonts are narrow ones where the reader has them.
const webFonts = "DejaVu Sans Condensed, Arial Narrow, Arial, sans-serif"

func points(all [][2]float64) string {
	var out []string
	for _, p := range all {
		out = append(out, mm(p[0])+","+mm(p[1]))
	}
	return strings.Join(out, " ")
}

// mm is a length as few figures as a hundredth of a millimetre asks for.
func mm(x float64) string {
	s := strconv.FormatFloat(x, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
