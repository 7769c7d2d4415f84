package desk

import (
	"cmp"
	"context"
	"crypto/rand"
	"errors"
	"slices"
	"sync"
	"time"

	"tackwright/cmd/tackwright/internal/desk/search"
	"tackwright/model"
)

// job is one search: what it looks for, how far it is, and what it found.
type job struct {
	id     string
	page   string // that shows it
	title  string
	least  model.Role // that may look at it
	back   string     // path of the page that it was asked for on
	begun  time.Time
	dates  search.Dates // of a plan
	args   []string     // of a command
	folder string       // its state when this was asked for; "" is not known

	stop     chan struct{} // closed: the best so far is wanted
	stopOnce sync.Once

	mu      sync.Mutex
	changed chan struct{} // closed when something of what follows changes
	waits   bool          // for another search to end
	goals   []goalView
	over    bool
	wrong   error

	// found, once over:
	reading *reading
	week    *model.Week
	plan    *model.Plan
	answer  search.Answer
	posted  int // version as which it was posted since; 0 not
	by      string
	at      model.Instant
}

// goalView is how far a goal of a plan is.
type goalView struct {
	Name, Words string
	Best, Bound int
	Begun       bool
	Proved      bool
	Now         bool // it is being worked on
	Later       bool // one before it is not proved, so that its bound says nothing
}

// mostJobs are kept in mind; the oldest that are over go first.
const mostJobs = 40

// jobs are searches under way, and those that are over. Each takes a whole
// processor, so that two run at a time: one that plans a week, which may take
// minutes, and one of all others, which nobody should wait for on a lame morning.
type jobs struct {
	mu          sync.Mutex
	all         []*job
	weeks, rest chan struct{} // each holds the one that runs
	running     sync.WaitGroup
}

// start begins a search, or joins one for the very same that waits or has just
// begun, the folder being the same: a button is soon touched twice.
func (d *desk) start(j *job) *job {
	all := &d.jobs
	all.mu.Lock()
	defer all.mu.Unlock()
	j.folder = d.readings.now()
	for _, x := range all.all {
		if x.same(j) && !x.isOver() && d.Now().Sub(x.begun) < 5*time.Second {
			return x
		}
	}
	if all.weeks == nil {
		all.weeks, all.rest = make(chan struct{}, 1), make(chan struct{}, 1)
	}
	line := all.rest
	if len(j.args) == 0 && !j.dates.Mends {
		line = all.weeks
	}
	if len(all.all) >= mostJobs {
		i := slices.IndexFunc(all.all, func(x *job) bool { return x.isOver() })
		all.all = slices.Delete(all.all, max(i, 0), max(i, 0)+1)
	}
	j.id, j.begun, j.waits = rand.Text(), d.Now(), true
	j.stop, j.changed = make(chan struct{}), make(chan struct{})
	all.all = append(all.all, j)
	all.running.Go(func() {
		select {
		case line <- struct{}{}:
			j.tell(func() { j.waits = false })
			err := d.run(j)
			if j.dates.Mends && errors.Is(err, search.ErrChanged) { // somebody noted something else: with that too
				err = d.run(j)
			}
			<-line
			j.tell(func() { j.over, j.wrong = true, err })
		case <-j.stop:
			j.tell(func() { j.over, j.wrong = true, no("it was stopped before it began") })
		case <-d.ctx.Done():
		}
	})
	return j
}

// same reports whether two look for the same.
func (j *job) same(as *job) bool {
	return j.folder != "" && j.folder == as.folder && j.page == as.page && j.back == as.back && j.dates == as.dates && slices.Equal(j.args, as.args)
}

// run searches, and lays down what was found.
func (d *desk) run(j *job) (err error) {
	if len(j.args) > 0 {
		ctx, cancel := context.WithCancel(d.ctx)
		defer cancel()
		go func() {
			select {
			case <-j.stop:
				cancel()
			case <-ctx.Done():
			}
		}()
		j.answer, err = search.Command(ctx, d.Search, j.args)
		return err
	}
	r, err := d.read(0)
	if err != nil {
		return err
	}
	if n := len(r.Mistakes()); n > 0 && !j.dates.Mends {
		return no("%s in the folder; mend first, then plan: %s", model.Count(n, "mistake"), r.Mistakes()[0].Message)
	}
	j.tell(func() { j.goals = goalsOf(j.dates.Week(r.Centre)) })
	w, p, err := search.Plan(d.ctx, d.Search, r.Folder, j.dates, j.stop, j.progress)
	if err != nil {
		return err
	}
	if !j.dates.Mends {
		if _, _, err := r.WritePlan(w, p); err != nil {
			return err
		}
		d.readings.forget()
	}
	j.tell(func() {
		j.reading, j.week, j.plan = r, w, p
		later := false
		for i := range j.goals {
			j.goals[i].Now, j.goals[i].Later = false, later
			for _, g := range p.Proof.Goals {
				if g.Name == j.goals[i].Name {
					j.goals[i].Best, j.goals[i].Bound, j.goals[i].Proved, j.goals[i].Begun = g.Value, g.Bound, g.Proved, true
				}
			}
			later = later || !j.goals[i].Proved
		}
	})
	return nil
}

// goalsOf a week in their order, before any was worked on.
func goalsOf(w *model.Week) (all []goalView) {
	for _, g := range w.Score(&model.Plan{Turns: make([]*model.Turn, len(w.Rides))}) {
		all = append(all, goalView{Name: g.Name, Words: g.Words})
	}
	return all
}

// progress takes in how far a goal is; those before it are proved, or were given up.
func (j *job) progress(x search.Progress) {
	j.tell(func() {
		at := slices.IndexFunc(j.goals, func(g goalView) bool { return g.Name == x.Goal })
		for i := range j.goals {
			j.goals[i].Now = i == at
			if i < at {
				j.goals[i].Proved = j.goals[i].Begun && j.goals[i].Best == j.goals[i].Bound
			}
		}
		if at >= 0 {
			j.goals[at].Best, j.goals[at].Bound, j.goals[at].Begun = x.Best, x.Bound, true
		}
	})
}

// tell changes the job, and wakes all who watch it.
func (j *job) tell(change func()) {
	j.mu.Lock()
	defer j.mu.Unlock()
	change()
	close(j.changed)
	j.changed = make(chan struct{})
}

func (j *job) isOver() bool {
	j.mu.Lock()
	defer j.mu.Unlock()
	return j.over
}

// end asks for the best so far.
func (j *job) end() { j.stopOnce.Do(func() { close(j.stop) }) }

// wait waits for all searches to end.
func (all *jobs) wait() { all.running.Wait() }

// find is the job of that id; nil is none.
func (all *jobs) find(id string) *job {
	all.mu.Lock()
	defer all.mu.Unlock()
	for _, j := range all.all {
		if j.id == id {
			return j
		}
	}
	return nil
}

// gap is how far from best a plan can be; "" where all is proved.
func gap(p *model.Plan) string {
	words := ""
	for _, g := range p.Proof.Goals {
		if !g.Proved {
			words = cmp.Or(words, g.Gap())
		}
	}
	return words
}
