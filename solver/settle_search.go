package solver

import (
	"context"
	"errors"
	"slices"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// search finds the best picks, or none better than start when ctx ends first. No
// picks make fewer moves than least.
func (s *settler) search(ctx context.Context, start []int, least int) ([]int, error) {
	q := &settling{settler: s, Solver: sat.New()}
	var hint []sat.Lit
	for i, u := range s.uses {
		q.makePick(u)
		hint = append(hint, q.picks[i][start[i]])
	}
	q.rules()
	goals := []ordered.Goal{{Name: "kept", Softs: q.asPosted()}, {Name: "moves", Softs: q.staysPut(), Least: least}}
	best, _, err := ordered.Minimise(ctx, q.Solver, nil, goals, ordered.Options{Start: hint, Last: true})
	var odds *ordered.Unsatisfiable
	switch {
	case err != nil && ctx.Err() != nil, errors.As(err, &odds): // start breaks a rule then, as the audit will say
		return start, nil
	case err != nil:
		return nil, err
	}
	var found []int
	for _, pick := range q.picks {
		found = append(found, slices.IndexFunc(pick, func(l sat.Lit) bool { return l != 0 && best.Value(l) }))
	}
	if more := s.kept(found) - s.kept(start); more < 0 || more == 0 && s.moves(found) > s.moves(start) {
		return start, nil // ctx ended early
	}
	return found, nil
}

// settling is the picks of a settler as clauses.
type settling struct {
	*settler
	*sat.Solver
	picks [][]sat.Lit // of each use, by kit; 0 where it cannot be
}

// makePick makes the literals of one use more: it has exactly one kit.
func (q *settling) makePick(u wear) {
	pick := make([]sat.Lit, len(q.kits))
	var lits []sat.Lit
	for _, x := range u.can {
		pick[x] = q.NewVar()
		lits = append(lits, pick[x])
	}
	q.Add(q.Root(), lits...)
	q.AtMostOne(q.Root(), lits...)
	q.picks = append(q.picks, pick)
}

// rules keep a piece in one place, and on a horse that has no time to change.
func (q *settling) rules() {
	for j, v := range q.uses {
		for i, u := range q.uses[:j] {
			if u.to == nil && v.to == nil {
				continue // facts may be at odds
			}
			for _, x := range u.can {
				for _, y := range v.can {
					if q.apart(u, x, v, y) || x != y && q.stays(u, v) {
						q.Add(q.Root(), q.picks[i][x].Not(), q.picks[j][y].Not())
					}
				}
			}
		}
	}
}

// stays reports whether a horse has no time to change between two uses.
func (q *settling) stays(u, v wear) bool {
	return u.Turn.Horse == v.Turn.Horse && u.Stint != v.Stint && u.Date == v.Date &&
		v.Start-u.End < q.w.House.Other && !q.kits[0][0].Kind.IsExtra()
}

// asPosted wishes for the tags that were posted.
func (q *settling) asPosted() []ordered.Soft {
	var softs []ordered.Soft
	for i, u := range q.uses {
		for x, lit := range q.picks[i] {
			if kept := q.keeps(u, x); lit != 0 && kept > 0 {
				softs = append(softs, ordered.Soft{Lit: lit, Weight: kept, Stratum: -1})
			}
		}
	}
	return softs
}

// staysPut wishes that no use has its piece from another horse that date.
func (q *settling) staysPut() []ordered.Soft {
	var softs []ordered.Soft
	for j, v := range q.uses {
		var wish sat.Lit
		for _, x := range v.can {
			unless := []sat.Lit{q.picks[j][x].Not()} // or its own horse had it since
			for i, u := range slices.Backward(q.uses[:j]) {
				if u.Date != v.Date {
					break
				}
				had := q.has(i, x)
				switch {
				case len(had) == 0:
				case u.Turn.Horse == v.Turn.Horse:
					unless = append(unless, had...)
				case q.passes(u, v):
					if wish == 0 {
						wish = q.NewVar()
						softs = append(softs, ordered.Soft{Lit: wish, Weight: 1, Stratum: -1})
					}
					for _, lit := range had {
						q.Add(q.Root(), append(slices.Clone(unless), wish.Not(), lit.Not())...)
					}
				}
			}
		}
	}
	return softs
}

// has are the literals of which one says that a use has the piece of a kit.
func (q *settling) has(i, x int) []sat.Lit {
	var lits []sat.Lit
	for y, lit := range q.picks[i] {
		if lit != 0 && q.kits[y][0] == q.kits[x][0] {
			lits = append(lits, lit)
		}
	}
	return lits
}
