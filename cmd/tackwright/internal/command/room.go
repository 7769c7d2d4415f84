package command

import (
	"cmp"
	"context"
	"slices"
	"time"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
	"tackwright/solver"
)

var roomCommand = &command{
	name: "room", args: "FOLDER [RIDER...]",
	short: "find room for riders from the wait list",
	about: `Of one RIDER: names each lesson of the week that could take her by kind, level,
size and her free hours, with horse and tack: first where nobody is disturbed,
then where one rider would have another horse, and so on; nobody who rides would
stand down. Private and closed lessons take nobody in, and who is away keeps her
place. Of several riders, or with none named of all who wait, it finds the most
that can have a place at once, each in one lesson, those who wait longest first,
and proves it where there is time.

It goes by the plan that is posted for each date, else by the pencilled one; where
the week has none it plans first. Who is on the ground in it stays there. It writes
nothing and places nobody: a rider is placed by the office, with a form in date
and the instructor's go-ahead, and who would have another horse is asked first, but
for riders who may be changed freely.
It looks at one week: before a standing place is given, ask of other weeks too.
`,
	example: `tackwright room examples/sallowdene "Ivor Tranmoor"`,
	least:   1, most: 40, answer: roomAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o roomOptions
		fs.StringVar(&o.week, "week", "", "the week of this `DATE`: 2026-11-25, today, tomorrow or a weekday; this week if not said")
		fs.DurationVar(&o.limit, "limit", 30*time.Second, "search no longer than this `TIME`; 30s if not said")
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error { return room(c, &o) }
	},
}

type roomOptions struct {
	week  string
	limit time.Duration
	today *string
	json  *bool
}

func room(c *call, o *roomOptions) error {
	if o.limit <= 0 {
		return wrongUse("--limit: a search takes some time, such as 30s")
	}
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	riders, err := c.asking(f.Centre)
	if err != nil {
		return err
	}
	d, err := k.date(cmp.Or(o.week, "today"))
	if err != nil {
		return err
	}
	until := time.Now().Add(o.limit)
	w, p, by, err := c.weekPlan(f, k, d.WeekStart(f.Centre.House.WeekStarts), o.limit/2)
	if err != nil {
		return err
	}
	ctx, cancel := context.WithDeadline(c.ctx, until)
	defer cancel()
	a := &roomAnswer{Centre: f.Centre.Name, From: w.From.String(), Until: w.Until.String(), Plan: by, Cautions: roomCautions, ToPlace: toPlace, week: w}
	open, riding := seated(w, p)
	a.Ground = open - riding
	if err := a.look(ctx, w, p, riders, len(c.args) == 2); err != nil {
		return err
	}
	c.tellEnd(ctx, o.limit, "this is what was found so far")
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text())
}

// asking are the riders that are named, else all who wait; who waits longest comes
// first.
func (c *call) asking(centre *model.Centre) ([]*model.Rider, error) {
	var riders []*model.Rider
	for _, said := range c.args[1:] {
		r, err := riderNamed(centre, said)
		switch {
		case err != nil:
			return nil, err
		case slices.Contains(riders, r):
			return nil, wrongUse("%s is named twice", r.Called())
		}
		riders = append(riders, r)
	}
	if len(c.args) == 1 {
		for _, r := range centre.Riders {
			if r.WaitingSince != 0 {
				riders = append(riders, r)
			}
		}
	}
	if len(riders) == 0 {
		return nil, no("nobody waits: no rider of the folder has waiting_since; name the one that is meant")
	}
	since := func(r *model.Rider) model.Date { // who does not wait comes last
		if r.WaitingSince == 0 {
			return model.On(9999, time.December, 31)
		}
		return r.WaitingSince
	}
	slices.SortStableFunc(riders, func(a, b *model.Rider) int {
		return cmp.Or(cmp.Compare(since(a), since(b)), cmp.Compare(a.Name, b.Name))
	})
	return riders, nil
}

// weekPlan is a week with what was posted for each date, else pencilled; where
// there is neither for any it is planned now. by says which.
func (c *call) weekPlan(f *folder.Folder, k clock, from model.Date, limit time.Duration) (w *model.Week, p *model.Plan, by string, err error) {
	w = f.Centre.Week(from, 7, k.Begun())
	p = &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	var have, lack []model.Date
	kinds := map[string]bool{}
	for _, d := range w.Dates() {
		if !slices.ContainsFunc(w.Rides, func(r *model.Ride) bool { return r.Date() == d && r.State == model.Open }) {
			continue
		}
		kind := "posted"
		x, err := posted(f, d, k.Begun())
		if err == nil && x == nil {
			kind = "pencilled"
			var files []string
			if files, err = folder.PlansOn(f.Dir, d); err == nil && len(files) > 0 {
				x, err = c.planFor(f, d, "by leaving one")
			}
		}
		switch {
		case err != nil:
			return nil, nil, "", err
		case x == nil:
			lack = append(lack, d)
		default:
			have = append(have, d)
			kinds[kind] = true
			seatAs(w, p, x, d)
		}
	}
	for i, r := range w.Rides {
		if r.State == model.Started {
			p.Turns[i] = r.Told
		}
	}
	switch {
	case len(have) == 0:
		if p, err = c.solve(w, limit); err == nil && len(w.Rides) > 0 && !p.Proof.Goals[0].Proved {
			err = no("the week has no plan, and the time was too short to make one that seats the most; make it with: tackwright plan %s %s", typed(f.Dir), from)
		}
		return w, p, "made now", err
	case len(lack) > 0:
		return nil, nil, "", no("there is no plan of %s yet; make it with: tackwright plan %s %s", lack[0].Words(), typed(f.Dir), from)
	}
	if broken := model.Broken(w.Audit(p)); len(broken) > 0 {
		return nil, nil, "", no("the plan is not as the folder is now: %s; plan again or repair, then ask", broken[0].Words)
	}
	switch {
	case len(kinds) == 2:
		by = "posted and pencilled"
	case kinds["posted"]:
		by = "posted"
	default:
		by = "pencilled"
	}
	return w, p, by, nil
}

// seatAs seats the open rides of a date as another plan has them.
func seatAs(w *model.Week, p *model.Plan, as *kept, d model.Date) {
	for i, r := range w.Rides {
		if r.Date() != d || r.State != model.Open {
			continue
		}
		for k, x := range as.week.Rides {
			if x.Rider == r.Rider && x.Meeting.Lesson == r.Meeting.Lesson && x.Date() == d && x.Start == r.Start {
				p.Turns[i] = as.plan.Turns[k]
			}
		}
	}
}

// look asks for every lesson of the week; of one rider for each by itself, of more
// for as many riders as can be at once.
func (a *roomAnswer) look(ctx context.Context, w *model.Week, p *model.Plan, riders []*model.Rider, one bool) error {
	var asks []model.Ask
	for _, r := range riders {
		x := &roomRider{Rider: r.Called(), Sessions: r.Sessions, rider: r}
		if r.WaitingSince != 0 {
			x.Since = r.WaitingSince.String()
		}
		for _, y := range w.Rides {
			if y.Rider == r {
				x.Has++
			}
		}
		for _, m := range w.Meetings {
			ask := model.Ask{Rider: r, Meeting: m}
			why, unchecked := w.TakesIn(ask)
			l := lessonOf(w, ask)
			l.Why, l.Unchecked = why, unchecked
			x.Lessons = append(x.Lessons, l)
			if why == "" {
				asks = append(asks, ask)
			}
		}
		a.Riders = append(a.Riders, x)
	}
	if !one {
		placed, most, err := solver.RoomForAll(ctx, w, p, asks)
		if err != nil {
			return err
		}
		a.atOnce(placed, most)
		asks = slices.DeleteFunc(asks, func(k model.Ask) bool { return a.of(k.Rider).Place != nil })
	}
	rooms, err := solver.RoomFor(ctx, w, p, asks)
	if err != nil {
		return err
	}
	for _, r := range rooms {
		a.fill(r)
	}
	return nil
}
