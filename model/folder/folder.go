// Package folder turns a centre's folder of TOML files into a [model.Centre].
//
// A person writes the tables in any split over files that end in .toml at the
// top of the folder; notes/, posted/, ridden/ and standing/ are the program's own. [Keys]
// is the page of every table and key.
package folder

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"time"
	_ "time/tzdata" // time zones where the computer has none of its own

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

// Folder is a centre's folder as it was read. Several goroutines may read from
// one, and write by it.
type Folder struct {
	Dir    string
	Centre *model.Centre // without the notes and records that have a mistake
	r      *reader
	found  []Trouble // findings of reading

	opened  int               // the latest change when it was opened
	version int               // the latest posted one then
	listed  []found           // files that there were
	read    []string          // those that were read
	known   map[string][]byte // what is known to be in them, own writes included
	writing sync.Mutex
	seen    bool // a person has read the notes that could not be
	behind  bool // something was written since, which Centre does not know

	fresh map[string][]byte // files that are read as if they were there, and come with the first write
}

// Open reads a centre's folder. What is wrong in its files is not an error but
// a mistake, see [Folder.Mistakes]; an error is that the folder cannot be read
// at all. Of posted and ridden records those are read that a plan from today on
// goes by.
func Open(dir string) (*Folder, error) { return OpenAround(dir, 0) }

// OpenAround is Open, with the records that a week from the date on goes by; 0
// is today.
func OpenAround(dir string, date model.Date) (*Folder, error) {
	for try := 1; ; try++ {
		start, err := state(dir)
		if err != nil {
			return nil, fmt.Errorf("the folder cannot be read: %w", err)
		}
		f, err := open(dir, date, start)
		if end, wrong := state(dir); wrong == nil && start.equal(end) || try == 5 {
			return f, err
		} // somebody wrote meanwhile, so that some files may be older than others
	}
}

// states is how far the writing of a folder has come.
type states struct {
	last  int
	under *journal // a change that is not in place yet
}

func state(dir string) (states, error) {
	d := disk(dir)
	under, err := d.unfinished()
	if err != nil {
		return states{}, err
	}
	last, err := d.lastChangeUnder(under)
	return states{last, under}, err
}

func (s states) equal(t states) bool {
	return s.last == t.last && (s.under == nil) == (t.under == nil)
}

func open(dir string, date model.Date, at states) (*Folder, error) {
	files, err := look(dir)
	if err != nil && !(errors.Is(err, fs.ErrNotExist) && at.under != nil) { // it is to be made
		return nil, fmt.Errorf("the folder cannot be read: %w", err)
	}
	f := &Folder{Dir: dir, r: newReader(), opened: at.last, known: map[string][]byte{}}
	f.Centre = f.r.centre
	files = at.under.list(files)
	f.listed = files
	var first []string
	for _, x := range files {
		if x.unread != "" {
			f.found = append(f.found, Trouble{Span: Span{File: x.name}, Message: "this file is not read", Mend: x.unread})
			continue
		}
		_, _, version, _ := recordDates(x.name)
		f.version = max(f.version, version)
		if !isRecord(x.name) {
			first = append(first, x.name)
		}
	}
	roots, err := f.parseAll(first, at.under)
	if err != nil {
		return nil, err
	}
	f.r.readTops(roots["."])
	f.r.today = f.Centre.Today
	if f.r.today == 0 {
		f.r.today = model.DateOf(time.Now().In(f.Centre.Location()))
	}
	if date == 0 {
		date = f.r.today
	}
	f.r.readNotes(roots["notes"])
	matters := f.r.reachOf(date)
	var records []string
	for _, x := range files {
		if x.unread == "" && isRecord(x.name) && matters.has(x.name) {
			records = append(records, x.name)
		}
	}
	past, err := f.parseAll(records, at.under)
	if err != nil {
		return nil, err
	}
	f.version = max(f.version, f.r.readRecords(past["posted"], past["ridden"]))
	f.r.check()
	f.r.readStanding(roots["standing"])
	f.Centre.Obey()
	sortTroubles(f.r.troubles)
	return f, nil
}

// parseAll reads files of the folder, several at a time, and returns their trees
// by directory in the order of the names. Of a posted file it leaves out the
// texts that its week was solved from.
func (f *Folder) parseAll(names []string, under *journal) (map[string][]*node, error) {
	type file struct {
		data     []byte
		root     *node
		troubles []Trouble
		err      error
	}
	files := make([]file, len(names))
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(names)) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(names); i = int(next.Add(1)) - 1 {
				x := &files[i]
				if x.data, x.err = disk(f.Dir).read(names[i]); x.err != nil {
					continue
				}
				x.data = under.over(names[i], x.data)
				text := x.data
				if path.Dir(names[i]) == "posted" {
					text = withoutSources(text)
				}
				x.root, x.troubles = parse(names[i], text)
			}
		})
	}
	wait.Wait()
	roots := map[string][]*node{}
	for i, x := range files {
		if x.err != nil {
			return nil, fmt.Errorf("a file cannot be read: %w", x.err)
		}
		f.known[names[i]] = x.data
		f.read = append(f.read, names[i])
		f.r.take(x.root, x.troubles)
		roots[path.Dir(names[i])] = append(roots[path.Dir(names[i])], x.root)
	}
	return roots, nil
}

// Mistakes are all mistakes of the folder, in the order of their places. A plan
// is made only where there are none.
func (f *Folder) Mistakes() []Trouble { return f.r.troubles }

// Span is where a noun of the centre stands in the files: its table, or the
// value that the path of keys and numbers of items leads to. It is the table
// where the path leads nowhere, and zero for what no file has.
func (f *Folder) Span(noun any, path ...any) Span { return f.r.at(noun, path...) }

func newReader() *reader {
	c := &model.Centre{House: model.DefaultHouse()}
	return &reader{
		centre: c, sources: map[string]*source{}, entries: map[any]*node{}, standing: map[*model.Term]*node{},
		names: names{
			persons: newIndex[model.Person]("person"), arenas: newIndex[model.Arena]("arena"),
			horses: newIndex[model.Horse]("horse"), pieces: newIndex[model.Piece]("tack"),
			riders: newIndex[model.Rider]("rider"), lessons: newIndex[model.Lesson]("lesson"),
			terms: newIndex[model.Term]("term"),
		},
	}
}

func (r *reader) parse(file string, data []byte) *node {
	root, troubles := parse(file, data)
	r.take(root, troubles)
	return root
}

// take takes in a file that was parsed.
func (r *reader) take(root *node, troubles []Trouble) {
	r.sources[root.src.file] = root.src
	r.troubles = append(r.troubles, troubles...)
}

// readTops reads a person's files: first what there is and its names, then all
// the rest.
func (r *reader) readTops(tops []*node) {
	type entry struct {
		n    *node
		noun any
	}
	entries := map[string][]entry{}
	var heads []string
	for _, s := range sections {
		heads = append(heads, s.name)
	}
	for _, root := range tops {
		for _, p := range root.pairs {
			s := sectionOf(p.key)
			if s == nil {
				r.unknownTable(p, heads)
				if s = sectionOf(nearest(p.key, heads)); s == nil || p.val.kind != unstable.InlineTable && p.val.kind != unstable.Array {
					continue
				} // read as what it must be, so that what is wrong in it is named too
			}
			for _, n := range r.tables(s, p) {
				entries[s.name] = append(entries[s.name], entry{n, s.declare(r, n)})
			}
		}
	}
	for _, s := range sections {
		for _, e := range entries[s.name] {
			r.noun = e.noun
			s.fill(r, e.n, e.noun)
		}
	}
	r.noun = nil
	if len(entries["centre"]) == 0 {
		r.mistake(Span{}, "there is no [centre] in this folder", "write a file with: [centre] and beneath it: name = \"...\"; or make a new folder with: tackwright new")
	}
}

func sectionOf(name string) *section {
	for i := range sections {
		if sections[i].name == name {
			return &sections[i]
		}
	}
	return nil
}

// tables are the tables that stand under a key at the top of a file.
func (r *reader) tables(s *section, p *pair) []*node {
	head := fmt.Sprintf("[%s]", s.name)
	if s.many {
		head = "[" + head + "]"
	}
	switch {
	case !s.many && p.val.kind == unstable.InlineTable:
		return []*node{p.val}
	case s.many && p.val.kind == unstable.Array:
		var tables []*node
		for _, n := range p.val.items {
			if n.kind != unstable.InlineTable {
				r.mistake(n.span(), "here belongs a table", "write it under "+head)
				continue
			}
			tables = append(tables, n)
		}
		return tables
	}
	r.mistake(p.span(), fmt.Sprintf("%s is written as %s", s.name, head), "write "+head)
	return nil
}

func (r *reader) unknownTable(p *pair, known []string) {
	message := fmt.Sprintf("there is no table %q", p.key)
	if p.val.kind != unstable.InlineTable && p.val.kind != unstable.Array {
		message = fmt.Sprintf("the key %q stands outside of any table", p.key)
	}
	mend := "tables are: " + strings.Join(known, ", ")
	if near := nearest(p.key, known); near != "" {
		mend = fmt.Sprintf("did you mean %s?", near)
	}
	r.mistake(p.span(), message, mend)
}

// readNotes reads the files of notes/. A note with a mistake is left out of the
// centre, so that nothing acts on half of it.
func (r *reader) readNotes(files []*node) {
	for _, root := range files {
		for _, p := range root.pairs {
			if p.key != "note" {
				r.unknownKey(p, "notes/*.toml", []string{"note"})
				continue
			}
			for _, n := range r.tables(&section{name: "note", many: true}, p) {
				if note, ok := r.readNote(n); ok {
					r.centre.Notes = append(r.centre.Notes, note)
				}
			}
		}
	}
	r.numberNotes()
	r.noun = nil
}
