package folder

import (
	"fmt"
	"slices"
	"strings"
)

// Entry is a table as it comes from outside of the folder, such as a row of a
// spreadsheet. What it is at is for the caller to say, and comes back with what
// is wrong: "Horses!C7".
type Entry struct {
	Table  string // "horse"; within a list of tables ""
	Was    string // what it is called in the folder, where it is to be called otherwise
	Values []Value
	Empty  []string // keys of which it says that they have no value
	At     string
}

// Value is what is said for one key.
type Value struct {
	Key   string  // as [Column] has it
	Said  Said    // a plain value, or a list of such
	Items []Entry // of a list of tables, in place of Said
	At    string
}

// said is the value of an entry's key, and where it stands.
func (e *Entry) said(key string) *Value {
	i := slices.IndexFunc(e.Values, func(v Value) bool { return v.Key == key })
	if i < 0 {
		return nil
	}
	return &e.Values[i]
}

// keys are those that an entry speaks of at the top: "limits" for "limits.day".
func (e *Entry) keys() []string {
	var all []string
	add := func(key string) {
		if top, _, _ := strings.Cut(key, "."); !slices.Contains(all, top) {
			all = append(all, top)
		}
	}
	for _, v := range e.Values {
		add(v.Key)
	}
	for _, key := range e.Empty {
		add(key)
	}
	return all
}

// mark is where in a text stands what came from some place.
type mark struct {
	start, end int
	at         string
}

// sheetText is TOML made of entries, each part of which knows where it came from.
type sheetText struct {
	strings.Builder
	marks []mark
}

func (b *sheetText) from(at string, write func()) {
	start := b.Len()
	write()
	b.marks = append(b.marks, mark{start, b.Len(), at})
}

// at is where the innermost part came from that a place of the text lies in; ""
// is none.
func (b *sheetText) at(place int) string {
	best := mark{end: b.Len() + 1}
	for _, m := range b.marks {
		if m.start <= place && place < m.end && m.end-m.start < best.end-best.start {
			best = m
		}
	}
	return best.at
}

// entry writes an entry. Of keys that it does not speak of it has what the table
// now in the folder says; now nil is that there is none.
func (b *sheetText) entry(e *Entry, now *node) {
	s := sectionOf(e.Table)
	b.from(e.At, func() {
		b.WriteString("\n" + s.head() + "\n")
		keys := e.keys()
		if now != nil {
			for _, p := range now.pairs {
				if !slices.Contains(keys, p.key) {
					fmt.Fprintf(b, "%s = %s\n", keyText(p.key), p.val.inline())
				}
			}
		}
		b.pairs(s.sheet, e, "", func(key string) { fmt.Fprintf(b, "%s = ", key) }, func() { b.WriteString("\n") })
	})
}

// pairs writes the values of an entry under a path of keys, in the order of the
// page; before is written ahead of each, and after behind it.
func (b *sheetText) pairs(s *sheet, e *Entry, under string, before func(key string), after func()) {
	for i := range s.lines {
		l := &s.lines[i]
		path := under + l.name
		switch v := e.said(path); {
		case v != nil && v.Items != nil:
			before(l.name)
			b.from(v.At, func() { b.list(l, v.Items) })
			after()
		case v != nil:
			before(l.name)
			b.from(v.At, func() { b.WriteString(l.value(v.Said)) })
			after()
		case l.sub != nil && !l.many && slices.ContainsFunc(e.Values, func(v Value) bool { return strings.HasPrefix(v.Key, path+".") }):
			before(l.name)
			b.table(l.sub, e, path+".")
			after()
		}
	}
}

func (b *sheetText) table(s *sheet, e *Entry, under string) {
	b.WriteString("{ ")
	sep := ""
	b.pairs(s, e, under, func(key string) { b.WriteString(sep + key + " = "); sep = ", " }, func() {})
	b.WriteString(" }")
}

func (b *sheetText) list(l *line, items []Entry) {
	b.WriteString("[\n")
	for i := range items {
		e := &items[i]
		b.WriteString("    ")
		b.from(e.At, func() {
			if first := l.sub.lines[0]; len(e.Values) == 1 && e.Values[0].Key == first.name && first.names == l.names && l.names != "" {
				b.from(e.Values[0].At, func() { b.WriteString(first.value(e.Values[0].Said)) }) // a name alone
				return
			}
			b.table(l.sub, e, "")
		})
		b.WriteString(",\n")
	}
	b.WriteString("]")
}
