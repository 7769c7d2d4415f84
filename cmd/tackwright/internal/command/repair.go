package command

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/model/folder"
)

var repairCommand = &command{
	name: "repair", args: "FOLDER [DATE]",
	short: "mend what was posted for a day, with as few changes as can be",
	about: `Takes the day as it was posted, with all notes and edits since, and finds the
plan that differs from it in as few places as can be. DATE is today unless said.
Rides that have started by --from (the time now, unless said) are facts, and a
day that is over is closed, not mended. First, who was told that she rides still
does; then as few rides as can be change their horse, then their tack; then
whoever else can ride does; then the goals of any plan. Later days are left as
posted, unless --through names the last to change; all of them must be posted.

Prints each ride that changes, before and after, with the reason; what the barn
is to fetch and return, in order of time; who is to be told; and the rides posted
for later dates that no longer keep every rule, for the office. It changes
nothing: with --post the plan stands as the next version.

A mistake in the folder stops it where it can matter to those dates; one in the
entry of a rider, lesson, horse or seat that they do not speak of is only told.
A note that cannot be read stops nobody: it does not count, and what is written of
it is printed first, since it may say that a horse is out. Such a plan is posted
with --seen alone: whoever posts it has read those notes herself.
`,
	example: "tackwright repair examples/sallowdene 2026-10-14 --from 07:40",
	least:   1, most: 2, answer: repairAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o repairOptions
		fs.StringVar(&o.from, "from", "", "rides up to this `TIME`, such as 10:30 or 2026-11-25T10:30, have started")
		fs.StringVar(&o.through, "through", "", "change the dates up to this `DATE` too, at most seven in all")
		fs.DurationVar(&o.limit, "limit", 20*time.Second, "search no longer than this `TIME`")
		o.to, o.paper = toFlags(fs)
		fs.BoolVar(&o.post, "post", false, "make the repaired plan stand")
		fs.BoolVar(&o.seen, "seen", false, "notes that could not be read are read by a person, and nothing in them is against the plan")
		o.by = byFlag(fs)
		o.now = nowFlag(fs)
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error { return repair(c, &o) }
	},
}

type repairOptions struct {
	from, through  string
	now, today, by *string
	limit          time.Duration
	post, seen     bool
	putOptions
}

// repairAnswer is what repair says as JSON.
type repairAnswer struct {
	From    string         `json:"from" about:"first date"`
	Until   string         `json:"until" about:"last date, which counts"`
	Now     string         `json:"now,omitempty" about:"rides that had started then are facts"`
	Unread  []unreadNote   `json:"unread" about:"notes that could not be read and do not count: whoever goes by this reads them first"`
	Changes []change       `json:"changes" about:"rides that are not as posted"`
	Moved   []*sheet.Moved `json:"moved" about:"the sheet of each date on which something moved"`
	Later   []string       `json:"later" about:"what is posted for later dates and no longer keeps every rule"`
	Gone    []string       `json:"gone" about:"rides that were posted and that the folder no longer has"`
	Goals   []goal         `json:"goals" about:"in order; less is better"`
	Proved  bool           `json:"proved" about:"every goal is"`
	Same    bool           `json:"same" about:"it is what stands already, so there is nothing to post"`
	Posted  int            `json:"posted,omitempty" about:"the version under which it stands"`

	couldBe string
}

// unreadNote is a note that counts nowhere.
type unreadNote struct {
	File string `json:"file"`
	Line int    `json:"line"`
	Why  string `json:"why" about:"it could not be read"`
	Text string `json:"text" about:"of it, as it is written"`
}

// change is one ride that is not as posted.
type change struct {
	Date     string `json:"date"`
	Start    string `json:"start"`
	End      string `json:"end"`
	WasStart string `json:"was_start,omitempty" about:"that was posted, where it is another"`
	WasEnd   string `json:"was_end,omitempty" about:"that was posted, where it is another"`
	Lesson   string `json:"lesson"`
	Rider    string `json:"rider"`
	How      string `json:"how" about:"another horse, other tack, another time, another arena, another instructor, rides, on the ground, does not ride"`
	Before   string `json:"before,omitempty" about:"horse and tags as posted; none: on the ground"`
	After    string `json:"after,omitempty" about:"horse and tags now; none: on the ground"`
	Why      string `json:"why"`

	of model.Change
}

func repair(c *call, o *repairOptions) error {
	o.csv = new(bool)
	if err := o.check(); err != nil {
		return err
	}
	f, err := folder.Open(c.args[0])
	if err != nil {
		return err
	}
	var by *model.Person
	if o.post {
		if by, err = c.who(f.Centre, *o.by); err != nil {
			return err
		}
	}
	k, err := o.clock(c, f.Centre)
	if err != nil {
		return err
	}
	w, err := o.week(c, k, f.Centre)
	if err != nil {
		if wrong := c.whole(f); wrong != nil {
			return wrong
		}
		return err
	}
	if len(f.InTheWay(w)) > 0 {
		return c.whole(f)
	}
	c.goingOver(f)
	p, err := c.solve(w, o.limit)
	if err != nil {
		return err
	}
	a := &repairAnswer{From: w.From.String(), Until: w.Until.String(), Goals: goalsOf(w, p, true), Proved: p.Proof.Proved()}
	if !w.Now.IsZero() {
		a.Now = w.Now.String()
	}
	a.tell(w, p)
	for _, n := range f.NotesUnread() {
		a.Unread = append(a.Unread, unreadNote{n.Span.File, n.Span.Line, n.Message, n.Text})
	}
	at := k.at
	if !k.known && !w.Now.IsZero() { // the day is told, so its hour is too
		at = w.Now
	}
	a.Same = f.Stands(w, p)
	stamp := sheet.Stamp{At: at}
	if len(a.Unread) > 0 {
		stamp.Unread = unreadWords(f) + " could not be read"
	}
	if o.post {
		if err := a.mayPost(f, w, p, k); err != nil {
			return err
		}
		switch {
		case o.seen:
			f.HaveSeen()
		case len(a.Unread) > 0:
			fmt.Fprint(c.err, a.unread())
			return no("not posted: a horse may be out by what could not be read; mend that, or read it yourself and say --seen if nothing in it is against this plan")
		}
		if a.Posted, err = f.Post(w, p, by, at); err != nil {
			return written(err)
		}
		stamp.Version, stamp.By = a.Posted, by.Name
	}
	a.sheets(w, p, k.printed(stamp))
	if *o.json {
		return c.json(a)
	}
	if err := c.print(a.text(w, f, o)); err != nil || *o.to == "" {
		return err
	}
	if len(a.Moved) == 0 {
		return c.print("Nothing moved, so that nothing is written.\n")
	}
	return c.put(sheet.MovedSheet(a.Moved), o.putOptions)
}

// tell fills in what changes and what is left to the office.
func (a *repairAnswer) tell(w *model.Week, p *model.Plan) {
	for _, g := range p.Proof.Goals {
		a.couldBe = cmp.Or(a.couldBe, g.Gap())
	}
	for _, x := range w.Changes(p) {
		y := change{Date: x.Ride.Date().String(), Start: x.Ride.Start.String(), End: x.Ride.End.String(), Lesson: x.Ride.Meeting.Name,
			Rider: x.Ride.Rider.Called(), How: x.How(), Why: x.Why, of: x}
		if x.Before != nil {
			y.Before = x.Before.Words()
		}
		if x.After != nil {
			y.After = x.After.Words()
		}
		if was := x.Ride.Was; was != nil && was.Start != x.Ride.Start {
			y.WasStart = was.Start.String()
		}
		if was := x.Ride.Was; was != nil && was.End != x.Ride.End {
			y.WasEnd = was.End.String()
		}
		a.Changes = append(a.Changes, y)
	}
	for _, v := range w.LaterBroken(p) {
		a.Later = append(a.Later, v.Words)
	}
	for d := w.From; d <= w.Until; d++ {
		_, _, _, gone := w.Centre.PostedOn(d)
		for _, t := range gone {
			if t.Lesson == nil || t.Rider == nil {
				a.Gone = append(a.Gone, fmt.Sprintf("%s %s, %s", t.Date.Words(), t.Start.Clock(w.House.TwelveHour), t.LessonName))
			}
		}
	}
}

func (a *repairAnswer) sheets(w *model.Week, p *model.Plan, stamp sheet.Stamp) {
	for d := w.From; d <= w.Until; d++ {
		if m := sheet.WhatMoved(w, p, d, stamp); len(m.Moves) > 0 {
			a.Moved = append(a.Moved, m)
		}
	}
}

func (a *repairAnswer) text(w *model.Week, f *folder.Folder, o *repairOptions) string {
	var b strings.Builder
	b.WriteString(a.unread())
	fmt.Fprintf(&b, "%s, %s: %s.\n", w.Centre.Name, spanName(w), a.howMany())
	if a.Proved {
		b.WriteString(wrap("", "Proved: no plan keeps more riding of those who were told that they ride; of those as good in that, none keeps more of them on their horse, nor then in their tack."))
	} else {
		b.WriteString(wrap("", "Not proved to be best: "+cmp.Or(a.couldBe, "the search was not over")+"."))
	}
	for _, x := range a.Changes {
		fmt.Fprintf(&b, "\n  %s %s  %s (%s): %s\n", x.of.Ride.Date().Words(), x.of.Ride.Start.Clock(w.House.TwelveHour), x.Rider, x.Lesson, x.How)
		then, now := x.of.ThenAndNow()
		b.WriteString("      before  " + then + "\n")
		b.WriteString("      after   " + now + "\n")
		b.WriteString(wrap("      because ", x.Why))
	}
	for _, s := range w.Suspended {
		b.WriteString(wrap("  suspended: ", s))
	}
	list := func(title string, all []string) {
		if len(all) > 0 {
			b.WriteString("\n" + title + "\n")
		}
		for _, s := range all {
			b.WriteString(wrap("  ", s))
		}
	}
	list("POSTED ONCE, AND NO LONGER IN THE FOLDER", a.Gone)
	list("FOR THE OFFICE: POSTED FOR LATER DATES, AND NO LONGER IN ORDER", a.Later)
	for _, m := range a.Moved {
		b.WriteString("\n" + m.Text())
	}
	switch {
	case a.Posted > 0:
		fmt.Fprintf(&b, "\nIt stands, as version %d.\n", a.Posted)
	case a.Same:
		b.WriteString("\nIt stands already, so there is nothing to post.\n")
	case len(a.Unread) > 0 && !o.seen:
		fmt.Fprintf(&b, "\nNothing is changed yet. Once you have read what could not be, and nothing in it is against this:\n  tackwright repair %s %s --seen --post --by NAME\n", typed(f.Dir), strings.TrimSpace(w.From.String()+from(o)))
	default:
		fmt.Fprintf(&b, "\nNothing is changed yet. To make it stand:\n  tackwright repair %s %s --post --by NAME\n", typed(f.Dir), strings.TrimSpace(w.From.String()+from(o)))
	}
	return b.String()
}

// unread tells of notes that could not be read, as they are written: first of all,
// since a person must take them in where the program cannot.
func (a *repairAnswer) unread() string {
	if len(a.Unread) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("NOT READ, SO IT DOES NOT COUNT IN WHAT FOLLOWS. READ IT YOURSELF BEFORE ANYBODY RIDES:\na horse may be out by it, or a pairing forbidden.\n")
	for _, n := range a.Unread {
		b.WriteString(wrap("  ", fmt.Sprintf("%s, line %d: %s", n.File, n.Line, n.Why)))
		for line := range strings.Lines(n.Text) {
			b.WriteString("    | " + strings.TrimRight(line, "\r\n") + "\n")
		}
	}
	return b.String() + "\n"
}

func (a *repairAnswer) howMany() string {
	switch len(a.Changes) {
	case 0:
		return "nothing changes"
	case 1:
		return "1 ride is not as posted"
	}
	return fmt.Sprintf("%d rides are not as posted", len(a.Changes))
}

// from repeats the flags that say what is to be mended.
func from(o *repairOptions) string {
	s := ""
	if o.from != "" {
		s += " --from " + o.from
	}
	if o.through != "" {
		s += " --through " + o.through
	}
	if *o.now != "" {
		s += " --now " + *o.now
	}
	if o.seen {
		s += " --seen"
	}
	return s
}
