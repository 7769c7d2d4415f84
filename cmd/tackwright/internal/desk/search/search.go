// Package search is how the desk has something searched for: by a process of its
// own, so that no page waits for it, and so that it runs on one processor as the
// commands do and finds what they find. The two talk in lines of JSON, and what a
// plan is made of goes by name. A plan that comes back is audited against the week
// here, and its proof must be of this very week.
package search

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"tackwright/model"
	"tackwright/model/folder"
	"tackwright/solver"
)

// Runner runs the other end of a search, which is [Serve]: it reads a request from
// in, and writes to out until it is done. It ends early where in ends.
type Runner func(ctx context.Context, in io.Reader, out io.Writer) error

// Dates are to be planned, or mended.
type Dates struct {
	From  model.Date
	Days  int
	Now   model.Instant
	Mends bool
	Limit time.Duration // of the search
}

// Week is the week of the dates.
func (d Dates) Week(c *model.Centre) *model.Week {
	if d.Mends {
		return c.Repair(d.From, d.Days, d.Now)
	}
	return c.Week(d.From, d.Days, d.Now)
}

// Progress is how far a goal is.
type Progress struct {
	Goal        string
	Best, Bound int
}

// Answer is what a command said.
type Answer struct {
	Status     int
	Out, Wrong string
}

// Complaint is what the command said went wrong.
func (a Answer) Complaint() string {
	return strings.TrimSpace(strings.TrimPrefix(a.Wrong, "tackwright: "))
}

// request is one line that goes there.
type request struct {
	Dir   string
	Dates *Dates   `json:",omitempty"`
	Args  []string `json:",omitempty"` // a command that takes a search
}

// reply is one line that comes back; the last has no Progress.
type reply struct {
	Progress *Progress `json:",omitempty"`
	Plan     *written  `json:",omitempty"`
	Answer   *Answer   `json:",omitempty"`
	Wrong    string    `json:",omitempty"`
}

// Serve answers one request. run runs a command; a search for a plan ends with the
// best that it has when ctx or in ends.
func Serve(ctx context.Context, in io.Reader, out io.Writer, run func(ctx context.Context, args []string) Answer) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	lines := json.NewDecoder(in)
	var q request
	if err := lines.Decode(&q); err != nil {
		return fmt.Errorf("no request came: %w", err)
	}
	go func() { // nothing more comes but the end
		io.Copy(io.Discard, in)
		cancel()
	}()
	to := json.NewEncoder(out)
	if q.Dates == nil {
		a := run(ctx, q.Args)
		return to.Encode(reply{Answer: &a})
	}
	p, err := plan(ctx, q, func(x Progress) { to.Encode(reply{Progress: &x}) })
	if err != nil {
		return to.Encode(reply{Wrong: err.Error()})
	}
	return to.Encode(reply{Plan: write(p)})
}

// often is how often progress is told of one goal.
const often = 100 * time.Millisecond

func plan(ctx context.Context, q request, told func(Progress)) (*model.Plan, error) {
	f, err := folder.Open(q.Dir)
	if err != nil {
		return nil, err
	}
	ctx, cancel := context.WithTimeout(ctx, q.Dates.Limit)
	defer cancel()
	var held *Progress // not told yet
	last, at := "", time.Time{}
	p, err := solver.Plan(ctx, q.Dates.Week(f.Centre), solver.Options{Progress: func(goal string, best, bound int) {
		if goal != last && held != nil {
			told(*held)
		}
		held = &Progress{goal, best, bound}
		if now := time.Now(); goal != last || now.Sub(at) > often {
			told(*held)
			held, last, at = nil, goal, now
		}
	}})
	if held != nil {
		told(*held)
	}
	return p, err
}

// Plan has a plan of the dates searched for, for a folder as it was read. Where
// stop is closed the best so far is wanted. It tells progress as it comes.
func Plan(ctx context.Context, r Runner, f *folder.Folder, d Dates, stop <-chan struct{}, told func(Progress)) (*model.Week, *model.Plan, error) {
	last, err := ask(ctx, r, request{Dir: f.Dir, Dates: &d}, stop, told)
	if err != nil {
		return nil, nil, err
	}
	if last.Plan == nil {
		return nil, nil, errors.New(last.Wrong)
	}
	w := d.Week(f.Centre)
	p, err := last.Plan.read(w)
	if err != nil {
		return nil, nil, err
	}
	if !w.ProofCovers(p) {
		return nil, nil, ErrChanged
	}
	if broken := model.Broken(w.Audit(p)); len(broken) > 0 {
		return nil, nil, fmt.Errorf("the plan found breaks a rule, which is a bug of this program: %s", broken[0].Words)
	}
	return w, p, nil
}

// ErrChanged is that the week searched is not the week here any more.
var ErrChanged = errors.New("the folder was changed while the plan was searched for; start it again")

// Command has a command run that takes a search.
func Command(ctx context.Context, r Runner, args []string) (Answer, error) {
	last, err := ask(ctx, r, request{Args: args}, nil, nil)
	if err != nil {
		return Answer{}, err
	}
	if last.Answer == nil {
		return Answer{}, errors.New(last.Wrong)
	}
	return *last.Answer, nil
}

// ask sends a request and takes in what comes back.
func ask(ctx context.Context, r Runner, q request, stop <-chan struct{}, told func(Progress)) (*reply, error) {
	text, err := json.Marshal(q)
	if err != nil {
		return nil, err
	}
	there, send := io.Pipe()
	take, here := io.Pipe()
	ran := make(chan error, 1)
	go func() {
		err := r(ctx, there, here)
		there.Close()
		here.CloseWithError(io.EOF)
		ran <- err
	}()
	defer func() {
		send.Close()
		take.Close()
		<-ran
		ran <- nil
	}()
	go func() {
		send.Write(append(text, '\n'))
		select {
		case <-stop:
		case <-ctx.Done():
		case <-ran:
			ran <- nil
		}
		send.Close()
	}()
	for lines := json.NewDecoder(take); ; {
		var x reply
		if err := lines.Decode(&x); err != nil {
			if ctx.Err() != nil {
				return nil, ctx.Err()
			}
			return nil, fmt.Errorf("the search ended without an answer: %w", err)
		}
		if x.Progress == nil {
			return &x, nil
		}
		told(*x.Progress)
	}
}
