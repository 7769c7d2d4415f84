package solver

import (
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// pieceInOnePlace keeps the horses that wear pieces of a pool at once, each
// until the piece could be on another horse, to the number of its pieces.
func pieceInOnePlace(e *encoder, under under) {
	for _, p := range e.pools {
		e.countHorses(under, p, false)
		for _, f := range e.w.Facts {
			if slices.ContainsFunc(f.Turn.Pieces(), func(x *model.Piece) bool { return e.poolOf[x] == p }) {
				e.apartFromFact(under, p, f)
			}
		}
	}
}

// apartFromFact keeps the piece of a fact off other horses around it, and off
// its own while it is worn.
func (e *encoder) apartFromFact(under under, p *pool, f *model.Stint) {
	for _, u := range e.uses[p.index] {
		if u.at.meeting.Date != f.Date {
			continue
		}
		need := e.w.House.Move
		if u.at.horse == f.Turn.Horse {
			need = 0
		}
		if u.at.start-f.End < need && f.Start-u.at.end < need {
			e.s.Add(under(about{pool: p, fact: f, date: f.Date}), u.lit.Not())
		}
	}
}

// countHorses keeps, at each start of a ride, the distinct horses that hold a
// piece of the pool to the number of its pieces. A horse holds it from the start
// of a ride until it could be on another horse; with forever, a horse on its own
// tack never lets go.
func (e *encoder) countHorses(under under, p *pool, forever bool) {
	for holding := range e.holdings(p, forever) {
		e.limit(under, p, holding)
		if e.fine != nil && !forever && len(holding) > 0 {
			e.ridesAtOnce(under, p, holding)
		}
	}
}

// ridesAtOnce keeps the rides that use the pool at one time to the number of its
// pieces. Where a horse carries one rider, the horses are counted already.
func (e *encoder) ridesAtOnce(under under, p *pool, uses []use) {
	last := uses[len(uses)-1].at
	var lits []sat.Lit
	for _, u := range uses {
		if u.at.end > last.start {
			lits = append(lits, u.lit)
		}
	}
	if len(lits) > len(p.pieces) {
		e.s.AtMost(under(poolAt(p, last)), len(p.pieces), lits...)
	}
}

// poolAt is what too few pieces are about when the last ride that uses them starts.
func poolAt(p *pool, last *place) about {
	return about{pool: p, date: last.meeting.Date, at: last.start, limit: len(p.pieces)}
}

// holdings are the uses that hold a piece of the pool at one time, for each time
// at which there are most of them.
func (e *encoder) holdings(p *pool, forever bool) func(yield func([]use) bool) {
	return func(yield func([]use) bool) {
		var holding []use
		for _, u := range e.uses[p.index] { // by start
			gone := func(x use) bool { return !e.holds(x, u.at.instant(), forever) }
			if slices.ContainsFunc(holding, gone) {
				if !yield(holding) {
					return
				}
				holding = slices.DeleteFunc(slices.Clone(holding), gone)
			}
			holding = append(holding, u)
		}
		yield(holding)
	}
}

func (e *encoder) holds(x use, at model.Instant, forever bool) bool {
	if x.at.meeting.Date == at.Date && at.Minute < x.at.end+e.w.House.Move {
		return true
	}
	if !forever {
		return false
	}
	return len(x.stint().LeavesContact(e.w.House)) > 0
}

// limit keeps the distinct horses of the uses to the number of pieces.
func (e *encoder) limit(under under, p *pool, uses []use) {
	byHorse := map[*model.Horse][]sat.Lit{}
	var horses []*model.Horse
	rides := map[*slot]int{}
	for _, u := range uses {
		if byHorse[u.at.horse] == nil {
			horses = append(horses, u.at.horse)
		}
		byHorse[u.at.horse] = append(byHorse[u.at.horse], u.lit)
		rides[u.at.slot] = len(u.at.slot.rides)
	}
	riders := 0
	for _, n := range rides {
		riders += n
	}
	if min(len(horses), riders) <= len(p.pieces) {
		return
	}
	var holds []sat.Lit
	for _, h := range horses {
		holds = append(holds, e.s.Any(byHorse[h]...))
	}
	e.s.AtMost(under(poolAt(p, uses[len(uses)-1].at)), len(p.pieces), holds...)
}

// ownTackOnly keeps what a horse on its own tack has worn off other horses from
// then on; what happened before the week is a matter of single choices.
func ownTackOnly(e *encoder, under under) {
	for _, p := range e.pools {
		piece := p.one()
		if !piece.Skin {
			continue
		}
		if len(p.pieces) > 1 {
			if slices.ContainsFunc(e.uses[p.index], func(u use) bool {
				return len(u.stint().LeavesContact(e.w.House)) > 0
			}) {
				e.countHorses(under, p, true)
			}
			continue
		}
		e.keepContact(under(about{pool: p}), piece, e.uses[p.index])
	}
}

// keepContact does it for one piece, with every pair of uses and every fact.
func (e *encoder) keepContact(sel sat.Lit, piece *model.Piece, uses []use) {
	passes := func(worn *model.Stint, to *model.Stint) bool {
		return worn.Turn.Horse != to.Turn.Horse && worn.LeavesUnclean(piece, model.Instant{Date: to.Date, Minute: to.Start}, e.w.House)
	}
	for _, u := range uses {
		for _, v := range uses {
			if passes(u.stint(), v.stint()) {
				e.s.Add(sel, u.lit.Not(), v.lit.Not())
			}
		}
		for _, f := range e.w.Facts {
			if f.Date >= e.w.From && slices.Contains(f.Turn.Pieces(), piece) && (passes(u.stint(), f) || passes(f, u.stint())) {
				e.s.Add(sel, u.lit.Not())
			}
		}
	}
}
