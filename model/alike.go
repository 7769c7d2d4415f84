package model

import (
	"fmt"
	"slices"
	"strings"
)

// Alike is the number of the class of alike pieces that p is in: pieces equal
// in kind, family, size, weight, skin, kept-with (a saddle and its pad are one)
// and fit rows by tag. It is fixed for a week; score and repairs speak only of
// alike pieces, never of tags.
func (w *Week) Alike(p *Piece) int { return w.alike[p] }

// AlikeAll reports whether two lists hold alike pieces, place by place.
func (w *Week) AlikeAll(a, b []*Piece) bool {
	return slices.EqualFunc(a, b, func(p, q *Piece) bool { return w.alike[p] == w.alike[q] })
}

func alikeClasses(w *Week) map[*Piece]int {
	s := &signer{week: w, kept: map[*Piece][]*Piece{}, rows: map[*Piece][]string{}}
	for _, p := range w.Centre.Pieces {
		if p.WithSeat != nil {
			s.kept[p.WithSeat] = append(s.kept[p.WithSeat], p)
		}
	}
	for _, r := range w.Centre.Chart {
		s.row(r)
	}
	number, classes := map[string]int{}, map[*Piece]int{}
	for _, p := range w.Centre.Pieces {
		sign := s.sign(p)
		if _, ok := number[sign]; !ok {
			number[sign] = len(number) + 1 // 0 is of what the centre no longer has
		}
		classes[p] = number[sign]
	}
	return classes
}

// signer writes a piece down so that alike pieces read the same.
type signer struct {
	week *Week
	kept map[*Piece][]*Piece
	rows map[*Piece][]string // of a seat its rows; of a pad or girth those that name it
}

// row notes a fit row with every piece that it names, as seen from that piece.
func (s *signer) row(r *FitRow) {
	until := min(r.Until, s.week.Until+1) // what happens after the week makes no difference in it
	if s.week.House.Elsewhere.FitDates {
		until = 0
	}
	write := func(self *Piece) string {
		name := func(p *Piece) string {
			switch {
			case p == self:
				return "itself"
			case p.WithSeat == self:
				return "its own " + s.plain(p)
			}
			return p.Tag
		}
		var pads, girths []string
		for _, p := range r.Pads {
			pads = append(pads, name(p))
		}
		for _, g := range r.Girths {
			girths = append(girths, name(g))
		}
		if slices.Contains(r.Girths, self) {
			girths = []string{"itself"} // which others it names makes no difference to this one
		}
		slices.Sort(girths)
		return fmt.Sprint(r.Horse.Name, "|", name(r.Seat), "|", pads, r.PadSizes, r.GirthMin, r.GirthMax, girths,
			max(r.Approved, s.week.From), until)
	}
	s.rows[r.Seat] = append(s.rows[r.Seat], write(r.Seat))
	for _, p := range slices.Concat(r.Pads, r.Girths) {
		if p.WithSeat != r.Seat {
			s.rows[p] = append(s.rows[p], write(p))
		}
	}
}

func (s *signer) plain(p *Piece) string {
	weight, _ := p.WeightIn(s.week.House)
	return fmt.Sprint(p.Kind, "|", p.Style, "|", p.Family, "|", p.Label, "|", p.Size, "|", weight, p.Skin, p.Bars,
		p.OnBars, p.NoPad, p.GoesOn)
}

func (s *signer) sign(p *Piece) string {
	rows := slices.Clone(s.rows[p])
	slices.Sort(rows)
	var with []string
	for _, k := range s.kept[p] {
		with = append(with, s.plain(k))
	}
	slices.Sort(with)
	sign := s.plain(p) + "\n" + strings.Join(rows, "\n") + "\n" + strings.Join(with, "\n")
	switch {
	case p.WithSeat != nil:
		sign += "\nwith a seat like\n" + s.sign(p.WithSeat)
	case p.WithHorse != nil:
		sign += "\nwith " + p.WithHorse.Name
	}
	return sign
}
