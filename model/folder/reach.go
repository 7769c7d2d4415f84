package folder

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"

	"tackwright/model"
)

// recordsBack is how many dates before the one that a folder is opened around
// posted and ridden records are read: the 120 that the model looks back for a
// rider's latest ride, and 14 of exposure to a horse on its own tack only.
const recordsBack = 120 + exposed

// exposed is how many dates before its mark a horse's contacts count.
const exposed = 14

var (
	postedNames = regexp.MustCompile(`^posted/(\d{4}-\d\d-\d\d)-v(\d+)\.toml$`)
	riddenNames = regexp.MustCompile(`^ridden/(\d{4}-\d\d-\d\d)\.toml$`)
)

// postedName is where a version is kept that covers dates from one on.
func postedName(from model.Date, version int) string {
	return fmt.Sprintf("posted/%s-v%d.toml", from, version)
}

// recordDates are the dates that a record covers, by its name, and its version
// if it is a posted one. Those of a name that people gave are not known.
func recordDates(name string) (from, until model.Date, version int, known bool) {
	m := postedNames.FindStringSubmatch(name)
	days := model.Date(6)
	if m == nil {
		m, days = riddenNames.FindStringSubmatch(name), 0
	}
	if m == nil {
		return 0, 0, 0, false
	}
	from, err := model.ParseDate(m[1])
	if len(m) > 2 {
		version, _ = strconv.Atoi(m[2])
	}
	return from, from + days, version, err == nil
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
