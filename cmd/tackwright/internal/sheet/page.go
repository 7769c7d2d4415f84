package sheet

import "strings"

// pageColumns is how wide a printed page of text is.
const pageColumns = 80

// page is text being set in a monospaced type.
type page struct {
	strings.Builder
	blocks []block
	titled bool // a title was set, and nothing beneath it
}

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

// linesOn is how many lines a page of paper takes: six to the inch, half an inch
// left free above and below (A4 is 297 mm high, ISO 216; Letter is 11 in).
func linesOn(paper string) int {
	if paper == "Letter" {
		return 60
	}
	return 64
}

// block begins lines that stay on one page. above is what stands over them where
// they begin a new one. The first block of a part stays with its title.
func (p *page) block(above string) {
	if p.titled {
		p.titled = false
		return
	}
	p.blocks = append(p.blocks, block{p.Len(), above})
}

// part begins a part of the sheet: its title, and the block after it.
func (p *page) part() {
	p.titled = false
	p.block("")
	p.titled = true
}

type block struct {
	at    int // byte of the text
	above string
}

// pages breaks the text into pages of so many lines, each but the first under a
// head of its own. head is told which page of how many it is for.
func (p *page) pages(lines int, head func(n, of int) string) []string {
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
