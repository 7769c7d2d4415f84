package solver

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// byHand gives each use a kit of its pool that is free, in order of time. The
// pools were counted so that one always is, whichever were picked before.
func (s *settler) byHand() ([]int, error) {
	h := newHand(s)
	for _, u := range s.uses {
		switch {
		case len(u.first) == 1:
			h.give(u.first[0]) // the clauses have settled it
		case !h.take(u, u.first):
			p := s.kits[u.first[0]][0]
			return nil, fmt.Errorf("no %s like %s is left for %s on %s", p.Kind, p.Tag, u.Turn.Horse.Name, u.Date)
		}
	}
	return h.picks, nil
}

// leastMoves is a number of moves that no picks come below: what it takes if any
// use could have any kit, whatever was posted.
func (s *settler) leastMoves() int {
	free := &settler{w: s.w, kits: s.kits}
	all := make([]int, len(s.kits))
	for x := range all {
		all[x] = x
	}
	for _, u := range s.uses {
		free.uses = append(free.uses, wear{Stint: u.Stint})
	}
	h := newHand(free)
	for _, u := range free.uses {
		if !h.take(u, all) {
			return 0 // facts that are at odds
		}
	}
	return free.moves(h.picks)
}

// hand picks kits use by use. Where nothing was posted, and of pieces that any
// use could have, no picks make fewer moves: it takes the piece that the horse
// had last, else one that nobody had yet that date, else the one whose horse
// wants it again the latest. (Belady 1966, IBM Systems J. 5:78-101, on paging,
// from memory: pieces are the frames, horses the pages.)
type hand struct {
	*settler
	picks []int
	last  map[*model.Piece]int // use
}

func newHand(s *settler) *hand { return &hand{settler: s, last: map[*model.Piece]int{}} }

// take picks for the next use; false is that none of the kits is free.
func (h *hand) take(u wear, kits []int) bool {
	best, rank := -1, -1
	for _, x := range kits {
		if r := h.rank(u, x); r > rank {
			best, rank = x, r
		}
	}
	if best < 0 {
		return false
	}
	h.give(best)
	return true
}

func (h *hand) give(x int) {
	h.last[h.kits[x][0]] = len(h.picks)
	h.picks = append(h.picks, x)
}

// rank says how well a kit would do, from 0; -1 is that it is not free.
func (h *hand) rank(u wear, x int) int {
	i, n := len(h.picks), len(h.uses)
	holds := false
	for j, v := range slices.Backward(h.uses[:i]) {
		if v.Date != u.Date && !v.marks {
			continue
		}
		if h.apart(v, h.picks[j], u, x) {
			return -1
		}
		holds = holds || v.Turn.Horse == u.Turn.Horse && h.picks[j] == x && (v.marks || h.near(v, u))
	}
	var last wear
	if j, ok := h.last[h.kits[x][0]]; ok {
		last = h.uses[j]
	}
	own := last.Stint != nil && last.Turn.Horse == u.Turn.Horse
	today := last.Stint != nil && last.Date == u.Date
	switch {
	case holds:
		return 5 * n
	case h.keeps(u, x) > 0:
		return 4 * n
	case own && today:
		return 3 * n
	}
	for j, v := range h.uses[i+1:] {
		if v.Date != u.Date {
			break
		}
		if today && v.Turn.Horse == last.Turn.Horse || h.keeps(v, x) > 0 {
			return j // wanted again
		}
	}
	switch {
	case today:
		return n - 1
	case own: // as it was on a date before
		return 2 * n
	}
	return n
}
