package solver

import (
	"cmp"
	"context"
	"slices"

	"tackwright/model"
)

// settler settles the uses of pieces that are alike.
type settler struct {
	w    *model.Week
	kits []kit // what can be picked; picks are by number
	uses []wear
}

// wear is a use by a horse.
type wear struct {
	*model.Stint
	to     []**model.Piece // what it is filled in; a fact has none
	posted []*model.Piece  // for this ride on this horse
	marks  bool            // leaves a contact with a horse on its own tack
	first  []int           // kits of the pools of the solution, of which one is always free
	can    []int           // kits that no rule about them alone forbids
}

// numbers of kits, each once.
func (s *settler) numbers(kits []kit) []int {
	var numbers []int
	for _, k := range kits {
		i := slices.IndexFunc(s.kits, func(x kit) bool { return slices.Equal(x, k) })
		if i < 0 {
			i = len(s.kits)
			s.kits = append(s.kits, k)
		}
		if !slices.Contains(numbers, i) {
			numbers = append(numbers, i)
		}
	}
	return numbers
}

func (s *settler) settle(ctx context.Context) error {
	slices.SortStableFunc(s.uses, func(u, v wear) int {
		return cmp.Or(cmp.Compare(u.Date, v.Date), cmp.Compare(u.Start, v.Start))
	})
	picks, err := s.byHand()
	if err != nil {
		return err
	}
	from := 0
	for _, day := range s.days() {
		mine := picks[from : from+len(day.uses)]
		from += len(day.uses)
		if least := day.leastMoves(); day.kept(mine) < day.most() || day.moves(mine) > least {
			if mine, err = day.search(ctx, mine, least); err != nil {
				return err
			}
		}
		for i, u := range day.uses {
			for n, to := range u.to {
				*to = s.kits[mine[i]][n]
			}
		}
	}
	return nil
}

// days parts the uses into those that can be settled apart: by date, unless a
// horse on its own tack ties dates together.
func (s *settler) days() []*settler {
	if slices.ContainsFunc(s.uses, func(u wear) bool { return u.marks }) {
		return []*settler{s}
	}
	var days []*settler
	from := 0
	for i, u := range s.uses {
		if i == 0 || u.Date != s.uses[i-1].Date {
			days = append(days, &settler{w: s.w, kits: s.kits})
			from = i
		}
		days[len(days)-1].uses = s.uses[from : i+1]
	}
	return days
}

// keeps counts the posted tags that a use keeps with a kit.
func (s *settler) keeps(u wear, x int) int {
	n := 0
	for _, p := range u.posted {
		if slices.Contains(s.kits[x], p) {
			n++
		}
	}
	return n
}

// kept counts the posted tags that the picks keep.
func (s *settler) kept(picks []int) int {
	n := 0
	for i, u := range s.uses {
		n += s.keeps(u, picks[i])
	}
	return n
}

// most that can be kept, each use by itself.
func (s *settler) most() int {
	sum := 0
	for _, u := range s.uses {
		most := 0
		for _, x := range u.can {
			most = max(most, s.keeps(u, x))
		}
		sum += most
	}
	return sum
}

// moves counts those of [model.Week.Moves] that the picks make.
func (s *settler) moves(picks []int) int {
	moves := 0
	last := map[*model.Piece]wear{}
	for i, u := range s.uses {
		p := s.kits[picks[i]][0]
		if was, ok := last[p]; ok && s.passes(was, u) {
			moves++
		}
		last[p] = u
	}
	return moves
}

// passes reports whether it is a move if a piece goes from a use to the next.
func (s *settler) passes(u, v wear) bool {
	return s.kits[0][0].IsCarried() && u.Date == v.Date && v.Date <= s.w.Until && u.Turn.Horse != v.Turn.Horse
}

// apart reports whether one use of a kit and another of another cannot both be.
func (s *settler) apart(u wear, x int, v wear, y int) bool {
	switch {
	case !s.share(x, y):
		return false
	case u.Stint == v.Stint:
		return true
	case u.Turn.Horse == v.Turn.Horse:
		return false
	case s.near(u, v):
		return true
	}
	return (u.marks || v.marks) && slices.ContainsFunc(s.kits[x], func(p *model.Piece) bool {
		return p.Skin && slices.Contains(s.kits[y], p) &&
			(u.LeavesUnclean(p, model.Instant{Date: v.Date, Minute: v.Start}, s.w.House) ||
				v.LeavesUnclean(p, model.Instant{Date: u.Date, Minute: u.Start}, s.w.House))
	})
}

// share reports whether two kits have a piece in common.
func (s *settler) share(x, y int) bool {
	return x == y || slices.ContainsFunc(s.kits[x], func(p *model.Piece) bool { return slices.Contains(s.kits[y], p) })
}

// near reports whether there is no time to carry a piece between two uses.
func (s *settler) near(u, v wear) bool {
	return u.Date == v.Date && v.Start < u.End+s.w.House.Move && u.Start < v.End+s.w.House.Move
}
