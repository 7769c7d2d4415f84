package folder

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"tackwright/model"
)

// importedFile is what is known of earlier imports.
const importedFile = "history/imported.json"

// imported is what imports wrote: digests, of which none can be read back, so
// that whoever is forgotten is not kept here.
type imported struct {
	Files []string // that an import made
	Wrote []string // digests of a key with its value in an entry, sorted
}

// imported is what is known of earlier imports of the folder.
func (f *Folder) imported() (*imported, error) {
	data, err := disk(f.Dir).read(importedFile)
	if err != nil {
		return nil, err
	}
	f.known[importedFile] = data
	var w imported
	if json.Unmarshal(data, &w) != nil {
		return &imported{}, nil // nothing then counts as written by an import: all is listed
	}
	return &w, nil
}

// wroteDigest is what is kept of a value that an import wrote.
func wroteDigest(t tableAt, key string, v *node) string {
	return digest([]byte(strings.Join([]string{t.s.name, t.name, key, v.one().inline()}, "\x00")))[:20]
}

func (w *imported) has(t tableAt, key string, v *node) bool {
	_, found := slices.BinarySearch(w.Wrote, wroteDigest(t, key, v))
	return found
}

// next is what is known once the import is written: what it says and the folder
// then has, what earlier ones said of that, and what they said that the sheet
// still says.
func (i *Import) next() *imported {
	w := &imported{Files: slices.Clone(i.wrote.Files)}
	add := func(t tableAt, key string, v *node, always bool) {
		if always || i.wrote.has(t, key, v) {
			w.Wrote = append(w.Wrote, wroteDigest(t, key, v))
		}
	}
	after := i.After.tables()
	for _, t := range after {
		for _, p := range t.n.pairs {
			add(t, p.key, p.val, false)
		}
	}
	for k := range i.sheet {
		x := &i.sheet[k]
		j := slices.IndexFunc(after, func(t tableAt) bool { return t.s == x.s && t.name == x.name })
		for _, p := range x.n.pairs {
			taken := j >= 0 && after[j].n.get(p.key) != nil && same(after[j].n.get(p.key).val, p.val)
			add(x.tableAt, p.key, p.val, taken)
		}
	}
	slices.Sort(w.Wrote)
	w.Wrote = slices.Compact(w.Wrote)
	slices.Sort(w.Files)
	return w
}

// What is what the import comes to, in a line: "imported 12 horses, changed 1
// rider"; "" is nothing.
func (i *Import) What() string {
	var parts []string
	for _, x := range []struct {
		did string
		all []Difference
	}{{"imported ", i.Added}, {"changed ", i.Changed}} {
		for _, s := range sections {
			n := 0
			for _, d := range x.all {
				if d.Table == s.name {
					n++
				}
			}
			if n > 0 {
				parts = append(parts, x.did+s.count(n))
				x.did = ""
			}
		}
	}
	return strings.Join(parts, ", ")
}

// count is so many entries of a table in words.
func (s *section) count(n int) string {
	words := map[string][2]string{ // one, and several
		"person": {"person", "people"}, "tack": {"piece of tack", "pieces of tack"}, "work": {"work", "works"},
		"fit": {"row of the fit chart", "rows of the fit chart"},
	}[s.name]
	switch {
	case s.name == "centre":
		return "the centre"
	case s.name == "house":
		return "the house rules"
	case words[0] == "":
		words = [2]string{s.name, s.name + "s"}
	}
	return fmt.Sprintf("%d %s", n, words[min(n, 2)-1])
}

// Files are those that the import writes, in order.
func (i *Import) Files() []string { return sortedKeys(i.texts) }

// Write writes what the import comes to, in one change, which can be undone. See
// wrong.go for its errors.
func (i *Import) Write(by *model.Person, at model.Instant) (*Change, error) {
	c, err := writer(by, at)
	if err != nil {
		return nil, err
	}
	c.What = i.What()
	text, err := json.MarshalIndent(i.next(), "", " ")
	if err != nil {
		return nil, err
	}
	texts := maps.Clone(i.texts)
	texts[importedFile] = append(text, '\n')
	if err := i.f.write(&c, func(d disk) ([]target, error) { return i.f.rewritten(d, append(i.Files(), importedFile), texts) }); err != nil {
		return nil, err
	}
	return &c, nil
}
