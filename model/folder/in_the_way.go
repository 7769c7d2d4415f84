package folder

import (
	"slices"

	"tackwright/model"
)

// looksBack is how many dates before a week a ridden record can matter to it: the
// four weeks of the horse that a rider has ridden most.
const looksBack = 28

// InTheWay are the mistakes that keep a day from being mended: all but those in
// the entry of a rider or lesson with nothing on the dates of the week, neither
// planned nor posted, of a horse or seat that no row of the chart and no ride or
// work around speaks of, or of what was ridden long before; and all but those in
// notes, which a person can read where the program cannot: [Folder.NotesUnread].
func (f *Folder) InTheWay(w *model.Week) []Trouble {
	return slices.DeleteFunc(slices.Clone(f.Mistakes()), func(t Trouble) bool {
		if isNote(t) {
			return true
		}
		switch x := t.Noun.(type) {
		case *model.Rider:
			return !slices.ContainsFunc(w.Rides, func(r *model.Ride) bool { return r.Rider == x }) &&
				!f.tells(w, func(t model.Told) bool { return t.Rider == x })
		case *model.Lesson:
			return !slices.ContainsFunc(w.Meetings, func(m *model.Meeting) bool { return m.Lesson == x }) &&
				!f.tells(w, func(t model.Told) bool { return t.Lesson == x })
		case *model.Horse:
			return !f.speaksOf(w, func(t *model.Turn) bool { return t.Horse == x }) &&
				!slices.ContainsFunc(f.Centre.Chart, func(row *model.FitRow) bool { return row.Horse == x })
		case *model.Piece:
			return x.IsSeat() && !f.speaksOf(w, func(t *model.Turn) bool { return t.Seat == x }) &&
				!slices.ContainsFunc(f.Centre.Chart, func(row *model.FitRow) bool { return row.Seat == x })
		case *model.Ridden:
			return x.Date != 0 && x.Date < w.From-looksBack
		}
		return false
	})
}

// tells reports whether something that is posted for the week's dates is so.
func (f *Folder) tells(w *model.Week, is func(model.Told) bool) bool {
	return slices.ContainsFunc(f.Centre.Posted, func(p *model.Posted) bool {
		return slices.ContainsFunc(p.Told, func(t model.Told) bool { return w.From <= t.Date && t.Date <= w.Until && is(t) })
	})
}

// speaksOf reports whether a fact of the week, or what is posted for it, is so.
func (f *Folder) speaksOf(w *model.Week, is func(*model.Turn) bool) bool {
	return slices.ContainsFunc(w.Facts, func(s *model.Stint) bool { return is(s.Turn) }) ||
		f.tells(w, func(t model.Told) bool { return t.Turn != nil && is(t.Turn) })
}
