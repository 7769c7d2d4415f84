package model

import "slices"

// PostedOn is what was last posted for a date, as a plan of that date alone: the
// week is made of what the centre says now, so that rides that are off since are
// not seated, whatever was told. gone are rides that were posted with a horse and
// that the date no longer has. posted is nil where nothing was.
func (c *Centre) PostedOn(d Date) (posted *Posted, w *Week, p *Plan, gone []Told) {
	for _, x := range slices.Backward(c.Posted) {
		if x.From <= d && d <= x.Until {
			posted = x
			break
		}
	}
	if posted == nil {
		return nil, nil, nil, nil
	}
	w = c.Week(d, 1, Instant{})
	p = &Plan{Turns: make([]*Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for _, t := range posted.Told {
		if t.Date != d || t.Turn == nil {
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
