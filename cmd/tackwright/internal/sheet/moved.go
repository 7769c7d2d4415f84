package sheet

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// Moved is what a repair changes of a day: for the barn what to fetch, return and
// swap, in order of time; for each person who is touched a note, and none for
// those who are not.
type Moved struct {
	Header
	Moves  []Move `json:"moves" about:"for the barn, by time"`
	People []Note `json:"people" about:"who is to be told, and what"`

	twelve bool
}

// Move is one ride that goes otherwise than posted.
type Move struct {
	Start  Clock   `json:"start"`
	Rider  string  `json:"rider"`
	Lesson string  `json:"lesson"`
	How    string  `json:"how" about:"another horse, other tack, rides, on the ground, does not ride"`
	Was    string  `json:"was,omitempty" about:"the horse that was posted"`
	Now    string  `json:"now,omitempty" about:"the horse that carries it now"`
	Fetch  []Piece `json:"fetch" about:"what this horse did not wear for it before"`
	Return []Piece `json:"return" about:"what it would have worn, and is not needed here"`
}

// Note is what one person is to be told.
type Note struct {
	To    string   `json:"to"`
	Role  string   `json:"role" about:"instructor or family"`
	Words []string `json:"words"`
}

// WhatMoved is the sheet of a repair: of the changes of one date.
func WhatMoved(w *model.Week, p *model.Plan, date model.Date, s Stamp) *Moved {
	d := newDay(w, p, date)
	m := &Moved{Header: d.header(s), twelve: w.House.TwelveHour}
	var instructors, families []Note
	for _, c := range w.Changes(p) {
		if c.Ride.Date() != date {
			continue
		}
		m.Moves = append(m.Moves, d.move(c))
		start := c.Ride.Start.Clock(m.twelve)
		if teacher := c.Ride.Meeting.Instructor; teacher != nil {
			instructors = told(instructors, teacher.Name, "instructor", fmt.Sprintf("%s %s: %s", start, c.Ride.Rider.Called(), short(c)))
		}
		if words := forFamily(c, start); words != "" {
			families = told(families, c.Ride.Rider.Called(), "family", words)
		}
	}
	m.People = append(instructors, families...)
	return m
}

// told adds to what a person is to be told.
func told(notes []Note, to, role, words string) []Note {
	i := slices.IndexFunc(notes, func(n Note) bool { return n.To == to })
	if i < 0 {
		return append(notes, Note{to, role, []string{words}})
	}
	notes[i].Words = append(notes[i].Words, words)
	return notes
}

// short is a change in a few words.
func short(c model.Change) string {
	switch {
	case c.After == nil && c.Before != nil:
		return c.How() + ", was on " + c.Before.Horse.Name
	case c.After == nil:
		return c.How()
	case c.Before == nil:
		return "rides " + c.After.Horse.Name + " in " + c.After.Seat.Tag
	case c.How() == "other tack":
		return c.After.Horse.Name + " in " + c.After.Seat.Tag + ", other tack"
	}
	return c.After.Horse.Name + " in " + c.After.Seat.Tag + ", not " + c.Before.Horse.Name
}

// forFamily is what a family asks: does she ride, when, and on the same horse. A
// change of tack is none of its concern, nor is a lesson that it knows to be off
// because the rider herself is away.
func forFamily(c model.Change, start string) string {
	switch c.How() {
	case "another horse":
		return "still rides at " + start + ", on another horse"
	case "on the ground":
		return "has no horse at " + start + "; the instructor decides what is done instead"
	case "rides":
		return "rides at " + start
	case "does not ride":
		if c.Ride.Meeting.NotHeld != "" {
			return "no lesson at " + start
		}
	}
	return ""
}

func (d *day) move(c model.Change) Move {
	m := Move{Start: Clock(c.Ride.Start), Rider: c.Ride.Rider.Called(), Lesson: c.Ride.Meeting.Name, How: c.How()}
	var before, after []*model.Piece
	same := false
	if c.Before != nil {
		m.Was, before = c.Before.Horse.Name, c.Before.Pieces()
	}
	if c.After != nil {
		m.Now, after = c.After.Horse.Name, c.After.Pieces()
		same = c.Before != nil && c.Before.Horse == c.After.Horse
	}
	without := func(all, these []*model.Piece) []*model.Piece {
		return slices.DeleteFunc(slices.Clone(all), func(x *model.Piece) bool { return same && slices.Contains(these, x) })
	}
	if c.After != nil {
		m.Fetch = d.pieces(c.After, without(after, before))
	}
	if c.Before != nil {
		m.Return = d.pieces(c.Before, slices.DeleteFunc(without(before, after), func(x *model.Piece) bool {
			return slices.Contains(after, x) || d.stays(x, c.Before.Horse)
		}))
	}
	return m
}

// Text is the sheet for a monospaced page.
func (m *Moved) Text() string {
	var p page
	p.line("WHAT MOVED")
	p.para("", m.Centre)
	p.line(pad(m.short, pageColumns-columns("printed "+m.printed)) + "printed " + m.printed)
	p.line("")
	if len(m.Moves) == 0 {
		p.line("nothing moved")
	}
	for _, x := range m.Moves {
		p.para(model.Minute(x.Start).Clock(m.twelve)+"  ", x.words())
		for _, f := range x.Fetch {
			p.para("    "+box(!f.Travels)+"fetch   ", f.words())
		}
		for _, f := range x.Return {
			p.para("    "+box(!f.Travels)+"return  ", f.words())
		}
	}
	if len(m.People) > 0 {
		p.line("")
		p.line("TO BE TOLD")
	}
	for _, n := range m.People {
		for i, words := range n.Words {
			to := n.To + ": "
			if i > 0 {
				to = "  "
			}
			p.para("  "+to, words)
		}
	}
	p.line("")
	for _, c := range m.Cautions {
		p.para("- ", c)
	}
	p.para("", m.Deferral)
	return p.String()
}

func (x Move) words() string {
	who := x.Rider + " (" + x.Lesson + "): "
	switch x.How {
	case "another horse":
		return who + x.Now + ", not " + x.Was
	case "other tack":
		return who + x.Now + ", other tack"
	case "rides":
		return who + "rides " + x.Now
	}
	if x.Was != "" {
		return who + x.How + "; " + x.Was + " is not needed for it"
	}
	return who + x.How
}

// words of a piece on one line.
func (p Piece) words() string {
	s := p.Tag + "  " + p.Kind
	if p.Size != "" {
		s += " " + p.Size
	}
	if p.Rack != "" {
		s += ", at " + p.Rack
	}
	if p.KeptAt != "" {
		s += ", with " + p.KeptAt
	}
	if p.Looks != "" {
		s += " (" + p.Looks + ")"
	}
	return s
}

// stays reports whether a horse wears a piece on the date all the same.
func (d *day) stays(x *model.Piece, h *model.Horse) bool {
	return slices.ContainsFunc(d.horse[h], func(s *model.Stint) bool { return slices.Contains(s.Turn.Pieces(), x) })
}
