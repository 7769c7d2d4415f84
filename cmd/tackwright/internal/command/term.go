package command

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var termCommand = &command{
	name: "term", args: "FOLDER [TERM]",
	short: "find the standing pairings of a term",
	about: `Plans the term's ordinary week: every lesson and work that is held each week,
with its standing riders, and nothing that comes and goes (bookings, notes,
what was posted and ridden, closures, absences and days off with a date,
appointments). A horse that a note says is out counts as back; one that the
centre's own files say is out does not. The week is the fullest of the term
from now on, as fits and forms are then. Where riders ride every other week, it
is one of the two kinds of week; the other is planned after it, with those who
ride in both on the horse and in the seat that the first gave them as far as
can be, and the riders who ride only then get theirs from it.

It prints who rides which horse in which seat and what was proved, and writes
nothing. Only with --write, and the name of whoever takes it, do horses and
seats become the term's standing pairings, in standing/ of the folder: from
then on they are each rider's usual horse and seat, and plan tells what differs
from them. A pairing in the centre's own files stands before those of that
rider. A rider on the ground gets none. What was not proved best in the time is
written only with --unproved.

TERM is a name; left out, it is the term that today is in, or the next.
`,
	example: `tackwright term examples/sallowdene "Autumn 2026"`,
	least:   1, most: 2, answer: termAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o termOptions
		fs.BoolVar(&o.write, "write", false, "make these the standing pairings of the term")
		fs.StringVar(&o.by, "by", "", "the `NAME` of the person who takes them")
		fs.BoolVar(&o.unproved, "unproved", false, "take them though they are not proved best")
		fs.DurationVar(&o.limit, "limit", time.Minute, "search each week no longer than this `TIME`; 60s if not said")
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error { return term(c, &o) }
	},
}

type termOptions struct {
	write    bool
	by       string
	unproved bool
	limit    time.Duration
	today    *string
	json     *bool
}

// termAnswer is what term says as JSON.
type termAnswer struct {
	Term     string        `json:"term"`
	Weeks    []*planAnswer `json:"weeks" about:"the ordinary week, and the other one where riders ride every other week"`
	Back     []string      `json:"back" about:"horses that a note says are out and that count as back"`
	Pairings []pairing     `json:"pairings" about:"by date, start, lesson and rider"`
	Written  string        `json:"written,omitempty" about:"the file, as seen from the folder, where they were written"`

	weeks  []*model.Week
	proved bool
}

type pairing struct {
	Rider  string `json:"rider" about:"first name, and a mark where two share it"`
	Lesson string `json:"lesson"`
	Horse  string `json:"horse"`
	Seat   string `json:"seat" about:"tag"`
}

func term(c *call, o *termOptions) error {
	switch {
	case o.limit <= 0:
		return wrongUse("--limit: a search takes some time, such as 60s")
	case o.write && o.by == "":
		return wrongUse("--write: say who takes these pairings: --by NAME")
	}
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	by, err := personNamed(f.Centre, o.by)
	if err != nil {
		return err
	}
	t, err := c.term(f.Centre, k.Today)
	if err != nil {
		return err
	}
	a, pairings, err := c.pair(f.Centre, t, k.Today, o.limit)
	if err != nil {
		return err
	}
	switch {
	case o.write && c.ctx.Err() != nil:
		return no("stopped, so nothing is written: the pairings of a whole term want a whole search")
	case o.write && !a.proved && !o.unproved:
		return no("not proved best, so nothing is written: give it longer than --limit %s, or look at them without --write and take them as they are with --unproved", o.limit)
	case o.write:
		if a.Written, err = f.WriteStanding(t, pairings, by, k.Now); err != nil {
			return written(err)
		}
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(c.args[0]))
}

// term is the one that is named, else the one that today is in or the next.
func (c *call) term(centre *model.Centre, today model.Date) (*model.Term, error) {
	var names []string
	var next *model.Term
	for _, t := range centre.Terms {
		if len(c.args) > 1 && (t.Name == c.args[1] || slices.Contains(t.Was, c.args[1])) {
			return t, nil
		}
		names = append(names, fmt.Sprintf("%q", t.Name))
		if t.Last >= today && (next == nil || t.First < next.First) {
			next = t
		}
	}
	switch {
	case len(names) == 0:
		return nil, no("the folder has no [[term]], and so nothing to find pairings for")
	case len(c.args) > 1:
		return nil, no("there is no term %q; the folder has: %s", c.args[1], strings.Join(names, ", "))
	case next == nil:
		return nil, no("every term is over; name the one that is meant: %s", strings.Join(names, ", "))
	}
	return next, nil
}

// pair plans the ordinary weeks of a term.
func (c *call) pair(centre *model.Centre, t *model.Term, today model.Date, limit time.Duration) (*termAnswer, []model.Pairing, error) {
	a := &termAnswer{Term: t.Name, Weeks: []*planAnswer{}, Pairings: []pairing{}, proved: true}
	for _, h := range centre.Horses {
		if slices.ContainsFunc(h.Out, func(o model.Out) bool { return o.Note != 0 && o.Why != model.Appointment && o.End.IsZero() }) {
			a.Back = append(a.Back, h.Name)
		}
	}
	var all []model.Pairing
	a.weeks = centre.OrdinaryWeeks(t, today)
	for _, w := range a.weeks {
		usual := w.Centre.Terms[0]
		usual.Pairings = append(all[:len(all):len(all)], usual.Pairings...) // of the week before, first
		p, err := c.solve(w, limit)
		if err != nil {
			return nil, nil, err
		}
		a.Weeks = append(a.Weeks, planOf(w, p))
		a.proved = a.proved && p.Proof.Proved()
		for _, x := range w.Pairings(p) {
			if !slices.ContainsFunc(all, func(y model.Pairing) bool { return y.Rider == x.Rider && y.Lesson == x.Lesson }) {
				all = append(all, x)
				a.Pairings = append(a.Pairings, pairing{x.Rider.Called(), x.Lesson.Name, x.Horse.Name, x.Seat.Tag})
			}
		}
	}
	return a, all, nil
}

func (a *termAnswer) text(dir string) string {
	var b strings.Builder
	if len(a.Weeks) == 0 {
		return fmt.Sprintf("%s has no ride that is held every week.\n", a.Term)
	}
	for i, x := range a.Weeks {
		what := "THE ORDINARY WEEK of " + a.Term
		if i > 0 {
			what = "\nTHE OTHER WEEK, of riders who ride every other week"
		}
		fmt.Fprintf(&b, "%s, as of %s\n\n", what, a.weeks[i].DayName(a.weeks[i].From))
		if i == 0 && len(a.Back) > 0 {
			b.WriteString(wrap("Counted as back, though a note says out: ", strings.Join(a.Back, ", ")))
		}
		x.body(&b, a.weeks[i])
	}
	switch {
	case a.Written != "":
		fmt.Fprintf(&b, "\nThe standing pairings of %s are written: %d, in %s.\n", a.Term, len(a.Pairings), a.Written)
	default:
		fmt.Fprintf(&b, "\nNothing is written. To make these %d the standing pairings, say who takes them:\n  tackwright term %s %q --write --by NAME\n", len(a.Pairings), typed(dir), a.Term)
	}
	return b.String()
}

// personNamed is the person of the centre with that name, or one that she had; nil
// where no name is given.
func personNamed(c *model.Centre, name string) (*model.Person, error) {
	if name == "" {
		return nil, nil
	}
	var names []string
	for _, p := range c.Persons {
		if p.Name == name || slices.Contains(p.Was, name) {
			return p, nil
		}
		names = append(names, fmt.Sprintf("%q", p.Name))
	}
	return nil, no("--by: there is no person %q; the folder has: %s", name, strings.Join(names, ", "))
}

// written gives the error of a write the status that it ends the program with.
func written(err error) error {
	var refused *folder.RefusedError
	if errors.As(err, &refused) {
		return exit{No, err.Error()}
	}
	return err
}
