package paper

import (
	"fmt"
	"strings"
)

// widths of a printed page of monospaced type, ten to the inch, in columns: a
// page of A4 or Letter on its long side is 11 in or more.
const wideColumns = 104

// typed measures what stands in a table of monospaced type.
var typed = scale{
	text: func(s string, _ bool) float64 { return float64(Columns(s)) },
	head: func(s string) float64 { return float64(Columns(s)) },
	room: func(mm float64) float64 { return mm / 2.54 },
	line: func(what string) float64 { return float64(Columns(what)) + 13 },
	box:  4,
	edge: 2,
}

// Written is the sheet for a monospaced page, in pages as long as the paper with
// a form feed between them.
func Written(s *Sheet) string {
	t := &typist{Sheet: s}
	title := strings.ToUpper(Plain(s.Title))
	lines := LinesOn(s.Paper)
	if s.Landscape {
		t.Wide = wideColumns
		lines = linesAcross(s.Paper)
	}
	t.Block("")
	t.Line(title)
	for _, f := range s.Facts {
		if f.Name == "" {
			t.Para("", f.Words)
		} else {
			t.Para(Pad(Plain(f.Name)+": ", 15), f.Words)
		}
	}
	t.Para(Pad("printed: ", 15), s.Printed)
	for i := range s.Parts {
		t.part(&s.Parts[i])
	}
	if len(s.Cautions) > 0 || s.Deferral != "" {
		t.Block("")
		t.Line("")
		for _, c := range s.Cautions {
			t.Para("  ! ", c)
		}
		t.Para("  ! ", s.Deferral)
	}
	pages := t.Pages(lines, func(n, of int) string {
		p := Mono{Wide: t.Wide}
		page := fmt.Sprintf("page %d of %d", n, of)
		p.Line(Pad(title, p.wide()-Columns(page)) + page)
		p.Para("", s.Short+"; printed "+s.Printed)
		p.Line("")
		return p.String()
	})
	page := fmt.Sprintf("page 1 of %d", len(pages))
	pages[0] = Pad(title, t.wide()-Columns(page)) + page + strings.TrimPrefix(pages[0], title)
	return strings.Join(pages, "\f")
}

// typist sets a sheet in a monospaced type.
type typist struct {
	*Sheet
	Mono
}

func (t *typist) part(x *Part) {
	t.Part()
	t.Line("")
	if x.Title != "" {
		t.Rule("=")
		t.Para("", strings.ToUpper(x.Title))
		t.Rule("=")
	}
	for _, s := range x.Says {
		t.Para("", s)
	}
	if len(x.Table.Rows) == 0 {
		t.titled = false
		return
	}
	var widths []int
	for _, w := range x.Table.share(float64(t.wide())+2, typed) { // nothing parts the last from the edge
		widths = append(widths, max(1, int(w)-2))
	}
	heads := func(p *Mono) {
		if strings.Join(x.Table.heads(), "") != "" {
			p.Cells("", widths, x.Table.heads()...)
			p.Rule("-")
		}
	}
	heads(&t.Mono)
	above := &Mono{Wide: t.Wide}
	if x.Title != "" {
		above.Para("", strings.ToUpper(x.Title)+", continued")
	}
	heads(above)
	for _, rows := range x.Table.blocks() {
		t.Block(above.String())
		for _, r := range rows {
			t.row(r, widths)
		}
	}
}

func (t *typist) row(r Row, widths []int) {
	if r.Over != "" {
		if !strings.HasSuffix(t.String(), "---\n") { // the rule below the heads does
			t.Rule("-")
		}
		t.Para("", r.Over)
		for _, s := range r.Says {
			t.Para("  ", s)
		}
	}
	if len(r.Write) > 0 {
		var parts []string
		each := t.wide()/len(r.Write) - 2
		for _, w := range r.Write {
			w = Plain(w) + " "
			parts = append(parts, w+strings.Repeat("_", max(4, each-Columns(w))))
		}
		t.Line(strings.Join(parts, "  "))
	}
	if len(r.Cells) == 0 {
		return
	}
	lines := make([][]string, len(r.Cells))
	for i, c := range r.Cells {
		lead := ""
		if c.Box {
			lead = "[ ] "
		}
		if c.Text != "" || c.Box {
			for _, part := range strings.Split(c.Text, "\n") {
				for _, s := range Wrap(part, max(1, widths[i]-len(lead))) {
					lines[i] = append(lines[i], lead+s)
					lead = strings.Repeat(" ", len(lead))
				}
			}
		}
		for _, what := range c.Lines {
			if what = Plain(what); what != "" {
				what += " "
			}
			lines[i] = append(lines[i], what+strings.Repeat("_", max(0, widths[i]-Columns(what))))
		}
	}
	t.beside("", widths, lines)
}
