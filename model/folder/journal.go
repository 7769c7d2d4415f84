package folder

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"path"
	"slices"
	"strings"
)

// journalFile holds a change from the moment it stands until all its files are
// in place. Whoever reads the folder meanwhile, or after a crash, sees the
// change whole; the next who writes completes it.
const journalFile = "history/unfinished.json"

// journal is a change that stands.
type journal struct{ Files []journalled }

// journalled is one file of it, before and after.
type journalled struct {
	Name   string
	Before string // its digest; "" there was none
	After  []byte
	Gone   bool // it is removed
}

// digest of a file's content; "" is that there is no file.
func digest(data []byte) string {
	if data == nil {
		return ""
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// unfinished is the change that is not in place yet; nil is none. What cannot be
// read was never acknowledged: it is written whole or not at all.
func (d disk) unfinished() (*journal, error) {
	data, err := d.read(journalFile)
	if data == nil || err != nil {
		return nil, err
	}
	var j journal
	if json.Unmarshal(data, &j) != nil {
		return nil, nil
	}
	return &j, nil
}

// over is what a file holds under the journal, given what is on the disk. A file
// that somebody edited since is as he left it.
func (j *journal) over(name string, now []byte) []byte {
	if j == nil {
		return now
	}
	i := slices.IndexFunc(j.Files, func(f journalled) bool { return f.Name == name })
	if i < 0 || digest(now) != j.Files[i].Before {
		return now
	}
	return j.Files[i].after()
}

// list is which files there are under the journal, given those on the disk.
func (j *journal) list(files []found) []found {
	if j == nil {
		return files
	}
	for _, f := range j.Files {
		dir := path.Dir(f.Name)
		if dir != "." && !slices.Contains(own, dir) {
			continue
		}
		i := slices.IndexFunc(files, func(x found) bool { return x.name == f.Name })
		switch {
		case f.Gone && i >= 0:
			files = slices.Delete(files, i, i+1)
		case !f.Gone && i < 0 && f.Before == "":
			files = append(files, found{name: f.Name})
		}
	}
	slices.SortFunc(files, func(a, b found) int { return strings.Compare(a.name, b.name) })
	return files
}

func (f journalled) after() []byte {
	switch {
	case f.Gone:
		return nil
	case f.After == nil:
		return []byte{}
	}
	return f.After
}

// record makes a change stand: from its last line on it does, whatever happens.
func (d disk) record(j *journal) (staged []string, err error) {
	defer func() {
		if err != nil {
			d.unstage(staged)
		}
	}()
	for _, f := range j.Files { // first of all, so that a full disk shows here
		name := ""
		if !f.Gone {
			if name, err = d.stage(f.Name, f.After); err != nil {
				return staged, &DiskError{Err: err}
			}
		}
		staged = append(staged, name)
	}
	text, err := json.Marshal(j)
	if err != nil {
		return staged, err
	}
	if err := d.put(journalFile, text); err != nil {
		wrong := &DiskError{Err: err}
		if d.remove(journalFile) != nil { // it may be in place, and not be known to last
			now, err := d.read(journalFile)
			wrong.Uncertain = now != nil || err != nil
		}
		return staged, wrong
	}
	return staged, nil
}

func (d disk) unstage(staged []string) {
	for _, name := range staged {
		if name != "" {
			d.remove(name) // where that fails too, the next write clears it away
		}
	}
}

// settle puts the files of a change that stands in place, and ends it.
func (d disk) settle(j *journal, staged []string) error {
	var dirs []string
	for i, f := range j.Files {
		var err error
		if f.Gone {
			err = d.remove(f.Name)
		} else {
			err = d.place(staged[i], f.Name)
		}
		if err != nil {
			return err
		}
		if dir := path.Dir(f.Name); !slices.Contains(dirs, dir) {
			dirs = append(dirs, dir)
		}
	}
	for _, dir := range dirs {
		if err := d.syncDir(dir); err != nil {
			return err
		}
	}
	return d.endJournal()
}

func (d disk) endJournal() error {
	if err := d.remove(journalFile); err != nil {
		return err
	}
	return d.syncDir(path.Dir(journalFile))
}

// complete puts in place what a crash left of a change that stands. A file that
// somebody edited since is left as it is.
func (d disk) complete() error {
	j, err := d.unfinished()
	if err != nil {
		return err
	}
	if j == nil {
		if data, err := d.read(journalFile); data == nil || err != nil {
			return err
		}
		return d.endJournal()
	}
	var rest journal
	var staged []string
	for _, f := range j.Files {
		now, err := d.read(f.Name)
		if err != nil {
			return err
		}
		if digest(now) != f.Before || digest(now) == digest(f.after()) {
			continue
		}
		name := ""
		if !f.Gone {
			if name, err = d.stage(f.Name, f.After); err != nil {
				d.unstage(staged)
				return fmt.Errorf("%s: %w", f.Name, err)
			}
		}
		rest.Files, staged = append(rest.Files, f), append(staged, name)
	}
	return d.settle(&rest, staged)
}
