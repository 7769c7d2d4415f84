package folder

import (
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Column is a key of a table as a column of a spreadsheet has it.
type Column struct {
	Key     string   // "weight"; of a table within the table "limits.day"
	Must    bool     // an entry is nothing without it
	Many    bool     // it is a list
	Means   string   // what it is
	Lacking string   // what holds where it is left out
	Example string   // a value, as a cell has it
	Choices []string // it is one of these words; nil: of any
	Free    bool     // other words will do as well
	Tables  bool     // it is a list of tables alone, each of which a cell has as TOML
	Names   string   // it names an entry of this table: "horse"; "" none
}

// Tables are the tables that people write, in the order of the page.
func Tables() []string {
	var all []string
	for _, s := range sections {
		all = append(all, s.name)
	}
	return all
}

// Columns are the keys of a table that people write, in the order of the page;
// of a key that is, or may be, a table of its own, its keys follow it. None is
// that there is no such table.
func Columns(table string) []Column {
	s := sectionOf(table)
	if s == nil {
		return nil
	}
	return columnsOf(s.sheet, "")
}

// ItemColumns are the keys of the tables in a list, such as the pairings of a
// term; none is that its items are no tables.
func ItemColumns(table, key string) []Column {
	s := sectionOf(table)
	if s == nil {
		return nil
	}
	if l := s.sheet.line(key); l != nil && l.many && l.sub != nil {
		return columnsOf(l.sub, "")
	}
	return nil
}

// theHouses is what holds of a horse that says nothing of its own.
const theHouses = "the house's"

func columnsOf(s *sheet, under string) []Column {
	var all []Column
	for i := range s.lines {
		l := &s.lines[i]
		inner := l.sub != nil && !l.many
		if !inner || strings.Contains(l.words, "or a table") { // a plain value will do as well
			all = append(all, l.column(under))
		}
		if inner {
			within := columnsOf(l.sub, under+l.name+".")
			for i := range within {
				if l.lacking == theHouses { // as a whole, and so is each of them
					within[i].Lacking = theHouses
				}
			}
			all = append(all, within...)
		}
	}
	return all
}

func (l *line) column(under string) Column {
	c := Column{Key: under + l.name, Must: l.must && under == "", Many: l.many, Means: l.means, Lacking: strings.Trim(l.lacking, `"`),
		Choices: slices.Clone(l.choices), Free: l.free, Names: l.names, Example: cellOf(l.shown())}
	c.Tables = l.many && l.sub != nil && !l.takes(`"Sunday"`) // a day is a name, too
	return c
}

// line is the one of a key, which may lead into a table within; nil is none.
func (s *sheet) line(key string) *line {
	first, rest, within := strings.Cut(key, ".")
	for i := range s.lines {
		l := &s.lines[i]
		switch {
		case l.name != first:
		case !within:
			return l
		case l.sub != nil && !l.many:
			return l.sub.line(rest)
		}
	}
	return nil
}

// cellOf is a value of a file as a cell has it.
func cellOf(value string) string {
	root, troubles := parse("value", []byte("x = "+value+"\n"))
	if p := root.get("x"); p != nil && len(troubles) == 0 {
		v := p.val
		v.items = slices.DeleteFunc(v.items, func(x *node) bool { return len(v.items) > 1 && x.kind == unstable.InlineTable })
		return v.cell()
	}
	return value
}

// Reads is a value for a key as TOML has it, of what a cell says; it need not be one
// that the key takes.
func Reads(table, key string, said Said) string {
	if s := sectionOf(table); s != nil {
		if l := s.sheet.line(key); l != nil {
			return l.value(said)
		}
	}
	return quote(said.Text)
}
