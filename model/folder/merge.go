package folder

import (
	"slices"
	"strings"
)

// Difference is an entry in which folder and sheet differ.
type Difference struct {
	Table string
	Name  string
	Why   string // of one that is listed: why it stays as it is; else ""
	Keys  []KeyDifference
}

// String is what the entry is called where it can be taken: "horse Duke".
func (d Difference) String() string { return strings.TrimSpace(d.Table + " " + d.Name) }

// KeyDifference is one key of it, each side as a cell has it; "" is none.
type KeyDifference struct {
	Key, Folder, Sheet string
	value              string // the sheet's, as TOML has it; "" none
}

// Why an entry is listed.
const (
	byHand  = "written or changed by hand"
	takenOf = "taken out of the folder by hand"
	gone    = "no longer in the sheet"
)

// merge settles what becomes of each entry, and lays out the files.
func (i *Import) merge(take []string) error {
	taken := taking{said: take}
	var anew []*incoming
	for k := range i.sheet {
		x := &i.sheet[k]
		if x.now == nil {
			d := i.differences(x)
			if d.Why = takenOf; i.wasImported(x.tableAt) && !taken.has(d) {
				i.Listed = append(i.Listed, d)
				continue
			}
			d.Why = ""
			i.Added = append(i.Added, d)
			anew = append(anew, x)
			continue
		}
		d := i.differences(x)
		if len(d.Keys) == 0 {
			i.Same++
			continue
		}
		set, left := d, d
		set.Keys, left.Keys = nil, nil
		all := taken.has(d)
		for _, k := range d.Keys {
			if all || i.asWritten(x, k.Key) {
				set.Keys = append(set.Keys, k)
			} else {
				left.Keys = append(left.Keys, k)
			}
		}
		if len(set.Keys) > 0 {
			if i.change(x, set.Keys); i.f.isFresh(x.now.n.src.file) {
				i.Added = append(i.Added, set)
			} else {
				i.Changed = append(i.Changed, set)
			}
		}
		if len(left.Keys) > 0 {
			left.Why = byHand
			i.Listed = append(i.Listed, left)
		}
	}
	i.missing(&taken)
	if err := taken.unmet(); err != nil {
		return err
	}
	i.layOut(anew)
	return nil
}

// differences are the keys in which the sheet says otherwise than the folder.
func (i *Import) differences(x *incoming) Difference {
	d := Difference{Table: x.s.name, Name: x.name}
	for _, l := range x.s.sheet.lines {
		if !slices.Contains(x.keys(), l.name) {
			continue
		}
		k := KeyDifference{Key: l.name}
		if p := x.n.get(l.name); p != nil {
			k.Sheet, k.value = p.val.cell(), p.val.inline()
		}
		if x.now != nil {
			if p := x.now.n.get(l.name); p != nil {
				k.Folder = p.val.cell()
				if k.value != "" && same(x.n.get(l.name).val, p.val) || k.value == "" && !i.byForm && !i.wrote.has(*x.now, l.name, p.val) {
					continue // a cell that says nothing takes away only what an import wrote
				}
			} else if k.value == "" {
				continue
			}
		}
		d.Keys = append(d.Keys, k)
	}
	return d
}

// same reports whether two values say the same in the same words; a list of one
// is its value alone, and a date between quotes a date.
func same(a, b *node) bool { return a.one().cell() == b.one().cell() }

func (n *node) one() *node {
	if len(n.items) == 1 {
		return n.items[0]
	}
	return n
}

// asWritten reports whether a key of an entry in the folder is as an import left
// it.
func (i *Import) asWritten(x *incoming, key string) bool {
	if p := x.now.n.get(key); p != nil {
		return i.f.isFresh(x.now.n.src.file) || i.wrote.has(*x.now, key, p.val)
	}
	if p := x.n.get(key); p != nil && i.wrote.has(*x.now, key, p.val) {
		return false // an import wrote it, and somebody took it out
	}
	return i.wasImported(*x.now)
}

// wasImported reports whether something of a table is as an import wrote it.
func (i *Import) wasImported(t tableAt) bool {
	if t.n.src.file != sheetFile && i.f.isFresh(t.n.src.file) {
		return true
	}
	return slices.ContainsFunc(t.n.pairs, func(p *pair) bool {
		return !slices.Contains(t.s.by(), p.key) && i.wrote.has(t, p.key, p.val)
	})
}

// missing are entries that an import wrote, of tables that the sheet has, which
// it has no longer.
func (i *Import) missing(taken *taking) {
	has := map[*section]bool{}
	met := map[*tableAt]bool{}
	for k := range i.sheet {
		has[i.sheet[k].s] = true
		met[i.sheet[k].now] = true
	}
	for k := range i.tables {
		t := &i.tables[k]
		if !has[t.s] || met[t] || !t.s.many || i.f.isFresh(t.n.src.file) || !i.wasImported(*t) {
			continue
		}
		d := Difference{Table: t.s.name, Name: t.name, Why: gone}
		for _, p := range t.n.pairs {
			d.Keys = append(d.Keys, KeyDifference{Key: p.key, Folder: p.val.cell()})
		}
		if !taken.has(d) {
			i.Listed = append(i.Listed, d)
			continue
		}
		i.Changed = append(i.Changed, d)
		start, end := t.n.place()
		i.edit(t.n.src.file, edit{start, end, ""})
	}
}

// taking is what is taken by name.
type taking struct {
	said []string
	met  []string
}

func (t *taking) has(d Difference) bool {
	for _, s := range t.said {
		if strings.EqualFold(s, d.String()) || strings.EqualFold(s, d.Name) {
			t.met = append(t.met, s)
			return true
		}
	}
	return false
}

// unmet is that something was to be taken that is not there to be taken.
func (t *taking) unmet() error {
	for _, s := range t.said {
		if !slices.Contains(t.met, s) {
			return refuse("there is nothing to take that is called %q; name an entry that is listed", s)
		}
	}
	return nil
}
