package command

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var noteCommand = &command{
	name: "note", args: "FOLDER KIND ...",
	short: "note what changed on a day: a lame horse, a rider away, a closed arena",
	about: `Writes one day note into notes/ of the folder, with a number, the time and who
wrote it, and answers with what follows from it: holds and works that it
suspends, posted rides that can no longer be as they were told, and the command
that mends the day. It plans nothing and posts nothing by itself.

KIND, and what is written behind it:

` + noteKindsText() + `
A name can be cut short to a beginning, of it or of a word in it, that no other
has. A note on health, weather or absence is always taken. Only a keep or a never
is refused that breaks a care rule by itself or contradicts a note in force; both
are named. What only some may end (may_end of a person) one of them ends.

A note is for today unless --date says another; it is never changed, only undone
by a later one: tackwright undo.
`,
	example: `tackwright note examples/sallowdene out Wicket --lame --from 07:40 --by "Wilf Garrick-Lane"`,
	least:   3, most: 12, answer: noteAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o noteOptions
		o.by = byFlag(fs)
		fs.StringVar(&o.date, "date", "", "it is for this `DATE`: 2026-11-25, tomorrow or a weekday; today if not said")
		fs.StringVar(&o.through, "through", "", "and for all dates up to this `DATE`")
		fs.StringVar(&o.from, "from", "", "from this `TIME` of the day on")
		fs.StringVar(&o.until, "until", "", "up to this `TIME` of the day")
		fs.BoolVar(&o.lame, "lame", false, "why a horse is out: it is lame")
		fs.BoolVar(&o.ill, "ill", false, "it is ill")
		fs.BoolVar(&o.vet, "vet", false, "a vet has stopped it")
		fs.BoolVar(&o.appointment, "appointment", false, "farrier, dentist: it ends by itself")
		fs.StringVar(&o.review, "review", "", "somebody looks at the horse again on this `DATE`; the next day if not said")
		fs.StringVar(&o.lesson, "lesson", "", "in the lesson of this `NAME` alone")
		fs.StringVar(&o.arena, "arena", "", "in the arena of this `NAME`")
		fs.StringVar(&o.seat, "seat", "", "in the seat of this `TAG`")
		fs.StringVar(&o.words, "words", "", "a `TEXT` to be kept beside it")
		o.now = nowFlag(fs)
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error {
			fs.Visit(func(f *pflag.Flag) { o.said = append(o.said, f.Name) })
			return note(c, &o)
		}
	},
}

type noteOptions struct {
	date, through, from, until  string
	lame, ill, vet, appointment bool
	review, lesson, arena, seat string
	words                       string
	by, now, today              *string
	json                        *bool
	said                        []string // flags that were typed
}

// everyNoteTakes are the flags that go with any kind.
var everyNoteTakes = []string{"by", "date", "words", "now", "today", "json"}

func note(c *call, o *noteOptions) error {
	kind, err := noteKindOf(c.args[1])
	if err != nil {
		return err
	}
	for _, name := range o.said {
		if !slices.Contains(everyNoteTakes, name) && !slices.Contains(kind.flags, name) {
			return wrongUse("--%s says nothing of %s; it is written: %s", name, kind.word, kind.usage())
		}
	}
	if n := len(c.args) - 2; n < kind.least || n > kind.most {
		return wrongUse("it is written: %s", kind.usage())
	}
	f, err := folder.Open(c.args[0])
	if err != nil {
		return err
	}
	if !slices.Contains(goOver, kind.kind) {
		if err := c.whole(f); err != nil {
			return err
		}
	}
	c.goingOver(f)
	s := &saying{opts: o, args: c.args[2:], centre: f.Centre}
	n, err := s.note(c, kind)
	if err != nil {
		return err
	}
	if n.Date < s.today || n.Kind == model.NoteOwnTack { // what goes back further than a plan does
		if f, err = folder.OpenAround(c.args[0], min(n.Date, s.today)); err != nil {
			return err
		}
		s.centre = f.Centre
		if n, err = s.note(c, kind); err != nil {
			return err
		}
	}
	if why := f.Centre.RefusesHold(n); why != "" {
		return no("not noted: %s", why)
	}
	if x := f.Centre.Repeats(n); x != nil {
		return no("not noted: note %d says the very same and stands; what is no longer so, tackwright undo takes back", x.Number)
	}
	number, err := f.AddNote(n)
	if err != nil {
		return written(err)
	}
	after, err := folder.OpenAround(c.args[0], min(n.Date, s.today))
	if err != nil {
		return fmt.Errorf("note %d is written, but what follows from it cannot be said: %w", number, err)
	}
	a := &noteAnswer{Number: number, Kind: cmp.Or(string(n.Kind), fmt.Sprintf("note %d no longer stands", n.Undoes)), Date: n.Date.String(), By: n.By.Name, date: n.Date, through: max(n.Date, n.Through)}
	if a.Unsaid = !after.RecordsAlone(); !a.Unsaid {
		a.Doubt = doubt(f.Centre, n)
		a.compare(f.Centre, after.Centre, n)
		a.advise(c.args[0], after.Centre, n)
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(c.args[0], after.Centre))
}

// saying is a note in the making: what was typed, and of which centre.
type saying struct {
	opts   *noteOptions
	args   []string // behind KIND
	centre *model.Centre
	clock  clock
	today  model.Date
}

// note is the note that was typed.
func (s *saying) note(c *call, kind *noteKind) (*model.Note, error) {
	var err error
	if s.clock, err = c.clock(s.centre, *s.opts.today); err != nil {
		return nil, err
	}
	s.today = s.clock.Today
	n := &model.Note{Kind: kind.kind, Hands: model.NoHands, Words: s.opts.words}
	if n.By, err = c.who(s.centre, *s.opts.by); err != nil {
		return nil, err
	}
	if n.At, err = s.clock.at(*s.opts.now); err != nil {
		return nil, err
	}
	s.clock.Today, s.today = n.At.Date, n.At.Date
	n.Date = n.At.Date
	for _, x := range []struct {
		said string
		to   *model.Date
	}{{s.opts.date, &n.Date}, {s.opts.through, &n.Through}, {s.opts.review, &n.Review}} {
		if x.said != "" {
			if *x.to, err = s.clock.date(x.said); err != nil {
				return nil, err
			}
		}
	}
	if n.Through != 0 && n.Through < n.Date {
		return nil, wrongUse("--through: %s is before %s", n.Through, n.Date)
	}
	for _, x := range []struct {
		said string
		to   *model.Minute
	}{{s.opts.from, &n.From}, {s.opts.until, &n.Until}} {
		if x.said != "" {
			if *x.to, err = timeOfDay(x.said); err != nil {
				return nil, err
			}
		}
	}
	if s.opts.lesson != "" {
		if n.Lesson, err = s.lesson(s.opts.lesson, n); err != nil {
			return nil, err
		}
	}
	if s.opts.arena != "" {
		if n.Arena, err = arenaNamed(s.centre, s.opts.arena); err != nil {
			return nil, err
		}
	}
	if s.opts.seat != "" {
		if n.Seat, err = pieceTagged(s.centre, s.opts.seat); err != nil {
			return nil, err
		}
	}
	return n, kind.fill(s, n)
}

// lesson is a lesson that is held on a date of the note.
func (s *saying) lesson(said string, n *model.Note) (*model.Lesson, error) {
	l, err := lessonNamed(s.centre, said)
	if err != nil {
		return nil, err
	}
	for d := n.Date; d <= max(n.Date, n.Through); d++ {
		if s.centre.Holds(l, d) {
			return l, nil
		}
	}
	return nil, no("%s is not held on %s; for another date say --date", l.Name, n.Date.Words())
}

// meeting is how the lesson stands on the note's date.
func (s *saying) meeting(n *model.Note) (*model.Meeting, error) {
	for _, m := range s.centre.Week(n.Date, 1, model.Instant{}).Meetings {
		if m.Lesson == n.Lesson {
			if m.NotHeld != "" {
				return nil, no("%s is not held on %s: %s", m.Name, n.Date.Words(), m.NotHeld)
			}
			return m, nil
		}
	}
	return nil, no("%s is not held on %s; for another date say --date", n.Lesson.Name, n.Date.Words())
}

// fromNow lets what is noted today begin at the time of the note where none was
// said: what is past was as it was.
func (s *saying) fromNow(n *model.Note) {
	if s.opts.from == "" && n.Date == n.At.Date {
		n.From = n.At.Minute
	}
}

func noteKindsText() string {
	var b strings.Builder
	for _, k := range noteKinds {
		for i, line := range strings.Split(k.about, "\n") {
			if i == 0 {
				fmt.Fprintf(&b, "  %s\n", strings.TrimSpace(k.word+" "+k.args))
			}
			b.WriteString("      " + line + "\n")
		}
	}
	return b.String()
}
