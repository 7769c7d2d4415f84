package folder

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// soon is how many dates ahead a form, a fit or a check that runs out is named.
const soon = 30

// Findings are what is missing, expired or in conflict, from a date on; a zero
// date is the folder's today. They are in the order of how many rides of the
// coming week (seven dates from that one) wait for each, those that nothing
// waits for last, but for dates that nobody closed, which come first. None of them stops a plan: what lacks a fact is not seated,
// or marked, as the rules say.
func (f *Folder) Findings(today model.Date) []Trouble {
	if today == 0 {
		today = f.r.today
	}
	l := &finder{r: f.r, c: f.Centre, today: today, week: f.Centre.Week(today, 7, model.Instant{})}
	l.out = slices.Clone(f.found)
	l.riders()
	l.horses()
	l.tack()
	l.chart()
	l.lessons()
	l.records()
	l.words()
	sortTroubles(l.out)
	rest := l.out
	l.out = nil
	l.unclosed()
	return append(l.out, rest...)
}

// finder gathers findings of the coming week.
type finder struct {
	r     *reader
	c     *model.Centre
	today model.Date
	week  *model.Week
	out   []Trouble
}

// find takes down one finding about a noun, unless a mistake in one of the keys
// that it is about says it already.
func (l *finder) find(noun any, at Span, waits int, message, mend string, about ...string) {
	if l.mistaken(noun, about...) {
		return
	}
	t := Trouble{Span: at, Message: message, Mend: mend, Waits: waits, Noun: noun}
	if s := l.r.sources[at.File]; s != nil && at.Line > 0 {
		t.Line = s.line(at.Line)
	}
	l.out = append(l.out, t)
}

// waiting counts the open rides of the coming week for which ok holds.
func (l *finder) waiting(ok func(*model.Ride) bool) int {
	n := 0
	for _, r := range l.week.Rides {
		if r.State == model.Open && ok(r) {
			n++
		}
	}
	return n
}

func (l *finder) riders() {
	placed := l.placed()
	if unread[model.Lesson](l) || unread[model.Booking](l) {
		placed = nil
	}
	for i, x := range l.c.Riders {
		rides := l.waiting(func(r *model.Ride) bool { return r.Rider == x })
		if x.Weight == 0 {
			l.find(x, l.r.at(x), rides, x.Name+" has no weight, and so does not ride", `weigh rider and clothes as ridden in: weight = "62 kg"`, "weight")
		}
		if !l.c.House.Elsewhere.Forms {
			l.runsOut(x, "form_until", x.FormUntil, x.Name+"'s form", "so there is no ride", `form_until = 2027-06-30`,
				func(after model.Date) int {
					return l.waiting(func(r *model.Ride) bool { return r.Rider == x && r.Date() > after })
				})
		}
		if x.SeatMin == 0 {
			l.find(x, l.r.at(x), 0, x.Name+" has no size of seat, so that sizes of seats are not checked", `seat = "17 in", or by thigh = "20 in"`, "seat", "thigh")
		}
		if placed != nil && !placed[x] && x.WaitingSince == 0 {
			l.find(x, l.r.at(x), 0, x.Name+" is in no lesson", "add the name to the riders of a lesson, or say waiting_since")
		}
		if x.Usual != nil && x.IsBanned(x.Usual) {
			l.find(x, l.r.at(x, "usual_horse"), 0, fmt.Sprintf("the usual horse of %s, %s, is one never to ride", x.Name, x.Usual.Name), "mend usual_horse or never_on")
		}
		l.herd(x)
		if surname, first, ok := strings.Cut(x.Name, ","); ok && l.r.entries[x].get("first") == nil {
			l.find(x, l.r.at(x, "name"), 0, fmt.Sprintf("%q seems to begin with the surname: sheets call the rider %s", x.Name, x.Called()),
				fmt.Sprintf("write the first name first: %q; or say which it is: first = %q", strings.TrimSpace(first)+" "+strings.TrimSpace(surname), x.First))
		}
		for _, y := range l.c.Riders[:i] {
			if x.Called() == y.Called() {
				l.find(x, l.r.at(x), 0, fmt.Sprintf("sheets call %s and %s by the same name, %s", y.Name, x.Name, x.Called()), `give each of them a mark: mark = "1."`, "first", "mark")
			}
		}
	}
}

// runsOut names a date that is missing, past or near. waits counts the rides of
// the coming week after a date.
func (l *finder) runsOut(noun any, key string, until model.Date, what, so, like string, waits func(after model.Date) int) {
	at := l.r.at(noun, key)
	switch {
	case until == 0:
		l.find(noun, at, waits(0), fmt.Sprintf("%s has no date, %s", what, so), "add: "+like, key)
	case until < l.today:
		l.find(noun, at, waits(until), fmt.Sprintf("%s ran out on %s, %s", what, until, so), "renew it and mend the date")
	case until <= l.today+soon:
		l.find(noun, at, waits(until), fmt.Sprintf("%s runs out on %s", what, until), "renew it in time")
	}
}

func (l *finder) horses() {
	for _, h := range l.c.Horses {
		rides := l.waiting(func(r *model.Ride) bool { return l.week.Unsuited(r, h) == "" })
		if h.Weight == 0 {
			l.find(h, l.r.at(h), rides, h.Name+" has no weight, so nobody rides it", `weigh or tape it: weight = "472 kg", or weight = { girth = "72 in", length = "66 in" }`, "weight")
		}
		if h.Foaled == 0 {
			l.find(h, l.r.at(h), rides, h.Name+" has no age, so nobody rides it", `foaled = 2012`, "foaled")
		}
		if !unread[model.FitRow](l) && !slices.ContainsFunc(l.c.Chart, func(f *model.FitRow) bool { return f.Horse == h }) {
			l.find(h, l.r.at(h), rides, h.Name+" has no row in the fit chart, so nobody rides it", "have a saddle fitter approve a seat for it, and add a [[fit]]")
		}
		for _, x := range []struct {
			key  string
			date model.Date
		}{{"arrived", h.Arrived}, {"weighed", h.Weighed}} {
			if x.date != 0 && h.Foaled != 0 && x.date.Year() < h.Foaled.Year() {
				l.find(h, l.r.at(h, x.key), 0, fmt.Sprintf("%s %s is before %s was foaled", x.key, x.date, h.Name), "mend one of the two")
			}
		}
		if h.Weighed > l.today {
			l.find(h, l.r.at(h, "weighed"), 0, fmt.Sprintf("weighed %s is still to come", h.Weighed), "mend the date")
		}
		for _, o := range h.Out {
			if o.Why != model.Appointment && o.End.IsZero() && o.Review != 0 && o.Review <= l.today {
				l.find(h, l.r.at(h, "out"), 0, fmt.Sprintf("%s is out (%s); it was to be looked at on %s", h.Name, o.Why, o.Review), "look, and note the horse back or another review date")
			}
		}
	}
}

func (l *finder) tack() {
	for _, p := range l.c.Pieces {
		switch {
		case p.IsSeat() && p.Family == model.NoFamily:
			l.find(p, l.r.at(p), l.waiting(func(r *model.Ride) bool { return l.couldUse(r, p) }),
				p.Tag+" has no billets stated, so no girth goes on it", `billets = "long" or "short"; or own_girth = true`, "billets", "own_girth", "kind")
		case p.Kind == model.Girth && p.Family == model.NoFamily:
			l.find(p, l.r.at(p), 0, p.Tag+" has no family stated, so it goes on no seat", `family = "short", "long" or "cinch"`, "family", "kind")
		}
		if !l.c.House.Elsewhere.TackChecks && p.CheckDue != 0 {
			l.runsOut(p, "check_due", p.CheckDue, "the check of "+p.Tag, "so it is not used", "",
				func(after model.Date) int {
					return l.waiting(func(r *model.Ride) bool { return p.IsSeat() && r.Date() > after && l.couldUse(r, p) })
				})
		}
	}
}

// couldUse reports whether a seat is charted for a horse that suits the ride,
// and fits the rider.
func (l *finder) couldUse(r *model.Ride, seat *model.Piece) bool {
	if model.SeatUnfit(r.Rider, seat) != "" {
		return false
	}
	return slices.ContainsFunc(l.c.Chart, func(f *model.FitRow) bool {
		return f.Seat == seat && l.week.Unsuited(r, f.Horse) == ""
	})
}

func (l *finder) chart() {
	for _, f := range l.c.Chart {
		row := fmt.Sprintf("the fit of %s on %s", f.Seat.Tag, f.Horse.Name)
		rides := func(after model.Date) int {
			return l.waiting(func(r *model.Ride) bool {
				return r.Date() > after && model.SeatUnfit(r.Rider, f.Seat) == "" && l.week.Unsuited(r, f.Horse) == ""
			})
		}
		if !l.c.House.Elsewhere.FitDates {
			l.runsOut(f, "until", f.Until, row, "so nobody rides by it", "until = 2027-03-01", rides)
			if f.Approved > l.today {
				l.find(f, l.r.at(f, "approved"), 0, fmt.Sprintf("%s is approved from %s on, which is still to come", row, f.Approved), "")
			}
		}
		if f.Seat.TakesGirth() && f.Seat.Family != model.NoFamily {
			switch {
			case f.GirthMin == 0 && len(f.Girths) == 0:
				l.find(f, l.r.at(f), rides(0), row+" names no girth, so nobody rides by it", `girth = "26 in", or girths = ["G4"]`, "girth", "girths")
			case !unread[model.Piece](l) && !slices.ContainsFunc(l.c.Pieces, func(g *model.Piece) bool {
				return g.Kind == model.Girth && g.Family == f.Seat.Family && f.HasGirth(g)
			}):
				l.find(f, l.r.at(f, "girth"), rides(0), fmt.Sprintf("no girth meets %s: there is none of the family %q of that size", row, f.Seat.Family),
					"mend the sizes, or the family and size of the girths", "girth", "girths")
			}
		}
		if !f.Seat.NoPad && !unread[model.Piece](l) && len(l.week.PadChoices(f.Horse, f.Seat, f)) == 0 {
			l.find(f, l.r.at(f), rides(0), row+" finds no pad", "name pads, or add one; or say of the seat: needs_pad = false", "pads", "pad_sizes")
		}
	}
}

// words names words that nothing else in the folder uses, as a slip of the pen
// makes them.
func (l *finder) words() {
	var extras, styles, arenaPlaces, horseSkills, kinds []string
	for _, p := range l.c.Pieces {
		if p.Kind.IsExtra() {
			extras = append(extras, string(p.Kind))
		}
		styles = append(styles, p.Style)
	}
	for _, a := range l.c.Arenas {
		arenaPlaces = append(arenaPlaces, a.Mounting...)
	}
	for _, h := range l.c.Horses {
		horseSkills = append(horseSkills, h.Skills...)
		slip := func(place string) bool { // it may well stand at places that no arena has
			two := slices.ContainsFunc(arenaPlaces, func(p string) bool { return strings.HasPrefix(place, p+" ") }) // "ramp & block"
			return !slices.Contains(arenaPlaces, place) && (two || nearest(place, arenaPlaces) != "")
		}
		if l.c.House.Mounting && slices.ContainsFunc(h.Mounting, slip) {
			l.odd(h, "mounting", h.Mounting, arenaPlaces, "no arena has the mounting place %q", 0)
		}
	}
	for _, x := range l.c.Riders {
		rides := l.waiting(func(r *model.Ride) bool { return r.Rider == x })
		var needs []string
		for _, e := range x.Extras {
			needs = append(needs, string(e.Kind))
		}
		if !unread[model.Piece](l) {
			l.odd(x, "extras", needs, extras, "no piece is of the kind %q, which "+x.Name+" needs", rides)
			l.odd(x, "styles", x.Styles, styles, "no seat is of the style %q", 0)
		}
		if l.c.House.Mounting && len(arenaPlaces) > 0 {
			l.odd(x, "mounting", x.Mounting, arenaPlaces, "no arena has the mounting place %q", 0)
		}
		if l.c.House.Skills && !unread[model.Horse](l) {
			l.odd(x, "skills", x.Skills, horseSkills, "no horse has the skill %q, which "+x.Name+" needs", rides)
		}
	}
	for _, x := range l.c.Lessons {
		kinds = append(kinds, string(x.Kind))
	}
	for _, w := range l.c.Works {
		kinds = append(kinds, w.Kind)
	}
	kinds = append(kinds, string(model.Private), string(model.SemiPrivate), string(model.Group))
	var named []string
	for kind := range l.c.House.Factors {
		named = append(named, kind)
	}
	slices.Sort(named)
	l.odd(&l.c.House, "factors", named, kinds, "no lesson or work is of the kind %q", 0)
}

// odd names those of some words that are none of the known ones.
func (l *finder) odd(noun any, key string, words, known []string, message string, waits int) {
	for i, w := range words {
		if slices.Contains(known, w) {
			continue
		}
		mend := ""
		if near := nearest(w, known); near != "" {
			mend = fmt.Sprintf("did you mean %q?", near)
		}
		at := l.r.at(noun, key, i)
		if key == "factors" {
			at = l.r.at(noun, key, w)
		}
		l.find(noun, at, waits, strings.Replace(message, "%q", fmt.Sprintf("%q", w), 1), mend)
	}
}
