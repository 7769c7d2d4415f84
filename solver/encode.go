package solver

import (
	"cmp"
	"slices"

	"tackwright/model"
	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// encoder turns a week into clauses.
//
// What is chosen: ride on horse; then, for a horse in a slot (a lesson, or a
// part of one), the way it is saddled, its girth and its extras, by pool. Only
// choices that no rule about them alone forbids become literals.
type encoder struct {
	w       *model.Week
	s       *sat.Solver
	left    map[string]bool // rules left out, by name: for tests
	tagged  bool            // every piece is a pool of its own
	pools   []*pool
	poolOf  map[*model.Piece]*pool
	options map[horseDate][]*option
	sits_   map[*model.Rider][]bool

	slots  []*slot
	places []*place
	of     map[*model.Horse][]*place // by date and start
	on_    map[*model.Ride][]rideOn
	seated map[*model.Ride]sat.Lit // open rides that some horse can carry
	uses   [][]use                 // by pool
	facts  map[*model.Horse][]*model.Stint
	fine   *grain // nil: all rules hang on one selector

	barred map[sat.Lit]bool                // rides on horses that a session's question rules out
	idle   map[*model.Horse][]*model.Stint // horses that it rules out: their facts then

	// What goals are made of, made once.
	wishes map[*model.Ride][]ordered.Soft
	marks  map[sat.Lit]*model.Ride // of a wish that a ride's load is not marked
	carry  []ordered.Soft
	anyOf  map[sat.Lit][]sat.Lit // of a charge: the literals of which one is true
	kept   map[keptKey]sat.Lit
	shares map[shareKey]sat.Lit
	days_  map[*model.Horse][]daySet
	ways_  map[*place]dayWays // of a date, by its first place
	spare  *spare
}

// slot is a time of a lesson in which riders ride together.
type slot struct {
	meeting    *model.Meeting
	start, end model.Minute
	rides      []*model.Ride
}

func (s *slot) instant() model.Instant { return model.Instant{Date: s.meeting.Date, Minute: s.start} }

// place is a horse in a slot.
type place struct {
	*slot
	horse  *model.Horse
	worked sat.Lit
	rides  []rideOn
	saddle []saddled
	girths []pooled
	extras []pooled
}

// rideOn is a ride in a place.
type rideOn struct {
	ride *model.Ride
	at   *place
	lit  sat.Lit
}

// saddled is a way in which the horse of a place is saddled.
type saddled struct {
	*option
	lit sat.Lit
}

// pooled is a girth or an extra that the horse of a place wears.
type pooled struct {
	pool *pool
	need need // that an extra meets
	lit  sat.Lit
}

// use is a pool worn in a place, when lit.
type use struct {
	at  *place
	lit sat.Lit
}

// encode writes the rules of the week as clauses.
func encode(w *model.Week) *encoder { return encodeBut(w, nil, false) }

// encodeBut leaves some rules out, by name; where tagged, it asks about every
// tagged piece by itself.
func encodeBut(w *model.Week, left map[string]bool, tagged bool) *encoder {
	return choices(w, left, tagged).rules()
}

// rules writes the rules about the choices as clauses.
func (e *encoder) rules() *encoder {
	for _, c := range encodings {
		if c.clauses != nil && e.on(c.rule) {
			c.clauses(e, e.under(c.rule))
		}
	}
	return e
}

// choices makes the literals of what can be chosen, and what they are made of.
func choices(w *model.Week, left map[string]bool, tagged bool) *encoder {
	return choicesIn(w, left, tagged, nil)
}

// choicesIn makes them for a grain of the rules.
func choicesIn(w *model.Week, left map[string]bool, tagged bool, fine *grain) *encoder {
	e := &encoder{fine: fine, w: w, s: sat.New(), left: left, tagged: tagged, options: map[horseDate][]*option{}, sits_: map[*model.Rider][]bool{},
		of: map[*model.Horse][]*place{}, on_: map[*model.Ride][]rideOn{}, seated: map[*model.Ride]sat.Lit{},
		facts: map[*model.Horse][]*model.Stint{}, wishes: map[*model.Ride][]ordered.Soft{}, marks: map[sat.Lit]*model.Ride{}, anyOf: map[sat.Lit][]sat.Lit{}, kept: map[keptKey]sat.Lit{}, days_: map[*model.Horse][]daySet{}, ways_: map[*place]dayWays{}, shares: map[shareKey]sat.Lit{}}
	e.pools, e.poolOf = makePools(w, tagged)
	for _, f := range w.Facts {
		e.facts[f.Turn.Horse] = append(e.facts[f.Turn.Horse], f)
	}
	e.makeSlots()
	for _, s := range e.slots {
		for _, h := range w.Centre.Horses {
			e.makePlace(s, h)
		}
	}
	e.makeSeated()
	e.makeUses()
	return e
}

// on reports whether a rule is encoded.
func (e *encoder) on(rule string) bool { return !e.left[rule] }

func (e *encoder) makeSlots() {
	for _, r := range e.w.Rides {
		if r.State != model.Open || e.stopped(r) {
			continue
		}
		i := slices.IndexFunc(e.slots, func(s *slot) bool { return s.meeting == r.Meeting && s.start == r.Start && s.end == r.End })
		if e.fine != nil {
			i = -1 // that a horse carries one of them is a rule like others
		}
		if i < 0 {
			i = len(e.slots)
			e.slots = append(e.slots, &slot{meeting: r.Meeting, start: r.Start, end: r.End})
		}
		e.slots[i].rides = append(e.slots[i].rides, r)
	}
	slices.SortStableFunc(e.slots, func(a, b *slot) int {
		return cmp.Or(cmp.Compare(a.meeting.Date, b.meeting.Date), cmp.Compare(a.start, b.start))
	})
}

// stopped, unpaired, unworn and clash ask each rule about one choice alone.

func (e *encoder) stopped(r *model.Ride) bool {
	return slices.ContainsFunc(encodings, func(c encoding) bool { return c.ride != nil && e.on(c.rule) && c.ride(e, r) })
}

func (e *encoder) unpaired(r *model.Ride, h *model.Horse) bool {
	return slices.ContainsFunc(encodings, func(c encoding) bool { return c.pair != nil && e.on(c.rule) && c.pair(e, r, h) })
}

func (e *encoder) unworn(s *slot, h *model.Horse, p *model.Piece) bool {
	return slices.ContainsFunc(encodings, func(c encoding) bool { return c.wear != nil && e.on(c.rule) && c.wear(e, s, h, p) })
}

func (e *encoder) clash(r *model.Ride, h *model.Horse, o *option) bool {
	for _, c := range slices.Backward(encodings) { // load, the dearest to ask, comes first in the list
		if c.seat != nil && e.on(c.rule) && c.seat(e, r, h, o) {
			return true
		}
	}
	return false
}

// sits tells for each pool whether the rider can sit a seat of it.
func (e *encoder) sits(r *model.Rider) []bool {
	if e.sits_[r] == nil {
		e.sits_[r] = make([]bool, len(e.pools))
		for i, p := range e.pools {
			e.sits_[r][i] = p.one().IsSeat() && model.SeatUnfit(r, p.one()) == ""
		}
	}
	return e.sits_[r]
}

// makePlace makes the literals of a horse in a slot, if it can carry any of the
// slot's rides.
func (e *encoder) makePlace(s *slot, h *model.Horse) {
	defer e.s.Mark(e.s.Mark(sat.Mark(1 + e.stratum(s.meeting.Date))))
	p := &place{slot: s, horse: h}
	riders := slices.DeleteFunc(slices.Clone(s.rides), func(r *model.Ride) bool { return e.unpaired(r, h) || !e.hasExtras(p, r) })
	var ways []*option
	sits := make([]bool, len(riders)) // whether a rider has a way
	for _, o := range e.optionsOn(h, s.meeting.Date) {
		var sit []int
		for i, r := range riders {
			if !e.clash(r, h, o) {
				sit = append(sit, i)
			}
		}
		if len(sit) == 0 {
			continue
		}
		if way := e.wornOn(p, o); way != nil {
			ways = append(ways, way)
			for _, i := range sit {
				sits[i] = true
			}
		}
	}
	if len(ways) == 0 {
		return
	}
	for i := len(riders) - 1; i >= 0; i-- {
		if !sits[i] {
			riders = slices.Delete(riders, i, i+1)
		}
	}
	var lits []sat.Lit
	for _, r := range riders {
		on := rideOn{r, p, e.s.NewVar()}
		lits = append(lits, on.lit)
		p.rides = append(p.rides, on)
		e.on_[r] = append(e.on_[r], on)
	}
	p.worked = e.s.Or(lits...)
	e.saddle(p, ways)
	e.girth(p)
	e.dress(p)
	e.places = append(e.places, p)
	e.of[h] = append(e.of[h], p)
}

// wornOn is the option with the girths that can be worn in a place; nil where
// some piece cannot be, or no girth.
func (e *encoder) wornOn(p *place, o *option) *option {
	if slices.ContainsFunc(o.pieces(), func(x *model.Piece) bool { return e.unworn(p.slot, p.horse, x) }) {
		return nil
	}
	if !o.seat.one().TakesGirth() {
		return o
	}
	girths := slices.DeleteFunc(slices.Clone(o.girths), func(g *pool) bool { return e.unworn(p.slot, p.horse, g.one()) })
	if len(girths) == 0 {
		return nil
	}
	return &option{seat: o.seat, pads: o.pads, girths: girths}
}

// makeSeated says of each ride that it is on at most one horse, and names the
// literal that it is on any.
func (e *encoder) makeSeated() {
	for _, r := range e.w.Rides {
		var lits []sat.Lit
		for _, on := range e.on_[r] {
			lits = append(lits, on.lit)
		}
		if len(lits) > 0 {
			e.s.AtMostOne(e.s.Root(), lits...)
			e.seated[r] = e.s.Or(lits...)
		}
	}
}

// makeUses lists for each pool where it may be worn.
func (e *encoder) makeUses() {
	e.uses = make([][]use, len(e.pools))
	for _, p := range e.places {
		worn := map[*pool][]sat.Lit{}
		var order []*pool
		add := func(x *pool, l sat.Lit) {
			if worn[x] == nil {
				order = append(order, x)
			}
			worn[x] = append(worn[x], l)
		}
		for x, l := range p.wears {
			add(x, l)
		}
		for _, x := range order {
			e.uses[x.index] = append(e.uses[x.index], use{p, e.s.Or(worn[x]...)})
		}
	}
}

// wears gives what the horse of a place may wear, pool by pool, with a literal of which
// one at least is true where it does.
func (p *place) wears(give func(*pool, sat.Lit) bool) {
	for _, o := range p.saddle {
		for _, x := range append([]*pool{o.seat}, o.pads...) {
			if !give(x, o.lit) {
				return
			}
		}
	}
	for _, g := range slices.Concat(p.girths, p.extras) {
		if !give(g.pool, g.lit) {
			return
		}
	}
}
