package folder

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// fileNames are the files that entries of a table are written to.
var fileNames = map[string]string{
	"centre": "centre", "house": "centre", "person": "people", "arena": "arenas", "horse": "horses", "tack": "tack", "fit": "fit",
	"rider": "riders", "lesson": "lessons", "term": "terms", "booking": "bookings", "work": "work",
}

const importHead = `# From a spreadsheet, and yours to change from here on. When the spreadsheet is
# imported again, only what is still as import wrote it becomes as the sheet says.
`

// edit keeps an edit of a file of the folder until all are known.
func (i *Import) edit(file string, x edit) {
	if i.edits == nil {
		i.edits = map[string][]edit{}
	}
	i.edits[file] = append(i.edits[file], x)
}

// change gives keys of an entry in the folder what the sheet says. All else in
// its table stays as it is, remarks and all, unless a key is written as a table
// under a header of its own: then the entry is written anew.
func (i *Import) change(x *incoming, keys []KeyDifference) {
	n := x.now.n
	file := n.src.file
	if n.made != byHeader || slices.ContainsFunc(keys, func(k KeyDifference) bool {
		p := n.get(k.Key)
		return p != nil && p.val.made != byValue
	}) {
		i.anew(x, keys)
		return
	}
	for _, k := range keys {
		p := n.get(k.Key)
		switch {
		case p == nil:
			at := lineEnd(n.src.data, n.end)
			text := lineText(k.Key, x.n.get(k.Key).val)
			if at > 0 && n.src.data[at-1] != '\n' {
				text = "\n" + text
			}
			i.edit(file, edit{at, at, text})
		case k.value == "":
			i.edit(file, edit{lineStart(n.src.data, p.start), lineEnd(n.src.data, p.val.end), ""})
		default:
			i.edit(file, edit{p.val.start, p.val.end, valueText(x.n.get(k.Key).val)})
		}
	}
}

// anew writes a table of the folder anew with other values for keys.
func (i *Import) anew(x *incoming, keys []KeyDifference) {
	n := x.now.n
	var b strings.Builder
	write := func(key string, v *node) { b.WriteString(lineText(key, v)) }
	if n.made == byHeader {
		b.WriteString(x.s.head() + "\n")
	} else {
		b.WriteString("{ ")
		write = func(key string, v *node) { fmt.Fprintf(&b, "%s = %s, ", keyText(key), v.inline()) }
	}
	changed := func(key string) bool {
		return slices.ContainsFunc(keys, func(k KeyDifference) bool { return k.Key == key })
	}
	for _, l := range x.s.sheet.lines {
		from := n
		if changed(l.name) {
			from = x.n
		}
		if p := from.get(l.name); p != nil {
			write(l.name, p.val)
		}
	}
	if n.made != byHeader {
		i.edit(n.src.file, edit{n.start, n.end, strings.TrimSuffix(b.String(), ", ") + " }"})
		return
	}
	end := n.last()
	i.edit(n.src.file, edit{n.start, lineEnd(n.src.data, end), b.String()})
}

func (s *section) head() string {
	if s.many {
		return "[[" + s.name + "]]"
	}
	return "[" + s.name + "]"
}

// layOut makes the files as they will be: edits of those that there are, and new
// entries behind those that an import wrote before, or in files of their own.
func (i *Import) layOut(anew []*incoming) {
	i.texts = map[string][]byte{}
	for file, text := range i.f.fresh {
		i.texts[file] = text
	}
	for file, edits := range i.edits {
		i.texts[file] = apply(i.f.text(file), edits)
	}
	for _, x := range anew {
		file := i.fileFor(x.s.name)
		if i.byForm {
			file = i.fileOf(x.s.name)
		}
		text, begun := i.texts[file]
		if !begun {
			text = bytes.Clone(i.f.text(file))
		}
		if len(text) == 0 && !i.byForm {
			text = []byte(importHead)
		}
		var b bytes.Buffer
		if len(text) > 0 && text[len(text)-1] != '\n' {
			b.WriteByte('\n')
		}
		b.WriteString("\n" + x.s.head() + "\n")
		for _, p := range x.n.pairs {
			b.WriteString(lineText(p.key, p.val))
		}
		i.texts[file] = append(text, b.Bytes()...)
		if !slices.Contains(i.wrote.Files, file) {
			i.wrote.Files = append(i.wrote.Files, file)
		}
	}
}

// fileFor is the file that new entries of a table go to: one that import made,
// never one of a person's.
func (i *Import) fileFor(table string) string {
	for n := 1; ; n++ {
		file := fileNames[table]
		switch {
		case n == 2:
			file += "-imported"
		case n > 2:
			file += fmt.Sprintf("-imported-%d", n-1)
		}
		file += ".toml"
		if slices.Contains(i.wrote.Files, file) || i.f.text(file) == nil && !i.inTheWay(file) {
			return file
		}
	}
}

// inTheWay reports whether there is a file of the name that is not read.
func (i *Import) inTheWay(file string) bool {
	return slices.ContainsFunc(i.f.listed, func(x found) bool { return strings.EqualFold(x.name, file) })
}

// lineText is a key with its value as a person would write it: a list that is long,
// or of tables, an item a line.
func lineText(key string, v *node) string { return keyText(key) + " = " + valueText(v) + "\n" }

const longLine = 90

func valueText(v *node) string {
	text := v.inline()
	tables := slices.ContainsFunc(v.items, func(x *node) bool { return x.kind == unstable.InlineTable })
	if v.kind != unstable.Array || len(v.items) < 2 && !tables || !tables && len(text) < longLine {
		return text
	}
	var b strings.Builder
	b.WriteString("[\n")
	for _, x := range v.items {
		b.WriteString("    " + x.inline() + ",\n")
	}
	b.WriteString("]")
	return b.String()
}
