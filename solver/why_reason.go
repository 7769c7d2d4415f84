package solver

import (
	"context"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// Reason is why a ride cannot be seated as is asked while others ride: rules, each
// about one thing, and rides that go on riding. It is irreducible where each was
// tried: without any one of them, the rest forbids nothing.
type Reason struct {
	Asked       *model.Ride
	Rides       []*model.Ride // that ride besides, in the order of the week
	Limits      []Limit       // in the order of the rules
	Irreducible bool
	Work        *WorkCount // it is a matter of minutes: see there; nil: it is not
}

// Limit is a rule about one thing.
type Limit struct {
	about
	Rule   *model.Rule
	Pieces []*model.Piece // of which there are too few, or that are elsewhere
}

// Care reports whether rules of care alone stand in the way.
func (r *Reason) Care() bool {
	return !slices.ContainsFunc(r.Limits, func(l Limit) bool { return l.Rule.Class != model.Care })
}

// asking gives the literals that a question assumes; false: it cannot be at all.
type asking func(*encoder) ([]sat.Lit, bool)

// whyNotTogether says why a ride cannot be as asked while all ride that ride in a
// plan. It looks first at the rides around its hours, then at its date, then at
// the week, so that what is near is named before what is far. Where it can be it
// is the plan in which it is; both are nil where ctx ended first.
func whyNotTogether(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, ask asking) (*Reason, *model.Plan, error) {
	margin := max(w.House.Other, w.House.Move)
	date := func(x *model.Ride) bool { return x.Date() == r.Date() }
	for i, among := range []func(*model.Ride) bool{
		func(x *model.Ride) bool { return date(x) && x.Start < r.End+margin && r.Start < x.End+margin },
		date,
		func(x *model.Ride) bool { return true },
	} {
		if i == 0 && gapsCount(w) {
			continue
		}
		e := encodeFine(narrow(w, p, r, among))
		reason, status := e.reason(ctx, e.w.Rides[r.Index], ask, quick)
		if status == sat.Unknown { // arithmetic before a long search
			if reason, status = tooMuchWork(e.w, e.w.Rides[r.Index]), sat.Unsat; reason == nil {
				reason, status = e.reason(ctx, e.w.Rides[r.Index], ask, 0)
			}
		}
		switch {
		case status == sat.Unknown:
			return nil, nil, nil
		case status == sat.Unsat:
			return reason.of(w), nil, nil
		}
		all := coversAll(w, p, among)
		if all || i == 1 { // the nearer a better plan is, the sooner it is taken
			if better, err := nearestOn(ctx, w, p, r, ask, r.Date()); err != nil || better != nil {
				return nil, better, err
			}
		}
		if !all {
			continue
		}
		better, err := e.decode(ctx, e.s.Model())
		if err == nil {
			err = finish(w, better)
		}
		return nil, better, err
	}
	return nil, nil, nil
}

// gapsCount reports whether some ride is less work than its minutes. Then a horse may
// have more to do in a date with one ride fewer, by the gap, and what rides of a part
// of the date come to says nothing of the whole.
func gapsCount(w *model.Week) bool {
	return slices.ContainsFunc(w.Rides, func(r *model.Ride) bool {
		return slices.ContainsFunc(w.Centre.Horses, func(h *model.Horse) bool {
			return w.WorkOf(r, h) < int64(r.End-r.Start)*minute
		})
	})
}

// quick is the work, in ticks, after which a search for a reason is a long one.
const quick = 30

// coversAll reports whether a part of the week has all the rides of a plan.
func coversAll(w *model.Week, p *model.Plan, among func(*model.Ride) bool) bool {
	return !slices.ContainsFunc(w.Rides, func(x *model.Ride) bool {
		return x.State == model.Open && p.Turns[x.Index] != nil && !among(x)
	})
}

// narrow is the week with no other open rides than the one asked about and, of
// those among, the ones that ride in the plan.
func narrow(w *model.Week, p *model.Plan, r *model.Ride, among func(*model.Ride) bool) *model.Week {
	c := w.Copy()
	for i, x := range w.Rides {
		if x != r && x.State == model.Open && (p.Turns[i] == nil || !among(x)) {
			c.Rides[i].State = model.Off
		}
	}
	return c
}

// of is the reason told of the rides of a week of which its own is a copy.
func (r *Reason) of(w *model.Week) *Reason {
	own := func(x **model.Ride) {
		if *x != nil {
			*x = w.Rides[(*x).Index]
		}
	}
	own(&r.Asked)
	for i := range r.Rides {
		own(&r.Rides[i])
	}
	for i := range r.Limits {
		own(&r.Limits[i].ride)
		own(&r.Limits[i].also)
	}
	return r
}

// reason says why not all open rides of the week can be, with the one as asked. It
// gives up after the given ticks of work, 0 for never.
func (e *encoder) reason(ctx context.Context, r *model.Ride, ask asking, ticks int) (*Reason, sat.Status) {
	asked, ok := ask(e)
	if !ok {
		return &Reason{Asked: r, Irreducible: true}, sat.Unsat
	}
	if rides, horses := e.tooFewHorses(r); len(asked) == 1 && asked[0] == e.seated[r] && len(rides) > 0 {
		return e.fewHorses(r, rides, horses), sat.Unsat
	}
	members := map[sat.Lit]*model.Ride{}
	var assume []sat.Lit
	for _, x := range e.w.Rides {
		if l, ok := e.seated[x]; ok && x != r {
			members[l] = x
			assume = append(assume, l)
		}
	}
	for _, a := range e.fine.about {
		assume = append(assume, e.fine.lit[a])
	}
	if status := e.s.SolveWithin(ctx, ticks, slices.Concat(asked, assume)...); status != sat.Unsat {
		return nil, status
	}
	core, exact := irreducible(ctx, e.s, asked, assume)
	reason := &Reason{Asked: r, Irreducible: exact}
	for _, l := range core {
		if x := members[l]; x != nil {
			reason.Rides = append(reason.Rides, x)
		}
	}
	for _, a := range e.fine.about {
		if slices.Contains(core, e.fine.lit[a]) {
			reason.Limits = append(reason.Limits, limitOf(a))
		}
	}
	return reason, sat.Unsat
}

func limitOf(a about) Limit {
	l := Limit{about: a, Rule: model.RuleNamed(a.rule)}
	if a.pool != nil {
		l.Pieces = a.pool.pieces
	}
	return l
}

// irreducible is a subset of the members, in their order, that cannot hold
// together with always, and of which none can be left out; false where ctx ended
// before each was tried. The last answer was that all members cannot.
func irreducible(ctx context.Context, s *sat.Solver, always, members []sat.Lit) ([]sat.Lit, bool) {
	blamed := func(of []sat.Lit) []sat.Lit {
		core := s.Core()
		return slices.DeleteFunc(slices.Clone(of), func(l sat.Lit) bool { return !slices.Contains(core, l) })
	}
	core, exact := blamed(members), true
	for i := 0; i < len(core); {
		switch rest := slices.Delete(slices.Clone(core), i, i+1); s.Solve(ctx, slices.Concat(always, rest)...) {
		case sat.Unsat:
			core = blamed(rest) // those before i were needed with more, so they still are
		case sat.Unknown:
			exact = false
			i++
		default:
			i++
		}
	}
	return core, exact
}

// tooFewHorses are rides that go on at one time, the one asked about among them,
// and the horses that carry them, one fewer: a matching of the others has no path
// to a free horse (P. Hall 1935), which a search would take long to find.
func (e *encoder) tooFewHorses(r *model.Ride) (rides []*model.Ride, horses []*model.Horse) {
	for _, m := range e.moments(func(*model.Ride) bool { return true }, func(*model.Stint) bool { return false }) {
		if !slices.Contains(m.rides, r) {
			continue
		}
		carries := map[*model.Horse]*model.Ride{}
		seen := map[*model.Horse]bool{}
		var carried func(*model.Ride) bool
		carried = func(x *model.Ride) bool {
			for _, on := range e.on_[x] {
				if h := on.at.horse; !seen[h] {
					seen[h] = true
					if carries[h] == nil || carried(carries[h]) {
						carries[h] = x
						return true
					}
				}
			}
			return false
		}
		all := true
		for _, x := range m.rides {
			clear(seen)
			all = all && (x == r || carried(x))
		}
		clear(seen)
		if !all || carried(r) {
			continue
		}
		for _, h := range e.w.Centre.Horses {
			if seen[h] {
				rides, horses = append(rides, carries[h]), append(horses, h)
			}
		}
		return append(rides, r), horses
	}
	return nil, nil
}

func (e *encoder) fewHorses(r *model.Ride, rides []*model.Ride, horses []*model.Horse) *Reason {
	reason := &Reason{Asked: r, Irreducible: true}
	for _, x := range e.w.Rides {
		if x != r && slices.Contains(rides, x) {
			reason.Rides = append(reason.Rides, x)
		}
	}
	for _, h := range horses {
		reason.Limits = append(reason.Limits, limitOf(about{rule: "horse in one place", horse: h, date: r.Date()}))
	}
	return reason
}
