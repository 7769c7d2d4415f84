package folder

import (
	"path"
	"slices"

	"tackwright/model"
)

// Unread are the files with a mistake, in order; "" is the folder itself.
func (f *Folder) Unread() []string {
	var files []string
	for _, t := range f.Mistakes() {
		if !slices.Contains(files, t.Span.File) {
			files = append(files, t.Span.File)
		}
	}
	slices.Sort(files)
	return files
}

// RecordsAlone reports whether all mistakes are in the program's own notes and
// records: the centre is then whole but for those.
func (f *Folder) RecordsAlone() bool {
	return !slices.ContainsFunc(f.Unread(), func(name string) bool { return isTop(name) || isStanding(name) })
}

// LastPosted reports whether the last version that was posted for a date could be
// read: no posted file with a mistake can be of it.
func (f *Folder) LastPosted(d model.Date) bool {
	return !slices.ContainsFunc(f.Unread(), func(name string) bool {
		from, until, _, known := recordDates(name)
		return path.Dir(name) == "posted" && (!known || from <= d && d <= until)
	})
}
