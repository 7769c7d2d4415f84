package folder

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// turnEntry is what a ride gets, as it is written: a horse and tack, or the
// reasons why it is on the ground.
type turnEntry struct {
	model.Turn
	ground []string
}

// turnKeys are the keys of a turn in the table of a ride.
func turnKeys[T any](in func(*T) *turnEntry) []key[T] {
	return []key[T]{
		is("horse", horse, "the horse", "on the ground", func(t *T, v *model.Horse) { in(t).Horse = v }),
		is("seat", tack, "tag of the seat", "none", func(t *T, v *model.Piece) { in(t).Seat = v }),
		is("pads", list(tack, "a list of tags"), "tags of the pads, in order from the horse's back", "none", func(t *T, v []*model.Piece) { in(t).Pads = v }).eg(`["P3"]`),
		is("girth", tack, "tag of the girth", "none", func(t *T, v *model.Piece) { in(t).Girth = v }).eg(`"G4"`),
		is("extras", list(tack, "a list of tags"), "tags of the extras, in the order of the rider's needs", "none", func(t *T, v []*model.Piece) { in(t).Extras = v }).eg(`["X1"]`),
		is("ground", texts, "in place of a horse: on the ground, and why", "it has a horse", func(t *T, v []string) { in(t).ground = v }).eg(`["no horse that carries her is free"]`),
	}
}

// turn is what the entry says, nil on the ground.
func (t *turnEntry) turn(r *reader, n *node) *model.Turn {
	has, ground := n.get("horse"), n.get("ground")
	switch {
	case has == nil && ground == nil && !n.torn:
		r.mistake(n.span(), "it has neither a horse nor a reason why it is on the ground", `add horse, or write: ground = ["..."]`)
	case has != nil && ground != nil:
		r.mistake(ground.span(), "it has a horse and is on the ground", "leave one of them out")
	case has == nil:
		for _, p := range n.pairs {
			if slices.Contains([]string{"seat", "pads", "girth", "extras"}, p.key) {
				r.mistake(p.span(), "on the ground it has no "+p.key, "leave it out, or name a horse")
			}
		}
	case t.Horse != nil:
		turn := t.Turn
		return &turn
	}
	return nil
}

// toldEntry is a posted ride as it is written.
type toldEntry struct {
	model.Told
	turnEntry
}

var toldKeys = &table[toldEntry]{
	head:  "[[ride]]",
	about: "One ride as it was posted. It stands alone, so that later changes do not change what was posted.",
	keys: append([]key[toldEntry]{
		is("date", dates, "the date", "", func(t *toldEntry, v model.Date) { t.Date = v }),
		is("start", times, "when it starts", "", func(t *toldEntry, v model.Minute) { t.Start = v }).eg(`10:00`),
		is("end", times, "when it ends", "", func(t *toldEntry, v model.Minute) { t.End = v }).eg(`10:45`),
		is("lesson", lesson, "the lesson", "", func(t *toldEntry, v *model.Lesson) { t.Lesson = v }),
		is("rider", rider, "the rider", "", func(t *toldEntry, v *model.Rider) { t.Rider = v }),
		is("arena", arena, "where", "not said", func(t *toldEntry, v *model.Arena) { t.Arena = v }),
		is("instructor", person, "who taught", "not said", func(t *toldEntry, v *model.Person) { t.Instructor = v }),
		is("work", within(integer, 0, 1e9, "it is not negative"), "work that counts: minutes x percent of the lesson's kind x percent of the horse", "0", func(t *toldEntry, v int) { t.Work = int64(v) }).eg(`450000`),
	}, turnKeys(func(t *toldEntry) *turnEntry { return &t.turnEntry })...),
}

// postedEntry is a file of posted/ as it is written.
type postedEntry struct {
	*model.Posted
	rides     []*node
	proof     model.Proof
	withdraws int
	sources   []sourceFile
}

// sourceFile is one of the person's own files as it was when a plan was posted.
type sourceFile struct{ file, text string }

var sourceFileKeys = &table[sourceFile]{
	head:  "[[source]]",
	about: "One of the centre's own files as it was, so that a later weighing does not turn an old plan wrong.",
	keys: []key[sourceFile]{
		is("file", text, "its name", "", func(f *sourceFile, v string) { f.file = v }).eg(`"horses.toml"`),
		is("text", text, "what it said", "", func(f *sourceFile, v string) { f.text = v }).eg(`"[[horse]]"`),
	},
}

// nodes are tables that are read later.
func nodes[T any](t *table[T], like string) form[[]*node] {
	one := form[*node]{words: "a table", like: like, sub: t.sheet()}
	one.read = func(r *reader, n *node) (*node, bool) {
		if len(n.pairs) == 0 && n.text != "" {
			notA(r, n, one)
			return nil, false
		}
		return n, true
	}
	return list(one, "a list of tables")
}

var postedKeys = &table[postedEntry]{
	head:  "posted/*.toml",
	about: "What was posted, a file a version. The program writes it and never changes it; a later version replaces it on the dates that it covers. What was proved is bound to the plan and to the week it was solved from.",
	keys: []key[postedEntry]{
		is("version", within(integer, 1, 1e8, "versions are numbered from 1"), "its number, unique in the folder", "", func(p *postedEntry, v int) { p.Version = v }),
		is("by", person, "who posted it", "", func(p *postedEntry, v *model.Person) { p.By = v }),
		is("at", instants, "when it was posted", "", func(p *postedEntry, v model.Instant) { p.At = v }),
		is("from", dates, "first date", "", func(p *postedEntry, v model.Date) { p.From = v }),
		is("until", dates, "last date, which counts", "", func(p *postedEntry, v model.Date) { p.Until = v }),
		is("withdraws", counted, "number of an earlier version, in place of which those before it stand again", "none", func(p *postedEntry, v int) { p.withdraws = v }).eg(`4`),
		is("now", instants, "rides that had started then were facts", "none had", func(p *postedEntry, v model.Instant) { p.Now = v }),
		is("hash", words("hexadecimal digits", `"1b9f..."`), "what the proof is bound to", "nothing is proved", func(p *postedEntry, v string) { p.proof.Hash = v }),
		is("notes", counted, "number of the latest note that it goes by", "none had been written", func(p *postedEntry, v int) { p.Notes = v }).eg(`12`),
		is("goal", list(tableForm("a goal", `{ name = "seat a", value = 4, bound = 4, proved = true }`, goalKeys), "a list of goals"), "what is known of each goal", "nothing", func(p *postedEntry, v []model.GoalResult) { p.proof.Goals = v }),
		is("ride", nodes(toldKeys, `{ date = 2026-11-25, start = 10:00 }`), "its rides", "none", func(p *postedEntry, v []*node) { p.rides = v }),
		is("source", list(tableForm("a file as it was", `{ file = "horses.toml", text = "[[horse]]" }`, sourceFileKeys), "a list of files"), "the files that its week was solved from", "not kept", func(p *postedEntry, v []sourceFile) { p.sources = v }),
	},
}

func (p *postedEntry) finish(r *reader, n *node) {
	r.inOrder(n, "from", "until", p.From, p.Until)
	for _, at := range p.rides {
		var t toldEntry
		toldKeys.read(r, at, &t)
		if t.Lesson != nil {
			t.LessonName = t.Lesson.Name
		}
		t.Told.Turn, t.Told.Ground = t.turn(r, at), t.ground
		if at.get("end") != nil && at.get("start") != nil {
			r.endsAfter(at, t.Start, t.End)
		}
		if t.Date != 0 && (t.Date < p.From || t.Date > p.Until) {
			r.mistake(at.spot("date"), fmt.Sprintf("%s is not within %s to %s, which this version covers", t.Date, p.From, p.Until), "mend the date")
		}
		if t.Lesson != nil && t.Rider != nil {
			p.Told = append(p.Told, t.Told)
		}
	}
}

// differsEntry is a ride that was not as posted, as it is written.
type differsEntry struct {
	model.Differs
	turnEntry
}

var differsKeys = &table[differsEntry]{
	head:  "[[differs]]",
	about: "One ride that was not as posted.",
	keys: append([]key[differsEntry]{
		is("how", oneOf("a way to differ", model.NoShow, model.OtherHorse, model.ExtraRide, model.CutShort), "in what it differed; another tack counts as another horse", "", func(d *differsEntry, v model.DiffersHow) { d.How = v }),
		is("lesson", lesson, "the lesson", "", func(d *differsEntry, v *model.Lesson) { d.Lesson = v }),
		is("rider", rider, "the rider", "", func(d *differsEntry, v *model.Rider) { d.Rider = v }),
		is("start", times, "when an extra ride started; of another, when the part of the lesson started that she rode", "with the lesson; every part", func(d *differsEntry, v model.Minute) { d.Start = v }).eg(`10:00`),
		is("end", times, "when an extra ride, or one cut short, ended", "with the lesson; one that starts after it is as long as the lesson", func(d *differsEntry, v model.Minute) { d.End = v }).eg(`10:20`),
	}, turnKeys(func(d *differsEntry) *turnEntry { return &d.turnEntry })[:5]...),
}

// riddenEntry is a file of ridden/ as it is written.
type riddenEntry struct {
	*model.Ridden
	differs, works []*node
}

var riddenKeys = &table[riddenEntry]{
	head:  "ridden/*.toml",
	about: "What was ridden, a file a date: as posted, but for what is written here.",
	keys: []key[riddenEntry]{
		is("date", dates, "the date", "", func(x *riddenEntry, v model.Date) { x.Date = v }),
		is("by", person, "who closed it", "", func(x *riddenEntry, v *model.Person) { x.By = v }),
		is("at", instants, "when it was closed", "", func(x *riddenEntry, v model.Instant) { x.At = v }),
		is("differs", nodes(differsKeys, `{ how = "no-show", lesson = "Tue 10:00", rider = "Ada Grey" }`), "rides that were not as posted", "none", func(x *riddenEntry, v []*node) { x.differs = v }),
		is("work", nodes(workKeys, `{ horse = "Duke", kind = "lunging", start = 09:00, length = "20 min" }`), "other work of the date, beyond what the folder plans", "none", func(x *riddenEntry, v []*node) { x.works = v }),
	},
}

func (x *riddenEntry) finish(r *reader, n *node) {
	for _, at := range x.differs {
		var d differsEntry
		ok := differsKeys.read(r, at, &d)
		needs := d.How == model.OtherHorse || d.How == model.ExtraRide
		switch {
		case !ok:
			continue
		case needs && at.get("horse") == nil:
			r.mistake(at.span(), fmt.Sprintf("%q has no horse", d.How), "add horse, seat, pads, girth and extras")
		case !needs && at.get("horse") != nil:
			r.mistake(at.spot("horse"), fmt.Sprintf("%q names no horse", d.How), "leave it out, or mend how")
		case d.Start != 0 && d.End != 0 && d.End <= d.Start:
			r.endsAfter(at, d.Start, d.End)
		case d.How == model.CutShort && at.get("end") == nil:
			r.mistake(at.span(), `"cut short" has no end`, "add a line such as: end = 10:20")
		case needs:
			turn := d.turnEntry.Turn
			d.Differs.Turn = &turn
		}
		x.Differs = append(x.Differs, d.Differs)
	}
	for _, at := range x.works {
		w := workEntry{Work: &model.Work{On: x.Date}}
		before := len(r.troubles)
		workKeys.read(r, at, &w)
		w.finish(r, at)
		if w.On != x.Date {
			r.mistake(at.spot("on"), fmt.Sprintf("%s is not the date that this file closes", w.On), "leave it out")
		}
		if len(r.troubles) == before {
			x.Works = append(x.Works, w.Work)
		}
	}
}
