package model

import "slices"

// Beside is the week with all its open rides as facts but those on some dates: the
// others are as a plan has them. Rides have the same places in both weeks.
func (w *Week) Beside(p *Plan, open ...Date) *Week {
	c := w.Copy()
	for i, r := range c.Rides {
		if r.State != Open || slices.Contains(open, r.Date()) {
			continue
		}
		r.State, r.Told = Started, p.Turns[i]
		if r.Told != nil {
			s := c.stintOf(r, r.Told)
			c.Facts = append(c.Facts, s)
		}
	}
	slices.SortStableFunc(c.Facts, compareStints)
	return c
}
