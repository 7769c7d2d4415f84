package model

import "slices"

// VersionOn is the version that stands on a date; 0 is none.
func (c *Centre) VersionOn(d Date) int {
	if p := c.lastPosted(d); p != nil {
		return p.Version
	}
	return 0
}

func (c *Centre) lastPosted(d Date) *Posted {
	for _, p := range slices.Backward(c.Posted) {
		if p.From <= d && d <= p.Until {
			return p
		}
	}
	return nil
}

// PostedOn is what was last posted for a date, as a plan of that date alone: the
// week is made of what the centre says now, so that rides that are off since are
// not seated, whatever was told. Rides that had started when it was posted are
// facts, so that what has happened to them since breaks no rule of the plan; what
// the ridden record of the date says of them is not what was posted. gone are
// rides to come that were posted with a horse and that the date no longer has.
// posted is nil where nothing was.
func (c *Centre) PostedOn(d Date) (posted *Posted, w *Week, p *Plan, gone []Told) {
	return c.PostedAt(d, Instant{})
}

// PostedAt is [Centre.PostedOn] where rides that have started by now are facts
// too; a zero now is not known.
func (c *Centre) PostedAt(d Date, now Instant) (posted *Posted, w *Week, p *Plan, gone []Told) {
	if posted = c.lastPosted(d); posted == nil {
		return nil, nil, nil, nil
	}
	asTold := *c
	asTold.Ridden = slices.DeleteFunc(slices.Clone(c.Ridden), func(x *Ridden) bool { return x.Date == d })
	w = asTold.Week(d, 1, later(now, later(posted.Now, posted.At)))
	p = &Plan{Turns: make([]*Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for i, r := range w.Rides {
		if r.State == Started {
			p.Turns[i] = r.Told
		}
	}
	for _, t := range posted.Told {
		if t.Date != d || t.Turn == nil || w.hasStarted(d, t.Start) {
			continue
		}
		i := slices.IndexFunc(w.Rides, func(r *Ride) bool {
			return r.Meeting.Lesson == t.Lesson && r.Rider == t.Rider && r.Start == t.Start && r.End == t.End
		})
		switch {
		case i < 0:
			gone = append(gone, t)
		case w.Rides[i].State == Open:
			p.Turns[i] = t.Turn
		}
	}
	return posted, w, p, gone
}

// StartedOtherwise says what was posted and has started by now, and is not left as
// it was told by a plan of a week; "" is nothing.
func (c *Centre) StartedOtherwise(w *Week, p *Plan, now Instant) string {
	then := c.Week(w.From, int(w.Until-w.From)+1, now)
	if len(then.Rides) != len(p.Turns) {
		return ""
	}
	for _, v := range Broken(then.Audit(p)) {
		for _, s := range v.Stints {
			if v.Rule == asTold && c.VersionOn(s.Date) > 0 {
				return v.Words
			}
		}
	}
	return ""
}

// NotesSince is the number of the latest note for a date that was written after
// those that the version goes by, one that undoes another counted as that; 0 is
// none.
func (c *Centre) NotesSince(p *Posted, d Date) int {
	latest := 0
	for _, n := range c.Notes {
		of := n
		for of.Undoes != 0 {
			i := slices.IndexFunc(c.Notes, func(x *Note) bool { return x.Number == of.Undoes })
			if i < 0 || c.Notes[i].Number >= of.Number {
				break
			}
			of = c.Notes[i]
		}
		if n.Number > p.Notes && of.isFor(d) {
			latest = max(latest, n.Number)
		}
	}
	return latest
}

// ChangedSince reports whether notes for a date say otherwise than those that the
// version goes by. One that was written since and undone again says nothing.
func (c *Centre) ChangedSince(p *Posted, d Date) bool {
	return slices.ContainsFunc(Standing(c.Notes), func(n *Note) bool {
		of := n
		if n.Undoes != 0 {
			i := slices.IndexFunc(c.Notes, func(x *Note) bool { return x.Number == n.Undoes && x.Number <= p.Notes })
			if i < 0 {
				return false
			}
			of = c.Notes[i]
		}
		return n.Number > p.Notes && of.isFor(d)
	})
}
