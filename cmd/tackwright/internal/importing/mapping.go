package importing

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model/folder"
)

// Mapping says how a centre's own sheets are read.
type Mapping struct {
	Dates  string         `toml:"dates"` // "day first" or "month first"
	Sheets []SheetMapping `toml:"sheet"`
	file   string
}

// SheetMapping is one sheet of it. A sheet can be there twice, to be read as two
// things.
type SheetMapping struct {
	Name    string            `toml:"name"`     // of the tab, or of the CSV file without .csv
	Is      string            `toml:"is"`       // what it lists: "horses"; left out: as its name says
	Columns map[string]string `toml:"columns"`  // our head for each of its own; "" it is not read
	NotRead []string          `toml:"not_read"` // heads of columns that are not read
	Always  map[string]string `toml:"always"`   // what holds in every row, by our head
	Words   map[string]string `toml:"words"`    // our word for each of its own, where a cell or an item of a list is just that: "Sattel"
}

// ourWords are what a cell says with the centre's own words for ours. many: it is
// a list.
func (m *SheetMapping) ourWords(text string, many bool) string {
	if m == nil || len(m.Words) == 0 {
		return text
	}
	if ours, ok := m.ourWord(text); ok || !many {
		return ours
	}
	items, met := folder.Items(text), false
	for i, item := range items {
		ours, ok := m.ourWord(item)
		items[i], met = ours, met || ok
	}
	if !met {
		return text
	}
	return strings.Join(items, "; ")
}

func (m *SheetMapping) ourWord(text string) (string, bool) {
	for _, theirs := range sortedKeys(m.Words) {
		if strings.EqualFold(strings.TrimSpace(theirs), strings.TrimSpace(text)) {
			return m.Words[theirs], true
		}
	}
	return text, false
}

// ReadMapping reads a mapping. All that is wrong in it is a problem.
func ReadMapping(file string) (*Mapping, []Problem) {
	name := filepath.Base(file)
	m := &Mapping{file: name}
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, []Problem{{At: name, Message: "it cannot be read: " + plain(err), Mend: "look whether it is named right"}}
	}
	meta, err := toml.Decode(string(text), m)
	if err != nil {
		at := name
		var bad toml.ParseError
		message := err.Error()
		if errors.As(err, &bad) {
			at, message = fmt.Sprintf("%s:%d", name, bad.Position.Line), bad.Message
		}
		return nil, []Problem{{At: at, Message: "this is not a mapping: " + strings.TrimPrefix(message, "toml: "), Mend: "tackwright help import shows one"}}
	}
	var wrong []Problem
	add := func(message, mend string) { wrong = append(wrong, Problem{At: name, Message: message, Mend: mend}) }
	for _, key := range meta.Undecoded() {
		add(fmt.Sprintf("there is no key %q in a mapping", key), "its keys are: dates, sheet; of a sheet: name, is, columns, not_read, always, words")
	}
	if m.Dates != "" && m.Dates != "day first" && m.Dates != "month first" {
		add(fmt.Sprintf("dates are %q", m.Dates), `write "day first" or "month first"`)
	}
	for i := range m.Sheets {
		s := &m.Sheets[i]
		k := kindOf(s.Is)
		if s.Is == "" {
			k = kindOf(s.Name)
		}
		switch {
		case s.Name == "":
			add("a sheet of the mapping has no name", `write the name of its tab: name = "Ponies"`)
			continue
		case k == nil:
			add(fmt.Sprintf("it is not said what the sheet %q lists", s.Name), "write is = ... with one of: "+strings.ToLower(strings.Join(titles(), ", ")))
			continue
		}
		for _, theirs := range sortedKeys(s.Columns) {
			if ours := s.Columns[theirs]; ours != "" {
				if _, ok := k.readHead(ours); !ok {
					add(fmt.Sprintf("%s, %q: %q is no head of ours", s.Name, theirs, ours), "our heads are: "+strings.Join(k.heads(), ", ")+`; or write "" for a column that is not read`)
				}
			}
		}
		for _, ours := range sortedKeys(s.Always) {
			if _, ok := k.readHead(ours); !ok {
				add(fmt.Sprintf("%s, always: %q is no head of ours", s.Name, ours), "our heads are: "+strings.Join(k.heads(), ", "))
			}
		}
	}
	return m, wrong
}

func (m *Mapping) order() folder.Order {
	switch {
	case m == nil:
		return folder.NoOrder
	case m.Dates == "day first":
		return folder.DayFirst
	case m.Dates == "month first":
		return folder.MonthFirst
	}
	return folder.NoOrder
}

// source is a sheet with what it is read as.
type source struct {
	*spreadsheet.Sheet
	kind *kind
	own  *SheetMapping // nil: none
}

// sources are what a sheet is read as; none is that it is not.
func (m *Mapping) sources(s *spreadsheet.Sheet) []*source {
	var all []*source
	if m != nil {
		for i := range m.Sheets {
			own := &m.Sheets[i]
			if bare(own.Name) == bare(s.Name) {
				k := kindOf(own.Is)
				if own.Is == "" {
					k = kindOf(own.Name)
				}
				all = append(all, &source{s, k, own})
			}
		}
	}
	if k := kindOf(s.Name); len(all) == 0 && k != nil {
		all = append(all, &source{s, k, nil})
	}
	return all
}

// readHead is what a head of the sheet says, in the centre's own words or ours.
func (s *source) readHead(text string) (head, bool) {
	if s.own != nil {
		if slices.ContainsFunc(s.own.NotRead, func(x string) bool { return bare(x) == bare(text) }) {
			return head{}, true
		}
		for _, theirs := range sortedKeys(s.own.Columns) {
			if strings.EqualFold(strings.Join(strings.Fields(theirs), " "), strings.Join(strings.Fields(text), " ")) {
				if s.own.Columns[theirs] == "" {
					return head{}, true
				}
				return s.kind.readHead(s.own.Columns[theirs])
			}
		}
	}
	return s.kind.readHead(text)
}

// plain is an error of the system without the name of the file.
func plain(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}
