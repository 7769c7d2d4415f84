package folder

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// Edit gives an entry what a person says of it through a form, and adds one that is
// not there: of the keys that the entry speaks of only, in its table alone, with
// remarks and order kept as far as can be. It is the person's from then on, and no
// import takes it for its own. One that gets another name keeps the old one under
// was, so that records still find it. A list of mistakes is that nothing was changed;
// so is an error, see wrong.go.
func (f *Folder) Edit(e Entry, by *model.Person, at model.Instant) (*Change, []Wrong, error) {
	c, err := writer(by, at)
	if err != nil {
		return nil, nil, err
	}
	i := &Import{f: f, wrote: &imported{}, tables: f.tables(), byForm: true}
	if e.Was != "" {
		if e, err = i.renamed(e); err != nil {
			return nil, nil, err
		}
	}
	i.meet([]Entry{e})
	if len(i.sheet) == 0 {
		return nil, nil, refuse("it says nothing")
	}
	if wrong, err := i.wrong(); len(wrong) > 0 || err != nil {
		return nil, wrong, err
	}
	d := i.differences(&i.sheet[0])
	if len(d.Keys) == 0 {
		return nil, nil, refuse("nothing is said otherwise than it is")
	}
	var take []string
	c.What = "added " + d.String()
	if i.sheet[0].now != nil {
		var keys []string
		for _, k := range d.Keys {
			keys = append(keys, k.Key)
		}
		take, c.What = []string{d.String()}, fmt.Sprintf("changed %s: %s", d, strings.Join(keys, ", "))
		if e.Was != "" {
			c.What = fmt.Sprintf("changed %s %s to %s: %s", d.Table, e.Was, d.Name, strings.Join(keys, ", "))
		}
	}
	if wrong, err := i.settle(take); len(wrong) > 0 || err != nil {
		return nil, wrong, err
	}
	if err := f.write(&c, func(d disk) ([]target, error) { return f.rewritten(d, i.Files(), i.texts) }); err != nil {
		return nil, nil, err
	}
	return &c, nil, nil
}

// renamed is an entry that keeps its old name among its earlier ones.
func (i *Import) renamed(e Entry) (Entry, error) {
	k := slices.IndexFunc(i.tables, func(t tableAt) bool { return t.s.name == e.Table && t.name == e.Was })
	if k < 0 {
		return e, refuse("%s %s is no longer in the folder", e.Table, e.Was)
	}
	t := i.tables[k]
	was, name := t.s.sheet.line("was"), e.said(t.s.by()[0])
	if was == nil || name == nil {
		return e, refuse("%s %s cannot be called otherwise", e.Table, e.Was)
	}
	names := t.was
	if said := e.said("was"); said != nil {
		names = nil
		if root, wrong := parse(sheetFile, []byte("was = "+was.value(said.Said))); len(wrong) == 0 {
			names = (&tableAt{n: root}).earlier()
		}
	}
	var all []string
	for _, old := range append(slices.Clone(names), e.Was) {
		if q := quote(old); old != strings.TrimSpace(name.Said.Text) && !slices.Contains(all, q) {
			all = append(all, q)
		}
	}
	e.Values = append(slices.DeleteFunc(slices.Clone(e.Values), func(v Value) bool { return v.Key == "was" }),
		Value{Key: "was", Said: Said{Text: "[" + strings.Join(all, ", ") + "]"}, At: "was"})
	e.Empty = slices.DeleteFunc(slices.Clone(e.Empty), func(key string) bool { return key == "was" })
	return e, nil
}

// fileOf is where a person has the entries of a table: the file of the last of
// them, else the one that bears the name of the table.
func (i *Import) fileOf(table string) string {
	file := fileNames[table] + ".toml"
	for _, t := range i.tables {
		if t.s.name == table {
			file = t.n.src.file
		}
	}
	return file
}
