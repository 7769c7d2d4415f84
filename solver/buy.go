package solver

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"time"

	"tackwright/model"
)

// Dates are a run of up to seven dates that are planned together; see [model.Centre.Week].
type Dates struct {
	From model.Date
	Days int
	Now  model.Instant
}

// Bought is what one more of something would bring, if it fits.
type Bought struct {
	Spare model.Spare
	// Like are the pieces of the centre of which it is a copy as well as of Spare.
	Like []*model.Piece
	// More rides are seated in plans that were found than in the best ones found
	// without it, over all weeks; no plans seat more than Most more than those.
	More, Most int
	Proved     bool // More is what it brings
	// Plans are the best plans with it, a week each, for the best few and where
	// there was time; each goes with its week.
	Plans []Planned
}

// Planned is a week and a plan of it.
type Planned struct {
	Week *model.Week
	Plan *model.Plan
}

// Buying is what [Buy] found.
type Buying struct {
	Now    []Planned          // as it is, a week each
	Ground []model.GoalResult // rides on the ground as it is, a week each
	Bought []*Bought          // the best first
	Whole  bool               // Now is planned as far as wishes and changes of tack
	Solved int                // plans that were looked for
}

// Buy says what one more of each piece, of each girth size of the fit chart and of
// each horse of the herd would bring in some weeks: see [model.Centre.Spares] and
// [model.Centre.With]. Of the best few it has whole plans. When ctx ends first it says
// what it has.
//
// Not everything is tried by itself. What a centre has more of takes no plan away
// (see [model.Centre.With]), so no one of some spares seats more than all of them
// together: where even these seat nobody more, which is proved by planning with them
// all, each by itself is proved to bring nothing. Where all ride already there is
// nothing to prove.
func Buy(ctx context.Context, c *model.Centre, weeks []Dates, few int, told func(done, all int)) (*Buying, error) {
	b := &buyer{ctx: ctx, c: c, weeks: weeks, told: told}
	for range weeks {
		b.now = append(b.now, Planned{})
	}
	if err := b.asItIs(); err != nil {
		return nil, err
	}
	bought := b.list()
	b.all = len(bought)
	pieces := slices.DeleteFunc(slices.Clone(bought), func(x *Bought) bool { return x.Spare.Horse != nil })
	for i := range weeks {
		for _, some := range [][]*Bought{pieces, bought[len(pieces):]} {
			if err := b.share(i, some, b.ground[i].Value); err != nil {
				return nil, err
			}
		}
	}
	err := b.best(bought, few)
	proved := !slices.ContainsFunc(b.ground, func(g model.GoalResult) bool { return g.Value != g.Bound })
	for _, x := range bought {
		x.Proved = x.Most == 0 || proved && x.More == x.Most
	}
	return &Buying{Now: b.now, Ground: b.ground, Bought: bought, Whole: b.whole, Solved: b.solved}, err
}

// buyer is one asking of what to buy.
type buyer struct {
	ctx    context.Context
	c      *model.Centre
	weeks  []Dates
	now    []Planned
	ground []model.GoalResult // rides on the ground as it is, a week each
	whole  bool
	solved int
	done   int // spares and weeks of which all is known
	all    int
	told   func(done, all int)
}

func (b *buyer) week(c *model.Centre, i int) *model.Week {
	return c.Week(b.weeks[i].From, b.weeks[i].Days, b.weeks[i].Now)
}

// asItIs plans the weeks with what there is.
func (b *buyer) asItIs() error {
	for i := range b.weeks {
		w := b.week(b.c, i)
		p, err := b.plan(w, b.part(4*len(b.weeks)), Options{Goals: 1})
		if err != nil {
			return err
		}
		b.now[i] = Planned{w, p}
		b.ground = append(b.ground, p.Proof.Goals[0])
	}
	return nil
}

// part is about the n-th part of the time that is left, never all of it; 0 is no
// limit.
func (b *buyer) part(n int) time.Duration {
	end, ok := b.ctx.Deadline()
	if !ok {
		return 0
	}
	return max(time.Until(end)*19/20/time.Duration(n), time.Millisecond)
}

func (b *buyer) plan(w *model.Week, limit time.Duration, opts Options) (*model.Plan, error) {
	ctx := b.ctx
	if limit > 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, limit)
		defer cancel()
	}
	b.solved++
	return Plan(ctx, w, opts)
}

// list are the spares, one of those that copy pieces which are alike in every week.
func (b *buyer) list() []*Bought {
	var all []*Bought
	byClass := map[string]*Bought{}
	for _, s := range b.c.Spares() {
		if s.Piece != nil {
			class := ""
			for _, x := range b.now {
				class += fmt.Sprint(x.Week.Alike(s.Piece), " ")
			}
			if same := byClass[class]; same != nil {
				same.Like = append(same.Like, s.Piece)
				continue
			}
			byClass[class] = &Bought{Spare: s}
			all = append(all, byClass[class])
			continue
		}
		all = append(all, &Bought{Spare: s})
	}
	return all
}

// share finds what each of some spares brings in a week. With all of them no plan
// seats more than ever most more than now.
func (b *buyer) share(i int, some []*Bought, most int) error {
	now := b.ground[i]
	known := func(more, most int) {
		for _, x := range some {
			x.More, x.Most = x.More+more, x.Most+most
		}
		if b.done += len(some); b.told != nil {
			b.told(b.done, b.all*len(b.weeks))
		}
	}
	switch {
	case len(some) == 0:
		return nil
	case most == 0:
		known(0, 0)
		return nil
	case b.ctx.Err() != nil:
		known(0, most)
		return nil
	}
	var spares []model.Spare
	for _, x := range some {
		spares = append(spares, x.Spare)
	}
	p, err := b.plan(b.week(b.c.With(spares...), i), b.part(8), Options{Goals: 1})
	if err != nil {
		return err
	}
	with := p.Proof.Goals[0]
	// Now has a plan with now.Value on the ground, which may not be the least.
	most = min(most, max(0, now.Value-with.Bound))
	if len(some) == 1 || most == 0 {
		more := 0
		if len(some) == 1 {
			more = max(0, now.Value-with.Value)
		}
		known(more, most)
		return nil
	}
	half := len(some) / 2
	if err := b.share(i, some[:half], most); err != nil {
		return err
	}
	return b.share(i, some[half:], most)
}

// best ranks what was found, and plans the weeks as far as wishes and changes of
// tack for the best few.
func (b *buyer) best(bought []*Bought, few int) error {
	rank := func(x, y *Bought) int { return cmp.Or(cmp.Compare(y.More, x.More), cmp.Compare(y.Most, x.Most)) }
	slices.SortStableFunc(bought, rank)
	few = min(few, len(bought))
	plans := (few + 1) * len(b.weeks) // to come
	whole := func(c *model.Centre) (all []Planned, err error) {
		for i := range b.weeks {
			w := b.week(c, i)
			p, err := b.plan(w, b.part(plans), Options{Goals: wishesAndCarry(w)})
			if err != nil || b.ctx.Err() != nil {
				return nil, err // what it has by now says little
			}
			plans--
			all = append(all, Planned{w, p})
		}
		return all, nil
	}
	if few == 0 {
		return nil
	}
	all, err := whole(b.c)
	if all == nil || b.worse(all) {
		return err
	}
	b.now, b.whole = all, true
	b.foundBetter(bought)
	slices.SortStableFunc(bought, func(x, y *Bought) int { return cmp.Or(rank(x, y), cmp.Compare(b.moves(y), b.moves(x))) })
	for _, x := range bought[:few] {
		if x.More == 0 && b.moves(x) == 0 {
			break
		}
		if x.Plans, err = whole(b.c.With(x.Spare)); x.Plans == nil {
			return err
		}
		if err := b.settle(x); err != nil {
			return err
		}
	}
	return nil
}

// wishesAndCarry is how many of the first goals there are up to both.
func wishesAndCarry(w *model.Week) int {
	n := 1
	for i, g := range w.Score(&model.Plan{Turns: make([]*model.Turn, len(w.Rides))}) {
		if g.Name == "wishes" || g.Name == "carry" {
			n = i + 1
		}
	}
	return n
}

// foundBetter counts from the plans that there are now, where more ride in them
// than was found at first.
func (b *buyer) foundBetter(bought []*Bought) {
	for i, now := range b.now {
		seat := now.Plan.Proof.Goals[0]
		if d := b.ground[i].Value - seat.Value; d > 0 {
			for _, x := range bought {
				x.More, x.Most = max(0, x.More-d), max(0, x.Most-d)
			}
			b.ground[i].Value = seat.Value
		}
		b.ground[i].Bound = max(b.ground[i].Bound, seat.Bound)
	}
}

// worse reports whether plans seat fewer than was found: the time was too short.
func (b *buyer) worse(all []Planned) bool {
	for i, x := range all {
		if x.Plan.Proof.Goals[0].Value > b.ground[i].Value {
			return true
		}
	}
	return false
}

// settle holds what a spare brings against whole plans with it.
func (b *buyer) settle(x *Bought) error {
	more, most := 0, 0
	for i, with := range x.Plans {
		seat := with.Plan.Proof.Goals[0]
		more += b.ground[i].Value - seat.Value
		most += b.ground[i].Value - seat.Bound
	}
	if more > x.Most || most < x.More {
		return fmt.Errorf("%d to %d rides more were claimed, and %d to %d are found, which is a bug of this program", x.More, x.Most, more, most)
	}
	if more < x.More { // the time was too short
		x.Plans = nil
	}
	x.More, x.Most = max(x.More, more), min(x.Most, most)
	return nil
}

// moves are how often pieces of which a spare would be a copy go from one horse to
// another as it is.
func (b *buyer) moves(x *Bought) int {
	n := 0
	for _, now := range b.now {
		for _, m := range now.Week.Moves(now.Plan) {
			if x.Spare.Piece != nil && now.Week.Alike(m.Piece) == now.Week.Alike(x.Spare.Piece) {
				n++
			}
		}
	}
	return n
}
