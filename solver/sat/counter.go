package sat

// A Counter counts true literals, as far up as it is asked: a totalizer (Bailleux & Boufkhad 2003)
// whose outputs are made when first wanted (Martins et al. 2014).
type Counter struct {
	s           *Solver
	sel         Lit
	left, right *Counter
	size        int
	out         []Lit           // out[k-1]: at least k are true
	next        func(k int) Lit // where not left and right but this makes the outputs
}

// NewCounter makes a counter of lits. Its clauses hang on sel.
func (s *Solver) NewCounter(sel Lit, lits ...Lit) *Counter {
	leaves := make([]*Counter, len(lits))
	for i, l := range lits {
		leaves[i] = s.Weigh(l, 1)
	}
	return s.Sum(sel, leaves...)
}

// Weigh makes a counter that counts weight when l is true, else nothing.
func (s *Solver) Weigh(l Lit, weight int) *Counter {
	c := &Counter{s: s, size: weight, out: make([]Lit, weight)}
	for i := range c.out {
		c.out[i] = l
	}
	return c
}

// Unary makes a counter of literals of which each says one more than the one before: as many are true
// as the last true one says.
func (s *Solver) Unary(lits ...Lit) *Counter { return &Counter{s: s, size: len(lits), out: lits} }

// Sum makes a counter of all that the parts count. Its clauses hang on sel.
func (s *Solver) Sum(sel Lit, parts ...*Counter) *Counter {
	switch len(parts) {
	case 0:
		return &Counter{s: s}
	case 1:
		return parts[0]
	}
	half := len(parts) / 2
	left, right := s.Sum(sel, parts[:half]...), s.Sum(sel, parts[half:]...)
	return &Counter{s: s, sel: sel, left: left, right: right, size: left.size + right.size}
}

// Size is the most that can be counted.
func (c *Counter) Size() int { return c.size }

// AtLeast returns a literal that, under the counter's selector, is true when the count is k or
// more; when it is less the literal may be either. Assume or add its negation to allow at most k-1.
func (c *Counter) AtLeast(k int) Lit {
	switch {
	case k <= 0:
		return c.s.root
	case k > c.size:
		return c.s.root.Not()
	}
	for len(c.out) < k {
		c.grow()
	}
	return c.out[k-1]
}

// Beyond counts each of the count after the first base as each: 0 up to base, then each, 2 each ...
func (c *Counter) Beyond(base, each int) *Counter {
	b := &Counter{s: c.s, size: each * max(0, c.size-base)}
	b.next = func(k int) Lit { return c.AtLeast(base + (k+each-1)/each) }
	return b
}

// grow makes the next output and the clauses that lead to it.
func (c *Counter) grow() {
	k := len(c.out) + 1
	if c.next != nil {
		c.out = append(c.out, c.next(k))
		return
	}
	out := c.s.NewVar()
	c.out = append(c.out, out)
	for i := max(0, k-c.right.size); i <= min(k, c.left.size); i++ {
		j := k - i
		// Where one literal counts for several, a neighbour of this clause says the same or more.
		if i > 0 && j > 0 && (c.left.flat(i) || c.right.flat(j) && !c.left.flat(i-1)) {
			continue
		}
		c.s.Add(c.sel, c.left.AtLeast(i).Not(), c.right.AtLeast(j).Not(), out)
	}
}

// flat tells whether to count k is to count k+1.
func (c *Counter) flat(k int) bool { return k < c.size && c.AtLeast(k) == c.AtLeast(k+1) }
