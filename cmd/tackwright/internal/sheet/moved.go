package sheet

import (
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
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

// Move is one ride that goes otherwise than posted, or for which tack comes or
// goes otherwise.
type Move struct {
	Start    Clock   `json:"start"`
	WasStart Clock   `json:"was_start,omitzero" about:"that was posted, where it is another"`
	End      Clock   `json:"end"`
	WasEnd   Clock   `json:"was_end,omitzero" about:"that was posted, where it is another"`
	OnBy     Clock   `json:"on_by,omitzero" about:"when all must be on the horse; none: it has none"`
	Rider    string  `json:"rider,omitempty" about:"none: a horse's other work"`
	Lesson   string  `json:"lesson" about:"or what other work it is"`
	How      string  `json:"how" about:"another horse, other tack, another time, another arena, another instructor, rides, on the ground, does not ride, is not done (other work); as posted, where only its tack comes or goes otherwise"`
	Was      string  `json:"was,omitempty" about:"the horse that was posted"`
	Now      string  `json:"now,omitempty" about:"the horse that carries it now"`
	Arena    string  `json:"arena,omitempty" about:"where it is now, if it was posted for another"`
	Fetch    []Piece `json:"fetch" about:"what the posted list does not bring to this horse by then, or from elsewhere"`
	Leave    []Piece `json:"leave" about:"what the posted list puts on that horse for it, and is now worn later: on_again is when it must be on"`
	Return   []Piece `json:"return" about:"what goes back after this ride and not when the posted list says; without off_at: at once, since nobody wears it any more"`

	ride *model.Ride
}

// Note is what one person is to be told.
type Note struct {
	To    string   `json:"to"`
	Role  string   `json:"role" about:"instructor or family"`
	Words []string `json:"words"`

	rider *model.Rider // of a family
}

// WhatMoved is the sheet of a repair: of the changes of one date.
func WhatMoved(w *model.Week, p *model.Plan, date model.Date, s Stamp) *Moved {
	d := newDay(w, p, date)
	m := &Moved{Header: d.header(s), twelve: w.House.TwelveHour}
	changes := slices.DeleteFunc(w.Changes(p), func(c model.Change) bool { return c.Ride.Date() != date })
	b := &barn{now: d, posted: layOut(w, p, date, w.AsPosted(date))}
	for _, c := range changes {
		b.move(c)
	}
	b.fetch()
	b.putBack()
	b.leave()
	m.Moves = b.inOrder()
	m.People = people(changes, w.House)
	return m
}

// Text is the sheet for a monospaced page.
func (m *Moved) Text() string {
	var p paper.Mono
	p.Line("WHAT MOVED")
	p.Para("", m.Centre)
	p.Line(paper.Pad(m.short, paper.MonoColumns-paper.Columns("printed "+m.printed)) + "printed " + m.printed)
	p.Line("")
	if len(m.Moves) == 0 {
		p.Line("nothing moved")
	}
	for _, x := range m.Moves {
		p.Para(m.clock(x.Start)+"  ", m.words(x))
		for _, f := range x.Fetch {
			p.Para("    "+box(!f.Travels)+"fetch   ", m.fetchWords(f))
		}
		for _, f := range x.Leave {
			p.Para("    "+box(!f.Travels)+"leave   ", f.words()+", until "+m.clock(f.OnAgain))
		}
		for _, f := range x.Return {
			p.Para("    "+box(!f.Travels)+"return  ", m.returnWords(f))
		}
	}
	if len(m.People) > 0 {
		p.Line("")
		p.Line("TO BE TOLD")
	}
	for _, n := range m.People {
		for i, words := range n.Words {
			to := n.To + ": "
			if i > 0 {
				to = "  "
			}
			p.Para("  "+to, words)
		}
	}
	p.Line("")
	for _, c := range m.Cautions {
		p.Para("- ", c)
	}
	p.Para("", m.Deferral)
	return p.String()
}

func (m *Moved) clock(c Clock) string { return model.Minute(c).Clock(m.twelve) }

func (m *Moved) words(x Move) string {
	who := x.Rider + " (" + x.Lesson + "): "
	if x.Rider == "" {
		who = x.Lesson + ": "
	}
	s := who + x.How
	switch {
	case x.How == "as posted", x.How == "other tack", x.How == "another instructor" && x.Now != "":
		s = who + x.Now + ", " + x.How
	case x.How == "another horse":
		s = who + x.Now + ", not " + x.Was
	case x.Was == "" && x.Now == "" && strings.HasPrefix(x.How, "another"): // its lesson alone
		s = who + "on the ground, as posted"
	case x.How == "rides":
		s = who + "rides " + x.Now
	case x.Now != "":
		s = who + x.Now
	case x.Was != "":
		s += "; " + x.Was + " is not needed for it"
	}
	switch {
	case x.WasStart != 0:
		s += ", at " + m.clock(x.Start) + " and not " + m.clock(x.WasStart)
	case x.WasEnd != 0:
		s += ", until " + m.clock(x.End) + " and not " + m.clock(x.WasEnd)
	}
	if x.Now != "" && x.Arena != "" {
		s += ", in " + x.Arena
	}
	if x.OnBy != 0 && (len(x.Fetch) > 0 || x.WasStart != 0 && x.OnBy < x.Start) {
		s += "; on by " + m.clock(x.OnBy)
	}
	return s
}

func (m *Moved) fetchWords(p Piece) string {
	if p.From == "" {
		return p.words()
	}
	return p.words() + ", from " + p.From + ", off at " + m.clock(p.OffAt)
}

func (m *Moved) returnWords(p Piece) string {
	if p.OffAt == 0 {
		return p.words()
	}
	return p.words() + ", from " + m.clock(p.OffAt) + " on"
}

// words of a piece on one line.
func (p Piece) words() string {
	s := p.Tag + "  " + p.Kind
	if p.Size != "" {
		s += " " + p.Size
	}
	switch {
	case p.KeptAt != "":
		s += ", kept with " + p.KeptAt
	case p.Rack != "":
		s += ", " + p.Rack
	}
	if p.Looks != "" {
		s += " (" + p.Looks + ")"
	}
	return s
}
