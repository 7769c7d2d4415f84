package bound

// narrowed is a spell with no more than can be worked while only some rides, by number, are open: of the stretches those in which
// each place has such a ride, and of the steps those that lead from the first to a last.
func narrowed(s *Spell, open []bool) Spell {
	n := *s
	n.Days = make([]Day, len(s.Days))
	for d := range s.Days {
		n.Days[d] = s.Days[d].narrowed(open)
	}
	return n
}

const gone = -1

func (d *Day) narrowed(open []bool) Day {
	n := *d
	stretch := make([]int32, len(d.Stretches)) // their new places
	left := 0
	for x := range d.Stretches {
		stretch[x] = gone
		if d.Stretches[x].open(open) {
			stretch[x] = int32(left)
			left++
		}
	}
	n.Stretches = make([]Stretch, 0, left)
	for x := range d.Stretches {
		if stretch[x] != gone {
			n.Stretches = append(n.Stretches, d.Stretches[x])
		}
	}
	if len(d.Shares) > 0 {
		n.share(d, stretch)
	}
	shares := make([]bool, len(n.Stretches))
	for _, s := range n.Shares {
		shares[s.From], shares[s.To] = shares[s.From] || s.First != nil, shares[s.To] || s.Second != nil
	}
	for x := range n.Stretches {
		if !shares[x] {
			n.Stretches[x].riders(open)
		}
	}
	// A step stays that is reached from the first and leads to a last.
	step := make([]int32, len(d.Steps))
	for k := 1; k < len(step); k++ {
		x := d.Steps[k].Stretch
		step[k] = gone
		if x != Pause && stretch[x] == gone {
			continue
		}
		for _, p := range d.Steps[k].After {
			if step[p] != gone {
				step[k] = 0
				break
			}
		}
	}
	leads := make([]bool, len(d.Steps))
	edges, steps := 0, 1
	for k := len(step) - 1; k > 0; k-- {
		if step[k] == gone || !d.Steps[k].Last && !leads[k] {
			step[k] = gone
			continue
		}
		for _, p := range d.Steps[k].After {
			leads[p] = true
		}
		edges, steps = edges+len(d.Steps[k].After), steps+1
	}
	after := make([]int, 0, edges)
	n.Steps = append(make([]Step, 0, steps), d.Steps[0])
	for k := 1; k < len(step); k++ {
		if step[k] == gone {
			continue
		}
		s := d.Steps[k]
		begin := len(after)
		for _, p := range s.After {
			if step[p] != gone {
				after = append(after, int(step[p]))
			}
		}
		s.After = after[begin:len(after):len(after)]
		if s.Stretch != Pause {
			s.Stretch = int(stretch[s.Stretch])
		}
		step[k] = int32(len(n.Steps))
		n.Steps = append(n.Steps, s)
	}
	return n
}

// open reports whether each place of a stretch has a ride that is open.
func (x *Stretch) open(open []bool) bool {
	for _, riders := range x.Places {
		some := false
		for i := range riders {
			some = some || open[riders[i].Ride]
		}
		if !some {
			return false
		}
	}
	return true
}

// riders leaves those of open rides.
func (x *Stretch) riders(open []bool) {
	places := make([][]Rider, len(x.Places))
	for p, riders := range x.Places {
		n := 0
		for i := range riders {
			if open[riders[i].Ride] {
				n++
			}
		}
		if places[p] = riders; n == len(riders) {
			continue
		}
		places[p] = make([]Rider, 0, n)
		for i := range riders {
			if open[riders[i].Ride] {
				places[p] = append(places[p], riders[i])
			}
		}
	}
	x.Places = places
}

// share takes over what places of stretches that stay share.
func (d *Day) share(from *Day, stretch []int32) {
	d.Shares = nil
	share := make([]int, len(from.Shares))
	for k, s := range from.Shares {
		share[k] = gone
		if stretch[s.From] != gone && stretch[s.To] != gone {
			share[k] = len(d.Shares)
			s.From, s.To = int(stretch[s.From]), int(stretch[s.To])
			d.Shares = append(d.Shares, s)
		}
	}
	for x := range d.Stretches {
		within := d.Stretches[x].Within
		d.Stretches[x].Within = nil
		for _, k := range within {
			d.Stretches[x].Within = append(d.Stretches[x].Within, share[k]) // its stretch stays, and so it does
		}
	}
}

// narrow lets a spell see the rides that somebody would pay for, and no others.
func (b *barter) narrow(s int) {
	for _, r := range b.rides[s] {
		b.visible[r] = b.ride[r] > -closed
	}
	b.p.Spells[s] = narrowed(&b.wide.Spells[s], b.visible)
	b.gauges[s] = b.gauges[s].again(&b.p.Spells[s])
}
