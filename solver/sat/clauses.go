package sat

import (
	"iter"
	"slices"
)

// clauseSet is the clauses of a store by the literals in them, while they are made fewer and shorter: what follows from
// them stays the same, but for variables that are eliminated.
type clauseSet struct {
	root    Lit
	fixed   []int8 // by variable
	lits    []Lit  // of all clauses
	clauses []clause
	in      [][]int32 // by literal: clauses that have it, dead ones too
	alive   []int32   // by literal: how many are not dead
	mark    []int32   // by literal
	stamp   int32
	changed []int32 // clauses that were not yet tried on others
	touched []Lit   // variables of clauses that are gone or new
	units   []Lit   // not yet worked in
	fresh   []Lit   // clauses that would take the place of others, each ended by 0
	spelled []Lit   // of one variable
	odds    bool    // the clauses are at odds
	effort  int     // literals that may still be looked at
}

type clause struct {
	from, size int32
	of         uint32 // a bit by variable
	dead, due  bool
}

// at is the place of a literal in lists by literal.
func at(l Lit) int { return 2*l.Var() + int(uint32(l)>>31) }

func newClauseSet(store []Lit, fixed []int8, root Lit, effort int) *clauseSet {
	n := 2 * len(fixed)
	c := &clauseSet{root: root, fixed: fixed, in: make([][]int32, n), alive: make([]int32, n), mark: make([]int32, n), effort: effort}
	c.lits = make([]Lit, 0, len(store)+len(store)/4)
	count := 0
	for _, l := range store {
		if c.alive[at(l)]++; l == 0 {
			count++
		}
	}
	c.clauses = make([]clause, 0, count+count/4)
	all := make([]int32, len(store))
	for i, n := range c.alive {
		c.in[i], all = all[:0:n], all[n:]
	}
	clear(c.alive)
	for lits := range each(store) {
		c.add(lits)
	}
	return c
}

// each is every clause of a store.
func each(store []Lit) iter.Seq[[]Lit] {
	return func(yield func([]Lit) bool) {
		for len(store) > 0 {
			end := slices.Index(store, 0)
			if !yield(store[:end]) {
				return
			}
			store = store[end+1:]
		}
	}
}

// of are the literals of a clause.
func (c *clauseSet) of(i int32) []Lit {
	x := &c.clauses[i]
	return c.lits[x.from : x.from+x.size]
}

// add a clause; root's negation says nothing in it, nor does a literal a second time.
func (c *clauseSet) add(lits []Lit) {
	from, n := len(c.lits), int32(len(c.clauses))
	var of uint32
	c.stamp++
	for _, l := range lits {
		if c.mark[at(l.Not())] == c.stamp { // it says nothing
			c.lits = c.lits[:from]
			return
		}
		if l != c.root.Not() && c.mark[at(l)] != c.stamp {
			c.lits = append(c.lits, l)
			of |= bit(l)
			c.mark[at(l)] = c.stamp
		}
	}
	c.clauses = append(c.clauses, clause{from: int32(from), size: int32(len(c.lits) - from), of: of})
	for _, l := range c.of(n) {
		c.in[at(l)] = append(c.in[at(l)], n)
		c.alive[at(l)]++
	}
	c.isNew(n)
}

// bit of a literal's variable.
func bit(l Lit) uint32 { return 1 << (l.Var() & 31) }

// isNew notes that a clause is to be tried on others.
func (c *clauseSet) isNew(n int32) {
	x := &c.clauses[n]
	switch x.size {
	case 0:
		c.odds = true
	case 1:
		c.units = append(c.units, c.lits[x.from])
		c.kill(n)
	default:
		if !x.due {
			x.due = true
			c.changed = append(c.changed, n)
		}
	}
}

// kill takes a clause out.
func (c *clauseSet) kill(n int32) {
	c.clauses[n].dead = true
	for _, l := range c.of(n) {
		c.alive[at(l)]--
		c.touched = append(c.touched, Lit(l.Var()))
	}
}

// with are the clauses that have a literal.
func (c *clauseSet) with(l Lit) []int32 {
	list := c.in[at(l)]
	if len(list) > int(c.alive[at(l)]) {
		c.effort -= len(list)
		list = slices.DeleteFunc(list, func(n int32) bool { return c.clauses[n].dead || !slices.Contains(c.of(n), l) })
		c.in[at(l)] = list
	}
	return list
}

// shorten takes a literal out of a clause.
func (c *clauseSet) shorten(n int32, l Lit) {
	x := &c.clauses[n]
	lits := c.of(n)
	i := slices.Index(lits, l)
	last := len(lits) - 1
	lits[i], lits[last] = lits[last], lits[i]
	x.size--
	x.of = 0
	for _, l := range c.of(n) {
		x.of |= bit(l)
	}
	c.alive[at(l)]--
	c.touched = append(c.touched, Lit(l.Var()))
	c.isNew(n)
}

// settle works in single literals.
func (c *clauseSet) settle() {
	for len(c.units) > 0 && !c.odds {
		l := c.units[0]
		c.units = c.units[1:]
		switch value := valueIn(c.fixed, l); {
		case value > 0:
			continue
		case value < 0:
			c.odds = true
			return
		}
		fix(c.fixed, l)
		for _, n := range slices.Clone(c.with(l)) {
			c.kill(n)
		}
		for _, n := range slices.Clone(c.with(l.Not())) {
			c.shorten(n, l.Not())
		}
	}
}

// subsume takes out clauses that others say already, and literals that a clause can do without for the sake of another,
// until there are no more or enough was looked at.
func (c *clauseSet) subsume() {
	const most = 64 // longer clauses seldom say what others do
	c.settle()
	for len(c.changed) > 0 && !c.odds && c.effort > 0 {
		n := c.changed[0]
		c.changed = c.changed[1:]
		x := &c.clauses[n]
		if x.due = false; x.dead || x.size > most {
			continue
		}
		rare, stamp := c.of(n)[0], c.marked(n)
		for _, l := range c.of(n) {
			if c.both(l) < c.both(rare) {
				rare = l
			}
		}
		for _, l := range [2]Lit{rare, rare.Not()} {
			c.effort -= len(c.with(l))
			for _, m := range slices.Clone(c.with(l)) {
				c.try(n, m, stamp)
			}
		}
		c.settle()
	}
}

// both is how many clauses have a literal or its negation.
func (c *clauseSet) both(l Lit) int32 { return c.alive[at(l)] + c.alive[at(l.Not())] }

// marked marks the literals of a clause.
func (c *clauseSet) marked(n int32) int32 {
	c.stamp++
	for _, l := range c.of(n) {
		c.mark[at(l)] = c.stamp
	}
	return c.stamp
}

// try whether clause n, whose literals are marked, says all that m does, or all but a literal.
func (c *clauseSet) try(n, m, stamp int32) {
	x, y := &c.clauses[n], &c.clauses[m]
	if n == m || x.dead || y.dead || y.size < x.size || x.of&^y.of != 0 {
		return
	}
	c.effort -= int(y.size)
	same, opposite, not := int32(0), 0, Lit(0)
	for _, l := range c.of(m) {
		switch {
		case c.mark[at(l)] == stamp:
			same++
		case c.mark[at(l.Not())] == stamp:
			opposite++
			not = l
		}
	}
	switch {
	case same == x.size:
		c.kill(m)
	case opposite == 1 && same == x.size-1:
		c.shorten(m, not)
	}
}

// store is what is left.
func (c *clauseSet) store() []Lit {
	size := 0
	for _, x := range c.clauses {
		if !x.dead {
			size += int(x.size) + 1
		}
	}
	store := make([]Lit, 0, size+size/16)
	for n, x := range c.clauses {
		if !x.dead {
			store = c.spell(store, int32(n))
		}
	}
	return store
}

// spell appends a clause as stores have them.
func (c *clauseSet) spell(store []Lit, n int32) []Lit {
	negative := false
	for _, l := range c.of(n) {
		store = append(store, l)
		negative = negative || l < 0
	}
	if !negative {
		store = append(store, c.root.Not())
	}
	return append(store, 0)
}
