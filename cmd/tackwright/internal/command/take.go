package command

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
	"tackwright/solver"
)

var takeCommand = &command{
	name: "take", args: "FOLDER RIDER [KIND ...]",
	short: "take a way out: note it, and plan so that a rider rides",
	about: `Takes what tackwright ways offers, or any other change of these kinds: writes it as
day notes, and plans so that RIDER rides with all that ride now. As few of them as
can be have another horse, then other tack; other dates stay as they are. Where no
such plan is found, nothing is written. KIND is as in tackwright note:

  piece-back TAG          lift NUMBER             leave-out HORSE [TIME]
  helpers LESSON ...      instructor LESSON NAME  move LESSON [TIME] [--arena NAME]
  change RIDER LESSON     a rider rides in that lesson, --on another date of the
                          plan, in the place of hers
  swap OTHER              RIDER and another change places

Left out, it takes the better plan that tackwright why has found, where there is
one. Nobody is asked by this: ask first.

Where the plan was posted, the new one is posted as the next version; else it
takes the place of the pencilled one. Nothing is proved of it but that it keeps
every rule. tackwright undo takes back what was noted and posted.
`,
	example: `tackwright take examples/sallowdene Lionel helpers "Thu 13:30" 5 sidewalkers --date 2026-10-15 --by "Nell Ashworthy"`,
	least:   2, most: 9, answer: takeAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o takeOptions
		o.flags(fs)
		fs.StringVar(&o.arena, "arena", "", "in the arena of this `NAME`")
		fs.StringVar(&o.on, "on", "", "in the lesson of this `DATE`")
		o.by, o.now = byFlag(fs), nowFlag(fs)
		return func(c *call) error { return take(c, &o) }
	},
}

type takeOptions struct {
	rideOptions
	arena, on string
	by, now   *string
}

// takeAnswer is what take says as JSON.
type takeAnswer struct {
	Notes   []int     `json:"notes" about:"numbers of the notes that were written"`
	Ride    askedRide `json:"ride" about:"as it is now"`
	Seat    string    `json:"seat"`
	Changes []moved   `json:"changes" about:"others that have another horse"`
	Tack    []moved   `json:"tack" about:"others that have other tack on the same horse"`
	Posted  int       `json:"posted,omitempty" about:"the version under which it stands"`
	File    string    `json:"file,omitempty" about:"where the pencilled plan is"`
	Kept    string    `json:"kept,omitempty" about:"where an older one is kept that was edited by hand"`
}

func take(c *call, o *takeOptions) error {
	better := len(c.args) == 2
	about := "to be planned"
	if better {
		about = "on the ground"
	}
	q, err := o.ask(c, about, func(r *model.Ride, p *model.Plan) bool {
		return r.State == model.Open && (!better || p.Turns[r.Index] == nil)
	})
	if err != nil {
		return err
	}
	by, at, err := c.by(q.week.Centre, q.clock, *o.by, *o.now)
	if err != nil {
		return err
	}
	notes, err := o.notes(c, q, q.clock.Begun())
	if err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(c.ctx, o.limit)
	defer cancel()
	way, err := o.way(ctx, q, notes)
	switch {
	case err != nil:
		return err
	case way == nil && better:
		return no("not taken: no plan was found that seats %s with all that ride now; what would help: tackwright ways", q.ride)
	case way == nil:
		return no("not taken: no plan was found in which %s rides then with all that ride now", q.ride.Rider.Called())
	}
	a := &takeAnswer{}
	for _, n := range notes {
		n.By, n.At = by, at
		number, err := q.folder.AddNote(n)
		if err != nil {
			return errors.Join(written(err), a.half(c))
		}
		a.Notes = append(a.Notes, number)
	}
	if err := a.stand(c, q, way, by, at); err != nil {
		return errors.Join(err, a.half(c))
	}
	a.tell(way)
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(c, way))
}

// half is what was written where not all could be.
func (a *takeAnswer) half(c *call) error {
	if len(a.Notes) == 0 {
		return nil
	}
	return fmt.Errorf("%s written, but not all of it, and the plan is as it was: tackwright history %s lists what can be undone", model.Count(len(a.Notes), "note"), typed(c.args[0]))
}

// way is the plan with the notes; with none, the better one, whatever dates it
// changes.
func (o *takeOptions) way(ctx context.Context, q *asked, notes []*model.Note) (*solver.Way, error) {
	way, err := solver.Seat(ctx, q.week, q.plan, q.ride, notes...)
	if err != nil || way != nil || len(notes) > 0 {
		return way, err
	}
	found, err := solver.WhyGround(ctx, q.week, q.plan, q.ride)
	if err != nil || found.Better == nil {
		return nil, err
	}
	return &solver.Way{Week: q.week, Ride: q.ride, Plan: found.Better, Was: q.plan}, nil
}

// takes are the kinds of notes that can be taken.
var takes = []string{"piece-back", "lift", "leave-out", "helpers", "instructor", "move"}

// notes are what was typed behind RIDER.
func (o *takeOptions) notes(c *call, q *asked, now model.Instant) ([]*model.Note, error) {
	if len(c.args) == 2 {
		return nil, nil
	}
	word, args := c.args[2], c.args[3:]
	switch {
	case word == "change" && len(args) == 2:
		return o.change(q, now, args[0], args[1])
	case word == "swap" && len(args) == 1:
		return o.swap(q, now, args[0])
	case word == "change", word == "swap", !slices.Contains(takes, word):
		return nil, wrongUse("it is written: tackwright take FOLDER RIDER KIND ..., with change RIDER LESSON, swap OTHER or one of: %s", strings.Join(takes, ", "))
	}
	kind, err := noteKindOf(word)
	if err != nil {
		return nil, err
	}
	if len(args) < kind.least || len(args) > kind.most {
		return nil, wrongUse("it is written: %s", kind.usage())
	}
	opts := &noteOptions{date: q.ride.Date().String(), arena: o.arena, by: o.by, now: o.now, today: o.today}
	if kind.kind == model.NotePieceBack { // it is back when that is said
		opts.date = ""
	}
	s := &saying{opts: opts, args: args, centre: q.week.Centre}
	n, err := s.note(c, kind)
	if err != nil {
		return nil, err
	}
	if n.Kind == model.NotePieceBack && !n.By.May(model.EndsCheck) {
		return nil, no("%s may not end this; somebody who may end a check does", n.By.Name)
	}
	if x := q.week.Centre.Repeats(n); x != nil {
		return nil, no("not noted: note %d says the very same and stands", x.Number)
	}
	return []*model.Note{n}, nil
}

func (o *takeOptions) change(q *asked, now model.Instant, rider, lesson string) ([]*model.Note, error) {
	from, err := o.rideNamed(q, rider)
	if err != nil {
		return nil, err
	}
	date, err := q.dateOn(o.on, from)
	if err != nil {
		return nil, err
	}
	to, err := meetingNamed(q.week, lesson, date)
	if err != nil {
		return nil, err
	}
	return o.changes(q, now, lessonChange{from, to})
}

func (o *takeOptions) swap(q *asked, now model.Instant, rider string) ([]*model.Note, error) {
	other, err := o.rideNamed(q, rider)
	if err != nil {
		return nil, err
	}
	if other.Meeting == q.ride.Meeting {
		return nil, no("%s and %s ride in the same lesson", q.ride.Rider.Called(), other.Rider.Called())
	}
	return o.changes(q, now, lessonChange{q.ride, other.Meeting}, lessonChange{other, q.ride.Meeting})
}

// lessonChange is a ride that is to be in another lesson.
type lessonChange struct {
	ride *model.Ride
	to   *model.Meeting
}

// changes are the notes, if each lesson takes its rider in and she may be moved.
func (o *takeOptions) changes(q *asked, now model.Instant, all ...lessonChange) (notes []*model.Note, err error) {
	for _, x := range all {
		var leaves *model.Rider
		for _, y := range all {
			if y.ride.Meeting == x.to {
				leaves = y.ride.Rider
			}
		}
		switch why := q.week.NoPlace(model.Ask{Rider: x.ride.Rider, Meeting: x.to}, leaves); {
		case x.ride.Rider.MayChange == model.ChangeNever:
			return nil, no("%s is never moved to another lesson: the rider's entry says so", x.ride.Rider.Called())
		case !now.Before(model.Instant{Date: x.to.Date, Minute: x.to.Start}):
			return nil, no("%s has begun", x.to.Name)
		case why != "":
			return nil, no("%s cannot ride in %s: %s", x.ride.Rider.Called(), x.to.Name, why)
		}
		notes = append(notes, solver.Change(x.ride.Rider, x.ride.Meeting, x.to)...)
	}
	return notes, nil
}

// rideNamed is the open ride of a rider on the date; RIDER's is the one asked about.
func (o *takeOptions) rideNamed(q *asked, said string) (*model.Ride, error) {
	r, err := riderNamed(q.week.Centre, said)
	if err != nil {
		return nil, err
	}
	if r == q.ride.Rider {
		return q.ride, nil
	}
	var found []*model.Ride
	for _, x := range q.week.Rides {
		if x.Rider == r && x.Date() == q.ride.Date() && x.State == model.Open {
			found = append(found, x)
		}
	}
	if len(found) != 1 {
		return nil, no("%s has %s on %s that can be moved", r.Called(), model.Count(len(found), "ride"), q.ride.Date().Words())
	}
	return found[0], nil
}

// meetingNamed is a lesson on a date of the plan.
func meetingNamed(w *model.Week, said string, d model.Date) (*model.Meeting, error) {
	l, err := lessonNamed(w.Centre, said)
	if err != nil {
		return nil, err
	}
	for _, m := range w.Meetings {
		if m.Lesson == l && m.Date == d {
			return m, nil
		}
	}
	return nil, no("%s is not held on %s, or the plan is not of that date", l.Name, d.Words())
}

// stand makes the plan what is pencilled, or posted, in place of the one asked about.
func (a *takeAnswer) stand(c *call, q *asked, way *solver.Way, by *model.Person, at model.Instant) error {
	f, err := folder.Open(c.args[0])
	if err != nil {
		return err
	}
	w := f.Centre.Week(q.week.From, int(q.week.Until-q.week.From)+1, q.week.Now)
	p, err := solver.Transfer(w, way.Week, way.Plan)
	if err != nil {
		return err
	}
	if q.file == "" {
		if a.Posted, err = f.Post(w, p, by, at); err != nil {
			return written(err)
		}
	} else {
		var path, kept string
		if path, kept, err = f.WritePlan(w, p); err != nil {
			return err
		}
		a.File, a.Kept = filepath.ToSlash(path), filepath.ToSlash(kept)
	}
	return nil
}

func (a *takeAnswer) tell(way *solver.Way) {
	a.Ride, a.Seat = askedOf(way.Ride, way.Plan), way.Plan.Turns[way.Ride.Index].Seat.Tag
	a.Changes, a.Tack = movedBy(way)
}

func (a *takeAnswer) text(c *call, way *solver.Way) string {
	var b strings.Builder
	if n := len(a.Notes); n == 1 {
		fmt.Fprintf(&b, "Note %d is written.\n", a.Notes[0])
	} else if n > 1 {
		fmt.Fprintf(&b, "Notes %d to %d are written.\n", a.Notes[0], a.Notes[n-1])
	}
	fmt.Fprintf(&b, "%s rides %s in %s on %s at %s (%s).\n", a.Ride.Rider, a.Ride.Horse, a.Seat, way.Ride.Date().Words(),
		way.Ride.Start.Clock(way.Week.House.TwelveHour), a.Ride.Lesson)
	for _, m := range a.Changes {
		fmt.Fprintf(&b, "%s (%s) rides %s, not %s.\n", m.Rider, m.Lesson, m.Now, m.Horse)
	}
	for _, m := range a.Tack {
		fmt.Fprintf(&b, "%s (%s) has other tack on %s.\n", m.Rider, m.Lesson, m.Horse)
	}
	if a.Posted > 0 {
		fmt.Fprintf(&b, "It stands, as version %d; sheets of others are old.\n", a.Posted)
	} else {
		fmt.Fprintf(&b, "The plan is pencilled in %s.\n", a.File)
	}
	if a.Kept != "" {
		fmt.Fprintf(&b, "The plan that was edited by hand is kept in %s.\n", a.Kept)
	}
	b.WriteString(wrap("", "Nothing is proved of it but that it keeps every rule. What was noted and posted, tackwright history "+typed(c.args[0])+" lists, to undo."))
	return b.String()
}
