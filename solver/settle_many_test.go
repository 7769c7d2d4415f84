package solver

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"tackwright/model"
)

// Many uses of a few girths in one day, some with posted tags: the picks
// keep as many tags, and then make as few moves, as the best of all picks do.
func TestManyUsesOfFewPiecesAreSettledAsWellAsTryingAllPicks(t *testing.T) {
	house := model.DefaultHouse()
	house.Other, house.Move = 10, 15
	w := &model.Week{House: &house, From: 5, Until: 5}
	searched, moved := 0, 0
	for seed := range uint64(500) {
		g := rand.New(rand.NewPCG(seed, 11))
		s := &settler{w: w}
		var girths []*model.Piece
		for x := range 2 + g.IntN(2) {
			girths = append(girths, &model.Piece{Tag: fmt.Sprint(x), Kind: model.Girth})
			s.numbers([]kit{{girths[x]}})
		}
		anyKit := []int{0, 1, 2}[:len(girths)]
		turns := make([]*model.Piece, 7)
		var horses [4]model.Horse
		var free [4]model.Minute // when a horse can be ridden again
		for i := range turns {
			h := g.IntN(len(horses))
			start := max(model.Minute(30*i+g.IntN(20)), free[h]+house.Other)
			u := wear{Stint: &model.Stint{Date: 5, Start: start, End: start + 30 + model.Minute(g.IntN(30)), Turn: &model.Turn{Horse: &horses[h]}},
				first: anyKit, can: anyKit, to: []**model.Piece{&turns[i]}}
			if seed%3 > 0 && g.IntN(3) > 0 {
				u.posted = []*model.Piece{girths[g.IntN(len(girths))]}
			}
			if s.uses = append(s.uses, u); best(s) == nil {
				s.uses = s.uses[:len(s.uses)-1] // one girth too few
				continue
			}
			free[h] = u.End
		}
		want := best(s)
		if err := s.settle(context.Background()); err != nil {
			t.Fatal(err)
		}
		var picks []int
		for _, u := range s.uses {
			picks = append(picks, slices.Index(girths, *u.to[0]))
		}
		if got := worth(s, picks); !slices.Equal(got, want) {
			t.Fatalf("seed %d: tags lost and moves %v, and the least is %v", seed, got, want)
		}
		moved += want[1]
		if hand, err := s.byHand(); err == nil && !slices.Equal(worth(s, hand), want) {
			searched++
		}
	}
	if searched < 50 || moved < 500 {
		t.Errorf("%d had to be searched, %d moves: too few", searched, moved)
	}
}

// best is the least of tags lost and, with as many, of moves; nil where none of
// the picks is legal.
func best(s *settler) []int {
	var least []int
	picks := make([]int, len(s.uses))
	var from func(i int)
	from = func(i int) {
		if i == len(picks) {
			if v := worth(s, picks); v != nil && (least == nil || slices.Compare(v, least) < 0) {
				least = v
			}
			return
		}
		for picks[i] = range s.kits {
			from(i + 1)
		}
	}
	from(0)
	return least
}

// worth is the tags lost and the moves of picks; nil where they are not legal.
func worth(s *settler, picks []int) []int {
	lost, moves := 0, 0
	uses := make([][]wear, len(s.kits))
	order := slices.Clone(s.uses)
	slices.SortStableFunc(order, func(u, v wear) int { return int(u.Start - v.Start) })
	for _, u := range order {
		x := picks[slices.IndexFunc(s.uses, func(v wear) bool { return v.Stint == u.Stint })]
		if u.posted != nil && u.posted[0] != s.kits[x][0] {
			lost++
		}
		for _, v := range uses[x] {
			if v.Turn.Horse != u.Turn.Horse && u.Start-v.End < 15 {
				return nil
			}
		}
		if n := len(uses[x]); n > 0 && uses[x][n-1].Turn.Horse != u.Turn.Horse {
			moves++
		}
		uses[x] = append(uses[x], u)
	}
	return []int{lost, moves}
}
