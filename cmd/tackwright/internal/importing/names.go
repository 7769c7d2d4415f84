package importing

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model/folder"
)

// names are what entries are called, by their table.
type names map[string][]string

func namesOf(f *folder.Folder) names {
	n := names{}
	for _, table := range []string{"person", "arena", "horse", "tack", "rider", "lesson", "term"} {
		for _, e := range f.Entries(table) {
			n.add(table, e.Cells[nameKey(table)])
			for _, old := range folder.Items(e.Cells["was"]) {
				n.add(table, old)
			}
		}
	}
	for _, h := range f.Entries("house") {
		for _, l := range folder.Items(h.Cells["levels"]) {
			n.add("level", l)
		}
	}
	return n
}

func nameKey(table string) string {
	if table == "tack" {
		return "tag"
	}
	return "name"
}

func (n names) add(table, name string) {
	if name = oneBlank(name); name != "" && !slices.Contains(n[table], name) {
		n[table] = append(n[table], name)
	}
}

// oneBlank makes one blank of any run of blanks.
func oneBlank(s string) string { return strings.Join(strings.Fields(s), " ") }

// words are keys whose words the house chooses: they are one word whatever their
// capitals.
var words = map[string]string{"level": "level", "levels": "level", "mounting": "mounting", "skills": "skills", "style": "style", "styles": "style"}

// understand writes names as those whose they are have them: whatever the capitals
// and blanks, and a first name for the whole where only one person has it.
func (r *reading) understand(rows []*row) {
	for _, x := range rows {
		if x.s.kind.items == "" {
			r.names.add(x.s.kind.table, x.text(nameKey(x.s.kind.table)))
		}
	}
	fuller := map[string]bool{}
	for _, x := range rows {
		for _, inner := range x.items {
			rows = append(rows[:len(rows):len(rows)], inner...)
		}
	}
	for _, x := range rows {
		r.girthsByTag(x)
		for _, c := range x.cells {
			col := x.s.kind.column(c.key)
			of := col.Names
			if of == "" {
				of = words[c.key]
			}
			if of == "" || strings.HasPrefix(c.Text, "[") || strings.HasPrefix(c.Text, "{") {
				continue
			}
			items := []string{oneBlank(c.Text)}
			if col.Many {
				items = folder.Items(c.Text)
			}
			for i, item := range items {
				name := r.names.find(of, item)
				switch {
				case name == "" && col.Names == "":
					r.names.add(of, item)
				case name == "":
				case strings.EqualFold(name, item):
					items[i] = name
				default:
					items[i] = name
					if words := fmt.Sprintf("%s as %s", item, name); !fuller[words] {
						fuller[words] = true
						r.ReadAs = append(r.ReadAs, words)
					}
				}
			}
			c.Text = items[0]
			if col.Many {
				c.Text = strings.Join(items, ";") + ";"
			}
		}
	}
}

// girthsByTag takes a girth of the fit chart that is named by its tag, where a size
// could stand, for what it is.
func (r *reading) girthsByTag(x *row) {
	c := x.get("girth")
	if c == nil || x.s.kind.table != "fit" || x.get("girths") != nil {
		return
	}
	for _, item := range folder.Items(c.Text) {
		if r.names.find("tack", item) == "" {
			return
		}
	}
	c.key = "girths"
	x.empty = slices.DeleteFunc(x.empty, func(key string) bool { return key == "girths" })
	if !slices.Contains(x.empty, "girth") {
		x.empty = append(x.empty, "girth")
	}
}

// find is the name that is meant; "" is none.
func (n names) find(table, said string) string {
	for _, name := range n[table] {
		if name == said {
			return name
		}
	}
	var found []string
	for _, name := range n[table] {
		if strings.EqualFold(name, said) {
			return name
		}
		if begins(name, said) && (table == "rider" || table == "person") {
			found = append(found, name)
		}
	}
	if len(found) == 1 {
		return found[0]
	}
	return ""
}

// begins reports whether what is said is the first name of a whole one, with or
// without the beginning of the rest: "Ada", "Ada G.".
func begins(name, said string) bool {
	name, said = strings.ToLower(name), strings.ToLower(strings.TrimSuffix(said, "."))
	rest, ok := strings.CutPrefix(name, said)
	return ok && said != "" && (strings.HasPrefix(rest, " ") || strings.Contains(said, " "))
}

// levels makes the levels that are met those of a house that begins and has none.
func (r *reading) levels(f *folder.Folder) {
	met := r.names["level"]
	if !f.Begins() || len(met) == 0 {
		return
	}
	value := folder.Value{Key: "levels", Said: folder.Said{Text: strings.Join(met, ";") + ";"}}
	i := slices.IndexFunc(r.Entries, func(e folder.Entry) bool { return e.Table == "house" })
	switch {
	case i < 0:
		r.Entries = append([]folder.Entry{{Table: "house", Values: []folder.Value{value}}}, r.Entries...)
	case slices.ContainsFunc(r.Entries[i].Values, func(v folder.Value) bool { return v.Key == "levels" }):
		return
	default:
		r.Entries[i].Values = append(r.Entries[i].Values, value)
		r.Entries[i].Empty = slices.DeleteFunc(r.Entries[i].Empty, func(key string) bool { return key == "levels" })
	}
	r.ReadAs = append(r.ReadAs, fmt.Sprintf("the riders' levels, in the order they were met, as %s (in centre.toml, to be mended there)", strings.Join(met, ", ")))
}
