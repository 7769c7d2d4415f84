package ordered

import "math/rand/v2"

// Impatient gives better solutions their turn after every other question until it is undone.
func Impatient() (undo func()) {
	was := pace
	pace.ticks, pace.questions = 2, 1
	undoHard := Hard()
	return func() { pace = was; undoHard() }
}

// Hard has every search taken for a hard one until it is undone.
func Hard() (undo func()) {
	was := hard
	hard = 0
	return func() { hard = was }
}

// Balking has so many of 100 questions end undecided, drawn with a seed, until undone.
func Balking(of100 int, seed uint64) (undo func()) {
	r := rand.New(rand.NewPCG(seed, 0))
	balk = func() bool { return r.IntN(100) < of100 }
	return func() { balk = nil }
}
