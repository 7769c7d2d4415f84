package folder

import (
	"fmt"
	"time"

	"tackwright/model"
)

var (
	lesson = to("lesson", `"Tue 10:00"`, func(r *reader) *index[model.Lesson] { return &r.lessons },
		func(name string) *model.Lesson { return &model.Lesson{Name: name, Hands: model.NoHands} })
	term = to("term", `"Autumn 2026"`, func(r *reader) *index[model.Term] { return &r.terms },
		func(name string) *model.Term { return &model.Term{Name: name} })
)

// part is the part of a lesson that a rider takes; an end that is not written
// is the lesson's.
type part struct{ start, end *model.Minute }

// placeEntry is a place as it is written.
type placeEntry struct {
	model.Place
	part
}

var placeKeys = &table[placeEntry]{
	head:  "[[lesson.riders]]",
	about: "A rider's standing place. A name alone is a place every week, for the whole lesson.",
	keys: []key[placeEntry]{
		is("rider", rider, "the rider", "", func(p *placeEntry, v *model.Rider) { p.Rider = v }),
		is("from", dates, "first date", "always until then", func(p *placeEntry, v model.Date) { p.From = v }),
		is("until", dates, "last date, which counts", "from then on", func(p *placeEntry, v model.Date) { p.Until = v }),
		is("every_other", yes, "every other week, counted from the week of from", "false", func(p *placeEntry, v bool) { p.EveryOther = v }),
		is("start", times, "when her part of the lesson starts", "with the lesson", func(p *placeEntry, v model.Minute) { p.start = &v }).eg(`10:15`),
		is("end", times, "when her part of the lesson ends", "with the lesson", func(p *placeEntry, v model.Minute) { p.end = &v }).eg(`10:45`),
	},
}

var place = func() form[placeEntry] {
	alone := form[placeEntry]{words: "the name of a rider, or a table", shape: rider.shape, read: func(r *reader, n *node) (placeEntry, bool) {
		v, ok := rider.read(r, n)
		return placeEntry{Place: model.Place{Rider: v}}, ok
	}}
	return or(alone, tableForm("a place", "", placeKeys),
		`"Ada Grey" or { rider = "Ada Grey", from = 2026-11-23, every_other = true }`)
}()

var handsKeys = &table[datedHands]{
	head:  "[[lesson.helpers_on]]",
	about: "Another number of helpers on one date.",
	keys: []key[datedHands]{
		is("on", dates, "the date", "", func(h *datedHands, v model.Date) { h.on = v }),
		is("leaders", some, "leaders", "as the lesson has", func(h *datedHands, v int) { h.leaders = &v }).eg(`2`),
		is("sidewalkers", some, "sidewalkers", "as the lesson has", func(h *datedHands, v int) { h.sidewalkers = &v }).eg(`1`),
	},
}

type datedHands struct {
	on                   model.Date
	leaders, sidewalkers *int
}

// lessonEntry is a lesson as it is written.
type lessonEntry struct {
	*model.Lesson
	when
	places []placeEntry
	hands  []datedHands
}

// when is the day and the hours of a lesson or a work.
type when struct {
	day  *time.Weekday
	end  *model.Minute
	long int
}

var lessonKeys = &table[lessonEntry]{
	head:  "[[lesson]]",
	about: "A fixed place and time, each week or on one date, with its riders.",
	keys: []key[lessonEntry]{
		is("name", naming, "name, unique among lessons", "", func(l *lessonEntry, v string) { l.Name = v }).eg(`"Tue 10:00"`),
		is("was", oldNames, "earlier names", "none", func(l *lessonEntry, v []string) { l.Was = v }).eg(`["Tuesday 10"]`),
		is("day", weekdays, "weekday of a lesson that is held each week", "see on", func(l *lessonEntry, v time.Weekday) { l.day = &v }),
		is("on", dates, "date of a lesson that is held once", "see day", func(l *lessonEntry, v model.Date) { l.On = v }),
		is("start", times, "when it starts", "", func(l *lessonEntry, v model.Minute) { l.Start = v }).eg(`10:00`),
		is("end", times, "when it ends", "see length", func(l *lessonEntry, v model.Minute) { l.when.end = &v }).eg(`10:45`),
		is("length", within(duration, 1, 24*60, "a lesson is between 1 min and 24 h"), "how long it is, in place of end", "see end", func(l *lessonEntry, v int) { l.long = v }).eg(`"45 min"`),
		is("arena", arena, "where", "", func(l *lessonEntry, v *model.Arena) { l.Arena = v }),
		is("instructor", person, "who teaches", "", func(l *lessonEntry, v *model.Person) { l.Instructor = v }),
		is("kind", oneOf("a kind of lesson", model.Private, model.SemiPrivate, model.Group), "who may join", `"group"`, func(l *lessonEntry, v model.LessonKind) { l.Kind = v }),
		is("level", text, "riders' level, one of the house's", "any", func(l *lessonEntry, v string) { l.Level = v }).eg(`"beginner"`),
		is("size", counts, "riders at once", "no limit stated", func(l *lessonEntry, v int) { l.Size = v }).eg(`3`),
		is("open", yes, "open to riders of other lessons", "false", func(l *lessonEntry, v bool) { l.Open = v }),
		is("leaders", some, "leaders that it can count on", "no number given: not checked", func(l *lessonEntry, v int) { l.Hands.Leaders = v }).eg(`2`),
		is("sidewalkers", some, "sidewalkers that it can count on", "no number given: not checked", func(l *lessonEntry, v int) { l.Hands.Sidewalkers = v }),
		is("helpers_on", list(tableForm("helpers of a date", `{ on = 2026-11-25, sidewalkers = 1 }`, handsKeys), "a list of tables"), "another number on a date", "the same on all", func(l *lessonEntry, v []datedHands) { l.hands = v }),
		is("riders", list(place, "a list of riders"), "who stands in it", "nobody", func(l *lessonEntry, v []placeEntry) { l.places = v }).eg(`["Ada Grey", { rider = "Ben Stone", from = 2026-11-23, every_other = true }]`),
		is("term", term, "the term in which it is held", "every term; all the year where there is none", func(l *lessonEntry, v *model.Term) { l.Term = v }),
		is("from", dates, "first date", "always until then", func(l *lessonEntry, v model.Date) { l.From = v }),
		is("until", dates, "last date, which counts", "from then on", func(l *lessonEntry, v model.Date) { l.Until = v }),
	},
}

func (l *lessonEntry) finish(r *reader, n *node) {
	if l.Kind == "" {
		l.Kind = model.Group
	}
	l.Weekday, l.End = l.settle(r, n, l.On, l.Start)
	r.inOrder(n, "from", "until", l.From, l.Until)
	for i := range l.places {
		p := &l.places[i]
		at := n
		if k := n.get("riders"); k != nil {
			at = k.val.item(i)
		}
		p.Start, p.End = p.within(r, at, l.Lesson)
		r.inOrder(at, "from", "until", p.From, p.Until)
		if p.EveryOther && p.From == 0 {
			r.mistake(at.spot("every_other"), "every other week of which week on?", "add from with the first date: from = 2026-11-23")
		}
		if p.Rider == nil {
			continue
		}
		for _, q := range l.Places {
			if q.Rider == p.Rider && meet(q, p.Place) {
				r.mistake(at.span(), fmt.Sprintf("%s stands twice in %s", p.Rider.Name, l.Name), "leave one of them out, or give both their dates or parts")
			}
		}
		l.Places = append(l.Places, p.Place)
	}
	for _, h := range l.hands {
		if l.HandsOn == nil {
			l.HandsOn = map[model.Date]model.Hands{}
		}
		hands := l.Hands
		if h.leaders != nil {
			hands.Leaders = *h.leaders
		}
		if h.sidewalkers != nil {
			hands.Sidewalkers = *h.sidewalkers
		}
		l.HandsOn[h.on] = hands
	}
}

// meet reports whether two places take the same part of the lesson on a date
// that both have; every other week counts as every week.
func meet(p, q model.Place) bool {
	dates := (q.Until == 0 || p.From <= q.Until) && (p.Until == 0 || q.From <= p.Until)
	return dates && (p.End == 0 || q.End == 0 || p.Start < q.End && q.Start < p.End) && !(p.EveryOther && q.EveryOther)
}

// settle works out weekday and end from what is written of them.
func (w *when) settle(r *reader, n *node, on model.Date, start model.Minute) (time.Weekday, model.Minute) {
	day := on.Weekday()
	switch has := n.get("day") != nil; {
	case !has && n.get("on") == nil && on == 0 && !n.torn:
		r.mistake(n.span(), "it says neither on which weekday nor on which date", `add a line such as: day = "Tuesday"`)
	case has && n.get("on") != nil:
		r.mistake(n.spot("day"), "it has a weekday and a date", "leave day out for one date, and on for every week")
	case w.day != nil:
		day = *w.day
	}
	end := start + model.Minute(w.long)
	switch has := n.get("end") != nil; {
	case has && n.get("length") != nil:
		r.mistake(n.spot("length"), "it has an end and a length", "leave one of them out")
	case !has && n.get("length") == nil && !n.torn:
		r.mistake(n.span(), "it does not say when it ends", `add a line such as: length = "45 min"`)
	case w.end != nil:
		end = *w.end
		if n.get("start") != nil {
			r.endsAfter(n, start, end)
		}
	}
	if end > 24*60 {
		r.mistake(n.spot("length"), "it runs past midnight", "mend start or length")
	}
	return day, end
}

// within is the part in the lesson's hours; none written is the whole: 0, 0.
func (p part) within(r *reader, n *node, l *model.Lesson) (start, end model.Minute) {
	if p.start == nil && p.end == nil || l == nil {
		return 0, 0
	}
	start, end = l.Start, l.End
	if p.start != nil {
		start = *p.start
	}
	if p.end != nil {
		end = *p.end
	}
	if end <= start {
		r.endsAfter(n, start, end)
	} else if start < l.Start || end > l.End {
		key := "start"
		if start >= l.Start {
			key = "end"
		}
		r.mistake(n.spot(key), fmt.Sprintf("%s-%s is not within the lesson, which is %s-%s", start, end, l.Start, l.End), "mend start or end")
	}
	return start, end
}

// bookingEntry is a booking as it is written.
type bookingEntry struct {
	*model.Booking
	part
}

var bookingKeys = &table[bookingEntry]{
	head:  "[[booking]]",
	about: "A ride on one date: a make-up or a guest.",
	keys: []key[bookingEntry]{
		is("on", dates, "the date", "", func(b *bookingEntry, v model.Date) { b.Date = v }),
		is("lesson", lesson, "the lesson", "", func(b *bookingEntry, v *model.Lesson) { b.Lesson = v }),
		is("rider", rider, "the rider", "", func(b *bookingEntry, v *model.Rider) { b.Rider = v }),
		is("start", times, "when her part of the lesson starts", "with the lesson", func(b *bookingEntry, v model.Minute) { b.start = &v }).eg(`10:00`),
		is("end", times, "when her part of the lesson ends", "with the lesson", func(b *bookingEntry, v model.Minute) { b.end = &v }).eg(`10:20`),
		is("why", text, "why", "none", func(b *bookingEntry, v string) { b.Why = v }).eg(`"make-up"`),
	},
}

var pairingKeys = &table[model.Pairing]{
	head:  "[[term.pairings]]",
	about: "A rider's usual horse and seat of the term.",
	keys: []key[model.Pairing]{
		is("rider", rider, "the rider", "", func(p *model.Pairing, v *model.Rider) { p.Rider = v }),
		is("lesson", lesson, "in this lesson alone", "in all", func(p *model.Pairing, v *model.Lesson) { p.Lesson = v }),
		is("horse", horse, "her usual horse", "", func(p *model.Pairing, v *model.Horse) { p.Horse = v }),
		is("seat", tack, "her usual seat", "none stated", func(p *model.Pairing, v *model.Piece) { p.Seat = v }),
	},
}

var termKeys = &table[model.Term]{
	head:  "[[term]]",
	about: "A run of weeks in which the weekly lessons are held. Where there is no term they are held all the year.",
	keys: []key[model.Term]{
		is("name", naming, "name, unique among terms", "", func(t *model.Term, v string) { t.Name = v }).eg(`"Autumn 2026"`),
		is("was", oldNames, "earlier names", "none", func(t *model.Term, v []string) { t.Was = v }).eg(`["Autumn"]`),
		is("first", dates, "first date", "", func(t *model.Term, v model.Date) { t.First = v }).eg(`2026-10-26`),
		is("last", dates, "last date, which counts", "", func(t *model.Term, v model.Date) { t.Last = v }).eg(`2026-12-18`),
		is("closed", periods, "when no lesson is held", "never", func(t *model.Term, v []model.Period) { t.Closures = v }),
		is("pairings", list(tableForm("a pairing", `{ rider = "Ada Grey", horse = "Duke", seat = "S3" }`, pairingKeys), "a list of pairings"), "usual horses and seats", "none", func(t *model.Term, v []model.Pairing) { t.Pairings = v }),
	},
}

// workEntry is a work as it is written.
type workEntry struct {
	*model.Work
	when
}

var workKeys = &table[workEntry]{
	head:  "[[work]]",
	about: "A horse's work with no rider of a lesson: it takes time and a place in the arena, and counts in the horse's limits.",
	keys: []key[workEntry]{
		is("horse", horse, "the horse", "", func(w *workEntry, v *model.Horse) { w.Horse = v }),
		is("kind", words("a kind of work", `"schooling" or "lunging" or "evaluation"`), "what it is, by the house's own name", "", func(w *workEntry, v string) { w.Kind = v }),
		is("day", weekdays, "weekday of a work that is done each week", "see on", func(w *workEntry, v time.Weekday) { w.day = &v }),
		is("on", dates, "date of a work that is done once", "see day", func(w *workEntry, v model.Date) { w.On = v }),
		is("from", dates, "first date", "always until then", func(w *workEntry, v model.Date) { w.From = v }),
		is("until", dates, "last date, which counts", "from then on", func(w *workEntry, v model.Date) { w.Until = v }),
		is("start", times, "when it starts", "", func(w *workEntry, v model.Minute) { w.Start = v }).eg(`09:00`),
		is("end", times, "when it ends", "see length", func(w *workEntry, v model.Minute) { w.when.end = &v }).eg(`09:20`),
		is("length", within(duration, 1, 24*60, "a work is between 1 min and 24 h"), "how long it is, in place of end", "see end", func(w *workEntry, v int) { w.long = v }).eg(`"20 min"`),
		is("arena", arena, "where", "no arena", func(w *workEntry, v *model.Arena) { w.Arena = v }),
		is("person", person, "who does it", "not stated", func(w *workEntry, v *model.Person) { w.Person = v }),
		is("seat", tack, "tag of the seat, if any", "it names no tack", func(w *workEntry, v *model.Piece) { w.Seat = v }),
		is("pads", list(tack, "a list of tags"), "pads, in order from the horse's back", "none", func(w *workEntry, v []*model.Piece) { w.Pads = v }).eg(`["P3"]`),
		is("girth", tack, "tag of the girth", "none", func(w *workEntry, v *model.Piece) { w.Girth = v }).eg(`"G4"`),
	},
}

func (w *workEntry) finish(r *reader, n *node) {
	w.Weekday, w.End = w.settle(r, n, w.On, w.Start)
	r.inOrder(n, "from", "until", w.From, w.Until)
	if w.Seat == nil && (len(w.Pads) > 0 || w.Girth != nil) {
		r.mistake(n.span(), "it names pads or a girth and no seat", "add seat, or leave them out")
	}
}
