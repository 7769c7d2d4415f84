package folder

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// sheetFile is what mistakes call the text that is made of a spreadsheet, until
// they are told by its cells.
const sheetFile = "spreadsheet.toml"

// Wrong is a mistake in what comes from outside of the folder.
type Wrong struct {
	Trouble
	At string // where it came from; "": the mistake is in a file of the folder
}

// Import is entries from outside of the folder, laid over it. Nothing is written
// until [Import.Write].
type Import struct {
	After   *Folder      // as it will be
	Added   []Difference // entries that the folder has not
	Changed []Difference // entries that are as an import wrote them, and that the sheet says otherwise
	Listed  []Difference // entries that stay as they are, though the sheet says otherwise
	Same    int          // entries that are as the sheet says

	f      *Folder
	byForm bool      // a person says it through a form: see [Folder.Edit]
	tables []tableAt // of the folder, now
	sheet  []incoming
	wrote  *imported // what imports wrote before
	edits  map[string][]edit
	texts  map[string][]byte
}

// incoming is an entry on its way in.
type incoming struct {
	*Entry
	tableAt          // as the sheet has it
	now     *tableAt // as the folder has it; nil: it has it not
}

// Import lays entries over the folder. It returns all mistakes of these, or else
// what is to come of them; an error is that the folder cannot be read.
//
// What the folder has not is added. What an import wrote, and nobody changed
// since, becomes as the entries say. The rest stays as it is and is listed, but
// for what is taken by its name, such as "Duke" or "horse Duke".
func (f *Folder) Import(entries []Entry, take []string) (*Import, []Wrong, error) {
	wrote, err := f.imported()
	if err != nil {
		return nil, nil, err
	}
	i := &Import{f: f, wrote: wrote, tables: f.tables()}
	i.meet(entries)
	wrong, err := i.wrong()
	if len(wrong) > 0 || err != nil {
		return nil, wrong, err
	}
	if wrong, err := i.settle(take); len(wrong) > 0 || err != nil {
		return nil, wrong, err
	}
	return i, nil, nil
}

// settle merges the entries into the folder as it will be, and returns the mistakes
// that this then has.
func (i *Import) settle(take []string) (wrong []Wrong, err error) {
	if err := i.merge(take); err != nil {
		return nil, err
	}
	if i.After, err = i.f.with(i.texts); err != nil {
		return nil, err
	}
	for _, t := range i.After.Mistakes() {
		wrong = append(wrong, Wrong{Trouble: t})
	}
	return wrong, nil
}

// meet finds for each entry the one of the folder that it is.
func (i *Import) meet(entries []Entry) {
	var b sheetText
	entries = slices.Clone(entries)
	for k := range entries {
		entries[k].Values = slices.Clone(entries[k].Values)
		b.entry(&entries[k], nil)
	}
	root, _ := parse(sheetFile, []byte(b.String()))
	found := tablesOf(root)
	called(found)
	perTable := map[*section][]tableAt{}
	for _, t := range found {
		perTable[t.s] = append(perTable[t.s], t)
	}
	for k := range entries {
		s := sectionOf(entries[k].Table)
		if len(perTable[s]) == 0 {
			continue // a table of which there can be one
		}
		x := incoming{Entry: &entries[k], tableAt: perTable[s][0]}
		perTable[s] = perTable[s][1:]
		if j := slices.IndexFunc(i.tables, func(t tableAt) bool {
			return t.s == s && t.name == cmp.Or(x.Was, x.name) && (x.name != "" || !s.many)
		}); j >= 0 {
			x.now = &i.tables[j]
		} else if j := slices.IndexFunc(i.tables, func(t tableAt) bool { return t.s == s && slices.Contains(t.was, x.name) }); j >= 0 {
			x.now = &i.tables[j] // renamed since
			x.tableAt.name = x.now.name
			if v := x.said(s.by()[0]); v != nil {
				v.Said = Said{Text: x.now.name}
			}
		}
		i.sheet = append(i.sheet, x)
	}
}

// wrong are the mistakes of the entries, if all of them were taken.
func (i *Import) wrong() ([]Wrong, error) {
	var b sheetText
	cuts := map[string][]edit{}
	for k := range i.sheet {
		x := &i.sheet[k]
		if x.now == nil {
			b.entry(x.Entry, nil)
			continue
		}
		b.entry(x.Entry, x.now.n)
		src := x.now.n.src
		start, end := x.now.n.place()
		// As many lines as there were, so that mistakes below keep their places.
		cuts[src.file] = append(cuts[src.file], edit{start, end, strings.Repeat("\n", strings.Count(string(src.data[start:end]), "\n"))})
	}
	texts := maps.Clone(i.f.fresh)
	if texts == nil {
		texts = map[string][]byte{}
	}
	for file, edits := range cuts {
		texts[file] = apply(i.f.text(file), edits)
	}
	texts[sheetFile] = []byte(b.String())
	all, err := i.f.with(texts)
	if err != nil {
		return nil, err
	}
	var wrong []Wrong
	src := newSource(sheetFile, texts[sheetFile])
	for _, t := range all.Mistakes() {
		w := Wrong{Trouble: t}
		if t.Span.File == sheetFile {
			w.At = b.at(t.Span.Start)
			w.Line, w.Span = "", Span{}
		}
		w.Message, w.Mend = inSheet(t.Message, &b, src), inSheet(t.Mend, &b, src)
		wrong = append(wrong, w)
	}
	return wrong, nil
}

// place is the part of a file that a table takes, however it is written.
func (n *node) place() (start, end int) {
	if n.made == byHeader {
		return n.block()
	}
	return n.listed()
}

var (
	placeInSheet = regexp.MustCompile(regexp.QuoteMeta(sheetFile) + `:(\d+):(\d+)`)
	addALine     = regexp.MustCompile(`^add a line such as: (\w+) = (.*)$`)
	tableHead    = regexp.MustCompile(`^\[\[?\w+\]?\] has no (\w+)$`)
)

// inSheet is a message about the text that is made of a spreadsheet as one who
// looks at the spreadsheet reads it.
func inSheet(message string, b *sheetText, src *source) string {
	message = placeInSheet.ReplaceAllStringFunc(message, func(s string) string {
		m := placeInSheet.FindStringSubmatch(s)
		line, _ := strconv.Atoi(m[1])
		col, _ := strconv.Atoi(m[2])
		src.count()
		at := src.lines[line-1]
		for range col - 1 {
			_, n := utf8.DecodeRune(src.data[at:])
			at += n
		}
		return b.at(at)
	})
	if m := tableHead.FindStringSubmatch(message); m != nil {
		return "it has no " + headOf(m[1])
	}
	if m := addALine.FindStringSubmatch(message); m != nil {
		return fmt.Sprintf("fill in its %s, such as: %s", headOf(m[1]), cellOf(m[2]))
	}
	if levels, ok := strings.CutPrefix(message, "add to [house]: levels = "); ok {
		return "list them, lowest first, in a sheet House with the head levels: " + cellOf(levels)
	}
	if message == "write it like true or false" {
		return "write yes or no"
	}
	return strings.ReplaceAll(message, "here belongs true or false", "here belongs yes or no")
}

// headOf is a key as the head of a column has it.
func headOf(key string) string {
	return strings.NewReplacer("_", " ", ".", " ").Replace(key)
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
