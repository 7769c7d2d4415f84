package folder

import (
	"fmt"
	"strings"

	"tackwright/model"
)

// Edit gives an entry what a person says of it through a form, and adds one that is
// not there: of the keys that the entry speaks of only, in its table alone, with
// remarks and order kept as far as can be. It is the person's from then on, and no
// import takes it for its own. A list of mistakes is that nothing was changed; so is
// an error, see wrong.go.
func (f *Folder) Edit(e Entry, by *model.Person, at model.Instant) (*Change, []Wrong, error) {
	c, err := writer(by, at)
	if err != nil {
		return nil, nil, err
	}
	i := &Import{f: f, wrote: &imported{}, tables: f.tables(), byForm: true}
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
	}
	if wrong, err := i.settle(take); len(wrong) > 0 || err != nil {
		return nil, wrong, err
	}
	if err := f.write(&c, func(d disk) ([]target, error) { return f.rewritten(d, i.Files(), i.texts) }); err != nil {
		return nil, nil, err
	}
	return &c, nil, nil
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
