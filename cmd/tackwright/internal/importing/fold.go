package importing

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"tackwright/model/folder"
)

// lessons gives lessons that have no name one by their day and time, and makes one
// of rows that are of one lesson.
func (r *reading) lessons(rows []*row) []*row {
	var all, met []*row
	var above *row
	for _, x := range rows {
		if x.s.kind.table != "lesson" || x.s.kind.items != "" {
			all = append(all, x)
			continue
		}
		x.hours()
		if above != nil && above.s == x.s {
			x.fillFrom(above)
		}
		above = x
		if i := slices.IndexFunc(met, func(y *row) bool { return sameLesson(x, y) }); i >= 0 {
			r.joinLesson(met[i], x)
		} else {
			met, all = append(met, x), append(all, x)
			r.pairing(x, x)
		}
	}
	for _, x := range met {
		if x.get("name") == nil && x.get("start") != nil {
			name := r.lessonName(x, met)
			x.cells = append([]*said{{key: "name", Said: folder.Said{Text: name}, at: x.at}}, x.cells...)
			x.empty = slices.DeleteFunc(x.empty, func(key string) bool { return key == "name" })
		}
	}
	return all
}

var fromTo = regexp.MustCompile(`^(.*\d(?: ?[ap]\.?m\.?)?) ?(?:-|–|to) ?(\d.*?)( ?[ap]\.?m\.?)?$`)

// hours cuts "10:00-10:45", where a lesson starts, into its start and end.
func (x *row) hours() {
	c := x.get("start")
	if c == nil || x.get("end") != nil || x.get("length") != nil {
		return
	}
	m := fromTo.FindStringSubmatch(strings.ToLower(c.Text))
	if m == nil {
		return
	}
	isTime := func(text string) bool {
		return !strings.HasPrefix(folder.Reads("lesson", "start", folder.Said{Text: text}), `"`)
	}
	start, end := m[1], m[2]+m[3]
	if !isTime(start) {
		start += m[3] // "2-2:45 pm"
	}
	if isTime(start) && isTime(end) {
		c.Text = start
		x.cells = append(x.cells, &said{key: "end", Said: folder.Said{Text: end}, at: c.at})
		x.empty = slices.DeleteFunc(x.empty, func(key string) bool { return key == "end" })
	}
}

// fillFrom gives a row what is written once for it and the one above: of a lesson
// that goes on with another rider all that tells lessons apart, of another lesson
// its day.
func (x *row) fillFrom(above *row) {
	keys := lessonKeys[:2]
	for _, key := range keys {
		if x.get(key) != nil && x.value(key) != above.value(key) {
			return
		}
	}
	if x.get("start") == nil && x.get("name") == nil && x.get("riders") != nil {
		keys = append([]string{"name"}, lessonKeys...)
	} else if x.get("day") != nil || x.get("on") != nil || x.get("name") != nil {
		return
	}
	for _, key := range keys {
		if c := above.get(key); c != nil && x.get(key) == nil {
			x.cells = append(x.cells, c)
			x.empty = slices.DeleteFunc(x.empty, func(k string) bool { return k == key })
		}
	}
}

// lessonKeys tell lessons without names apart.
var lessonKeys = []string{"day", "on", "start", "arena", "instructor", "term"}

func sameLesson(x, y *row) bool {
	if a, b := x.text("name"), y.text("name"); a != "" || b != "" {
		return strings.EqualFold(oneBlank(a), oneBlank(b))
	}
	return x.get("start") != nil && !slices.ContainsFunc(lessonKeys, func(key string) bool { return x.value(key) != y.value(key) })
}

// value is what a cell says in the folder's way of writing, so that 9:30 and
// 09:30 are one.
func (x *row) value(key string) string {
	c := x.get(key)
	if c == nil {
		return ""
	}
	return strings.ToLower(strings.Trim(folder.Reads(x.s.kind.table, key, c.Said), `"`))
}

// lessonName is "Tue 10:00", with the arena and the instructor where there are
// several then.
func (r *reading) lessonName(x *row, all []*row) string {
	day := x.value("day")
	if day != "" {
		day = strings.ToUpper(day[:1]) + day[1:min(3, len(day))]
	} else {
		day = x.value("on")
	}
	name := oneBlank(day + " " + x.value("start"))
	rivals := func(keys ...string) bool {
		return slices.ContainsFunc(all, func(y *row) bool {
			return y != x && !slices.ContainsFunc(keys, func(key string) bool { return x.value(key) != y.value(key) })
		})
	}
	if rivals("day", "on", "start") {
		name = oneBlank(name + " " + x.text("arena"))
		if rivals("day", "on", "start", "arena") {
			name = oneBlank(name + " " + x.text("instructor") + " " + x.text("term"))
		}
	}
	return name
}

// joinLesson takes another row of a lesson into the first: its riders, and what the
// first does not say.
func (r *reading) joinLesson(x, y *row) {
	for _, c := range y.cells {
		old := x.get(c.key)
		switch {
		case c.key == "horse" || c.key == "seat":
		case c.key == "riders":
			x.items["riders"] = append(x.items["riders"], y)
		case old == nil:
			x.cells = append(x.cells, c)
			x.empty = slices.DeleteFunc(x.empty, func(key string) bool { return key == c.key })
		case x.value(c.key) != y.value(c.key):
			r.problem(c.at, headOf(c.key), fmt.Sprintf("%q, and at %s it is %q for the same lesson", c.Text, old.at, old.Text), "mend one of the two, or give the lessons names of their own")
		}
	}
	r.pairing(x, y)
}

// pairing notes the usual horse of the one rider of a row, for her lesson.
func (r *reading) pairing(lesson, x *row) {
	horse := x.get("horse")
	if horse == nil {
		return
	}
	riders := x.get("riders")
	if riders == nil || len(folder.Items(riders.Text)) != 1 {
		r.problem(horse.at, r.cells[horse.at].head, "a horse is named, and not the one rider whose it is", "give each rider of the lesson a row of her own; or leave the horse out")
		return
	}
	lesson.items["pairings"] = append(lesson.items["pairings"], x)
}

// entries makes entries of rows, those of lists within the entry that has the list.
func (r *reading) entries(rows []*row) []folder.Entry {
	var all []folder.Entry
	index := map[string]int{} // by table and name
	entry := func(table, name, at string) *folder.Entry {
		key := table + " " + name
		if i, ok := index[key]; ok {
			return &all[i]
		}
		index[key] = len(all)
		all = append(all, folder.Entry{Table: table, At: at, Values: []folder.Value{{Key: "name", Said: folder.Said{Text: name}, At: at}}})
		return &all[len(all)-1]
	}
	for _, x := range rows {
		if x.s.kind.items != "" {
			continue
		}
		e := folder.Entry{Table: x.s.kind.table, At: x.at}
		for _, c := range x.cells {
			if e.Table != "lesson" || c.key != "horse" && c.key != "seat" {
				e.Values = append(e.Values, folder.Value{Key: c.key, Said: c.Said, At: c.at})
			}
		}
		for _, y := range x.items["riders"] {
			addNames(&e, y.get("riders"))
		}
		for _, key := range x.empty {
			if x.get(key) == nil && !(key == "riders" && x.items[key] != nil) {
				e.Empty = append(e.Empty, key)
			}
		}
		if key := e.Table + " " + x.text("name"); e.Table == "lesson" || e.Table == "term" {
			if _, again := index[key]; !again {
				index[key] = len(all)
			}
		}
		all = append(all, e)
	}
	for _, x := range rows {
		k := x.s.kind
		if k.table == "lesson" && k.items == "" {
			for _, y := range x.items["pairings"] {
				if e := r.termOf(y, entry); e != nil {
					item := folder.Entry{At: y.at, Values: []folder.Value{
						{Key: "rider", Said: folder.Said{Text: folder.Items(y.text("riders"))[0]}, At: y.get("riders").at},
						{Key: "lesson", Said: folder.Said{Text: x.text("name")}, At: x.at}}}
					for _, key := range []string{"horse", "seat"} {
						if c := y.get(key); c != nil {
							item.Values = append(item.Values, folder.Value{Key: key, Said: c.Said, At: c.at})
						}
					}
					addItem(e, "pairings", item)
				}
			}
		}
		if k.items == "" {
			continue
		}
		var e *folder.Entry
		if k.table == "term" {
			e = r.termOf(x, entry)
		} else if c := x.get(k.table); c != nil {
			e = entry(k.table, c.Text, c.at)
		} else {
			r.problem(x.at, "", "it has no "+k.table, "fill in its "+k.table)
		}
		if e != nil {
			addItem(e, k.items, x.item())
		}
	}
	return all
}

// item is a row as a table in a list.
func (x *row) item() folder.Entry {
	item := folder.Entry{At: x.at}
	for _, c := range x.cells {
		if c.key != x.s.kind.table {
			item.Values = append(item.Values, folder.Value{Key: c.key, Said: c.Said, At: c.at})
		}
	}
	return item
}

// addItem adds a table to a list of an entry, behind the names that it has already.
func addItem(e *folder.Entry, key string, item folder.Entry) {
	e.Empty = slices.DeleteFunc(e.Empty, func(k string) bool { return k == key })
	i := slices.IndexFunc(e.Values, func(v folder.Value) bool { return v.Key == key })
	if i < 0 {
		e.Values = append(e.Values, folder.Value{Key: key, At: item.At})
		i = len(e.Values) - 1
	}
	v := &e.Values[i]
	if v.Items == nil {
		v.Items = riderItems(v.Said.Text, v.At)
	}
	v.Items = append(v.Items, item)
}

// addNames adds the riders of a cell to those of a lesson.
func addNames(e *folder.Entry, c *said) {
	for _, item := range riderItems(c.Text, c.at) {
		addItem(e, "riders", item)
	}
}

// riderItems are the riders of a cell as items of a list.
func riderItems(text, at string) []folder.Entry {
	var items []folder.Entry
	for _, name := range folder.Items(text) {
		items = append(items, folder.Entry{At: at, Values: []folder.Value{{Key: "rider", Said: folder.Said{Text: name}, At: at}}})
	}
	return items
}

// termOf is the term that a pairing is for: the one that its row names, or the only
// one there is.
func (r *reading) termOf(x *row, entry func(table, name, at string) *folder.Entry) *folder.Entry {
	if c := x.get("term"); c != nil {
		return entry("term", c.Text, c.at)
	}
	switch terms := r.names["term"]; len(terms) {
	case 1:
		return entry("term", terms[0], x.at)
	case 0:
		at, head := x.at, ""
		if c := x.get("horse"); c != nil {
			at, head = c.at, r.cells[c.at].head
		}
		r.problem(at, head, "a usual horse is of a term, and there is none", "add a sheet Terms with a row: name, first, last; such as Autumn 2026, 2026-09-15, 2026-12-12")
	default:
		r.problem(x.at, "", "it is not said of which term it is", "add a column term with one of: "+strings.Join(terms, ", "))
	}
	return nil
}
