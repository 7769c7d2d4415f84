package folder

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"tackwright/model"
)

// Forgotten is what forgetting a rider has come to.
type Forgotten struct {
	As   string   // the name under which records keep what the horses did
	Left []string // files in the folder that still hold the name and are not the program's to change: copies, letters
}

// Forget takes a rider out of the folder for good. Her entry goes, and her place
// in lessons, bookings and pairings; pencilled plans that name her go; in
// posted, ridden, notes and history she is "rider forgotten 3", with no word
// about her, so that the horses' record stays whole. It cannot be undone, and
// changes of before it that would bring her back cannot either.
//
// It goes by her name, old names included, as it is written, in any case of
// letters. A first name alone in a remark, and what a backup or a sync service
// keeps, are for a person to look after. Any of her rides in a later posted week
// has to be planned again: the caller opens the folder and looks.
//
// It refuses where a file of the centre's changed since the folder was opened.
func (f *Folder) Forget(r *model.Rider, by *model.Person, at model.Instant) (*Forgotten, error) {
	c, err := writer(by, at)
	if err != nil {
		return nil, err
	}
	if !slices.Contains(f.Centre.Riders, r) {
		return nil, refuse("%s is not a rider of this folder", r.Name)
	}
	names := newEraser(append([]string{r.Name}, r.Was...))
	err = f.write(&c, func(d disk) ([]target, error) {
		all, err := d.everyFile()
		if err != nil {
			return nil, err
		}
		if names.as, err = d.nextForgotten(all); err != nil {
			return nil, err
		}
		c.What = "forgot a rider, who is now " + names.as
		return f.withoutRider(d, all, names)
	})
	if err != nil {
		return nil, err
	}
	left, err := disk(f.Dir).holding(names)
	return &Forgotten{As: names.as, Left: left}, err
}

// withoutRider are all files that hold a name, without it.
func (f *Folder) withoutRider(d disk, all []string, names *eraser) ([]target, error) {
	var targets []target
	after := newReader() // the centre's own files as they will be
	var tops []*node
	for _, name := range all {
		var now []byte
		var err error
		if top := isTop(name); top {
			now, err = f.asRead(d, name)
		} else {
			now, err = d.read(name)
		}
		if err != nil {
			return nil, err
		}
		text := now
		switch {
		case isTop(name):
			text = names.outOfCentre(name, now)
			tops = append(tops, after.parse(name, text))
		case !names.mayBeIn(now):
			continue
		case strings.HasPrefix(name, "plans/"):
			text = nil
		default:
			text = names.outOfRecord(name, now)
		}
		if string(text) != string(now) || text == nil {
			targets = append(targets, target{name: name, now: now, text: text})
		}
	}
	after.readTops(tops)
	after.check()
	if t := after.troubles; len(t) > 0 && len(f.Mistakes()) == 0 {
		return nil, refuse("%s cannot be taken out of %s without a mistake: %s; take her out of it by hand first", "the rider", t[0].Span.File, t[0].Message)
	}
	return targets, nil
}

// everyFile are the files that people and the program wrote, history and plans
// included; names only.
func (d disk) everyFile() ([]string, error) {
	files, err := look(string(d))
	if err != nil {
		return nil, err
	}
	var all []string
	for _, x := range files {
		if x.unread == "" {
			all = append(all, x.name)
		}
	}
	shards, err := d.shards()
	if err != nil {
		return nil, err
	}
	for _, dir := range append([]string{"plans"}, shards...) {
		entries, err := os.ReadDir(d.path(dir))
		if err != nil && !os.IsNotExist(err) {
			return nil, err
		}
		for _, e := range entries {
			if strings.HasSuffix(e.Name(), ".toml") && !e.IsDir() {
				all = append(all, path.Join(dir, e.Name()))
			}
		}
	}
	return all, nil
}

// nextForgotten is the next free name of a rider who is forgotten.
func (d disk) nextForgotten(all []string) (string, error) {
	last := 0
	for _, name := range all {
		data, err := d.read(name)
		if err != nil {
			return "", err
		}
		for _, m := range forgottenAnywhere.FindAllSubmatch(data, -1) {
			if n, err := strconv.Atoi(string(m[1])); err == nil {
				last = max(last, n)
			}
		}
	}
	return forgottenName(last + 1), nil
}

// holding are the files that hold a name still.
func (d disk) holding(names *eraser) ([]string, error) {
	var left []string
	err := filepath.WalkDir(string(d), func(file string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && e.Name() == ".git":
			return fs.SkipDir
		case !e.Type().IsRegular():
			return nil
		}
		data, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(string(d), file)
		if names.in(string(data)) {
			left = append(left, filepath.ToSlash(name))
		}
		return err
	})
	if err != nil {
		return left, fmt.Errorf("the rider is forgotten, but it is not known which files still name her: %w", err)
	}
	return left, nil
}
