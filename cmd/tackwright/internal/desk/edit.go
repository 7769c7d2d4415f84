package desk

import (
	"cmp"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"tackwright/model"
	"tackwright/model/folder"
)

// records are the tables that can be edited on a page, with what people call them
// and the keys that tell their entries apart.
var records = []record{
	{"horse", "Horses", "a horse", []string{"name"}},
	{"rider", "Riders", "a rider", []string{"name"}},
	{"tack", "Tack", "a piece of tack", []string{"tag"}},
	{"fit", "Fit chart", "a row of the fit chart", []string{"horse", "seat"}},
	{"lesson", "Lessons", "a lesson", []string{"name"}},
	{"booking", "Bookings", "a booking", []string{"on", "lesson", "rider"}},
	{"arena", "Arenas", "an arena", []string{"name"}},
	{"person", "People", "a person who works here", []string{"name"}},
}

type record struct {
	table, name, one string
	by               []string
}

// recordsView is what can be edited.
type recordsView struct {
	Saved  string // what was, just now
	Tables []tableView
}

type tableView struct {
	Table, Name, One string
	Open             bool
	Entries          []entryLink
}

type entryLink struct{ Path, Name string }

func showRecords(v *visit) error {
	v.reading.Lock()
	defer v.reading.Unlock()
	x := &recordsView{}
	for _, t := range records {
		y := tableView{Table: t.table, Name: t.name, One: t.one, Open: v.r.URL.Query().Get("in") == t.table}
		for _, w := range v.reading.Entries(t.table) {
			name := entryName(w, t.by)
			of := key(t.table, name)
			y.Entries = append(y.Entries, entryLink{"/edit/" + t.table + "/" + of, name})
			if y.Open && of == v.r.URL.Query().Get("saved") {
				x.Saved = name
			}
		}
		x.Tables = append(x.Tables, y)
	}
	return v.show("records", "Records", x)
}

func entryName(w folder.Written, by []string) string {
	var parts []string
	for _, k := range by {
		parts = append(parts, w.Cells[k])
	}
	return strings.Join(parts, ", ")
}

// formView is one entry in a form.
type formView struct {
	Table, Path, Name string
	New               bool
	Fields            []fieldView
	Wrong             []string // that belong to no field
	Parts             []partView
}

// partView is a part of the form.
type partView struct {
	Name   string // "" is never folded
	Fields []*fieldView
}

// Open reports whether something is said in it, or is wrong.
func (p partView) Open() bool {
	return slices.ContainsFunc(p.Fields, func(f *fieldView) bool { return f.Value != "" || f.Wrong != "" })
}

type fieldView struct {
	ID, Key, Label   string // Label: what people call it
	Means            string // with what holds where it is left empty
	Value, Was       string // Was: when the form was shown
	Choices          []string
	Names            []string // of entries that it can name
	Must, Fixed      bool
	Renames          bool // the entry goes by it, and can be called otherwise
	Long             bool
	Wrong            string
	Example, Lacking string
}

// form of an entry; "" is a new one.
func (v *visit) form(entry string) (*formView, error) {
	table := v.r.PathValue("table")
	i := slices.IndexFunc(records, func(t record) bool { return t.table == table })
	if i < 0 {
		return nil, notThere("there are no such records")
	}
	t := records[i]
	x := &formView{Table: table, New: entry == "", Path: v.r.URL.Path, Name: t.one}
	now := folder.Written{}
	if !x.New {
		all := v.reading.Entries(table)
		k := slices.IndexFunc(all, func(w folder.Written) bool { return key(table, entryName(w, t.by)) == entry })
		if k < 0 {
			return nil, notThere("that entry is no longer there")
		}
		now = all[k]
		x.Name = entryName(now, t.by)
	}
	for n, c := range folder.Columns(table) {
		f := fieldView{ID: fmt.Sprintf("field%d", n), Key: c.Key, Means: c.Means, Value: now.Cells[c.Key],
			Must: c.Must, Example: c.Example, Lacking: c.Lacking}
		f.Was = f.Value
		if named := !x.New && slices.Contains(t.by, c.Key); named && len(t.by) == 1 {
			f.Renames = true
		} else if named {
			f.Fixed = true
		}
		if !c.Many && !c.Free {
			f.Choices = c.Choices
		}
		if c.Names != "" && !c.Many {
			f.Names = v.namesOf(c.Names)
		}
		if f.Value != "" && f.Choices != nil && !slices.Contains(f.Choices, f.Value) {
			f.Choices = append([]string{f.Value}, f.Choices...)
		}
		f.Long = c.Many || len(f.Value) > 40
		x.Fields = append(x.Fields, f)
	}
	for _, p := range formParts[table] {
		y := partView{Name: p.name}
		for _, k := range p.keys {
			if i := slices.IndexFunc(x.Fields, func(f fieldView) bool { return f.Key == k.key }); i >= 0 {
				f := &x.Fields[i]
				if f.Label = k.label; strings.EqualFold(f.Label, f.Means) {
					f.Means = ""
				}
				y.Fields = append(y.Fields, f)
			}
		}
		x.Parts = append(x.Parts, y)
	}
	return x, nil
}

// namesOf are the entries of a table that a key can name.
func (v *visit) namesOf(table string) (names []string) {
	by := "name"
	if table == "tack" {
		by = "tag"
	}
	for _, w := range v.reading.Entries(table) {
		names = append(names, w.Cells[by])
	}
	return names
}

func showForm(v *visit) error {
	v.reading.Lock()
	defer v.reading.Unlock()
	x, err := v.form(v.r.PathValue("entry"))
	if err != nil {
		return err
	}
	if v.refilled() {
		x.fill(v)
		x.Wrong = append(x.Wrong, model.Sentence(notSent))
	}
	return v.show("form", x.title(), x)
}

func (x *formView) title() string {
	if x.New {
		return "Add " + x.Name
	}
	return x.Name
}

// mostValue is how long a value of an entry can be.
const mostValue = 4000

// saveForm writes what was said otherwise in a form. What somebody else changed
// since the form was shown is not written over.
func saveForm(v *visit) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	v.reading.Lock()
	defer v.reading.Unlock()
	x, err := v.form(v.r.PathValue("entry"))
	if err != nil {
		return err
	}
	e := folder.Entry{Table: x.Table}
	changed := x.fill(v)
	for _, f := range x.Fields {
		switch {
		case f.Wrong != "":
			return v.page(http.StatusConflict, "form", x.title(), x)
		case f.Renames:
			if changed[f.Key] {
				e.Was = f.Was
			}
			e.Values = append(e.Values, folder.Value{Key: f.Key, Said: folder.Said{Text: f.Value}, At: f.Key})
		case !f.Fixed && !changed[top(f.Key)]:
		case f.Value != "":
			e.Values = append(e.Values, folder.Value{Key: f.Key, Said: folder.Said{Text: f.Value}, At: f.Key})
		case !x.New:
			e.Empty = append(e.Empty, f.Key)
		}
	}
	// A table within the entry goes only where nothing of it is left.
	e.Empty = slices.DeleteFunc(e.Empty, func(k string) bool {
		return slices.ContainsFunc(e.Values, func(y folder.Value) bool { return top(y.Key) == top(k) })
	})
	_, wrong, err := v.reading.Edit(e, by, v.reading.At())
	v.readings.forget()
	if err != nil {
		return err
	}
	for _, w := range wrong {
		words := model.Sentence(w.Message)
		if w.Mend != "" {
			words += " " + model.Sentence(w.Mend)
		}
		if i := slices.IndexFunc(x.Fields, func(f fieldView) bool { return f.Key == w.At && w.At != "" }); i >= 0 {
			x.Fields[i].Wrong = words
		} else {
			x.Wrong = append(x.Wrong, words)
		}
	}
	if len(wrong) > 0 {
		return v.page(http.StatusConflict, "form", x.title(), x)
	}
	return v.see("/records?in=" + x.Table + "&saved=" + key(x.Table, x.called()) + "#" + x.Table)
}

// called is what the entry is called by what the form says.
func (x *formView) called() string {
	said := folder.Written{Cells: map[string]string{}}
	for _, f := range x.Fields {
		said.Cells[f.Key] = f.Value
	}
	i := slices.IndexFunc(records, func(t record) bool { return t.table == x.Table })
	return entryName(said, records[i].by)
}

// fill puts into the form what was said in it, and tells the first parts of the keys of
// which something else was said. What somebody changed meanwhile is wrong.
func (x *formView) fill(v *visit) (changed map[string]bool) {
	changed = map[string]bool{}
	for i := range x.Fields {
		f := &x.Fields[i]
		if f.Fixed {
			continue
		}
		said, was := form(v, f.ID), form(v, "was-"+f.ID)
		switch now := normal(f.Value); {
		case len(said) > mostValue:
			f.Wrong = fmt.Sprintf("that is longer than %d letters", mostValue)
		case said == was && !x.New || said == now:
		case now != was && !x.New:
			f.Wrong = fmt.Sprintf("somebody changed this meanwhile: it is %q now", cmp.Or(now, "empty"))
		case f.Renames && said == "":
			f.Wrong = "it needs one: what is empty here cannot be found"
		default:
			changed[top(f.Key)] = true
		}
		f.Was = f.Value
		if said != was || x.New {
			f.Value = said
		}
	}
	return changed
}

func top(key string) string {
	first, _, _ := strings.Cut(key, ".")
	return first
}

// form is what was said in a field.
func form(v *visit, field string) string { return normal(v.r.PostFormValue(field)) }

// normal is a text as browsers send it back.
func normal(s string) string { return strings.TrimSpace(strings.ReplaceAll(s, "\r\n", "\n")) }
