package model

import "slices"

// recorder tells what was ridden on a date: as posted, but for what the ridden
// record of that date says otherwise.
type recorder struct {
	posted []*Posted
	ridden map[Date]*Ridden
	house  *House
}

func newRecorder(c *Centre) *recorder {
	r := &recorder{posted: c.Posted, ridden: map[Date]*Ridden{}, house: &c.House}
	for _, x := range c.Ridden {
		r.ridden[x.Date] = x
	}
	return r
}

// on is what was told for the date, corrected by what was ridden. Those on the
// ground have no turn. A date that nobody closed counts as posted.
func (r *recorder) on(d Date) []Told {
	var told []Told
	for i := len(r.posted) - 1; i >= 0; i-- {
		if p := r.posted[i]; p.From <= d && d <= p.Until {
			for _, t := range p.Told {
				if t.Date == d {
					told = append(told, t)
				}
			}
			break
		}
	}
	record := r.ridden[d]
	if record == nil {
		return told
	}
	for _, x := range record.Differs {
		i := slices.IndexFunc(told, func(t Told) bool { return t.Lesson == x.Lesson && t.Rider == x.Rider })
		switch {
		case x.How == NoShow && i >= 0:
			told = slices.Delete(told, i, i+1)
		case x.How == ExtraRide:
			if i >= 0 { // she was on the ground, and rode after all
				told = slices.Delete(told, i, i+1)
			}
			told = append(told, r.extra(d, x))
		case x.How == OtherHorse && i >= 0:
			told[i].Turn = x.Turn
			told[i].Work = r.work(told[i])
		case x.How == CutShort && i >= 0:
			told[i].End = x.End
			told[i].Work = r.work(told[i])
		}
	}
	return told
}

func (r *recorder) extra(d Date, x Differs) Told {
	t := Told{Date: d, Start: x.Start, End: x.End, Lesson: x.Lesson, Rider: x.Rider, Turn: x.Turn}
	if l := x.Lesson; l != nil {
		t.LessonName, t.Arena, t.Instructor = l.Name, l.Arena, l.Instructor
		if x.End == 0 {
			t.Start, t.End = l.Start, l.End
		}
	}
	t.Work = r.work(t)
	return t
}

func (r *recorder) work(t Told) int64 {
	if t.Turn == nil {
		return 0
	}
	kind := ""
	if t.Lesson != nil {
		kind = string(t.Lesson.Kind)
	}
	return int64(t.End-t.Start) * int64(r.house.Factor(kind)) * int64(t.Turn.Horse.factor())
}

// works are the works of a date: those that the folder plans and, of a date
// that was closed, those that were done besides.
func (r *recorder) works(c *Centre, d Date) []*Work {
	var out []*Work
	for _, x := range c.Works {
		if x.IsOn(d) {
			out = append(out, x)
		}
	}
	if record := r.ridden[d]; record != nil {
		out = append(out, record.Works...)
	}
	return out
}
