// Package importing turns a centre's spreadsheet into entries of its folder, and
// the folder into a spreadsheet. What a key takes and what it means is the
// folder's to say; here is told which sheet and column is which key.
package importing

import (
	"slices"
	"strings"
	"sync"

	"tackwright/model/folder"
)

// kind is what a sheet lists.
type kind struct {
	title string // of its sheet
	table string // of the folder
	items string // it lists the items of this key of the table: "pairings"; "" entries of the table itself
	about string
	also  []string // other names of its sheet

	once sync.Once
	cols []folder.Column
}

// kinds are all, in the order of the template: what others name comes first.
var kinds = []*kind{
	{title: "Centre", table: "centre", about: "one row: the centre's name, its units, its clock"},
	{title: "House", table: "house", about: "one row: your own rules, where they differ from common practice; the levels of riders", also: []string{"rules"}},
	{title: "People", table: "person", about: "who works here: instructors, barn, office", also: []string{"person", "staff", "instructors"}},
	{title: "Arenas", table: "arena", about: "where lessons are held"},
	{title: "Horses", table: "horse", about: "the herd", also: []string{"ponies", "herd"}},
	{title: "Tack", table: "tack", about: "each saddle, pad, girth and extra, by the tag that is written on it", also: []string{"equipment"}},
	{title: "Fit chart", table: "fit", about: "which seat is approved for which horse, with which girths; no row, no fit", also: []string{"fit", "fits", "saddle fit"}},
	{title: "Riders", table: "rider", about: "who takes lessons", also: []string{"clients", "participants", "students"}},
	{title: "Terms", table: "term", about: "the weeks in which lessons are held"},
	{title: "Lessons", table: "lesson", about: "each lesson with its riders; a lesson can go over several rows, a rider each", also: []string{"schedule", "timetable"}},
	{title: "Places", table: "lesson", items: "riders", about: "riders of a lesson who come from or until a date, every other week, or for a part of it"},
	{title: "Pairings", table: "term", items: "pairings", about: "each rider's usual horse and seat in the term", also: []string{"pairs"}},
	{title: "Bookings", table: "booking", about: "rides on one date: make-ups and guests"},
	{title: "Work", table: "work", about: "a horse's work with no rider of a lesson: schooling, lunging"},
}

// kindOf is the kind of the name of a sheet, in the singular or plural; nil is none.
func kindOf(name string) *kind {
	said := strings.TrimSuffix(strings.Trim(bare(name), "0123456789"), "s") // "Horses 2026"
	for _, k := range kinds {
		for _, n := range append([]string{k.title}, k.also...) {
			if strings.TrimSuffix(bare(n), "s") == said {
				return k
			}
		}
	}
	return nil
}

func titles() []string {
	var all []string
	for _, k := range kinds {
		all = append(all, k.title)
	}
	return all
}

// columns are what a sheet of the kind can have. They are not to be changed.
func (k *kind) columns() []folder.Column {
	k.once.Do(func() { k.cols = k.makeColumns() })
	return k.cols
}

func (k *kind) makeColumns() []folder.Column {
	if k.items == "" {
		all := folder.Columns(k.table)
		switch k.table {
		case "lesson": // a row of one rider
			all = append(all, folder.Column{Key: "horse", Means: "the usual horse of the rider of this row", Names: "horse"},
				folder.Column{Key: "seat", Means: "tag of her usual seat", Names: "tack"})
		case "term":
			all = slices.DeleteFunc(all, func(c folder.Column) bool { return c.Key == "pairings" }) // a sheet of their own
		}
		return all
	}
	parent := folder.Column{Key: k.table, Must: k.table == "lesson", Means: "the " + k.table, Names: k.table, Lacking: "the only one there is", Example: "Tue 10:00"}
	if k.table == "term" {
		parent.Example = "Autumn 2026"
	}
	return append([]folder.Column{parent}, folder.ItemColumns(k.table, k.items)...)
}

func (k *kind) column(key string) *folder.Column {
	all := k.columns()
	if i := slices.IndexFunc(all, func(c folder.Column) bool { return c.Key == key }); i >= 0 {
		return &all[i]
	}
	return nil
}

// bare is a name by its letters and digits alone, in small letters.
func bare(s string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(" _-./:,;#*?!\t\n'\"()[]", r) {
			return -1
		}
		return r
	}, strings.ToLower(s))
}
