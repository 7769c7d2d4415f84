package folder

import (
	"bytes"
	"errors"
	"slices"

	"tackwright/model"
)

// How the folder is written.
//
// One program at a time writes, under a lock that it holds for that write alone.
// A change is laid down in history/unfinished.json with all that it puts in
// place, and from then on stands: whoever opens the folder sees it, whatever
// happens to the one who wrote. Then its files are put in place, each by a
// rename, and the journal goes. So a change is there whole or not at all.
//
// The centre of an open folder stays as it was read; open the folder again to
// plan by what was written.

// target is one file of a change.
type target struct {
	name string
	now  []byte // what it holds under the lock; nil: it is not there
	text []byte // what it is to hold; nil: it is removed
	keep bool   // history keeps what it held, so that it can be put back
}

// write makes one change, which prepare lays out once nobody else can write.
func (f *Folder) write(c *Change, prepare func(d disk) ([]target, error)) error {
	f.writing.Lock()
	defer f.writing.Unlock()
	d := disk(f.Dir)
	release, err := d.lock(c.By)
	if err != nil {
		return err
	}
	defer release()
	if err := errors.Join(d.complete(), d.clear()); err != nil {
		return &DiskError{Err: err}
	}
	targets, err := prepare(d)
	if err != nil {
		return err
	}
	last, err := d.lastChange()
	if err != nil {
		return err
	}
	c.Number = last + 1
	j := &journal{}
	for _, t := range targets {
		c.files = append(c.files, changedFile{name: t.name, before: digest(t.now), after: digest(t.text),
			kept: t.keep && t.now != nil, text: string(t.now)})
		j.Files = append(j.Files, journalled{t.name, digest(t.now), t.text, t.text == nil})
	}
	j.Files = append(j.Files, journalled{Name: historyName(c.Number), After: c.text()})
	staged, err := d.record(j)
	if err != nil {
		return err
	}
	// It stands. What hinders its files now hinders the next write, which
	// completes it; everyone who reads sees it already.
	if d.settle(j, staged) != nil {
		d.unstage(staged)
	}
	f.behind = true
	for _, t := range targets {
		f.known[t.name] = t.text
	}
	return nil
}

// asRead is what a file holds, if that is what was read of it when the folder
// was opened; nil is that it is not there.
func (f *Folder) asRead(d disk, name string) ([]byte, error) {
	now, err := d.read(name)
	if err != nil {
		return nil, err
	}
	if old := f.known[name]; (now == nil) != (old == nil) || !bytes.Equal(now, old) {
		return nil, &ChangedError{File: name, Change: d.touched(name, now, f.opened)}
	}
	return now, nil
}

// rewritten are files that are to hold other texts than were read of them.
func (f *Folder) rewritten(d disk, names []string, texts map[string][]byte) ([]target, error) {
	var all []target
	for _, name := range names {
		now, err := f.asRead(d, name)
		if err != nil {
			return nil, err
		}
		if !bytes.Equal(now, texts[name]) {
			all = append(all, target{name: name, now: now, text: texts[name], keep: true})
		}
	}
	return all, nil
}

// asLeft is what a file holds, if that was read or is what the program left
// there since.
func (f *Folder) asLeft(d disk, name string) ([]byte, error) {
	now, err := f.asRead(d, name)
	var changed *ChangedError
	if errors.As(err, &changed) && changed.Change != nil {
		return d.read(name)
	}
	return now, err
}

// unchanged is that all that a plan goes by is as it was read.
func (f *Folder) unchanged(d disk) error {
	if f.behind {
		return refuse("the folder was written since it was opened; open it again, and plan by what it says now")
	}
	files, err := look(f.Dir)
	if err != nil {
		return err
	}
	for _, x := range files {
		if !slices.Contains(f.listed, x) {
			now, err := d.read(x.name)
			if err != nil {
				return err
			}
			return &ChangedError{File: x.name, Change: d.touched(x.name, now, f.opened)}
		}
	}
	for _, x := range f.listed {
		if !slices.Contains(files, x) {
			return &ChangedError{File: x.name}
		}
	}
	for _, name := range f.read {
		if _, err := f.asRead(d, name); err != nil {
			return err
		}
	}
	return nil
}

// writer names who writes and when. A name is needed: every record has one.
func writer(by *model.Person, at model.Instant) (Change, error) {
	switch {
	case by == nil || by.Name == "":
		return Change{}, refuse("nobody is named who does this; name a person of the folder")
	case at.IsZero():
		return Change{}, refuse("it is not said when this is done")
	}
	return Change{By: by.Name, At: at}, nil
}
