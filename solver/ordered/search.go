package ordered

import (
	"cmp"
	"context"
	"fmt"
	"runtime"
	"slices"

	"tackwright/solver/sat"
)

// A wish is a literal assumed true as long as it can be: one of the goal's softs, or "no more than
// level-1 of a tally fail". The goal's value in any solution is lower plus, for wishes that fail,
// what is left of their weight.
type wish struct {
	lit    sat.Lit
	weight int // left; 0 when cores have used it up or it has been made a clause
	group  int
	tally  *tally // nil for a soft
	level  int
}

// A tally counts how many wishes of one core fail. Every failure after those in the lower bound
// costs weight.
type tally struct {
	wishes  []sat.Lit
	counter *sat.Counter
	weight  int
	group   int
	sure    int   // so many fail in every solution that is no worse than the best
	used    []int // used[k-1]: part of the weight of the k-th failure that is in the lower bound
}

// A search is the work on one goal.
type search struct {
	q       *query
	goal    int
	wishes  []wish
	groups  []int           // of the wishes, in order
	index   map[sat.Lit]int // into wishes
	tallies []*tally
	units   []Count // wishes of its own that fail whatever happens
	due     []due
	lower   int   // proved by cores
	known   int   // proved by other means
	err     error // a bound or count of the caller was not true

	raised   int // effort when the last core was found
	turned   int // effort when improve last had its turn
	patience int // ticks until it has the next
	parts    []*partition
	dice     uint64 // what the regions of a partition are drawn with

	beside   chan Beside // nil where nothing is awaited
	asked    int         // so many times
	told     int         // tallies when it was asked
	gap      int         // then
	since    int         // effort then, or when the goal was opened
	cancel   context.CancelFunc
	priced   []Priced  // not yet clauses, the dearest first
	sum      *sum      // nil: nothing is known
	hint     []sat.Lit // not yet tried
	followed []sat.Lit // the last one
	vain     int       // hints in a row that led to nothing better
	pursued  bool      // it led to something better or could not be followed for reasons that were not known; but not often in vain
	wagers   bool      // prices are new
	tightens bool      // it is proved, and only cores are looked for, until an end of effort
	target   int       // above 0: only solutions below it are looked for, until an end of effort
	end      int
	better   sat.Lit // selector of what holds in all solutions better than below; 0: nothing is known
	below    int
	pressed  *pressed // nil: not yet
	shown    [2]int
}

// due is a tally whose failures up to level-1 are in the lower bound and whose next is to become a
// wish, once the cores that do not need it are used up.
type due struct {
	tally  *tally
	level  int
	weight int
}

func newSearch(q *query, goal int) *search {
	g := &search{q: q, goal: goal, index: map[sat.Lit]int{}, cancel: func() {}, shown: [2]int{-1, -1}}
	g.turned, g.raised, g.since, g.patience = q.effort(), q.effort(), q.effort(), pace.ticks
	if soon := 2 * q.goals[goal].Patience; soon > 0 {
		g.patience = min(g.patience, soon)
	}
	g.parts, g.dice = partitions(q.opts.Partitions), 1
	if d := &q.goals[goal]; d.Open != nil {
		q.marked(0, func() { d.Softs, d.Least = d.Open(q.best) })
	}
	d := q.goals[goal]
	if d.Given != nil {
		d.Given(q.own, q.best)
	}
	g.known = d.Least
	for _, soft := range d.Softs {
		g.wish(wish{lit: soft.Lit, weight: soft.Weight, group: soft.Stratum})
		if soft.Stratum >= 0 {
			g.groups = append(g.groups, soft.Stratum)
		}
	}
	slices.Sort(g.groups)
	g.groups = slices.Compact(g.groups)
	return g
}

// inquire sets off what is worked out beside.
func (g *search) inquire() {
	d := g.q.goals[g.goal]
	if d.Beside == nil || g.met() {
		return
	}
	g.told, g.gap = len(g.tallies), g.upper()-g.bound()
	work := d.Beside(g.q.best, g.upper(), slices.Concat(g.q.found, g.found(), g.q.clash))
	g.pursued = false
	if work == nil {
		return
	}
	ctx, cancel := context.WithCancel(g.q.ctx)
	g.beside, g.cancel = make(chan Beside, 1), cancel
	g.asked, g.since = g.asked+1, g.q.effort()
	go func() { g.beside <- work(ctx) }()
}

// close waits for what runs beside the search to end.
func (g *search) close() {
	g.forget()
	g.cancel()
	if g.beside != nil {
		<-g.beside
	}
}

// learn writes down what is known of solutions better than the best, in place of what was known of
// those better than an earlier one.
func (g *search) learn() {
	d := g.q.goals[g.goal]
	if d.Better == nil || g.target > 0 || g.better != 0 && g.below == g.upper() {
		return
	}
	g.forget()
	g.better, g.below = g.q.s.NewVar(), g.upper()
	d.Better(g.better, g.below)
}

func (g *search) forget() {
	if g.better != 0 {
		g.q.s.Retire(g.better)
		g.better = 0
	}
}

// wish adds weight to a wish, a new one or one that is there already.
func (g *search) wish(w wish) {
	// Of a literal and its negation one fails whatever happens.
	if i, ok := g.index[w.lit.Not()]; ok {
		both := min(g.wishes[i].weight, w.weight)
		g.wishes[i].weight -= both
		w.weight -= both
		g.lower += both
	}
	if i, ok := g.index[w.lit]; ok {
		g.wishes[i].weight += w.weight
		return
	}
	g.index[w.lit] = len(g.wishes)
	g.wishes = append(g.wishes, w)
}

func (g *search) upper() int { return g.q.values[g.goal] }
func (g *search) bound() int { return max(g.lower, g.known) }
func (g *search) met() bool  { return g.bound() == g.upper() }

// over tells whether the goal is proved or time is up, and keeps the world informed.
func (g *search) over() bool {
	if g.target > 0 {
		return g.lost()
	}
	g.hear()
	if now := [2]int{g.upper(), g.bound()}; now != g.shown && g.q.opts.Progress != nil {
		g.shown = now
		g.q.opts.Progress(g.q.goals[g.goal].Name, now[0], now[1])
	}
	if g.bound() > g.upper() {
		g.refute()
	}
	return g.met() || g.err != nil || g.q.ctx.Err() != nil
}

// interrupted reports whether it is over, or there is a plan to follow first.
func (g *search) interrupted() bool { return g.over() || g.hint != nil }

// hear asks for what can be worked out beside once the goal turns out not to be easy, which is when no
// core has been found for a while, takes it in, and asks again when there are many more, the gap is smaller, or it has
// been a while, longer each time, or a plan was followed; not while one waits to be.
func (g *search) hear() {
	const little = 8 // tallies that are not worth asking again
	patience := cmp.Or(g.q.goals[g.goal].Patience, 10)
	switch {
	case g.met() || g.hint != nil:
	case g.beside != nil && g.q.effort()-g.since >= patience:
		if b, ok := g.wait(); ok {
			if !slices.Equal(b.Hint, g.followed) {
				g.hint, g.followed = b.Hint, b.Hint
			}
			g.wagers = g.wagers || g.priced == nil || b.Least > g.known
			g.known = max(g.known, b.Least)
			if b.Priced != nil {
				g.priced = b.Priced
				g.sum = sumOf(b)
				slices.SortStableFunc(g.priced, func(a, b Priced) int { return cmp.Compare(b.Least, a.Least) })
			}
			g.beside = nil
			g.cancel()
		}
	case g.beside != nil:
	case g.asked == 0 && (g.q.effort()-g.raised >= patience || g.q.effort()-g.since >= 10*patience):
		g.inquire()
	case g.asked > 0 && (g.pursued || g.q.effort()-g.since >= 8*patience*g.asked || len(g.tallies) > 4*g.told+little || g.upper()-g.bound() <= g.gap*3/4 && g.q.effort()-g.since >= 2*patience):
		g.inquire()
	}
}

// processors that the process was given.
var processors = runtime.GOMAXPROCS(0)

// wait for what is worked out beside. It has all processors meanwhile: no search runs, whose ticks would be
// dropped (see package sat), if there is one in the process at a time.
func (g *search) wait() (b Beside, ok bool) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(processors))
	select {
	case b = <-g.beside:
		return b, true
	case <-g.q.ctx.Done():
		return b, false
	}
}

// found is what the cores of the goal's own wishes say.
func (g *search) found() []Count {
	counts := slices.Clone(g.units)
	for _, t := range g.tallies {
		if !slices.ContainsFunc(t.wishes, func(l sat.Lit) bool { return g.wishes[g.index[l]].tally != nil }) {
			counts = append(counts, Count{Lits: t.wishes, Least: t.sure})
		}
	}
	return counts
}

// refute notes that what the caller said to be proved excludes a solution that was found.
func (g *search) refute() {
	g.err = fmt.Errorf("goal %q: its counts or bounds are not true: a solution is worth %d", g.q.goals[g.goal].Name, g.upper())
}

// run searches until the goal is proved or time is up. Heavy wishes come before light ones, and
// within the same weights the groups one by one before the whole.
func (g *search) run() {
	g.seed()
	g.gather()
}

// gather looks for cores until it is over.
func (g *search) gather() {
	for least := g.next(0); !g.over(); least = g.next(least) {
		for _, group := range g.groups {
			if len(g.groups) > 1 {
				g.apart(least, group)
			}
		}
		for _, group := range g.groups {
			if len(g.groups) > 1 {
				g.collect(least, group)
			}
		}
		g.collect(least, all)
	}
}

// next is the least weight to look at after least has been: well below it, so that there are not
// too many rounds. The last is 1.
func (g *search) next(least int) int {
	var weights []int
	for _, w := range g.wishes {
		if w.weight > 0 && (least == 0 || w.weight < least) {
			weights = append(weights, w.weight)
		}
	}
	slices.SortFunc(weights, func(a, b int) int { return cmp.Compare(b, a) })
	distinct := 0
	for i, w := range weights {
		if i == 0 || w != weights[i-1] {
			distinct++
		}
		if i+1 == len(weights) || w != weights[i+1] {
			if last := i+1 == len(weights); !last && 4*(i+1) > 5*distinct {
				return w
			}
		}
	}
	return 1
}

// all lets the wishes of every group in.
const all = -2

// collect finds cores among the wishes of a group that have at least the given weight, until they
// can be had together. A group that is hard gives way to the next. Where that is hard for all together, a
// portion of them is asked for, and better solutions get their turn (one core after the other ends the proof
// sooner than they do).
func (g *search) collect(least, group int) {
	var p portion
	for !g.over() {
		if g.target == 0 && g.q.renewed == 0 {
			g.q.renew() // as soon as it turns out to be hard, then at the end of a goal
		}
		if g.hint != nil {
			g.follow()
			continue
		}
		if g.wagers && g.near() {
			g.wagers = false
			g.wager(1+(g.upper()-g.bound())/8, 5*g.patience)
			g.harden()
			continue
		}
		if g.learn(); g.better != 0 {
			g.descend(g.patience, g.q.effort()+g.patience, 1)
			g.harden()
			if g.over() {
				return
			}
		}
		lits := g.above(least, group)
		patience := g.patience
		if group != all && g.target > 0 { // or the first hard one takes all that a supposition has
			patience = min(patience, pace.ticks)
		}
		n := len(lits)
		if p.hard > 0 {
			if n = p.of(g.metFirst(lits), n); n < len(lits) {
				patience = max(1, patience/4)
				g.q.recall()
			}
		}
		switch status := g.q.ask(patience, lits[:n]); {
		case status == sat.Unsat:
			g.relax(g.q.shrink(g.q.blamed()))
			g.raised = g.q.effort()
		case status == sat.Unknown && group != all:
			return
		case status == sat.Unknown:
			p.hard = n
		case n < len(lits):
			p.easy = n
			g.harden()
			g.settle()
		default:
			g.harden()
			if len(g.due) == 0 || g.over() {
				return
			}
			g.settle()
		}
		if e := g.q.effort(); g.target == 0 && (e-g.raised >= 2*g.patience || e-g.turned >= 10*g.patience) && !g.interrupted() {
			ticks := g.patience
			if !g.weighted() && g.q.isHard() {
				ticks = 1 + ticks/8 // its many questions take longer than they count, and what is left to find comes of cores as soon
			}
			g.improve(ticks)
			g.wager(1, 2*g.patience)
			g.press(10 * g.patience)
			g.harden()
			g.patience *= 2
			g.turned = g.q.effort()
			g.raised = g.turned
			if group == all && least == 1 && len(g.groups) > 1 && g.q.isHard() {
				return // with more patience groups may have more cores
			}
		}
	}
}

// relax takes a core into the lower bound.
func (g *search) relax(core []sat.Lit) {
	if len(core) == 0 {
		if g.target > 0 && !g.tightens {
			g.lower = g.target
		} else {
			g.refute()
		}
		return
	}
	least := g.wishes[g.index[core[0]]].weight
	for _, l := range core {
		least = min(least, g.wishes[g.index[l]].weight)
	}
	g.lower += least
	for _, l := range core {
		g.take(l, least)
	}
	if len(core) == 1 {
		if g.wishes[g.index[core[0]]].tally == nil {
			g.units = append(g.units, Count{Lits: core, Least: 1})
		}
		g.q.s.Add(g.q.own, core[0].Not())
		return
	}
	g.due = append(g.due, due{g.count(core, least), 2, least})
}

// count makes the tally of a core of which one failure is in the lower bound.
func (g *search) count(core []sat.Lit, weight int) *tally {
	fails := make([]sat.Lit, len(core))
	group := g.wishes[g.index[core[0]]].group
	for i, l := range core {
		fails[i] = l.Not()
		if g.wishes[g.index[l]].group != group {
			group = -1
		}
	}
	t := &tally{wishes: core, counter: g.q.s.NewCounter(g.q.own, fails...), weight: weight, group: group, sure: 1, used: []int{weight}}
	g.tallies = append(g.tallies, t)
	return t
}

// take moves weight of a wish into the lower bound. If the wish was about a tally, the next failure
// of the tally is due.
func (g *search) take(l sat.Lit, weight int) {
	w := &g.wishes[g.index[l]]
	w.weight -= weight
	if w.tally == nil {
		return
	}
	w.tally.use(w.level, weight)
	g.due = append(g.due, due{w.tally, w.level + 1, weight})
}

func (t *tally) use(level, weight int) {
	for len(t.used) < level {
		t.used = append(t.used, 0)
	}
	t.used[level-1] += weight
}

// settle turns what is due into wishes. A tally that must fail once more, whatever is wished
// besides, goes into the lower bound at once.
func (g *search) settle() {
	for _, d := range g.due {
		for d.level <= d.tally.counter.Size() {
			if g.q.seen(func(m sat.Model) bool { return fails(m, d.tally.wishes) < d.level }) {
				break
			}
			l := g.fewer(d.tally, d.level)
			if g.q.ask(1, []sat.Lit{l}) != sat.Unsat {
				break
			}
			g.q.s.Add(g.q.own, l.Not())
			d.tally.sure = max(d.tally.sure, d.level)
			g.lower += d.weight
			d.tally.use(d.level, d.weight)
			d.level++
		}
		g.grant(d)
	}
	g.due = nil
}

// grant turns a tally's next failure into a wish.
func (g *search) grant(d due) {
	if d.level > d.tally.counter.Size() {
		return
	}
	l := g.fewer(d.tally, d.level)
	g.wish(wish{lit: l, weight: d.weight, group: d.tally.group, tally: d.tally, level: d.level})
}

// harden makes clauses of the wishes that no solution as good as the best can do without.
func (g *search) harden() {
	most := g.upper()
	if g.target > 0 {
		most = g.target - 1
	}
	for i, w := range g.wishes {
		if w.weight > 0 && g.lower+w.weight > most {
			g.q.s.Add(g.q.own, w.lit)
			g.wishes[i].weight = 0
		}
	}
	for len(g.priced) > 0 && g.priced[0].Least > g.upper() {
		g.q.s.Add(g.q.own, g.priced[0].not()...)
		g.priced = g.priced[1:]
	}
}
