package model

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Shortage of helpers in a lesson on one date, whatever horses its riders get.
type Shortage struct {
	What       string // "leaders" or "sidewalkers"
	At         Minute
	Need, Have int     // at once
	Rides      []*Ride // that need such helpers at that time
	Over       int     // rides that go without, at the least
}

// String is the shortage in words.
func (s Shortage) String() string {
	what := s.What
	if s.Need == 1 {
		what = strings.TrimSuffix(what, "s")
	}
	return fmt.Sprintf("the riders of the lesson need %d %s at once, and it counts on %d", s.Need, what, s.Have)
}

// HandsShort are the helpers that the riders of a lesson need and that it cannot
// count on: of leaders and of sidewalkers the worst moment of each. Those that a
// horse asks for are not counted; a lesson that gives no number is short of none.
func (w *Week) HandsShort(m *Meeting) []Shortage {
	var short []Shortage
	for _, x := range []struct {
		what string
		have int
		need func(*Rider) int
	}{
		{"leaders", m.Hands.Leaders, func(r *Rider) int { return b2i(r.Leader) }},
		{"sidewalkers", m.Hands.Sidewalkers, func(r *Rider) int { return r.Sidewalkers }},
	} {
		worst := Shortage{What: x.what, Have: x.have, Need: x.have}
		for _, at := range w.Rides {
			if at.Meeting != m || at.State == Off || x.have < 0 {
				continue
			}
			s := Shortage{What: x.what, At: at.Start, Have: x.have}
			for _, r := range w.Rides {
				if n := x.need(r.Rider); n > 0 && r.Meeting == m && r.State != Off && r.Start <= at.Start && at.Start < r.End {
					s.Need += n
					s.Rides = append(s.Rides, r)
				}
			}
			if s.Need > worst.Need {
				worst = s
			}
		}
		if worst.Need > worst.Have {
			needs := slices.Clone(worst.Rides)
			slices.SortStableFunc(needs, func(a, b *Ride) int { return cmp.Compare(x.need(b.Rider), x.need(a.Rider)) })
			for left := worst.Need; left > worst.Have; worst.Over++ {
				left -= x.need(needs[worst.Over].Rider)
			}
			short = append(short, worst)
		}
	}
	return short
}
