package sat

import "slices"

// renew lets a new gini take over the clauses that still say something, once most of them hang on retired
// selectors: gini itself never lets go of one. What follows from single literals is worked in. What gini has
// learned is lost. Where it was asked for, the clauses are made easier too.
func (s *Solver) renew() {
	due := s.due
	s.due = false
	if !due && (s.dead < max(burden, s.kept/2) || s.kept < 2*s.tried) {
		return
	}
	if due { // both at a time would take much memory
		s.gini, s.reserved, s.told = nil, 0, 0
	}
	fixed := slices.Clone(s.fixed)
	store, ok := simple(s.store, fixed, s.root)
	if ok && due && !s.Heavy() {
		store, ok = s.ease(store, fixed)
	}
	if !ok {
		s.tried = s.kept
		return
	}
	s.store, s.fixed, s.told = store, fixed, 0
	s.kept, s.dead, s.tried = 0, 0, 0
	s.renewed++
	used := make([]bool, s.vars+1)
	used[s.root] = true
	for _, l := range store {
		if used[l.Var()] = true; l == 0 {
			s.kept++
		}
	}
	s.gini, s.reserved = nil, 0
	clear(s.inner)
	s.outer = s.outer[:1]
	for v := 1; v <= s.vars; v++ {
		if used[v] {
			s.number(Lit(v))
		}
	}
	s.numbered = s.vars // what is in no clause is for nobody to decide
}

// Renew has a new gini take over at the next question, of clauses that are made easier first: where much has become
// certain there is less to go through. Variables are eliminated, but for those that were assumed since the last time;
// what speaks of one later brings it back.
func (s *Solver) Renew() { s.due = true }

// burden is how many dead clauses are worth the making of a new gini. A variable so that tests can be stricter.
var burden = 20_000

// Heavy reports whether the clauses are so many that they are not made easier, and had better not be copied: it takes 60
// bytes for each literal meanwhile.
func (s *Solver) Heavy() bool { return len(s.store) > 2_000_000 }

// simple is the clauses without those that single literals make true, and without literals that they make
// false; it notes both in fixed. It reports false where the clauses are at odds.
func simple(store []Lit, fixed []int8, root Lit) ([]Lit, bool) {
	const rounds = 10 // beyond them little follows from what followed
	for again, round := true, 0; again && round < rounds; round++ {
		again = false
		left := make([]Lit, 0, len(store))
		for len(store) > 0 {
			end := slices.Index(store, 0)
			clause := store[:end]
			store = store[end+1:]
			at, negative, met := len(left), false, false
			for _, l := range clause {
				switch value := valueIn(fixed, l); {
				case value > 0:
					met = true
				case value == 0 && l != root.Not():
					left = append(left, l)
					negative = negative || l < 0
				}
			}
			switch len(left) - at {
			case 0:
				if !met {
					return nil, false
				}
			case 1:
				if !met {
					fix(fixed, left[at])
					met, again = true, true
				}
			}
			if met {
				left = left[:at]
				continue
			}
			if !negative {
				left = append(left, root.Not())
			}
			left = append(left, 0)
		}
		store = left
	}
	return store, true
}

// fix notes that a literal is true.
func fix(fixed []int8, l Lit) {
	if l < 0 {
		fixed[-l] = -1
	} else {
		fixed[l] = 1
	}
}

// valueIn is 1 or -1 where a literal is fixed true or false, else 0.
func valueIn(fixed []int8, l Lit) int8 {
	if l < 0 {
		return -fixed[-l]
	}
	return fixed[l]
}
