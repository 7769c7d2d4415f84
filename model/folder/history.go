package folder

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"tackwright/model"
)

// Change is one change that the program made to the folder, as history keeps it.
type Change struct {
	Number int // from 1, without gaps
	At     model.Instant
	By     string // name of the person
	What   string // in words
	Undoes int    // number of the change that it undid; 0: none

	posted int // version that it posted; 0: none
	note   int // number of the note that it added; 0: none
	files  []changedFile
}

// changedFile is what a change did to one file.
type changedFile struct {
	name   string
	before string // digest; "" it was not there
	after  string // digest; "" it is not there any more
	kept   bool   // text is what it was before, so that it can be put back
	text   string
}

var changedFileKeys = &table[changedFile]{
	head:  "[[file]] of a change",
	about: "One file that a change touched.",
	keys: []key[changedFile]{
		is("name", text, "the file, as seen from the folder", "", func(f *changedFile, v string) { f.name = v }).eg(`"ridden/2026-11-25.toml"`),
		is("before", text, "SHA-256 of what it held before", "it was not there", func(f *changedFile, v string) { f.before = v }).eg(`"9f86d081..."`),
		is("after", text, "SHA-256 of what it held afterwards", "it was gone", func(f *changedFile, v string) { f.after = v }).eg(`"60303ae2..."`),
		is("text", text, "what it held before, where undoing puts that back", "undoing adds a new fact", func(f *changedFile, v string) { f.kept, f.text = true, v }).eg(`"date = 2026-11-25"`),
	},
}

var changeKeys = &table[Change]{
	head:  "history/*/*.toml",
	about: "One change that the program made: who, when, what, and what it needs to undo it. Undoing is a change as well.",
	keys: []key[Change]{
		is("number", within(integer, 1, 1e8, "changes are numbered from 1"), "its number", "", func(c *Change, v int) { c.Number = v }),
		is("at", instants, "when", "", func(c *Change, v model.Instant) { c.At = v }),
		is("by", text, "who", "", func(c *Change, v string) { c.By = v }).eg(`"Jo Marsh"`),
		is("what", text, "what was done", "", func(c *Change, v string) { c.What = v }).eg(`"posted version 7"`),
		is("undoes", counted, "number of the change that it undid", "none", func(c *Change, v int) { c.Undoes = v }),
		is("posted", counted, "version that it posted", "none", func(c *Change, v int) { c.posted = v }),
		is("note", counted, "number of the note that it added", "none", func(c *Change, v int) { c.note = v }),
		is("file", list(tableForm("a file", `{ name = "notes/2026-11-25.toml" }`, changedFileKeys), "a list of files"), "files that it touched", "none", func(c *Change, v []changedFile) { c.files = v }),
	},
}

var counted = within(integer, 1, 1e8, "it is numbered from 1")

func (c *Change) text() []byte {
	var b bytes.Buffer
	line := func(key, value string) { fmt.Fprintf(&b, "%s = %s\n", key, value) }
	number := func(key string, n int) {
		if n != 0 {
			line(key, strconv.Itoa(n))
		}
	}
	number("number", c.Number)
	line("at", instantText(c.At))
	line("by", quote(c.By))
	line("what", quote(c.What))
	number("undoes", c.Undoes)
	number("posted", c.posted)
	number("note", c.note)
	for _, f := range c.files {
		b.WriteString("\n[[file]]\n")
		line("name", quote(f.name))
		if f.before != "" {
			line("before", quote(f.before))
		}
		if f.after != "" {
			line("after", quote(f.after))
		}
		if f.kept {
			line("text", block(f.text))
		}
	}
	return b.Bytes()
}

// block is a text of many lines as TOML has it: as it is where that can be.
func block(s string) string {
	plain := !strings.Contains(s, "'''") && !strings.HasSuffix(s, "'")
	for _, r := range s {
		plain = plain && (r >= ' ' && r != 0x7f || r == '\n' || r == '\t')
	}
	if plain {
		return "'''\n" + s + "'''"
	}
	return quote(s)
}

// historyName is where a change is kept: a file each, a hundred to a directory.
func historyName(number int) string { return fmt.Sprintf("history/%04d/%06d.toml", number/100, number) }

var (
	shardNames  = regexp.MustCompile(`^\d{4,}$`)
	changeNames = regexp.MustCompile(`^(\d{6,})\.toml$`)
)

// shards are the directories of changes, the latest first.
func (d disk) shards() ([]string, error) {
	entries, err := os.ReadDir(d.path("history"))
	if err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	var all []string
	for _, e := range entries {
		if e.IsDir() && shardNames.MatchString(e.Name()) {
			all = append(all, path.Join("history", e.Name()))
		}
	}
	slices.SortFunc(all, func(a, b string) int {
		return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(b, a)) // as numbers
	})
	return all, nil
}

// lastChange is the number of the latest change; 0 is none.
func (d disk) lastChange() (int, error) {
	shards, err := d.shards()
	last := 0
	for _, shard := range shards {
		if last > 0 || err != nil {
			break // a crash can leave the latest empty
		}
		entries, wrong := os.ReadDir(d.path(shard))
		err = wrong
		for _, e := range entries {
			if m := changeNames.FindStringSubmatch(e.Name()); m != nil {
				n, _ := strconv.Atoi(m[1])
				last = max(last, n)
			}
		}
	}
	return last, err
}

// change reads one change.
func (d disk) change(number int, under *journal) (*Change, error) {
	name := historyName(number)
	data, err := d.read(name)
	if data = under.over(name, data); err == nil && data == nil {
		return nil, refuse("there is no change %d", number)
	}
	if err != nil {
		return nil, err
	}
	r := newReader()
	root := r.parse(name, data)
	c := &Change{}
	if !changeKeys.read(r, root, c) || len(r.troubles) > 0 {
		return nil, fmt.Errorf("change %d cannot be read: %s", number, r.troubles[0].Message)
	}
	return c, nil
}

// History is the latest changes that the program made to the folder, newest
// first, at most so many.
func (f *Folder) History(most int) ([]*Change, error) {
	d := disk(f.Dir)
	under, err := d.unfinished()
	if err != nil {
		return nil, err
	}
	last, err := d.lastChangeUnder(under)
	if err != nil {
		return nil, err
	}
	var all []*Change
	for n := last; n > 0 && len(all) < most; n-- {
		c, err := d.change(n, under)
		if err != nil {
			return nil, err
		}
		all = append(all, c)
	}
	return all, nil
}

// lastChangeUnder counts a change that stands and is not in place yet.
func (d disk) lastChangeUnder(under *journal) (int, error) {
	last, err := d.lastChange()
	if under != nil && err == nil {
		for _, f := range under.Files {
			if m := changeNames.FindStringSubmatch(path.Base(f.Name)); m != nil && strings.HasPrefix(f.Name, "history/") {
				n, _ := strconv.Atoi(m[1])
				last = max(last, n)
			}
		}
	}
	return last, err
}

// touched is the latest of the changes after one that left the file as it is
// now; nil is none: then somebody edited it by hand.
func (d disk) touched(name string, now []byte, after int) *Change {
	last, err := d.lastChange()
	for n := last; n > after && err == nil; n-- {
		c, wrong := d.change(n, nil)
		if err = wrong; err != nil {
			break
		}
		if slices.ContainsFunc(c.files, func(f changedFile) bool { return f.name == name && f.after == digest(now) }) {
			return c
		}
	}
	return nil
}
