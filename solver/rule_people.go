package solver

import (
	"tackwright/model"
	"tackwright/solver/sat"
)

// instructorInOnePlace keeps an instructor to one of two lessons that overlap.
func instructorInOnePlace(e *encoder, under under) {
	held := map[*model.Meeting]sat.Lit{}
	var meetings []*model.Meeting
	lits := map[*model.Meeting][]sat.Lit{}
	for _, r := range e.w.Rides {
		if l, ok := e.seated[r]; ok {
			lits[r.Meeting] = append(lits[r.Meeting], l)
		}
	}
	for _, f := range e.w.Facts {
		if f.Meeting != nil {
			lits[f.Meeting] = append(lits[f.Meeting], e.s.Root())
			if held[f.Meeting] == 0 {
				held[f.Meeting] = e.s.Root()
				meetings = append(meetings, f.Meeting)
			}
		}
	}
	for _, m := range e.w.Meetings {
		if len(lits[m]) > 0 && held[m] == 0 {
			held[m] = e.s.Any(lits[m]...)
			meetings = append(meetings, m)
		}
	}
	forbid := func(sel sat.Lit, m *model.Meeting, unless sat.Lit) {
		for _, l := range lits[m] {
			if l != e.s.Root() {
				e.s.Add(sel, l.Not(), unless)
			}
		}
	}
	for i, m := range meetings {
		for _, n := range meetings[i+1:] {
			if m.Instructor == nil || m.Instructor != n.Instructor || !m.Meets(n) {
				continue
			}
			// Where both are held by facts, neither admits a further ride.
			sel := under(about{meeting: m, next: n, date: m.Date})
			forbid(sel, m, held[n].Not())
			forbid(sel, n, held[m].Not())
		}
	}
}

// riderInOnePlace keeps a rider to one of two rides that overlap.
func riderInOnePlace(e *encoder, under under) {
	byRider := map[*model.Rider][]*model.Ride{}
	for _, r := range e.w.Rides {
		l, ok := e.seated[r]
		if !ok {
			continue
		}
		for _, x := range byRider[r.Rider] {
			if x.Date() == r.Date() && x.Start < r.End && r.Start < x.End {
				e.s.Add(under(about{ride: x, also: r, date: r.Date()}), l.Not(), e.seated[x].Not())
			}
		}
		byRider[r.Rider] = append(byRider[r.Rider], r)
		for _, f := range e.w.Facts {
			if f.Rider == r.Rider && f.Date == r.Date() && f.Start < r.End && r.Start < f.End {
				e.s.Add(under(about{ride: r, fact: f, date: r.Date()}), l.Not())
			}
		}
	}
}

// horsesApart keeps two horses from one lesson.
func horsesApart(e *encoder, under under) {
	for p, q := range e.quarrels {
		h, k := p.horse, q.horse
		if h.Name > k.Name {
			h, k = k, h
		}
		e.s.Add(under(about{horse: h, other: k, meeting: p.meeting, date: p.meeting.Date}), p.worked.Not(), q.worked.Not())
	}
	for _, p := range e.places {
		for _, f := range e.w.Facts {
			if f.Meeting == p.meeting && f.Turn.Horse.IsApart(p.horse) {
				e.s.Add(under(about{horse: p.horse, other: f.Turn.Horse, fact: f, meeting: p.meeting, date: f.Date}), p.worked.Not())
			}
		}
	}
}

// quarrels are places of a lesson whose horses are to be kept apart.
func (e *encoder) quarrels(yield func(p, q *place) bool) {
	in := map[*model.Meeting][]*place{}
	for _, p := range e.places {
		for _, q := range in[p.meeting] {
			if p.horse.IsApart(q.horse) && !yield(p, q) {
				return
			}
		}
		in[p.meeting] = append(in[p.meeting], p)
	}
}
