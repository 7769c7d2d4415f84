package ordered

import "tackwright/solver/sat"

// A partition parts literals that tell solutions apart into regions. So many of them are looked at
// together.
type partition struct {
	regions [][]sat.Lit
	reach   int
	stale   int // tries in a row that found nothing better
}

// atFirst is how many regions are let go together to begin with.
func atFirst(regions int) int { return 1 + regions/10 }

func partitions(all [][][]sat.Lit) []*partition {
	var ps []*partition
	for _, regions := range all {
		if len(regions) > 1 {
			ps = append(ps, &partition{regions: regions, reach: atFirst(len(regions))})
		}
	}
	return ps
}

// roam looks for better solutions that keep to the best in all regions but a few, drawn again and again,
// until an end of effort: most such questions are answered at once. Where many in a row find nothing, more
// regions are let go together, and fewer where that cannot be decided.
func (g *search) roam(end int) {
	const fine = 128 // steps in which the sum of what fails is told
	if len(g.parts) == 0 || g.interrupted() {
		return
	}
	sel := g.q.s.NewVar()
	defer g.q.s.Retire(sel)
	unit := 1 + (g.upper()-g.lower)/fine
	excess := g.excess(sel, unit)
	status := sat.Unknown
	for try := 0; !g.interrupted() && g.q.effort() < end; try++ {
		p := g.parts[try%len(g.parts)]
		better := excess.AtLeast((g.upper()-unit-g.lower)/unit + 1).Not()
		if status != sat.Unsat { // that leads nowhere far from the best
			g.q.recall()
		}
		status = g.q.ask(3, append(g.elsewhere(p), sel, better))
		p.stale++
		switch {
		case status == sat.Sat:
			p.stale = 0
		case status == sat.Unknown:
			p.reach = max(atFirst(len(p.regions)), p.reach-1)
		case p.stale > 4*len(p.regions):
			p.reach, p.stale = min(p.reach+1, len(p.regions)/2), 0
		}
	}
}

// elsewhere are the literals of the best solution in all regions but a few.
func (g *search) elsewhere(p *partition) []sat.Lit {
	let := map[int]bool{}
	for len(let) < p.reach {
		g.dice = g.dice*6364136223846793005 + 1442695040888963407 // Knuth's: the same draws in every run
		let[int(g.dice>>33)%len(p.regions)] = true
	}
	var lits []sat.Lit
	for i, r := range p.regions {
		for _, l := range r {
			if !let[i] && g.q.best.Value(l) {
				lits = append(lits, l)
			}
		}
	}
	return lits
}
