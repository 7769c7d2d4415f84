package desk

import (
	"time"

	"tackwright/cmd/tackwright/internal/desk/search"
	"tackwright/model"
)

// planLimit is how long a week is planned at most; who watches may end it before.
const planLimit = 5 * time.Minute

// planWeek begins to plan the week of the address.
func planWeek(v *visit) error {
	first := v.date().WeekStart(v.reading.Centre.House.WeekStarts)
	if first+6 < v.reading.Today {
		return no("the week of %s is over", first.Words())
	}
	dates := search.Dates{From: first, Days: 7, Limit: planLimit}
	if k := v.reading.Clock; k.Real && first <= k.Today && k.Today <= first+6 {
		dates.Now = k.Now
	}
	j := v.start(&job{page: "planned", title: "Planning the week of " + first.Words(), least: model.Office, back: "/week/" + first.String(), dates: dates})
	return v.see("/job/" + j.id)
}

// plannedView is a plan that was found, before it is posted.
type plannedView struct {
	Back    string
	From    model.Date
	Summary string
	Proved  bool
	CouldBe string
	Goals   []goalView
	Ground  []rideView
	None    bool // there is nothing to plan
}

func showPlanned(v *visit, j *job) error {
	j.reading.Lock()
	defer j.reading.Unlock()
	s := &standing{week: j.week, plan: j.plan}
	x := &plannedView{Back: j.back, From: j.week.From, Summary: summary(j.week, j.plan), Proved: j.plan.Proof.Proved(), CouldBe: gap(j.plan), Goals: j.goals}
	open := 0
	for _, r := range j.week.Rides {
		if r.State != model.Open {
			continue
		}
		if open++; s.turn(r) == nil {
			x.Ground = append(x.Ground, timedRide(s, r))
		}
	}
	x.None = open == 0
	title := "The week of " + j.week.From.Words() + " is pencilled"
	if x.None {
		title = "Nothing to plan in the week of " + j.week.From.Words()
	}
	return v.show("planned", title, x)
}

// compareView is what is pencilled beside what is posted.
type compareView struct {
	From, Until model.Date
	Summary     string
	Proof       string // what is known of the pencilled plan
	Stale       bool   // the week has changed since, so that it cannot be posted
	Seal        string // of the pencilled plan, so that what was looked at is what is posted
	Replaces    []int
	Differs     []differView
	Same        int
	Broken      []string
}

type differView struct {
	Path, When, Rider string
	Before, After     string
}

// showCompare lays a pencilled week beside what is posted for it.
func showCompare(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	s, err := r.pencilledWeek(v.date())
	if err != nil {
		return err
	}
	w := s.week
	x := &compareView{From: w.From, Until: w.Until, Summary: summary(w, s.plan), Proof: s.proof(), Stale: s.stale, Seal: w.Fingerprint(s.plan)}
	for d := w.From; d <= w.Until; d++ {
		if n := r.Centre.VersionOn(d); n > 0 && (len(x.Replaces) == 0 || x.Replaces[len(x.Replaces)-1] != n) {
			x.Replaces = append(x.Replaces, n)
		}
		was := r.postedOn(d)
		if was == nil {
			continue
		}
		for _, ride := range w.Rides {
			if ride.Date() != d || ride.State != model.Open {
				continue
			}
			before, known := turnIn(was, ride)
			if now := s.turn(ride); !known || !now.Equal(before) {
				y := differView{Path: ridePath(ride), When: d.Words() + " " + ride.Start.Clock(w.House.TwelveHour), Rider: ride.Rider.Called(), Before: before.Words(), After: now.Words()}
				if !known {
					y.Before = "not posted"
				}
				x.Differs = append(x.Differs, y)
			} else {
				x.Same++
			}
		}
	}
	for _, b := range s.broken() {
		x.Broken = append(x.Broken, model.Sentence(b.Words))
	}
	return v.show("compare", "Post the week of "+w.From.Words()+"?", x)
}

// pencilledWeek is the plan that is pencilled for the whole week of a date.
func (r *reading) pencilledWeek(d model.Date) (*standing, error) {
	first := d.WeekStart(r.Centre.House.WeekStarts)
	s, err := r.pencilledOn(first)
	switch {
	case err != nil:
		return nil, err
	case s == nil || s.week.From != first || s.week.Until != first+6:
		return nil, no("no plan is pencilled for the week of %s; plan it first", first.Words())
	}
	return s, nil
}

// turnIn is the turn that another plan has for a ride; known is that it has the
// ride.
func turnIn(s *standing, r *model.Ride) (t *model.Turn, known bool) {
	for i, x := range s.week.Rides {
		if x.Rider == r.Rider && x.Meeting.Lesson == r.Meeting.Lesson && x.Date() == r.Date() && x.Start == r.Start {
			return s.plan.Turns[i], true
		}
	}
	return nil, false
}

// postWeek posts what is pencilled for a week, if it is what was looked at.
func postWeek(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	by, err := v.person()
	if err != nil {
		return err
	}
	s, err := r.pencilledWeek(v.date())
	if err != nil {
		return err
	}
	w, p := s.week, s.plan
	seal := w.Fingerprint(p)
	switch {
	case seal != v.r.PostFormValue("seal"):
		return no("what is pencilled is no longer what you looked at; look again, and post that")
	case r.Stands(w, p): // touched twice, or by two
		return v.see("/week/" + w.From.String())
	case s.stale:
		return no("the week has changed since it was pencilled; plan again, and post that")
	}
	if err := r.asStarted(w, p); err != nil {
		return err
	}
	if s.edited {
		bare := *p
		bare.Proof = model.Proof{}
		p = &bare
	}
	if _, err := r.Post(w, p, by, r.At()); err != nil {
		return err
	}
	v.readings.forget()
	return v.see("/week/" + w.From.String())
}

// asStarted is that a plan leaves what has started by now as it was told, where
// now is known.
func (r *reading) asStarted(w *model.Week, p *model.Plan) error {
	if !r.Real {
		return nil
	}
	if other := r.Centre.StartedOtherwise(w, p, r.Now); other != "" {
		return no("not posted: %s; look for a plan again from now on, and post that", other)
	}
	return nil
}
