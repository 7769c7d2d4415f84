package bound

import "slices"

// Share is what a horse goes on with from one place of a day to the next, where the riders of both
// need it: the Things of Room that either takes for it are then taken once. First and Second tell
// which riders do, and with which list of which need. From and To are stretches of the day; within
// one, Place is where the first of the two rides.
type Share struct {
	From, To, Place int
	First, Second   []Pick
	Things          []int
}

// Pick is a rider of a place who meets a need with a list.
type Pick struct{ Rider, Need, List int }

// alone is no share.
const alone = -1

// saving is what each share of a day spares at the prices, and whether any does.
func (b *book) saving(d int) (each []int64, any bool) {
	shares := b.spell.Days[d].Shares
	each = make([]int64, len(shares))
	for k := range shares {
		each[k] = b.m.charge(shares[k].Things)
		any = any || each[k] > 0
	}
	return each, any
}

// A joint is a stretch entered with one share and left with another.
type joint struct{ stretch, in, out int }

// joined is the best of a joint: its cost, its way, and between its places what is shared.
type joined struct {
	cost   int64
	way    int
	within []int
}

// together is the cost of a set of stretches with all that they share, and the share with which
// each is left.
func (b *book) together(d int, set *Set) (int64, []int) {
	type reached struct {
		share, from int // the share, and where in the step before
		cost        int64
	}
	steps := make([][]reached, len(set.Stretches))
	last := []reached{{share: alone}}
	for i, x := range set.Stretches {
		outs := []int{alone}
		for _, k := range set.Shares {
			s := &b.spell.Days[d].Shares[k]
			if s.From == x && s.To != x && b.spares[d][k] > 0 {
				outs = append(outs, k)
			}
		}
		for _, out := range outs {
			r := reached{share: out, cost: none}
			for from, l := range last {
				cost := l.cost + b.joint(d, joint{x, l.share, out}).cost
				if out != alone {
					cost -= b.spares[d][out]
				}
				if cost < r.cost {
					r.cost, r.from = cost, from
				}
			}
			steps[i] = append(steps[i], r)
		}
		last = steps[i]
	}
	outs := make([]int, len(steps))
	for i, at := len(steps)-1, 0; i >= 0; i-- {
		outs[i], at = steps[i][at].share, steps[i][at].from
	}
	return last[0].cost, outs
}

// joint looks for the best of a joint.
func (b *book) joint(d int, j joint) *joined {
	if best, ok := b.joints[d][j]; ok {
		return best
	}
	x, deal := &b.spell.Days[d].Stretches[j.stretch], &b.deals[d][j.stretch]
	best := &joined{cost: none}
	within := make([][]int, len(x.Places)) // what may be shared with the place after
	for p := range within {
		within[p] = []int{alone}
	}
	within[len(within)-1] = []int{j.out}
	for _, k := range x.Within {
		if b.spares[d][k] > 0 {
			within[b.spell.Days[d].Shares[k].Place] = append(within[b.spell.Days[d].Shares[k].Place], k)
		}
	}
	picks := make([]int, len(x.Places))
	var from func(p, in int, cost int64, way int)
	from = func(p, in int, cost int64, way int) {
		if p == len(x.Places) {
			if cost < best.cost {
				*best = joined{cost, way, slices.Clone(picks)}
			}
			return
		}
		for _, out := range within[p] {
			picks[p] = out
			more := b.place(d, j.stretch, p, in, out)[way].cost
			if p < len(x.Places)-1 && out != alone {
				more -= b.spares[d][out]
			}
			if more < none/2 {
				from(p+1, out, cost+more, way)
			}
		}
	}
	for way := range x.Ways {
		from(0, j.in, deal.tack[way], way)
	}
	b.joints[d][j] = best
	return best
}

// place is who rides in a place by way, if what came in with a share and what goes on with one binds.
func (b *book) place(d, stretch, p, in, out int) []seated {
	if in == alone && out == alone {
		return b.deals[d][stretch].riders[p]
	}
	key := [4]int{stretch, p, in, out}
	if riders, ok := b.placed[d][key]; ok {
		return riders
	}
	x := &b.spell.Days[d].Stretches[stretch]
	riders := slices.Repeat([]seated{{cost: none}}, len(x.Ways))
	for i := range x.Places[p] {
		r := &x.Places[p][i]
		lists, ok := b.lists(d, r, i, in, out)
		if !ok {
			continue
		}
		cost := b.m.rider(r)
		for n, at := range lists {
			_, least := b.m.least(r.Needs[n])
			cost += b.m.charge(r.Needs[n][at]) - least
		}
		offer(riders, r, seated{cost, i})
	}
	b.placed[d][key] = riders
	return riders
}

// lists is how a rider meets her needs, if she can be the one who shares; those that are free are
// met as is cheapest.
func (b *book) lists(d int, r *Rider, i, in, out int) ([]int, bool) {
	lists := make([]int, len(r.Needs))
	for n := range r.Needs {
		lists[n], _ = b.m.least(r.Needs[n])
	}
	var picks [][]Pick
	if in != alone {
		picks = append(picks, b.spell.Days[d].Shares[in].Second)
	}
	if out != alone {
		picks = append(picks, b.spell.Days[d].Shares[out].First)
	}
	bound := map[int]int{}
	for _, picks := range picks {
		at := slices.IndexFunc(picks, func(p Pick) bool { return p.Rider == i })
		if at < 0 {
			return nil, false
		}
		n, list := picks[at].Need, picks[at].List
		if was, ok := bound[n]; ok && was != list {
			return nil, false
		}
		bound[n], lists[n] = list, list
	}
	return lists, true
}

// use counts what a set of stretches uses, what they share once.
func (b *book) use(d int, set *Set) {
	day := &b.spell.Days[d]
	outs := slices.Repeat([]int{alone}, len(set.Stretches))
	if len(set.Shares) > 0 {
		_, outs = b.together(d, set)
	}
	in := alone
	for i, at := range set.Stretches {
		x, deal := &day.Stretches[at], &b.deals[d][at]
		best := &joined{way: deal.way, within: slices.Repeat([]int{alone}, len(x.Places))}
		if len(set.Shares) > 0 {
			best = b.joint(d, joint{at, in, outs[i]})
		}
		b.m.tackUp(&x.Ways[best.way], deal.girths[best.way])
		for p, out := range best.within {
			s := b.place(d, at, p, in, out)[best.way]
			r := &x.Places[p][s.rider]
			lists, _ := b.lists(d, r, s.rider, in, out)
			b.m.seat(r, lists)
			if out != alone {
				b.m.count(day.Shares[out].Things, -1)
			}
			in = out
		}
	}
}
