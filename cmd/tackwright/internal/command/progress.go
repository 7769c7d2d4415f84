package command

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"tackwright/model"
)

// progress is one line of a terminal that is written again and again: the goal
// being worked on, the best so far, its bound, and the seconds gone by.
type progress struct {
	to    io.Writer
	now   func() time.Time
	begun time.Time
	words map[string]string // of goals, by name
	stop  chan struct{}
	done  sync.WaitGroup

	mu    sync.Mutex
	goal  string // being worked on
	far   string // how far it is
	shown int    // letters on the line
}

// showProgress begins the line, which goes on counting seconds until end.
func showProgress(to io.Writer, w *model.Week, now func() time.Time) *progress {
	p := &progress{to: to, now: now, begun: now(), words: map[string]string{"": "looking for a first plan"}, stop: make(chan struct{})}
	for _, g := range w.Score(&model.Plan{Turns: make([]*model.Turn, len(w.Rides))}) {
		p.words[g.Name] = g.Words
	}
	p.write()
	p.done.Go(func() {
		tick := time.NewTicker(time.Second / 4)
		defer tick.Stop()
		for {
			select {
			case <-p.stop:
				return
			case <-tick.C:
				p.mu.Lock()
				p.write()
				p.mu.Unlock()
			}
		}
	})
	return p
}

// tell says how far a goal is. A new goal shows at once, other news with the
// next tick.
func (p *progress) tell(goal string, best, bound int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.far = fmt.Sprintf(": %d so far, at least %d", best, bound)
	if p.goal != goal {
		p.goal = goal
		p.write()
	}
}

// write writes the line over itself. A goal's words are cut where the line would
// go on to the next of a terminal of 80 letters.
func (p *progress) write() {
	words := []rune(p.words[p.goal])
	rest := fmt.Sprintf("%s, %.0f s", p.far, p.now().Sub(p.begun).Seconds())
	if room := wide - 1 - len(rest); len(words) > room {
		words = append(words[:room-3:room-3], '.', '.', '.')
	}
	p.over(string(words) + rest)
}

// over wipes what was longer with blanks: not every terminal knows a sign for it.
func (p *progress) over(line string) {
	n := utf8.RuneCountInString(line)
	fmt.Fprint(p.to, "\r"+line+strings.Repeat(" ", max(0, p.shown-n)))
	p.shown = n
}

// end wipes the line.
func (p *progress) end() {
	close(p.stop)
	p.done.Wait()
	p.over("")
	fmt.Fprint(p.to, "\r")
}
