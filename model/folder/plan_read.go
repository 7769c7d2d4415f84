package folder

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"

	"tackwright/model"
)

// ReadPlan reads a plan and makes the week of its dates from the folder as it
// is now. The path is as [Folder.WritePlan] returned it, or any file's. What is
// wrong in the file, or is of another week than the folder's, is a mistake; week
// and plan are nil where there is one. An error is that the file cannot be read
// at all.
func (f *Folder) ReadPlan(path string) (*model.Week, *model.Plan, []Trouble, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, nil, fmt.Errorf("the plan cannot be read: %w", err)
	}
	name := path
	if inside, err := filepath.Rel(f.Dir, path); err == nil && filepath.IsLocal(inside) {
		name = inside
	}
	r := *f.r // the folder's names, and troubles of its own
	r.troubles, r.noun, r.sources = nil, nil, maps.Clone(r.sources)
	root := r.parse(filepath.ToSlash(name), data)
	e := planEntry{}
	planKeys.read(&r, root, &e)
	r.inOrder(root, "from", "until", e.from, e.until)
	if e.until > e.from+6 {
		r.mistake(root.spot("until"), "a plan is of at most seven dates", "mend from or until")
	}
	if len(r.troubles) > 0 {
		sortTroubles(r.troubles)
		return nil, nil, r.troubles, nil
	}
	w := f.Centre.Week(e.from, int(e.until-e.from)+1, e.now)
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides)), Proof: e.proof}
	seen := make([]*node, len(w.Rides))
	for _, n := range e.rides {
		var s seatedEntry
		if !seatedKeys.read(&r, n, &s) {
			continue
		}
		turn := s.turn(&r, n)
		i := r.rideOf(w, n, &s)
		switch {
		case i < 0:
		case seen[i] != nil:
			r.mistake(n.span(), fmt.Sprintf("this ride is here twice: it is at %s as well", seen[i].span()), "keep one of the two")
		default:
			seen[i], p.Turns[i] = n, turn
			if turn == nil && len(s.ground) > 0 {
				p.Ground[i] = s.ground
			}
		}
	}
	for i, ride := range w.Rides {
		if seen[i] == nil && ride.State != model.Off && len(r.troubles) == 0 {
			r.mistake(root.span(), fmt.Sprintf("the plan does not have the ride of %s in %s, %s %s", ride.Rider.Name, ride.Meeting.Name, long(ride.Date()), ride.Start),
				"plan again, or add a [[ride]] of it")
		}
	}
	if len(r.troubles) > 0 {
		sortTroubles(r.troubles)
		return nil, nil, r.troubles, nil
	}
	return w, p, nil, nil
}

// rideOf finds the ride of the week that an entry is of, or reports that the
// week has it not; -1 is none.
func (r *reader) rideOf(w *model.Week, n *node, s *seatedEntry) int {
	other := -1
	for i, x := range w.Rides {
		if x.Date() != s.date || x.Meeting.Lesson != s.lesson || x.Rider != s.rider {
			continue
		}
		if x.Start == s.start && x.End == s.end {
			return i
		}
		other = i
	}
	if other >= 0 {
		x := w.Rides[other]
		r.mistake(n.spot("start"), fmt.Sprintf("%s rides in %s from %s to %s on %s", s.rider.Name, s.lesson.Name, x.Start, x.End, long(s.date)), "mend start and end, or plan again")
	} else {
		r.mistake(n.spot("rider"), fmt.Sprintf("%s has no ride in %s on %s", s.rider.Name, s.lesson.Name, long(s.date)), "leave this ride out, or plan again")
	}
	return -1
}
