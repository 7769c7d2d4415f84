package sheet

import (
	"cmp"
	"slices"
)

// Needs are what a rider wears herself and no horse does: a helmet, a gait belt.
type Needs struct {
	Start  Clock    `json:"start" about:"when the ride starts"`
	Arena  string   `json:"arena,omitempty"`
	Lesson string   `json:"lesson"`
	Rider  string   `json:"rider" about:"first name and mark"`
	Things []string `json:"things" about:"what the rider wears, such as a helmet or a gait belt"`
}

// besideTheRing are the things that seated riders need, by start, lesson
// and rider.
func (d *day) besideTheRing() []Needs {
	var out []Needs
	for _, s := range d.stints {
		if s.Rider == nil || s.Meeting == nil || len(s.Rider.Wears) == 0 {
			continue
		}
		r := d.ride(s)
		out = append(out, Needs{Start: r.Start, Arena: r.Arena, Lesson: r.Lesson, Rider: r.Rider, Things: s.Rider.Wears})
	}
	slices.SortStableFunc(out, func(a, b Needs) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(a.Lesson, b.Lesson), cmp.Compare(a.Rider, b.Rider))
	})
	return out
}
