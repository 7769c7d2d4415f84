package folder

import (
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"

	"tackwright/model"
)

// ReadPosted is a posted plan, one of f.Centre.Posted, with the week that it was
// solved from: made from the centre's files as they were, the notes that stood,
// and what was posted and ridden before. A file that does not hold these is read
// against the folder as it is now. What is wrong, or no longer there, is a
// mistake; week and plan are nil where there is one.
//
// Of a version that stands again for a withdrawn one it is the plan that was
// posted first. Rides of riders who have been forgotten are left out.
func (f *Folder) ReadPosted(p *model.Posted) (*model.Week, *model.Plan, []Trouble, error) {
	f.writing.Lock() // names that are gone are noted down while reading
	defer f.writing.Unlock()
	n := f.r.entries[p]
	if n == nil || n.src == nil {
		return nil, nil, nil, refuse("version %d is not of this folder", p.Version)
	}
	name := n.src.file
	data, err := disk(f.Dir).read(name)
	if err != nil || data == nil {
		return nil, nil, nil, fmt.Errorf("%s cannot be read: %w", name, err)
	}
	r := *f.r
	r.troubles, r.noun, r.sources = nil, nil, maps.Clone(f.r.sources)
	r.history = true
	root := r.parse(name, data)
	e := postedEntry{Posted: &model.Posted{}}
	postedKeys.read(&r, root, &e)
	if len(r.troubles) == 0 && len(e.sources) > 0 {
		then, err := f.then(name, &e)
		if err != nil {
			return nil, nil, nil, err
		}
		then.sources[name], r = r.sources[name], *then
	}
	if len(r.troubles) > 0 {
		sortTroubles(r.troubles)
		return nil, nil, r.troubles, nil
	}
	w := r.centre.Week(e.From, int(e.Until-e.From)+1, e.Now)
	plan := r.toldPlan(w, &e)
	if len(r.troubles) > 0 {
		sortTroubles(r.troubles)
		return nil, nil, r.troubles, nil
	}
	return w, plan, nil, nil
}

// then reads the centre as it was when a plan was posted.
func (f *Folder) then(name string, e *postedEntry) (*reader, error) {
	r := newReader()
	var tops, standing, notes []*node
	for _, x := range e.sources {
		root := r.parse(name+" "+x.file, []byte(x.text))
		if isStanding(x.file) {
			standing = append(standing, root)
		} else {
			tops = append(tops, root)
		}
	}
	r.readTops(tops)
	r.today = e.At.Date
	files, err := look(f.Dir)
	if err != nil {
		return nil, err
	}
	records := map[string][]*node{}
	d := disk(f.Dir)
	for _, x := range files {
		if x.unread != "" || path.Dir(x.name) != "notes" {
			continue
		}
		data, err := d.read(x.name)
		if err != nil {
			return nil, err
		}
		root := r.parse(x.name, data)
		root.keep("note", func(n *node) bool {
			number := n.get("number")
			return number != nil && atMost(number.val.text, e.Notes)
		})
		notes = append(notes, root)
	}
	r.readNotes(notes)
	matters := r.reachOf(e.From)
	for _, x := range files {
		sub := path.Dir(x.name)
		if x.unread != "" || sub != "posted" && sub != "ridden" || !matters.has(x.name) {
			continue
		}
		data, err := d.read(x.name)
		if err != nil {
			return nil, err
		}
		root := r.parse(x.name, withoutSources(data))
		version, at := root.get("version"), root.get("at")
		switch {
		case sub == "posted" && version != nil && !atMost(version.val.text, e.Version-1):
		case sub == "ridden" && at != nil && at.val.text > instantText(e.At): // both read the same in every place
		default:
			records[sub] = append(records[sub], root)
		}
	}
	r.readRecords(records["posted"], records["ridden"])
	r.check()
	r.readStanding(standing)
	r.centre.Obey()
	return r, nil
}

// keep leaves out the items of a list of tables that do not count.
func (n *node) keep(key string, counts func(*node) bool) {
	if p := n.get(key); p != nil {
		p.val.items = slices.DeleteFunc(p.val.items, func(x *node) bool { return !counts(x) })
	}
}

// atMost reports whether a number of a file is no more than n.
func atMost(number string, n int) bool {
	var v int
	_, err := fmt.Sscanf(strings.ReplaceAll(number, "_", ""), "%d", &v)
	return err == nil && v <= n
}

// toldPlan is what was told, as a plan of the week.
func (r *reader) toldPlan(w *model.Week, e *postedEntry) *model.Plan {
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides)), Proof: e.proof}
	r.history = true
	for _, n := range e.rides {
		var t toldEntry
		if !toldKeys.read(r, n, &t) || isForgotten(t.Rider.Name) {
			continue
		}
		turn := t.turn(r, n)
		if !e.Now.IsZero() && !e.Now.Before(model.Instant{Date: t.Date, Minute: t.Start}) {
			continue // a fact of its week
		}
		s := seatedEntry{date: t.Date, start: t.Start, end: t.End, lesson: t.Lesson, rider: t.Rider}
		if i := r.rideOf(w, n, &s); i >= 0 {
			p.Turns[i], p.Ground[i] = turn, t.ground
		}
	}
	for i, x := range w.Rides {
		if x.State == model.Started {
			p.Turns[i] = x.Told
		}
	}
	return p
}
