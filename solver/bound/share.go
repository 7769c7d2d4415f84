package bound

import "slices"

// Share is all that a horse goes on with from one place of a day to the next, where the riders of both
// need it, or where it is saddled so in both: the Things of Room that either takes for it are then taken once. First and Second
// tell which riders do, and how; none where any may. FirstWays and SecondWays tell the ways in which its stretches are saddled
// then; none where any may be, as within one stretch. Border is where.
type Share struct {
	Border
	First, Second         []Pick
	FirstWays, SecondWays []int
	Things                []int
}

// Border is between two places of a day, in stretches From and To; within one, Place is where the first
// of the two rides. A horse that crosses it goes on with one share, or with none.
type Border struct{ From, To, Place int }

// Pick is a rider of a place who meets needs with lists: Lists has one of each need, or Free. Who can do
// so in several ways has several.
type Pick struct {
	Rider int
	Lists []int
}

// Free is a need that is met as is cheapest.
const Free = -1

// alone is no share.
const alone = -1

// saving works out what each share of a day spares at the prices, and where any does, which lead on from each
// stretch.
func (b *book) saving(d int) {
	day := &b.spell.Days[d]
	b.spares[d], b.onward[d] = make([]int64, len(day.Shares)), nil
	for k := range day.Shares {
		s := &day.Shares[k]
		if b.spares[d][k] = b.m.charge(s.Things); b.spares[d][k] == 0 {
			continue
		}
		if b.onward[d] == nil {
			b.onward[d] = slices.Repeat([][]int{onlyAlone}, len(day.Stretches))
			b.joints[d], b.placed[d] = map[joint]*joined{}, map[[4]int][]seated{}
		}
		if s.To != s.From {
			b.onward[d][s.From] = append(slices.Clip(b.onward[d][s.From]), k)
		}
	}
}

// within reports whether places of a stretch share something.
func (b *book) within(d, stretch int) bool {
	return slices.ContainsFunc(b.spell.Days[d].Stretches[stretch].Within, func(k int) bool { return b.spares[d][k] > 0 })
}

// A joint is a stretch entered with one share and left with another.
type joint struct{ stretch, in, out int }

// joined is the best of a joint: its cost, its way, and between its places what is shared.
type joined struct {
	cost   int64
	way    int
	within []int
}

// joint looks for the best of a joint.
func (b *book) joint(d int, j joint) *joined {
	if best, ok := b.joints[d][j]; ok {
		return best
	}
	x, deal := &b.spell.Days[d].Stretches[j.stretch], b.deal(d, j.stretch)
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
	shares := b.spell.Days[d].Shares
	for way := range x.Ways {
		came := j.in == alone || shares[j.in].SecondWays == nil || slices.Contains(shares[j.in].SecondWays, way)
		goes := j.out == alone || shares[j.out].FirstWays == nil || slices.Contains(shares[j.out].FirstWays, way)
		if came && goes {
			from(0, j.in, deal.tack[way], way)
		}
	}
	b.joints[d][j] = best
	return best
}

// place is who rides in a place by way, if what came in with a share and what goes on with one binds.
func (b *book) place(d, stretch, p, in, out int) []seated {
	shares := b.spell.Days[d].Shares
	if (in == alone || shares[in].Second == nil) && (out == alone || shares[out].First == nil) {
		return b.deal(d, stretch).riders[p]
	}
	key := [4]int{stretch, p, in, out}
	if riders, ok := b.placed[d][key]; ok {
		return riders
	}
	x := &b.spell.Days[d].Stretches[stretch]
	riders := slices.Repeat([]seated{{cost: none}}, len(x.Ways))
	for i := range x.Places[p] {
		r := &x.Places[p][i]
		for _, lists := range b.lists(d, i, in, out) {
			cost := b.m.rider(r)
			for n, at := range lists {
				if at != Free {
					_, least := b.m.least(r.Needs[n])
					cost += b.m.charge(r.Needs[n][at]) - least
				}
			}
			offer(riders, r, seated{cost, i, lists})
		}
	}
	b.placed[d][key] = riders
	return riders
}

// lists are the ways in which a rider can meet her needs and be the one who shares.
func (b *book) lists(d, rider, in, out int) (all [][]int) {
	of := func(share int, picks func(*Share) []Pick) [][]int {
		if share == alone {
			return [][]int{nil}
		}
		all := picks(&b.spell.Days[d].Shares[share])
		if all == nil {
			return [][]int{nil}
		}
		var ways [][]int
		for _, p := range all {
			if p.Rider == rider {
				ways = append(ways, p.Lists)
			}
		}
		return ways
	}
	for _, came := range of(in, func(s *Share) []Pick { return s.Second }) {
		for _, goes := range of(out, func(s *Share) []Pick { return s.First }) {
			if both, ok := agree(came, goes); ok {
				all = append(all, both)
			}
		}
	}
	return all
}

// agree are lists that meet needs in both of two ways; nil is Free in all.
func agree(a, b []int) ([]int, bool) {
	if a == nil || b == nil {
		return append(a, b...), true
	}
	both := slices.Clone(a)
	for n, at := range b {
		switch {
		case both[n] == Free:
			both[n] = at
		case at != Free && at != both[n]:
			return nil, false
		}
	}
	return both, true
}

// across is what may be spared between two stretches at the most, whoever rides.
func (b *book) across(d, from, to int) (best int64) {
	for _, k := range b.outs(d, from) {
		if k != alone && b.spell.Days[d].Shares[k].To == to {
			best = max(best, b.spares[d][k])
		}
	}
	return best
}

// inside is what may be spared within a stretch at the most.
func (b *book) inside(d, stretch int) (sum int64) {
	best := map[int]int64{} // by place
	for _, k := range b.spell.Days[d].Stretches[stretch].Within {
		place := b.spell.Days[d].Shares[k].Place
		sum += max(0, b.spares[d][k]-best[place])
		best[place] = max(best[place], b.spares[d][k])
	}
	return sum
}

// use counts what the best way to a step uses, what is shared once.
func (b *book) use(d, last int) {
	day := &b.spell.Days[d]
	for _, j := range b.way(d, last) {
		x, deal := &day.Stretches[j.stretch], b.deal(d, j.stretch)
		best := &joined{way: deal.way, within: slices.Repeat([]int{alone}, len(x.Places))}
		if j.in != alone || j.out != alone || b.within(d, j.stretch) {
			best = b.joint(d, j)
		}
		b.m.tackUp(&x.Ways[best.way], deal.girths[best.way])
		in := j.in
		for p, out := range best.within {
			s := b.place(d, j.stretch, p, in, out)[best.way]
			r := &x.Places[p][s.rider]
			b.m.seat(r, x.Ways[best.way].Name, s.lists)
			if out != alone {
				b.m.count(day.Shares[out].Things, -1)
			}
			in = out
		}
	}
}
