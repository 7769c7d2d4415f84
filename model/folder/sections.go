package folder

import (
	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

// section is a kind of table at the top of a person's files.
type section struct {
	name  string
	many  bool // [[name]]
	sheet *sheet
	// declare makes the noun of a table and takes in its names; fill reads the
	// rest, once all names are known.
	declare func(r *reader, n *node) any
	fill    func(r *reader, n *node, noun any)
}

// sections are all of them, in the order of the page and of reading: what a
// later one looks into has been read before.
var sections = []section{
	one("centre", centreKeys, func(c *model.Centre) *model.Centre { return c }),
	one("house", houseKeys, func(c *model.Centre) *model.House { return &c.House }),
	named("person", "name", personKeys, itself[model.Person], nil, func(r *reader) *index[model.Person] { return &r.persons },
		func(name string) *model.Person { return &model.Person{Name: name} },
		func(c *model.Centre, p *model.Person) { c.Persons = append(c.Persons, p) }),
	named("arena", "name", arenaKeys, itself[model.Arena], nil, func(r *reader) *index[model.Arena] { return &r.arenas },
		func(name string) *model.Arena { return &model.Arena{Name: name} },
		func(c *model.Centre, a *model.Arena) { c.Arenas = append(c.Arenas, a) }),
	named("horse", "name", horseKeys, itself[model.Horse], nil, func(r *reader) *index[model.Horse] { return &r.horses },
		func(name string) *model.Horse { return &model.Horse{Name: name} },
		func(c *model.Centre, h *model.Horse) { c.Horses = append(c.Horses, h) }),
	named("tack", "tag", tackKeys, func(p *model.Piece) *tackEntry { return &tackEntry{Piece: p} }, (*tackEntry).finish,
		func(r *reader) *index[model.Piece] { return &r.pieces },
		func(tag string) *model.Piece { return &model.Piece{Tag: tag} },
		func(c *model.Centre, p *model.Piece) { c.Pieces = append(c.Pieces, p) }),
	named("fit", "", fitKeys, itself[model.FitRow], nil, nil, func(string) *model.FitRow { return &model.FitRow{} },
		func(c *model.Centre, f *model.FitRow) { c.Chart = append(c.Chart, f) }),
	named("rider", "name", riderKeys, func(x *model.Rider) *riderEntry { return &riderEntry{Rider: x} }, (*riderEntry).finish,
		func(r *reader) *index[model.Rider] { return &r.riders },
		func(name string) *model.Rider { return &model.Rider{Name: name} },
		func(c *model.Centre, x *model.Rider) { c.Riders = append(c.Riders, x) }),
	named("lesson", "name", lessonKeys, func(l *model.Lesson) *lessonEntry { return &lessonEntry{Lesson: l} }, (*lessonEntry).finish,
		func(r *reader) *index[model.Lesson] { return &r.lessons },
		func(name string) *model.Lesson { return &model.Lesson{Name: name, Hands: model.NoHands} },
		func(c *model.Centre, l *model.Lesson) { c.Lessons = append(c.Lessons, l) }),
	named("term", "name", termKeys, itself[model.Term], nil, func(r *reader) *index[model.Term] { return &r.terms },
		func(name string) *model.Term { return &model.Term{Name: name} },
		func(c *model.Centre, t *model.Term) { c.Terms = append(c.Terms, t) }),
	named("booking", "", bookingKeys, func(b *model.Booking) *bookingEntry { return &bookingEntry{Booking: b} },
		func(b *bookingEntry, r *reader, n *node) { b.Start, b.End = b.part.within(r, n, b.Lesson) }, nil,
		func(string) *model.Booking { return &model.Booking{} },
		func(c *model.Centre, b *model.Booking) { c.Bookings = append(c.Bookings, b) }),
	named("work", "", workKeys, func(w *model.Work) *workEntry { return &workEntry{Work: w} }, (*workEntry).finish, nil,
		func(string) *model.Work { return &model.Work{} },
		func(c *model.Centre, w *model.Work) { c.Works = append(c.Works, w) }),
}

func itself[T any](v *T) *T { return v }

// one is a table that a folder has once.
func one[T any](name string, t *table[T], in func(*model.Centre) *T) section {
	return section{
		name: name, sheet: t.sheet(),
		declare: func(r *reader, n *node) any {
			v := any(in(r.centre))
			if old := r.entries[v]; old != nil {
				r.mistake(n.span(), t.head+" is in the folder twice: it is at "+old.span().String()+" as well", "put both into one")
			} else {
				r.entries[v] = n
			}
			return v
		},
		fill: func(r *reader, n *node, noun any) { t.read(r, n, noun.(*T)) },
	}
}

// named is a kind of table of which a folder has many. Those with a name are
// found by it; as is what an entry of the file fills for a noun, and finish
// ends the noun when all its keys are read.
func named[T, E any](name, nameKey string, t *table[E], as func(*T) *E, finish func(*E, *reader, *node),
	in func(*reader) *index[T], fresh func(string) *T, add func(*model.Centre, *T)) section {
	return section{
		name: name, many: true, sheet: t.sheet(),
		declare: func(r *reader, n *node) any {
			p := n.get(nameKey)
			text := ""
			if p != nil && p.val.kind == unstable.String && badName(p.val.text) == "" {
				text = p.val.text
			}
			v := fresh(text)
			r.noun, r.entries[v] = v, n
			if text != "" {
				in(r).add(r, v, text, p.val.span())
			}
			if old := n.get("was"); old != nil && in != nil {
				for _, o := range append(old.val.items, old.val) {
					if o.kind == unstable.String && badName(o.text) == "" {
						in(r).add(r, v, o.text, o.span())
					}
				}
			}
			add(r.centre, v)
			return v
		},
		fill: func(r *reader, n *node, noun any) {
			e := as(noun.(*T))
			t.read(r, n, e)
			if finish != nil {
				finish(e, r, n)
			}
		},
	}
}
