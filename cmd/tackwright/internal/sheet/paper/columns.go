package paper

import (
	"slices"
	"strings"
)

// scale measures what stands in a table, in mm or in columns of text.
type scale struct {
	text func(s string, bold bool) float64
	head func(s string) float64
	room func(mm float64) float64
	line func(what string) float64 // an empty line, behind what is to be written on it
	box  float64                   // a box to tick, and the space behind it
	edge float64                   // of a cell, both sides together
}

// share gives the columns of a table the width of a page: to each what its
// texts ask for where there is enough, else no less than its longest word where
// that can be; then short columns have all that they ask for, and long ones wrap.
func (t *Table) share(width float64, s scale) []float64 {
	n := len(t.Columns)
	least, most := make([]float64, n), make([]float64, n)
	ask := func(i int, text string, wide func(string) float64) {
		for _, line := range strings.Split(text, "\n") {
			line = printable(line)
			most[i] = max(most[i], wide(line)+s.edge)
			for _, word := range strings.Fields(line) {
				least[i] = max(least[i], wide(word)+s.edge)
			}
		}
	}
	for i, c := range t.Columns {
		ask(i, c.Head, s.head)
		least[i] = max(least[i], s.room(c.Room)+s.edge)
		for _, r := range t.Rows {
			if i < len(r.Cells) {
				lead := 0.0
				if r.Cells[i].Box {
					lead = s.box
				}
				ask(i, r.Cells[i].Text, func(text string) float64 { return lead + s.text(text, c.Bold) })
				least[i] = max(least[i], lead+s.edge)
				for _, what := range r.Cells[i].Lines {
					least[i] = max(least[i], s.line(what)+s.edge)
				}
			}
		}
		most[i] = max(most[i], least[i])
	}
	return spread(width, least, most, t.Columns)
}

func spread(width float64, least, most []float64, columns []Column) []float64 {
	sum := func(all []float64) (s float64) {
		for _, x := range all {
			s += x
		}
		return s
	}
	got := slices.Clone(most)
	switch asked, needed := sum(most), sum(least); {
	case asked <= width:
		takers := 0
		for _, c := range columns {
			if c.Spread {
				takers++
			}
		}
		for i, c := range columns {
			switch {
			case c.Spread:
				got[i] += (width - asked) / float64(takers)
			case takers == 0 && i == len(columns)-1:
				got[i] += width - asked
			}
		}
	case needed <= width:
		fill(got, width, least, most)
	default: // the longest words are broken
		fill(got, width, make([]float64, len(got)), least)
	}
	return got
}

// fill gives each a level that is the same for all, but no less than its least
// and no more than its most, so that together they take the width.
func fill(got []float64, width float64, least, most []float64) {
	low, high := 0.0, width
	for range 50 {
		level, taken := (low+high)/2, 0.0
		for i := range got {
			got[i] = max(least[i], min(most[i], level))
			taken += got[i]
		}
		if taken > width {
			high = level
		} else {
			low = level
		}
	}
}
