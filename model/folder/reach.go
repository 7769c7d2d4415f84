package folder

import (
	"fmt"
	"path"
	"slices"
	"strconv"
	"strings"
	"time"

	"tackwright/model"
)

// recordsBack is how many dates before the one that a folder is opened around
// posted and ridden records are read: the 120 that the model looks back for a
// rider's latest ride, and 14 of exposure to a horse on its own tack only.
const recordsBack = 120 + exposed

// exposed is how many dates before its mark a horse's contacts count.
const exposed = 14

// postedName is where a version is kept that covers dates from one on.
func postedName(from model.Date, version int) string {
	return fmt.Sprintf("posted/%s-v%d.toml", from, version)
}

// isRecord reports whether a file tells of dates that are past sooner or later.
func isRecord(name string) bool { return path.Dir(name) == "posted" || path.Dir(name) == "ridden" }

// recordDates are the dates that a record covers, by its name, and its version
// if it is a posted one. Those of a name that people gave are not known.
func recordDates(name string) (from, until model.Date, version int, known bool) {
	dir, file := path.Split(name)
	date, ok := strings.CutSuffix(file, ".toml")
	if len(date) < len(time.DateOnly) || !ok {
		return 0, 0, 0, false
	}
	date, rest := date[:len(time.DateOnly)], date[len(time.DateOnly):]
	from, err := model.ParseDate(date)
	switch {
	case err != nil:
	case dir == "ridden/" && rest == "":
		return from, from, 0, true
	case dir == "posted/" && strings.HasPrefix(rest, "-v"):
		if version, err = strconv.Atoi(rest[2:]); err == nil && version > 0 {
			return from, from + 6, version, true
		}
	}
	return 0, 0, 0, false
}

// reach are the dates whose records can matter around a date: those before it
// within the model's view, all after, and those on which a horse was on its own
// tack only, or shortly before: what it wore then is not clean until somebody
// says so.
type reach []model.Period

func (r *reader) reachOf(date model.Date) reach {
	all := reach{{From: date - recordsBack}}
	for _, h := range r.centre.Horses {
		for _, mark := range h.OwnTack {
			all = append(all, model.Period{From: mark.From.Date - exposed, Until: mark.End.Date})
		}
		if last := h.QuarantineEnds(&r.centre.House); last != 0 {
			all = append(all, model.Period{From: h.Arrived - exposed, Until: last})
		}
	}
	standing := model.Standing(r.centre.Notes)
	for i, n := range standing {
		if n.Kind != model.NoteOwnTack {
			continue
		}
		p := model.Period{From: n.Date - exposed}
		for _, m := range standing[i:] {
			if m.Kind == model.NoteOwnTackEnd && m.Horse == n.Horse && p.Until == 0 {
				p.Until = m.Date
			}
		}
		all = append(all, p)
	}
	return all
}

// has reports whether a record of the name can matter.
func (x reach) has(name string) bool {
	from, until, _, known := recordDates(name)
	return !known || slices.ContainsFunc(x, func(p model.Period) bool {
		return p.From <= until && (p.Until == 0 || from <= p.Until)
	})
}
