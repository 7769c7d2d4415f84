package bound

// scratch is what one book after another is written on: a book is done with when the next is opened.
type scratch struct {
	deals  arena[deal]
	seated arena[seated]
	places arena[[]seated]
	cheap  arena[cheap]
	costs  arena[int64]
	picks  arena[int32]
	girths arena[int]
	books  int // opened so far
}

func (s *scratch) clear() {
	s.books++
	s.deals.clear()
	s.seated.clear()
	s.places.clear()
	s.cheap.clear()
	s.costs.clear()
	s.picks.clear()
	s.girths.clear()
}

// An arena hands out slices of one array after another.
type arena[T any] struct{ all []T }

func (a *arena[T]) clear() { a.all = a.all[:0] }

// take is a slice of n elements, which are what was left in them.
func (a *arena[T]) take(n int) []T {
	if len(a.all)+n > cap(a.all) {
		a.all = make([]T, 0, 2*cap(a.all)+n)
	}
	at := len(a.all)
	a.all = a.all[:at+n]
	return a.all[at : at+n : at+n]
}

// of is a slice of n elements that are all the same.
func (a *arena[T]) of(n int, x T) []T {
	s := a.take(n)
	for i := range s {
		s[i] = x
	}
	return s
}
