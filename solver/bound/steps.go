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

// costsTo is what it costs to come to each step of a day, the step counted in: to be left with each of the shares
// that lead on from it, the first with none.
type costsTo struct {
	cost []int64
	at   []int32 // where those of each step begin; nil: each has one
}

func (r *costsTo) of(step int) []int64 {
	if r.at == nil {
		return r.cost[step : step+1]
	}
	return r.cost[r.at[step]:r.at[step+1]]
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
	steps := b.spell.Days[d].Steps
	r.at = b.m.scratch.picks.take(len(steps) + 1)
	r.at[0] = 0
	for n, step := range steps {
		r.at[n+1] = r.at[n] + int32(len(b.outs(d, step.Stretch)))
	}
	r.cost = b.m.scratch.costs.take(int(r.at[len(steps)]))
	for n, step := range steps {
		for k, out := range b.outs(d, step.Stretch) {
			least := int64(0)
			if n > 0 {
				least = none
				for _, p := range step.After {
					for i, in := range b.outs(d, steps[p].Stretch) {
						least = min(least, b.via(d, p, i, joint{step.Stretch, in, out}))
					}
				}
			}
			r.of(n)[k] = least
		}
	}
}

// via is what it costs to come to a stretch after a step that is left with the i-th of its shares.
func (b *book) via(d, before, i int, j joint) int64 {
	cost := b.reached[d].of(before)[i]
	if cost >= none/2 || j.in != alone && b.spell.Days[d].Shares[j.in].To != j.stretch {
		return none
	}
	if j.stretch == Pause {
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
	out, cost := alone, b.reached[d].of(step)[0]
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
		step, out, cost = before, j.in, b.reached[d].of(before)[share]
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
