package paper

import (
	"cmp"
	"strings"
)

// MonoColumns is how wide a printed page of text is.
const MonoColumns = 80

// Mono is text being set in a monospaced type.
type Mono struct {
	strings.Builder
	Wide   int // columns of a page; 0: MonoColumns
	blocks []block
	titled bool // a title was set, and nothing beneath it
}

// Line ends a line of text.
func (p *Mono) Line(s string) {
	p.WriteString(strings.TrimRight(s, " "))
	p.WriteByte('\n')
}

// Rule is a line across the page.
func (p *Mono) Rule(of string) { p.Line(strings.Repeat(of, p.wide())) }

func (p *Mono) wide() int { return cmp.Or(p.Wide, MonoColumns) }

// Para sets text behind a lead; further lines hang below the text's beginning.
func (p *Mono) Para(lead, text string) {
	for i, s := range Wrap(text, p.wide()-Columns(lead)) {
		if i > 0 {
			lead = strings.Repeat(" ", Columns(lead))
		}
		p.Line(lead + s)
	}
}

// Cells sets texts side by side in columns of those widths, two spaces apart,
// each wrapped in its own.
func (p *Mono) Cells(lead string, widths []int, texts ...string) {
	var cells [][]string
	for i, t := range texts {
		cells = append(cells, Wrap(t, widths[i]))
	}
	p.beside(lead, widths, cells)
}

// beside sets lines side by side in columns of those widths, two spaces apart.
func (p *Mono) beside(lead string, widths []int, cells [][]string) {
	most := 0
	for _, c := range cells {
		most = max(most, len(c))
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
			line += Pad(text, widths[i])
		}
		p.Line(line)
		lead = strings.Repeat(" ", Columns(lead))
	}
}

// Fit gives each column what its longest text asks for, up to its most; the last
// takes the rest of the page behind a lead of so many columns.
func Fit(lead int, most []int, rows [][]string) []int {
	widths := make([]int, len(most))
	rest := MonoColumns - lead
	for i := range most {
		for _, r := range rows {
			widths[i] = max(widths[i], min(most[i], Columns(Plain(r[i]))))
		}
		if i == len(most)-1 {
			widths[i] = rest
		}
		rest -= widths[i] + 2
	}
	return widths
}

// LinesOn is how many lines a page of paper takes: six to the inch, half an inch
// left free above and below (A4 is 297 mm high, ISO 216; Letter is 11 in).
func LinesOn(paper string) int {
	if paper == "Letter" {
		return 60
	}
	return 64
}

// linesAcross is how many lines a page of paper takes that lies on its long side.
func linesAcross(paper string) int {
	if paper == "Letter" {
		return 45
	}
	return 43
}

// Block begins lines that stay on one page. above is what stands over them where
// they begin a new one. The first block of a part stays with its title.
func (p *Mono) Block(above string) {
	if p.titled {
		p.titled = false
		return
	}
	p.blocks = append(p.blocks, block{p.Len(), above})
}

// Part begins a part of the sheet: its title, and the block after it.
func (p *Mono) Part() {
	p.titled = false
	p.Block("")
	p.titled = true
}

type block struct {
	at    int // byte of the text
	above string
}

// Pages breaks the text into pages of so many lines, each but the first under a
// head of its own. head is told which page of how many it is for.
func (p *Mono) Pages(lines int, head func(n, of int) string) []string {
	text := p.String()
	var pages []string
	over := strings.Count(head(2, 2), "\n")
	now, left := "", lines
	for i, b := range p.blocks {
		end := len(text)
		if i+1 < len(p.blocks) {
			end = p.blocks[i+1].at
		}
		what := text[b.at:end]
		whole := lines - over - strings.Count(b.above, "\n")
		for n := strings.Count(what, "\n"); n > left; n = strings.Count(what, "\n") {
			if n > whole { // no page holds it: it is torn at the end of a line
				rest := strings.SplitAfter(what, "\n")
				now, what = now+strings.Join(rest[:left], ""), strings.Join(rest[left:], "")
			}
			pages = append(pages, now)
			now, left = b.above, whole
			what = strings.TrimLeft(what, "\n")
		}
		now, left = now+what, left-strings.Count(what, "\n")
	}
	pages = append(pages, now)
	for i := 1; i < len(pages); i++ {
		pages[i] = head(i+1, len(pages)) + pages[i]
	}
	return pages
}
