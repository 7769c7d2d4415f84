package desk

import (
	"embed"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

//go:embed pages
var files embed.FS

// pages by name, each within the frame.
var pages = parsePages()

func parsePages() map[string]*template.Template {
	frame := template.Must(template.New("frame.html").Funcs(template.FuncMap{
		"svg":      func(p paper.Picture) template.HTML { return template.HTML(p.SVG()) }, // escapes what it is given
		"screen":   onScreen,
		"lines":    func(s string) []string { return strings.Split(s, "\n") },
		"sentence": model.Sentence,
		"words":    model.Date.Words,
		"day":      dayWords,
		"nowhere":  nowhere,
		"role":     func(least string, has model.Role) bool { return rank(has) >= rank(model.Role(least)) },
	}).ParseFS(files, "pages/frame.html", "pages/part.html"))
	all := map[string]*template.Template{}
	names, err := fs.Glob(files, "pages/*.html")
	if err != nil {
		panic(err) // the pattern is fixed
	}
	for _, name := range names {
		key := strings.TrimSuffix(path.Base(name), ".html")
		if key == "frame" || key == "part" {
			continue
		}
		all[key] = template.Must(template.Must(frame.Clone()).ParseFS(files, name))
	}
	return all
}

// frame is what stands around the body of every page.
type frame struct {
	Title, Centre string
	Role          model.Role
	Who           string
	Alone         bool // this computer alone is served, so that nobody leaves
	Today, Date   model.Date
	Mistakes      int
	Reload        int // seconds after which a browser without script looks again; 0 never
	Body          any
	Deferral      string
}

// Reloads is a body that changes by itself while it is looked at.
type reloads interface{ reload() int }

func (v *visit) frame(title string, body any) frame {
	f := frame{Title: title, Role: v.role, Who: v.session.who(), Alone: len(v.Phrases) == 0, Body: body, Deferral: sheet.Deferral}
	if v.reading != nil {
		f.Centre, f.Today, f.Date, f.Mistakes = v.reading.Centre.Name, v.reading.Today, v.date(), len(v.reading.Mistakes())
	}
	if x, ok := body.(reloads); ok {
		f.Reload = x.reload()
	}
	return f
}

// serveLook serves what pages are dressed in.
func serveLook(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("file")
	kind, ok := map[string]string{"desk.css": "text/css; charset=utf-8", "desk.js": "text/javascript; charset=utf-8"}[name]
	text, err := files.ReadFile("pages/" + name)
	if !ok || err != nil {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", "no-cache")
	w.Write(text)
}

// dayWords are a date of a command's answer as it is said elsewhere.
func dayWords(said string) string {
	d, err := model.ParseDate(said)
	if err != nil {
		return said
	}
	return d.Words()
}

// onScreen is a sheet's table without the columns that are for a pencil.
func onScreen(t paper.Table) paper.Table {
	keep := func(i int) bool { return t.Columns[i].Head != "pencil" }
	var x paper.Table
	for i, c := range t.Columns {
		if keep(i) {
			x.Columns = append(x.Columns, c)
		}
	}
	for _, r := range t.Rows {
		var cells []paper.Cell
		for i, c := range r.Cells {
			if keep(i) {
				cells = append(cells, c)
			}
		}
		r.Cells = cells
		x.Rows = append(x.Rows, r)
	}
	return x
}
