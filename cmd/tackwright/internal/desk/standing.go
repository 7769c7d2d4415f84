package desk

import (
	"fmt"
	"path/filepath"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/model/folder"
)

// standing is a plan that people go by, or that is pencilled for them to see.
type standing struct {
	week   *model.Week
	plan   *model.Plan
	stamp  sheet.Stamp
	file   string            // of a pencilled plan
	found  []model.Violation // by the audit, those of open rides first
	gone   []model.Told      // rides that were posted, and that the folder no longer has
	newer  bool              // notes for the date say otherwise than what was posted goes by
	edited bool              // by hand, since it was pencilled
	stale  bool              // what was proved of it is not of the week as it is now
	none   bool              // there is no plan: nobody has a horse, and nobody is on the ground
}

func (s *standing) posted() bool { return s.stamp.Version > 0 }

// proof is what is known of a pencilled plan: one that was proved is called best
// of the very week that it was proved for, and of no other.
func (s *standing) proof() string {
	switch {
	case s.edited:
		return "Edited by hand: nothing is proved of it."
	case s.stale:
		return "The week has changed since: nothing is proved of it."
	case s.plan.Proof.Proved():
		return "Proved: no plan does better."
	}
	return "Not proved to be best."
}

// broken is what of it can no longer be.
func (s *standing) broken() []model.Violation { return model.Broken(s.found) }

// turn of a ride; nil is that it is on the ground.
func (s *standing) turn(r *model.Ride) *model.Turn { return s.plan.Turns[r.Index] }

// on is the plan of a date: what was posted for it, else what is pencilled; nil
// where there is neither.
func (r *reading) on(date model.Date) (*standing, error) {
	return once(r, "on "+date.String(), func() (*standing, error) {
		if s := r.postedOn(date); s != nil {
			return s, nil
		}
		return r.pencilledOn(date)
	})
}

// postedOn is what was last posted for a date; nil is nothing.
func (r *reading) postedOn(date model.Date) *standing {
	s, _ := once(r, "posted "+date.String(), func() (*standing, error) {
		p, w, plan, gone := r.Centre.PostedAt(date, r.Begun())
		if p == nil {
			return nil, nil
		}
		s := &standing{week: w, plan: plan, found: w.Audit(plan), gone: gone, newer: r.Centre.ChangedSince(p, date),
			stamp: sheet.Stamp{Version: p.Version, At: p.At, Notes: r.Centre.NotesSince(p, date), Printed: r.Now}}
		if p.By != nil {
			s.stamp.By = p.By.Name
		}
		if n := len(r.Mistakes()); n > 0 {
			s.stamp.Unread = fmt.Sprintf("%s in the folder, so not all of it could be read", model.Count(n, "mistake"))
		}
		return s, nil
	})
	return s
}

// pencilledOn is what is pencilled for a date; nil is nothing. An error is that
// there are several, or that it cannot be read.
func (r *reading) pencilledOn(date model.Date) (*standing, error) {
	files, err := folder.PlansOn(r.Dir, date)
	switch {
	case err != nil || len(files) == 0 || len(r.Mistakes()) > 0:
		return nil, err
	case len(files) > 1:
		return nil, no("more than one plan is pencilled for %s: %s; delete the others", date.Words(), fileNames(files))
	}
	return once(r, "pencilled "+files[0], func() (*standing, error) {
		w, p, wrong, err := r.ReadPlan(files[0])
		switch {
		case err != nil:
			return nil, err
		case len(wrong) > 0:
			return nil, no("the plan that is pencilled is not of the folder as it is now: %s. Plan again.", wrong[0].Message)
		}
		edited, err := folder.IsEdited(files[0])
		if err != nil {
			return nil, err
		}
		within, err := filepath.Rel(r.Dir, files[0])
		if err != nil {
			within = files[0]
		}
		return &standing{week: w, plan: p, found: w.Audit(p), file: files[0], edited: edited, stale: !edited && !w.ProofCovers(p),
			stamp: sheet.Stamp{File: filepath.ToSlash(within), Printed: r.Now}}, nil
	})
}

func fileNames(files []string) string {
	var names []string
	for _, f := range files {
		names = append(names, filepath.Base(f))
	}
	return strings.Join(names, ", ")
}
