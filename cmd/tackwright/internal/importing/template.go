package importing

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model/folder"
)

// readFirst is the sheet of the template that is for people alone.
const readFirst = "Read first"

// ReadFirst are the name and the lines of the template's first sheet.
func ReadFirst() (name string, lines []string) {
	lines = append(lines, strings.Split(`A centre's spreadsheet for tackwright

Each sheet lists one kind of thing, a row each. Fill in what you know and leave the rest empty; columns and sheets that you do not need can go.
Heads that are underlined are needed in each row. A remark on each head says what it is, and what holds where a cell is empty.
A row whose first cell begins with # and a blank is a remark and is not read: the example in each sheet is one.
Write a figure with its unit as you say it: 14.3 hh, 472 kg, 1040 lb, < 80 kg, 26 in, 65 cm, 45 min. Or put the unit in the head: weight (lb).
Several things in one cell have commas between them; or semicolons, where a name has a comma.
Dates and times may be typed as your spreadsheet takes them. Yes and no are yes and no.
Names are the same wherever they are written: a horse in the fit chart is called as in the sheet Horses.
Then: tackwright import FOLDER THIS-FILE.xlsx --by "YOUR NAME"
All that is wrong is named at once, by sheet and cell, and nothing is written until it is mended. Import again as often as you like.
A fit is for a saddle fitter to approve, lameness for a vet, a rider's health for a physician, the go-ahead for the instructor. Keep medical notes out of it.

The sheets`, "\n")...)
	for _, k := range kinds {
		lines = append(lines, k.title+": "+k.about)
	}
	return readFirst, lines
}

// Template are the sheets of the template: filled with what the folder has; nil:
// empty, with an example in each.
func Template(f *folder.Folder) []*spreadsheet.Table {
	var all []*spreadsheet.Table
	for _, k := range kinds {
		cols := slices.Clone(k.columns())
		rows := k.filled(f)
		cols = slices.DeleteFunc(cols, func(c folder.Column) bool {
			used := slices.ContainsFunc(rows, func(cells map[string]string) bool { return cells[c.Key] != "" })
			rare := c.Tables || c.Key == "was" || k.table == "lesson" && k.items == "" && (c.Key == "horse" || c.Key == "seat")
			return rare && !used
		})
		t := &spreadsheet.Table{Name: k.title, Example: f == nil}
		for _, c := range cols {
			t.Columns = append(t.Columns, k.head(c))
		}
		if f == nil {
			rows = []map[string]string{k.example(cols)}
		}
		for _, cells := range rows {
			var row []string
			for _, c := range cols {
				row = append(row, cells[c.Key])
			}
			t.Rows = append(t.Rows, row)
		}
		all = append(all, t)
	}
	return all
}

// head is a column of the template.
func (k *kind) head(c folder.Column) spreadsheet.Column {
	note := c.Means
	if c.Many {
		note += "; several with commas between them"
	}
	switch {
	case c.Must:
		note += ". Needed."
	case c.Lacking != "":
		note += ". Left empty: " + c.Lacking + "."
	}
	if c.Example != "" {
		note += " Such as: " + c.Example
	}
	out := spreadsheet.Column{Head: headOf(c.Key), Note: note, Must: c.Must, Choices: c.Choices,
		Strict: len(c.Choices) > 0 && !c.Free && !c.Many, Typed: typed(c.Example)}
	for _, other := range kinds {
		if c.Names == other.table && other.items == "" {
			out.Choices, out.Strict, out.From = nil, false, other.title
		}
	}
	return out
}

// typed reports whether an example is a date or a time of day.
func typed(example string) bool {
	return len(example) > 4 && (example[4] == '-' || example[2] == ':') && strings.Trim(example, "0123456789-:T") == ""
}

// example is a row that is not read.
func (k *kind) example(cols []folder.Column) map[string]string {
	cells := map[string]string{}
	skip := map[string][]string{ // what would not go with the rest of the example
		"lesson": {"on", "end", "from", "until", "term"}, "work": {"on", "end", "from", "until", "seat", "pads", "girth"},
		"tack": {"family", "own_girth", "with_seat", "with_horse", "hangs_on_bars", "goes_on"}, "fit": {"girths", "pads", "pad_sizes"},
		"horse": {"weight.girth", "weight.length", "in_foal_until", "quarantine_until"}, "rider": {"thigh", "first", "mark", "waiting_since", "away", "dislikes"},
	}
	for i, c := range cols {
		text := c.Example
		if slices.Contains(skip[k.table], c.Key) && (k.items == "" || c.Key == "on") {
			text = ""
		}
		if i == 0 {
			text = "# such as " + text
		}
		cells[c.Key] = text
	}
	return cells
}

// filled are the rows of what the folder has.
func (k *kind) filled(f *folder.Folder) []map[string]string {
	if f == nil {
		return nil
	}
	var rows []map[string]string
	apart := map[string]string{"lesson": "riders", "term": "pairings"}[k.table]
	var itemsOf []string
	if apart != "" {
		itemsOf = []string{apart}
	}
	for _, e := range f.Entries(k.table, itemsOf...) {
		items := e.Items[apart]
		plain := !slices.ContainsFunc(items, func(x folder.Written) bool { return len(x.Cells) != 1 })
		if k.items == "" {
			if apart == "riders" && plain && len(items) > 0 { // no more than names
				var names []string
				for _, x := range items {
					names = append(names, x.Cells["rider"]+";")
				}
				e.Cells[apart] = strings.Join(names, " ")
				if !strings.Contains(strings.Join(names, ""), ",") {
					e.Cells[apart] = strings.TrimSuffix(strings.ReplaceAll(e.Cells[apart], ";", ","), ",")
				}
			}
			rows = append(rows, e.Cells)
			continue
		}
		if k.items == "riders" && plain {
			continue
		}
		for _, x := range items {
			x.Cells[k.table] = e.Cells["name"]
			rows = append(rows, x.Cells)
		}
	}
	return rows
}

// FileName is what a sheet of the template is called as a CSV file.
func FileName(t *spreadsheet.Table) string {
	return fmt.Sprintf("%s.csv", strings.ReplaceAll(strings.ToLower(t.Name), " ", "-"))
}
