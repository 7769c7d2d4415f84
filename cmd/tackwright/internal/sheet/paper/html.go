package paper

import (
	_ "embed"
	"html/template"
	"strings"
)

//go:embed page.css
var css string

//go:embed page.html
var pageHTML string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
	"svg":    func(p Picture) template.HTML { return template.HTML(p.SVG()) }, // escapes what it is given
	"css":    func() template.CSS { return template.CSS(css) },
	"lines":  func(s string) []string { return strings.Split(s, "\n") },
	"blocks": func(t Table) [][]Row { return t.blocks() },
	"named":  func(t Table) bool { return strings.Join(t.heads(), "") != "" },
	"bold":   func(t Table, i int) bool { return t.Columns[i].Bold },
	"paper":  (*Sheet).paper,
	"pages":  Pages,
}).Parse(pageHTML))

// HTML is the sheet as a page to read on a screen of any width. It prints the very
// pages of the PDF, and needs nothing beside itself.
func HTML(s *Sheet) string {
	var b strings.Builder
	if err := page.Execute(&b, s); err != nil {
		panic(err) // the template is fixed, and a strings.Builder takes everything
	}
	return b.String()
}
