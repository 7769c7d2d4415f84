package ordered

// Impatient gives better solutions their turn after every other question until it is undone.
func Impatient() (undo func()) {
	was := pace
	pace.ticks, pace.questions = 2, 1
	return func() { pace = was }
}
