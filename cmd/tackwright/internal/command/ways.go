package command

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/solver"
)

var waysCommand = &command{
	name: "ways", args: "FOLDER RIDER",
	short: "say what would help a ride that is on the ground",
	about: `Looks for what would seat a ride that is on the ground, with all that ride now,
in the plan that was posted for its date, else in the pencilled one: a piece back
from repair, a note that keeps a rider on a horse, a horse's other work, a helper
more, another arena or instructor, the lesson some minutes later, a rider in
another lesson that has room and takes her in, two riders who change places.

Each is one change, to that date (and to another of the same plan where a rider
comes on that). It has been planned with and audited; what else changes is told,
and one command takes it: tackwright take. Those that ask least come first. A
rider who is to come at another time is asked first, unless her entry says that
she may be moved freely; who is never to be moved is not. Private and closed
lessons take nobody in, and rules of care are never bent.

RIDER is the rider's name, or its beginning. Where more than one of her rides is
on the ground, say the date, and the time where she has two on it.
`,
	example: "tackwright ways examples/sallowdene Clemency --date 2026-10-17",
	least:   2, most: 2, answer: waysAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o rideOptions
		o.flags(fs)
		return func(c *call) error { return ways(c, &o) }
	},
}

// waysAnswer is what ways says as JSON.
type waysAnswer struct {
	Ride   askedRide `json:"ride" about:"that is on the ground"`
	Better *price    `json:"better,omitempty" about:"a plan in which it rides with all that ride now; nothing need change"`
	Ways   []wayOut  `json:"ways" about:"those that ask least first"`
	Whole  bool      `json:"whole" about:"each change was tried that is looked at"`
	Care   bool      `json:"care_alone,omitempty" about:"rules of care alone stand in the way, and those are never bent"`
	Take   string    `json:"take,omitempty" about:"the command that takes the better plan"`

	TakeWords []string `json:"take_words" about:"its words behind tackwright, without who does it"`

	Form string `json:"form,omitempty" about:"the command that extends the form, where it is not in date"`
}

type wayOut struct {
	Kind    string   `json:"kind" about:"piece back, note lifted, work left out, more helpers, another arena, another instructor, another lesson, lesson later or swap"`
	Said    string   `json:"said" about:"what it asks for"`
	Ask     []string `json:"ask" about:"riders who are to be asked first"`
	Date    string   `json:"date" about:"on which the ride would be"`
	Start   string   `json:"start"`
	Lesson  string   `json:"lesson"`
	Horse   string   `json:"horse" about:"that it would have"`
	Seat    string   `json:"seat"`
	Changes []moved  `json:"changes" about:"others that would have another horse"`
	Tack    []moved  `json:"tack" about:"others that would have other tack on the same horse"`
	Take    string   `json:"take" about:"the command that takes it"`

	TakeWords []string `json:"take_words" about:"its words behind tackwright, without who does it"`
}

func ways(c *call, o *rideOptions) error {
	q, err := o.ask(c, "on the ground", func(r *model.Ride, p *model.Plan) bool {
		return r.State == model.Open && p.Turns[r.Index] == nil
	})
	if err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(c.ctx, o.limit)
	defer cancel()
	found, err := solver.WaysOut(ctx, q.week, q.plan, q.ride, q.clock.Begun())
	if err != nil {
		return err
	}
	a := &waysAnswer{Ride: askedOf(q.ride, q.plan), Whole: found.Whole, Care: found.Care}
	if found.Better != nil {
		a.Better = priceOf(q, found.Better, q.week.Score(q.plan), q.week.Score(found.Better))
		l := o.line(c, q, "take")
		a.Take, a.TakeWords = l.typed(byName...), l.words()
	}
	for _, x := range found.Ways {
		a.Ways = append(a.Ways, o.wayOut(c, q, x))
	}
	if len(a.Ways) == 0 && q.week.FormStops(q.ride.Rider, q.ride.Date()) != "" {
		a.Form = fmt.Sprintf("tackwright note %s form %s DATE --by NAME", typed(c.args[0]), typed(q.answersTo(q.ride.Rider)))
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(q))
}

func (o *rideOptions) wayOut(c *call, q *asked, x *solver.Way) wayOut {
	t, l := x.Plan.Turns[x.Ride.Index], o.wayLine(c, q, x)
	w := wayOut{Kind: string(x.Kind), Said: wayWords(q, x), Date: x.Ride.Date().String(), Start: x.Ride.Start.String(),
		Lesson: x.Ride.Meeting.Name, Horse: t.Horse.Name, Seat: t.Seat.Tag, Take: l.typed(byName...), TakeWords: l.words()}
	for _, r := range x.Ask {
		w.Ask = append(w.Ask, r.Called())
	}
	w.Changes, w.Tack = movedBy(x)
	return w
}

// movedBy are the others that a way puts on another horse, and those that it leaves on
// the same in other tack.
func movedBy(x *solver.Way) (horse, tack []moved) {
	for _, r := range x.Changed() {
		m := moved{askedRide: askedOf(r, x.Was), Now: x.Plan.Turns[r.Index].Horse.Name}
		if m.Now != m.Horse {
			horse = append(horse, m)
		} else {
			tack = append(tack, m)
		}
	}
	return horse, tack
}

// wayWords say what a way asks for.
func wayWords(q *asked, x *solver.Way) string {
	n := x.Notes[0]
	clock := func(m model.Minute) string { return m.Clock(q.week.House.TwelveHour) }
	switch x.Kind {
	case solver.PieceBack:
		return fmt.Sprintf("%s is back from repair, checked by somebody who may end a check", n.Piece.Tag)
	case solver.HoldLifted:
		return fmt.Sprintf("note %d does not stand, which keeps %s", n.Undoes, q.keeps(n.Undoes))
	case solver.WorkLeftOut:
		i := slices.IndexFunc(q.week.Facts, func(f *model.Stint) bool {
			return f.Meeting == nil && f.Date == n.Date && f.Turn.Horse == n.Horse && f.Start == n.From
		})
		return q.week.Facts[i].Name + " is left out"
	case solver.MoreHands:
		return fmt.Sprintf("%s can count on %s", n.Lesson.Name, n.Hands.Words())
	case solver.InArena:
		return fmt.Sprintf("%s is in %s", n.Lesson.Name, n.Arena.Name)
	case solver.OtherInstructor:
		return fmt.Sprintf("%s takes %s", n.Instructor.Name, n.Lesson.Name)
	case solver.LessonLater:
		return fmt.Sprintf("%s begins %d minutes later, at %s", n.Lesson.Name, x.Later, clock(n.From))
	case solver.Swap:
		return fmt.Sprintf("%s and %s change places: %s rides in %s, and %s in %s", x.Moved[0].Called(), x.Moved[1].Called(),
			x.Moved[0].Called(), n.Lesson.Name, x.Moved[1].Called(), x.Notes[1].Lesson.Name)
	}
	when := ""
	if n.Date != x.Notes[1].Date {
		when = " on " + n.Date.Words()
	}
	return fmt.Sprintf("%s rides in %s%s, not in %s", n.Rider.Called(), n.Lesson.Name, when, x.Notes[1].Lesson.Name)
}

// keeps says whom a note keeps on what.
func (q *asked) keeps(number int) string {
	for _, n := range q.week.Centre.Notes {
		if n.Number == number {
			on := n.Horse.Name
			if n.Seat != nil {
				on += " in " + n.Seat.Tag
			}
			return n.Rider.Called() + " on " + on
		}
	}
	return "a rider"
}

// wayLine is the command that takes a way.
func (o *rideOptions) wayLine(c *call, q *asked, x *solver.Way) *commandLine {
	n := x.Notes[0]
	take := func(said ...string) *commandLine { return o.line(c, q, "take", said...) }
	switch x.Kind {
	case solver.PieceBack:
		return take("piece-back", n.Piece.Tag)
	case solver.HoldLifted:
		return take("lift", strconv.Itoa(n.Undoes))
	case solver.WorkLeftOut:
		return take("leave-out", n.Horse.Name, n.From.String())
	case solver.MoreHands:
		return take(append([]string{"helpers", n.Lesson.Name}, strings.Fields(strings.ReplaceAll(n.Hands.Words(), " and ", " "))...)...)
	case solver.InArena:
		return take("move", n.Lesson.Name).with("--arena", n.Arena.Name)
	case solver.OtherInstructor:
		return take("instructor", n.Lesson.Name, n.Instructor.Name)
	case solver.LessonLater:
		return take("move", n.Lesson.Name, n.From.String())
	case solver.Swap:
		return take("swap", q.answersTo(x.Moved[1]))
	}
	return o.changeLine(c, q, n.Rider, x.Notes[1].Date, n.Lesson.Name, n.Date)
}

// changeLine is the command by which a rider rides in a lesson on a date, and not on
// the date from.
func (o *rideOptions) changeLine(c *call, q *asked, r *model.Rider, from model.Date, lesson string, on model.Date) *commandLine {
	l := o.line(c, q, "take", "change", q.answersTo(r), lesson)
	if on != from {
		l.with("--on", on.String())
	}
	return l
}

// byName is who does it, as an answer offers it to anybody.
var byName = []string{"--by", "NAME"}

// ways is the command that says what would help.
func (o *rideOptions) ways(c *call, q *asked) string { return o.line(c, q, "ways").typed() }

// line is another command about the ride.
func (o *rideOptions) line(c *call, q *asked, command string, more ...string) *commandLine {
	l := &commandLine{name: command, said: append([]string{c.args[0], q.answersTo(q.ride.Rider)}, more...)}
	l.about = []string{"--date", q.ride.Date().String()}
	if o.time != "" {
		l.about = append(l.about, "--time", o.time)
	}
	if o.plan != "" {
		l.about = append(l.about, "--plan", o.plan)
	}
	return l
}

func (a *waysAnswer) text(q *asked) string {
	var b strings.Builder
	name := q.ride.Rider.Called()
	fmt.Fprintf(&b, "%s (%s) is on the ground.\n", q.ride, q.ride.Meeting.Name)
	switch {
	case a.Better != nil:
		b.WriteString("\n" + wrap("", fmt.Sprintf("%s can ride with all that ride now, and nothing need change but the plan: it was not proved to seat the most.", name)))
		a.Better.changes(&b)
		b.WriteString("To have it:\n  " + a.Take + "\n")
	case len(a.Ways) == 0 && a.Care:
		b.WriteString("\n" + wrap("", "Nothing that is looked at would help: rules of care alone stand in the way, and those are never bent."))
	case len(a.Ways) == 0 && a.Whole:
		b.WriteString("\n" + wrap("", "Nothing that is looked at would help with all that ride now. Rules of care are never bent."))
	case len(a.Ways) == 0:
		b.WriteString("\n" + wrap("", "Nothing was found in the time given (--limit)."))
	default:
		b.WriteString("\n" + wrap("", fmt.Sprintf("Each of these seats %s with all that ride now, and keeps every rule; other dates stay as they are.", name)))
	}
	for i, x := range a.Ways {
		fmt.Fprintf(&b, "\n%d. %s", i+1, strings.TrimLeft(wrap("   ", x.Said+"."), " "))
		if len(x.Ask) > 0 {
			b.WriteString(wrap("   ", "Ask first: "+strings.TrimSuffix(strings.Join(x.Ask, ", "), ".")+"."))
		}
		b.WriteString(wrap("   ", x.outcome(name)))
		b.WriteString("   " + x.Take + "\n")
	}
	if a.Form != "" {
		b.WriteString("\n" + wrap("", "A form is renewed (then mend form_until), or extended to a date by somebody who may:") + "  " + a.Form + "\n")
	}
	if len(a.Ways) > 0 && !a.Whole {
		b.WriteString("\nThe time was over before all was looked at (--limit).\n")
	}
	return b.String()
}

// outcome says what the ride would have, and what else changes.
func (x *wayOut) outcome(name string) string {
	said := []string{fmt.Sprintf("%s has %s in %s", name, x.Horse, x.Seat)}
	for _, m := range x.Changes {
		said = append(said, fmt.Sprintf("%s (%s) %s, not %s", m.Rider, m.Lesson, m.Now, m.Horse))
	}
	for _, m := range x.Tack {
		said = append(said, fmt.Sprintf("%s (%s) other tack on %s", m.Rider, m.Lesson, m.Horse))
	}
	if len(said) == 1 {
		return said[0] + "; nothing else changes."
	}
	return strings.Join(said, "; ") + "."
}
