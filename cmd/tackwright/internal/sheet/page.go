package sheet

import "strings"

// pageColumns is how wide a printed page of text is.
const pageColumns = 80

// page is text being set in a monospaced type.
type page struct{ strings.Builder }

func (p *page) line(s string) {
	p.WriteString(strings.TrimRight(s, " "))
	p.WriteByte('\n')
}

func (p *page) rule(of string) { p.line(strings.Repeat(of, pageColumns)) }

// para sets text behind a lead; further lines hang below the text's beginning.
func (p *page) para(lead, text string) {
	for i, s := range wrap(text, pageColumns-columns(lead)) {
		if i > 0 {
			lead = strings.Repeat(" ", columns(lead))
		}
		p.line(lead + s)
	}
}

// cells sets texts side by side in columns of those widths, two spaces apart,
// each wrapped in its own.
func (p *page) cells(lead string, widths []int, texts ...string) {
	var cells [][]string
	most := 0
	for i, t := range texts {
		c := wrap(t, widths[i])
		cells, most = append(cells, c), max(most, len(c))
	}
	for k := range most {
		line := lead
		for i, c := range cells {
			if i > 0 {
				line += "  "
			}
			text := ""
			if k < len(c) {
				text = c[k]
			}
			line += pad(text, widths[i])
		}
		p.line(line)
		lead = strings.Repeat(" ", columns(lead))
	}
}

// fit gives each column what its longest text asks for, up to its most; the last
// takes the rest of the page behind a lead of so many columns.
func fit(lead int, most []int, rows [][]string) []int {
	widths := make([]int, len(most))
	rest := pageColumns - lead
	for i := range most {
		for _, r := range rows {
			widths[i] = max(widths[i], min(most[i], columns(plain(r[i]))))
		}
		if i == len(most)-1 {
			widths[i] = rest
		}
		rest -= widths[i] + 2
	}
	return widths
}
