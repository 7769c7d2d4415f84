package model

// ToldOn is what was posted for a date, as the notes left it that were written
// since, in the order of the posted plan: those on the ground have no turn. What
// the ridden record of the date says does not count.
func (c *Centre) ToldOn(d Date) []Told {
	r := newRecorder(c)
	delete(r.ridden, d)
	return r.on(d)
}

// ToldThen is [Centre.ToldOn] with those rides whole of which the ridden record
// tells how they went: what it corrects is what was told, and stays to be corrected.
func (c *Centre) ToldThen(d Date) []Told {
	if p := c.lastPosted(d); p != nil {
		return newRecorder(c).noted(d, p)
	}
	return nil
}

// RiddenOn is what was ridden on a date, as far as it is known: as [Centre.ToldOn],
// corrected by the ridden record of the date. Extra rides come last.
func (c *Centre) RiddenOn(d Date) []Told { return newRecorder(c).on(d) }

// ClosedOn is the ridden record of a date; nil is that nobody has closed it, and
// what was told counts, not confirmed.
func (c *Centre) ClosedOn(d Date) *Ridden {
	for _, x := range c.Ridden {
		if x.Date == d {
			return x
		}
	}
	return nil
}

// TellsOf are the rides that a plan of the week tells when it is posted: those open,
// then those started as they were told, whatever the ridden record says, so that it can
// still be mended. A rider who is away is told nothing.
func (w *Week) TellsOf(p *Plan) []Told {
	var all []Told
	for i, r := range w.Rides {
		if r.State != Open {
			continue
		}
		m := r.Meeting
		t := Told{Date: r.Date(), Start: r.Start, End: r.End, Lesson: m.Lesson, LessonName: m.Name, Rider: r.Rider,
			Arena: m.Arena, Instructor: m.Instructor, Turn: p.Turns[i]}
		if t.Turn != nil {
			t.Work = w.WorkOf(r, t.Turn.Horse)
		} else if p.Ground != nil {
			t.Ground = p.Ground[i]
		}
		all = append(all, t)
	}
	for d := w.From; d <= w.Until && !w.Now.IsZero(); d++ {
		for _, t := range w.Centre.ToldThen(d) {
			if t.Rider != nil && w.hasStarted(d, t.Start) {
				all = append(all, t)
			}
		}
	}
	return all
}
