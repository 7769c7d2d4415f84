package model

import "slices"

// OpenDate is a date that was posted, is over, and that nobody has closed: it
// counts as posted and noted, not confirmed.
type OpenDate struct {
	Date  Date
	Rides int // that were posted with a horse
}

// OpenDates are the open dates before today, in order. A date of whose last
// posted version no ride had a horse is none.
func (c *Centre) OpenDates(today Date) []OpenDate {
	settled := map[Date]bool{} // closed, or told of by a later version
	for _, r := range c.Ridden {
		settled[r.Date] = true
	}
	var open []OpenDate
	for _, p := range slices.Backward(c.Posted) {
		rides := map[Date]int{}
		for _, t := range p.Told {
			rides[t.Date] += b2i(t.Turn != nil)
		}
		for d := p.From; d <= p.Until && d < today; d++ {
			if !settled[d] && rides[d] > 0 {
				open = append(open, OpenDate{d, rides[d]})
			}
			settled[d] = true
		}
	}
	slices.SortFunc(open, func(a, b OpenDate) int { return int(a.Date - b.Date) })
	return open
}
