package desk

import (
	"bytes"
	"context"
	"fmt"
	"net/http"
	"strings"
	"time"
)

// progressView is how far a search is.
type progressView struct {
	ID      string
	Path    string
	Waits   bool
	Goals   []goalView
	Seconds int
	Over    bool
	Slips   []noteView // that who looks may take back
}

// reload is for browsers without script.
func (x *progressView) reload() int {
	if x.Over {
		return 0
	}
	return 2
}

func (d *desk) progressOf(j *job) *progressView {
	j.mu.Lock()
	defer j.mu.Unlock()
	return &progressView{ID: j.id, Path: "/job/" + j.id, Waits: j.waits, Goals: append([]goalView{}, j.goals...), Seconds: int(d.Now().Sub(j.begun).Seconds()), Over: j.over}
}

// job is that of the address.
func (v *visit) job() (*job, error) {
	j := v.jobs.find(v.r.PathValue("job"))
	if j == nil {
		return nil, notThere("that search is no longer kept: the desk was started anew, or many came after it; what was pencilled, noted or posted is there all the same")
	}
	return j, v.may(route{least: j.least})
}

// showJob shows a search, under way or over.
func showJob(v *visit) error {
	j, err := v.job()
	switch {
	case err != nil:
		return err
	case !j.isOver():
		x := v.progressOf(j)
		if j.dates.Mends {
			x.Slips = v.slipsOn(j.dates.From)
		}
		return v.show("progress", j.title, x)
	case j.wrong != nil:
		v.back = j.back
		return j.wrong
	}
	return finished[j.page](v, j)
}

// finished are the pages of what was found.
var finished = map[string]func(*visit, *job) error{"planned": showPlanned, "mended": showMended, "why": showWhy, "whynot": showWhy, "ways": showWays, "take": showTaken, "room": showRoom, "buy": showBuy}

// watchJob tells a browser how far a search is, as it goes on (server-sent events).
func watchJob(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	v.w.Header().Set("Content-Type", "text/event-stream")
	to := http.NewResponseController(v.w)
	for {
		j.mu.Lock()
		changed := j.changed
		j.mu.Unlock()
		x := v.progressOf(j)
		var b bytes.Buffer
		if err := pages["progress"].ExecuteTemplate(&b, "goals", x); err != nil {
			return err
		}
		kind := "progress"
		if x.Over {
			kind = "over"
		}
		fmt.Fprintf(v.w, "event: %s\n", kind)
		for _, line := range strings.Split(b.String(), "\n") {
			fmt.Fprintf(v.w, "data: %s\n", line)
		}
		fmt.Fprint(v.w, "\n")
		if to.Flush() != nil || x.Over {
			return nil
		}
		next, cancel := context.WithTimeout(v.r.Context(), time.Second)
		select {
		case <-changed:
			time.Sleep(50 * time.Millisecond) // more may come at once
		case <-next.Done():
		}
		cancel()
		if v.r.Context().Err() != nil {
			return nil
		}
	}
}

// stopJob has a search end with the best that it has.
func stopJob(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	j.end()
	for deadline := time.Now().Add(3 * time.Second); !j.isOver() && time.Now().Before(deadline); {
		time.Sleep(20 * time.Millisecond)
	}
	return v.see("/job/" + j.id)
}
