package desk

import (
	"time"

	"tackwright/cmd/tackwright/internal/desk/search"
	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// mendLimit is how long a day is mended at most.
const mendLimit = 20 * time.Second

// mendDay begins to mend the day of the address.
func mendDay(v *visit) error {
	from := model.Minute(0)
	if said := v.r.PostFormValue("from"); said != "" {
		var err error
		if from, err = timeOf(said); err != nil {
			return err
		}
	}
	return v.mend(v.date(), from)
}

// mend begins to mend a day, what has started by from being a fact: that is said
// where the computer's own time does not tell.
func (v *visit) mend(d model.Date, from model.Minute) error {
	r := v.reading
	switch {
	case d < r.Today:
		return no("%s is over, so nothing of it can change", d.Words())
	case r.Centre.VersionOn(d) == 0:
		return no("nothing is posted for %s, so there is nothing to mend: plan it, and post that", d.Words())
	}
	dates := search.Dates{From: d, Days: 1, Mends: true, Limit: mendLimit}
	switch {
	case d == r.Today && r.Real:
		dates.Now = r.Now
	case from > 0:
		dates.Now = model.Instant{Date: d, Minute: from}
	}
	j := v.start(&job{page: "mended", title: "Mending " + d.Words(), least: model.Instructor, back: "/day/" + d.String(), dates: dates})
	return v.see("/job/" + j.id)
}

// mendedView is a day as it was posted and as it would be.
type mendedView struct {
	ID, Back  string
	Date      model.Date
	Changes   []changeView
	Proved    bool
	CouldBe   string
	Same      bool
	Posted    int
	Later     []string
	Suspended []string
	Slips     []noteView // that who looks may take back
	Moved     *paper.Sheet
}

type changeView struct {
	Path, When, Rider, Lesson, How string
	Before, After, Why             string
}

func showMended(v *visit, j *job) error {
	j.reading.Lock()
	defer j.reading.Unlock()
	w, p := j.week, j.plan
	x := &mendedView{ID: j.id, Back: j.back, Date: w.From, Proved: p.Proof.Proved(), CouldBe: gap(p), Posted: j.posted, Suspended: w.Suspended,
		Same: j.reading.Stands(w, p), Slips: v.slipsOn(w.From)}
	for _, c := range w.Changes(p) {
		before, after := c.ThenAndNow()
		x.Changes = append(x.Changes, changeView{Path: ridePath(c.Ride), When: c.Ride.Start.Clock(w.House.TwelveHour), Rider: c.Ride.Rider.Called(), Lesson: c.Ride.Meeting.Name,
			How: c.How(), Before: before, After: after, Why: model.Sentence(c.Why)})
	}
	for _, b := range w.LaterBroken(p) {
		x.Later = append(x.Later, model.Sentence(b.Words))
	}
	if s := j.moved(); s != nil {
		x.Moved = s
	}
	title := "How " + w.From.Words() + " can be mended"
	if j.posted > 0 {
		title = w.From.Words() + " is mended"
	}
	return v.show("mended", title, x)
}

// moved is the sheet of what moved, nil where nothing did. The caller holds the
// reading's lock.
func (j *job) moved() *paper.Sheet {
	stamp := sheet.Stamp{Version: j.posted, By: j.by, At: j.at, Printed: j.reading.Now}
	if m := sheet.WhatMoved(j.week, j.plan, j.week.From, stamp); len(m.Moves) > 0 {
		return sheet.MovedSheet([]*sheet.Moved{m})
	}
	return nil
}

// printMoved gives what moved for the printer.
func printMoved(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	if j.page != "mended" || !j.isOver() || j.wrong != nil {
		return notThere("nothing was mended there")
	}
	j.reading.Lock()
	defer j.reading.Unlock()
	s := j.moved()
	if s == nil {
		return notThere("nothing moved")
	}
	return v.pdf(s, "moved-"+j.week.From.String())
}

// postMended posts a day as it was mended.
func postMended(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	if j.page != "mended" || !j.isOver() || j.wrong != nil {
		return notThere("nothing was mended there")
	}
	by, err := v.person()
	if err != nil {
		return err
	}
	j.reading.Lock()
	defer j.reading.Unlock()
	switch {
	case j.posted > 0:
		return v.see("/job/" + j.id)
	case j.reading.Stands(j.week, j.plan):
		return no("not posted: it is what stands already")
	}
	j.reading.Clock = v.reading.Clock // the minutes that went by count
	if err := j.reading.asStarted(j.week, j.plan); err != nil {
		return err
	}
	at := j.reading.At()
	if !j.reading.Real && !j.week.Now.IsZero() { // the day was told, so its hour is too
		at = j.week.Now
	}
	version, err := j.reading.Post(j.week, j.plan, by, at)
	if err != nil {
		return err
	}
	v.readings.forget()
	j.tell(func() { j.posted, j.by, j.at = version, by.Name, at })
	return v.see("/job/" + j.id)
}
