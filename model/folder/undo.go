package folder

import (
	"fmt"
	"strconv"
	"strings"

	"tackwright/model"
)

// Undo undoes one of the changes of [Folder.History]; 0 is the latest that is
// neither undone nor itself an undoing. It is a change too, and so can be undone.
//
// What was posted or noted is never taken away: a posted version is withdrawn by
// a new one, in place of which the version before it stands again (withdraw.go),
// and a note is undone by a new note. Other files get back what they held, which
// is refused where they have changed since. Forgetting a rider cannot be undone.
func (f *Folder) Undo(number int, by *model.Person, at model.Instant) (*Change, error) {
	c, err := writer(by, at)
	if err != nil {
		return nil, err
	}
	version := 0
	err = f.write(&c, func(d disk) ([]target, error) {
		old, err := d.undoable(number)
		if err != nil {
			return nil, err
		}
		c.Undoes, c.What = old.Number, undid(old.What)
		switch {
		case old.posted != 0:
			t, n, err := f.withdrawal(d, old, c)
			c.posted, version = n, n
			return []target{t}, err
		case old.note != 0:
			if by := f.undoneBy(old.note); by != 0 {
				return nil, refuse("note %d does not stand already, by note %d", old.note, by)
			}
			n, err := d.nextNote()
			if err != nil {
				return nil, err
			}
			c.note = n
			t, err := f.noteTarget(d, at.Date, noteText(&model.Note{By: by, At: at, Date: at.Date, Undoes: old.note}, n))
			return []target{t}, err
		}
		return d.back(old)
	})
	if err != nil {
		return nil, err
	}
	f.version = max(f.version, version)
	return &c, nil
}

// undoneBy is the number of a note that stands, by which another does not; 0 is none.
func (f *Folder) undoneBy(note int) int {
	for _, n := range model.Standing(f.Centre.Notes) {
		if n.Undoes == note {
			return n.Number
		}
	}
	return 0
}

// undid are the words of undoing what a change did.
func undid(what string) string {
	if note, ok := strings.CutPrefix(what, "wrote note "); ok {
		return "undid note " + note
	}
	return "undid: " + what
}

// undoable is the change to undo.
func (d disk) undoable(number int) (*Change, error) {
	last, err := d.lastChange()
	if err != nil {
		return nil, err
	}
	undone := map[int]int{} // by which change
	for n := last; n > 0 && n >= number; n-- {
		c, err := d.change(n, nil)
		if err != nil {
			return nil, err
		}
		by := undone[n]
		if c.Undoes != 0 && by == 0 {
			undone[c.Undoes] = n
		}
		switch {
		case number == 0 && c.Undoes == 0 && by == 0, number == n && by == 0:
			return c, nil
		case number == n:
			return nil, refuse("change %d is undone already, by change %d", n, by)
		}
	}
	if number == 0 {
		return nil, refuse("there is nothing to undo")
	}
	return nil, refuse("there is no change %d", number)
}

// withdrawal is the posted file that withdraws the version of a change.
func (f *Folder) withdrawal(d disk, old *Change, c Change) (target, int, error) {
	var version int
	var dates [2]string
	for _, x := range old.files {
		data, err := d.read(x.name)
		if err != nil {
			return target{}, 0, err
		}
		root, _ := parse(x.name, withoutSources(data))
		for i, key := range []string{"from", "until"} {
			if p := root.get(key); p != nil {
				dates[i] = p.val.text
			}
		}
	}
	from, err := model.ParseDate(dates[0])
	if err != nil {
		return target{}, 0, refuse("version %d is not in posted/ any more", old.posted)
	}
	files, err := look(f.Dir)
	if err != nil {
		return target{}, 0, err
	}
	version = f.version
	for _, x := range files {
		_, _, v, _ := recordDates(x.name)
		version = max(version, v)
	}
	version++
	text := fmt.Sprintf("version = %d\nby = %s\nat = %s\nfrom = %s\nuntil = %s\nwithdraws = %s\n",
		version, quote(c.By), instantText(c.At), dates[0], dates[1], strconv.Itoa(old.posted))
	return target{name: postedName(from, version), text: []byte(text)}, version, nil
}

// back gives the files of a change what they held before it.
func (d disk) back(old *Change) ([]target, error) {
	var all []target
	for _, x := range old.files {
		if x.before != "" && !x.kept {
			return nil, refuse("change %d (%s) cannot be undone: what %s held before is not kept", old.Number, old.What, x.name)
		}
		now, err := d.read(x.name)
		if err != nil {
			return nil, err
		}
		if digest(now) != x.after {
			return nil, refuse("change %d (%s) cannot be undone: %s has changed since", old.Number, old.What, x.name)
		}
		t := target{name: x.name, now: now, keep: true}
		if x.kept {
			t.text = []byte(x.text)
		}
		all = append(all, t)
	}
	return all, nil
}
