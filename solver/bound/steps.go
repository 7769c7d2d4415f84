package bound

// Step is a stretch in one of the ways to work a day. The ways are the paths from Steps[0], which has no
// stretch, to any step that may be the Last.
type Step struct {
	Stretch int   // or Pause
	After   []int // it may come after any of these earlier steps, and after no other; none for Steps[0] alone
	Last    bool  // it may be the last
	Work    int64 // of the day that it is the last of
}

// Pause is a step without a stretch.
const Pause = -1

// costsTo is what it costs to come to each step of a day, the step counted in: to be left with none of the shares
// that lead on from it, by step, then with each of them.
type costsTo struct {
	cost []int64
	more []int32 // where those with a share begin, by step
}

// of a step, to be left with the i-th of what leads on from it; 0: alone.
func (r *costsTo) of(step, i int) *int64 {
	if i == 0 {
		return &r.cost[step]
	}
	return &r.cost[int(r.more[step])+i-1]
}

// walk works out the cheapest ways through a day.
func (b *book) walk(d int) {
	r := &b.reached[d]
	steps := b.spell.Days[d].Steps
	if b.onward[d] != nil {
		b.walkSharing(d)
		return
	}
	costs := b.costs[d]
	r.cost = b.m.scratch.costs.take(len(steps))
	r.cost[0] = 0
	for n := 1; n < len(steps); n++ {
		least := int64(none)
		for _, p := range steps[n].After {
			least = min(least, r.cost[p])
		}
		if x := steps[n].Stretch; x != Pause && least < none/2 {
			least = min(none, least+costs[x])
		}
		r.cost[n] = least
	}
}

// walkSharing does where horses go on with what they share.
func (b *book) walkSharing(d int) {
	r := &b.reached[d]
	day := &b.spell.Days[d]
	steps := day.Steps
	comes := make([]bool, len(day.Stretches)) // with a share
	r.more = b.m.scratch.picks.take(len(steps))
	end := len(steps)
	for n, step := range steps {
		r.more[n] = int32(end)
		for _, out := range b.outs(d, step.Stretch) {
			if out != alone {
				comes[day.Shares[out].To] = true
				end++
			}
		}
	}
	r.cost = b.m.scratch.costs.take(end)
	r.cost[0] = 0
	for n := 1; n < len(steps); n++ {
		x, after := steps[n].Stretch, steps[n].After
		least := int64(none)
		for _, p := range after {
			least = min(least, r.cost[p])
		}
		outs := b.outs(d, x)
		for k, out := range outs {
			*r.of(n, k) = b.onto(d, least, joint{x, alone, out})
		}
		if x == Pause || !comes[x] {
			continue
		}
		for _, p := range after {
			for i, in := range b.outs(d, steps[p].Stretch) {
				if in == alone || day.Shares[in].To != x {
					continue
				}
				for k, out := range outs {
					to := r.of(n, k)
					*to = min(*to, b.onto(d, *r.of(p, i), joint{x, in, out}))
				}
			}
		}
	}
}

// via is what it costs to come to a stretch after a step that is left with the i-th of its shares.
func (b *book) via(d, before, i int, j joint) int64 {
	if j.in != alone && b.spell.Days[d].Shares[j.in].To != j.stretch {
		return none
	}
	return b.onto(d, *b.reached[d].of(before, i), j)
}

// onto is what it costs to come to a stretch from where it cost so much to come to.
func (b *book) onto(d int, cost int64, j joint) int64 {
	switch {
	case cost >= none/2:
		return none
	case j.stretch == Pause:
		return cost
	}
	if j.in == alone && j.out == alone && !b.within(d, j.stretch) {
		return min(none, cost+b.costs[d][j.stretch])
	}
	more := b.joint(d, j).cost
	if j.out != alone && more < none/2 {
		more -= b.spares[d][j.out]
	}
	return min(none, cost+more)
}

// way is the cheapest way to a step, as the joints of its stretches, the last first. Of several that cost the same it
// has the last steps, and so does book: what Dive makes of the prices depends on it.
func (b *book) way(d, step int) (way []joint) {
	steps := b.spell.Days[d].Steps
	out, cost := alone, *b.reached[d].of(step, 0)
	for step > 0 {
		before, share := -1, 0
		j := joint{stretch: steps[step].Stretch, out: out}
		for _, p := range steps[step].After {
			for i, in := range b.outs(d, steps[p].Stretch) {
				if j.in = in; b.via(d, p, i, j) == cost {
					before, share = p, i
				}
			}
		}
		j.in = b.outs(d, steps[before].Stretch)[share]
		if j.stretch != Pause {
			way = append(way, j)
		}
		step, out, cost = before, j.in, *b.reached[d].of(before, share)
	}
	return way
}

// outs are the shares that a stretch can be left with.
func (b *book) outs(d, stretch int) []int {
	if b.onward[d] == nil || stretch == Pause {
		return onlyAlone
	}
	return b.onward[d][stretch]
}

var onlyAlone = []int{alone}
