package folder

import (
	"fmt"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

// window is a period as it is written.
type window struct {
	model.Period
	on         model.Date
	start, end *model.Minute
}

var windowKeys = &table[window]{
	head:  "a time such as { from = 2026-12-21, until = 2027-01-03 }",
	about: "A time in which something holds. It may also be a date alone, or a weekday alone.",
	keys: []key[window]{
		is("on", dates, "the one date", "see from and until", func(w *window, v model.Date) { w.on = v }),
		is("from", dates, "the first date", "always until then", func(w *window, v model.Date) { w.From = v }),
		is("until", dates, "the last date, which counts", "from then on", func(w *window, v model.Date) { w.Until = v }),
		is("weekdays", list(weekdays, "a list of weekdays"), "only on these", "all", func(w *window, v []time.Weekday) { w.Weekdays = v }).eg(`["Mon", "Wed"]`),
		is("start", times, "from this time of each date", "midnight", func(w *window, v model.Minute) { w.start = &v }).eg(`15:00`),
		is("end", times, "to this time of each date", "midnight", func(w *window, v model.Minute) { w.end = &v }).eg(`18:00`),
		is("why", text, "the reason, which sheets may show", "none", func(w *window, v string) { w.Why = v }).eg(`"holidays"`),
	},
}

// period is a date, a weekday or a window.
var period = func() form[model.Period] {
	asTable := tableForm("a time", "", windowKeys)
	f := form[model.Period]{
		words: "a time: a date, a weekday or a table", sub: asTable.sub,
		like: `2026-12-25 or "Sunday" or { from = 2026-12-21, until = 2027-01-03, why = "holidays" }`,
	}
	f.read = func(r *reader, n *node) (model.Period, bool) {
		switch n.kind {
		case unstable.LocalDate:
			d, ok := dates.read(r, n)
			return model.Period{From: d, Until: d}, ok
		case unstable.String:
			if d, err := model.ParseDate(n.text); err == nil {
				return model.Period{From: d, Until: d}, true
			}
			d, ok := weekdays.read(r, n)
			return model.Period{Weekdays: []time.Weekday{d}}, ok
		case unstable.InlineTable:
			w, ok := asTable.read(r, n)
			return w.period(r, n), ok
		}
		notA(r, n, f)
		return model.Period{}, false
	}
	return f
}()

// period is the window in the model's terms. A start alone runs to the end of
// the date, an end alone from its beginning.
func (w *window) period(r *reader, n *node) model.Period {
	p := w.Period
	if w.on != 0 {
		if p.From != 0 || p.Until != 0 {
			r.mistake(n.spot("on"), "a time has either on, or from and until", "leave one of them out")
		}
		p.From, p.Until = w.on, w.on
	}
	r.inOrder(n, "from", "until", p.From, p.Until)
	if w.start != nil || w.end != nil {
		p.End = 24 * 60
		if w.start != nil {
			p.Start = *w.start
		}
		if w.end != nil {
			p.End = *w.end
		}
		r.endsAfter(n, p.Start, p.End)
	}
	return p
}

// spot is the place of a key's value, or of the table where it has none.
func (n *node) spot(key string) Span {
	if p := n.get(key); p != nil {
		return p.val.span()
	}
	return n.span()
}

// inOrder reports dates of a table that do not follow one another.
func (r *reader) inOrder(n *node, first, last string, from, until model.Date) {
	if from != 0 && until != 0 && from > until {
		r.mistake(n.spot(last), fmt.Sprintf("%s %s is before %s %s", last, until, first, from), "swap them, or mend one")
	}
}

// endsAfter reports an end that is not after its start.
func (r *reader) endsAfter(n *node, start, end model.Minute) {
	if end <= start {
		r.mistake(n.spot("end"), fmt.Sprintf("it ends at %s, which is not after its start at %s", end, start), "mend start or end")
	}
}
