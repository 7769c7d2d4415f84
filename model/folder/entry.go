package folder

import (
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// tableAt is a table of a file, and what it is called among those of its kind.
type tableAt struct {
	s *section
	n *node
	// name is what it is called; of a row of the chart and the like, what it is
	// about, with a number where there are several.
	name string
	was  []string
}

// tablesOf are the tables that stand at the top of a file, or would but for a
// mistake.
func tablesOf(root *node) []tableAt {
	var all []tableAt
	for _, p := range root.pairs {
		s := sectionOf(p.key)
		switch {
		case s == nil:
		case p.val.kind == unstable.InlineTable:
			all = append(all, tableAt{s: s, n: p.val})
		default:
			for _, x := range p.val.items {
				if x.kind == unstable.InlineTable {
					all = append(all, tableAt{s: s, n: x})
				}
			}
		}
	}
	return all
}

// called gives each table its name.
func called(all []tableAt) {
	seen := map[string]int{}
	for i := range all {
		t := &all[i]
		var parts []string
		for _, key := range t.s.by() {
			if p := t.n.get(key); p != nil {
				parts = append(parts, p.val.cell())
			}
		}
		t.name = strings.Join(parts, " ")
		t.was = t.earlier()
		key := t.s.name + " " + t.name
		if seen[key]++; seen[key] > 1 && len(t.s.by()) > 1 {
			t.name += fmt.Sprintf(" (%d)", seen[key])
		}
	}
}

// earlier are the names that it had.
func (t *tableAt) earlier() (names []string) {
	if old := t.n.get("was"); old != nil {
		for _, x := range append(old.val.items, old.val) {
			if x.kind == unstable.String {
				names = append(names, x.text)
			}
		}
	}
	return names
}

// by are the keys that tell entries of a table apart.
func (s *section) by() []string {
	switch s.name {
	case "tack":
		return []string{"tag"}
	case "fit":
		return []string{"horse", "seat"}
	case "booking":
		return []string{"on", "lesson", "rider"}
	case "work":
		return []string{"horse", "kind", "day", "on", "start"}
	case "centre", "house":
		return nil
	}
	return []string{"name"}
}

// tables are all tables that people wrote, in the order of the files.
func (f *Folder) tables() []tableAt {
	var all []tableAt
	for _, name := range f.tops() {
		root, _ := parse(name, f.text(name))
		all = append(all, tablesOf(root)...)
	}
	called(all)
	return all
}

// tops are the files that people write.
func (f *Folder) tops() []string {
	var all []string
	for _, name := range f.read {
		if isTop(name) {
			all = append(all, name)
		}
	}
	return all
}

// text is what a file holds, as far as the folder knows.
func (f *Folder) text(name string) []byte {
	if data, ok := f.fresh[name]; ok {
		return data
	}
	return f.known[name]
}

// Written is an entry of the folder as a spreadsheet has it.
type Written struct {
	Table string
	Cells map[string]string    // by key, as [Column] has it
	Items map[string][]Written // of lists of tables that were asked for, by key
}

// Entries are all entries that people wrote of a table, in the order of the
// files. Lists of tables, where itemsOf names their key, are under Items.
func (f *Folder) Entries(table string, itemsOf ...string) []Written {
	var all []Written
	for _, t := range f.tables() {
		if t.s.name == table {
			all = append(all, t.n.written(table, t.s.sheet, "", itemsOf))
		}
	}
	return all
}

func (n *node) written(table string, s *sheet, under string, itemsOf []string) Written {
	w := Written{Table: table, Cells: map[string]string{}, Items: map[string][]Written{}}
	for _, p := range n.pairs {
		l := s.line(p.key)
		switch {
		case l == nil:
		case l.sub != nil && !l.many && p.val.kind == unstable.InlineTable:
			for key, cell := range p.val.written("", l.sub, under+p.key+".", nil).Cells {
				w.Cells[key] = cell
			}
		case slices.Contains(itemsOf, p.key) && l.many:
			for _, x := range p.val.each() {
				item := Written{Cells: map[string]string{l.sub.lines[0].name: x.cell()}}
				if x.kind == unstable.InlineTable {
					item = x.written("", l.sub, "", nil)
				}
				w.Items[p.key] = append(w.Items[p.key], item)
			}
		default:
			w.Cells[under+p.key] = p.val.cell()
		}
	}
	return w
}

// each are the items of a list; a value alone is a list of it.
func (n *node) each() []*node {
	if n.kind == unstable.Array {
		return n.items
	}
	return []*node{n}
}
