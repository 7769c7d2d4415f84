package ordered_test

import (
	"math/rand/v2"
	"testing"

	"tackwright/solver/ordered"
	"tackwright/solver/sat"
)

// Portions of wishes, groups that give way and wagers that are given up are all for questions that are hard.
func TestTheBestIsFoundAndProvedAlsoWhereManyQuestionsEndUndecided(t *testing.T) {
	defer ordered.Impatient()()
	for _, of100 := range []int{20, 60, 90} {
		for seed := range uint64(1000) {
			s := sat.New()
			p := random(rand.New(rand.NewPCG(seed, 50)), s)
			undo := ordered.Balking(of100, seed)
			check(t, s, p, seed)
			undo()
		}
	}
}
