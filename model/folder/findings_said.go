package folder

import (
	"slices"

	"tackwright/model"
)

// A mistake is told once: what is missing only because of it is no finding.

// mistaken reports whether one of the keys of a noun's table is there with a
// mistake in it, or misspelt, or may be in what could not be read.
func (l *finder) mistaken(noun any, keys ...string) bool {
	n := l.r.entries[noun]
	if n == nil || len(keys) == 0 {
		return false
	}
	if n.torn {
		return true
	}
	return slices.ContainsFunc(n.pairs, func(p *pair) bool {
		if slices.Contains(keys, p.key) {
			return l.hasMistake(n.src.file, p.start, p.val.end)
		}
		return nearest(p.key, keys) != "" && l.hasMistake(n.src.file, p.start, p.end)
	})
}

// hasMistake reports whether a mistake begins in the bytes [start, end) of a file.
func (l *finder) hasMistake(file string, start, end int) bool {
	return slices.ContainsFunc(l.r.troubles, func(t Trouble) bool {
		return t.Mistake && t.Span.File == file && start <= t.Span.Start && t.Span.Start < end
	})
}

// unread reports whether some table of a kind was not read whole: what it says
// of others is then not known.
func unread[T any](l *finder) bool {
	return slices.ContainsFunc(l.r.troubles, func(t Trouble) bool {
		_, is := t.Noun.(*T)
		return t.Mistake && (is || t.Noun == nil)
	}) || l.torn()
}

// torn reports whether reading broke off in some table.
func (l *finder) torn() bool {
	for _, n := range l.r.entries {
		if n.torn {
			return true
		}
	}
	return false
}

// placed are the riders with a place in a lesson, or a booking, from today on.
func (l *finder) placed() map[*model.Rider]bool {
	placed := map[*model.Rider]bool{}
	for _, x := range l.c.Lessons {
		for _, p := range x.Places {
			placed[p.Rider] = placed[p.Rider] || p.Until == 0 || p.Until >= l.today
		}
	}
	for _, b := range l.c.Bookings {
		placed[b.Rider] = placed[b.Rider] || b.Date >= l.today
	}
	return placed
}
