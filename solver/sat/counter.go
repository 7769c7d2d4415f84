package sat

// A Counter counts true literals, as far up as it is asked: a totalizer (Bailleux & Boufkhad 2003)
// whose outputs are made when first wanted (Martins et al. 2014).
type Counter struct {
	s           *Solver
	sel         Lit
	left, right *Counter
	size        int
	out         []Lit // out[k-1]: at least k are true
}

// NewCounter makes a counter of lits. Its clauses hang on sel.
func (s *Solver) NewCounter(sel Lit, lits ...Lit) *Counter {
	if len(lits) <= 1 {
		return &Counter{s: s, sel: sel, size: len(lits), out: lits}
	}
	half := len(lits) / 2
	return &Counter{
		s: s, sel: sel, size: len(lits),
		left:  s.NewCounter(sel, lits[:half]...),
		right: s.NewCounter(sel, lits[half:]...),
	}
}

// Size is the number of literals counted.
func (c *Counter) Size() int { return c.size }

// AtLeast returns a literal that, under the counter's selector, is true when at least k of the
// literals are; when fewer are it may be either. Assume or add its negation to allow at most k-1.
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

// grow makes the next output and the clauses that lead to it.
func (c *Counter) grow() {
	k := len(c.out) + 1
	out := c.s.NewVar()
	c.out = append(c.out, out)
	for i := max(0, k-c.right.size); i <= min(k, c.left.size); i++ {
		c.s.Add(c.sel, c.left.AtLeast(i).Not(), c.right.AtLeast(k-i).Not(), out)
	}
}
