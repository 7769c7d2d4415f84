package desk

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"tackwright/model"
	"tackwright/model/folder"
)

// reading is the folder as it was read, with what was made of it since. Its
// weeks are worked on under its lock.
type reading struct {
	sync.Mutex
	*folder.Folder
	model.Clock
	made map[string]any // by what was asked, for the minute of the clock
}

// readings are kept until a file of the folder changes: one that goes by today,
// and one for each date before it that is looked at.
type readings struct {
	sync.Mutex
	dir    string
	state  string
	sure   bool // no file had changed shortly before state was taken
	around map[model.Date]*reading
}

// read is the folder as it is now, with the records that a date goes by; 0 is
// today.
func (d *desk) read(date model.Date) (*reading, error) {
	r := &d.readings
	r.Lock()
	defer r.Unlock()
	state, sure, err := stateOf(r.dir)
	if err != nil {
		return nil, fmt.Errorf("the folder cannot be read: %w", err)
	}
	if state != r.state || !r.sure {
		r.state, r.sure, r.around = state, sure, map[model.Date]*reading{}
	}
	x := r.around[0]
	if x == nil {
		f, err := folder.Open(r.dir)
		if err != nil {
			return nil, err
		}
		x = &reading{Folder: f}
		r.around[0] = x
	}
	k := x.Centre.Clock(d.Now())
	if date != 0 && date < k.Today {
		first := date.WeekStart(x.Centre.House.WeekStarts)
		if x = r.around[first]; x == nil {
			f, err := folder.OpenAround(r.dir, first)
			if err != nil {
				return nil, err
			}
			x = &reading{Folder: f}
			r.around[first] = x
		}
	}
	x.Lock()
	defer x.Unlock()
	if x.made == nil || x.Clock != k {
		x.Clock, x.made = k, map[string]any{}
	}
	return x, nil
}

// forget has the folder read anew after a write.
func (r *readings) forget() {
	r.Lock()
	defer r.Unlock()
	r.state = ""
}

// now is the state of the folder as it was read last; "" where it was written since.
func (r *readings) now() string {
	r.Lock()
	defer r.Unlock()
	return r.state
}

// shortly is how long after a change a file may change again without its time
// telling: clocks of files are coarse.
const shortly = 2 * time.Second

// stateOf tells one state of the folder's files from another, by their names,
// lengths and times. Those of history/ are never changed in place, nor by hand, so that
// the directory's time tells.
func stateOf(dir string) (state string, sure bool, err error) {
	var b strings.Builder
	latest := time.Time{}
	note := func(name string, info os.FileInfo) {
		if t := info.ModTime(); t.After(latest) {
			latest = t
		}
		fmt.Fprintf(&b, "%s %d %d\n", name, info.Size(), info.ModTime().UnixNano())
	}
	for _, sub := range []string{".", "notes", "plans", "posted", "standing", "ridden", "ticks"} {
		entries, err := os.ReadDir(filepath.Join(dir, sub))
		if err != nil && sub == "." {
			return "", false, err
		}
		for _, e := range entries {
			if info, err := e.Info(); err == nil && !e.IsDir() {
				note(sub+"/"+e.Name(), info)
			}
		}
	}
	if info, err := os.Stat(filepath.Join(dir, "history")); err == nil {
		note("history", info)
	}
	return b.String(), time.Since(latest) > shortly, nil
}

// once is made at its first asking, for as long as the reading and its minute
// last. The caller holds the reading's lock.
func once[T any](r *reading, key string, make func() (T, error)) (T, error) {
	type made struct {
		it  T
		err error
	}
	if x, ok := r.made[key].(made); ok {
		return x.it, x.err
	}
	it, err := make()
	r.made[key] = made{it, err}
	return it, err
}
