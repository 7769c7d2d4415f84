package model

import "cmp"

// Obey lays the standing notes on the nouns that they speak of: when a horse or
// a piece is out, what was cleaned, which arena is closed, whose form runs
// longer. Notes on lessons, riders and pairings are read when a week is made.
// Call it once, when the centre has been read.
//
// Only a person who may end a thing ends it, when it is so; a note by anyone else,
// or ahead of its time, is a mistake that the reader reports, and changes nothing
// here.
func (c *Centre) Obey() {
	for _, n := range Standing(c.Notes) {
		n.obey()
	}
}

// obey lays one note on its nouns.
func (n *Note) obey() {
	at := Instant{n.Date, n.From}
	switch n.Kind {
	case NoteHorseOut:
		o := Out{Why: n.Why, From: at, Review: cmp.Or(n.Review, n.Date+1), Note: n.Number, At: n.At}
		if n.Why == Appointment {
			o.Review, o.End = 0, n.end()
		}
		n.Horse.Out = append(n.Horse.Out, o)
	case NoteHorseBack:
		for i := range n.Horse.Out {
			if o := &n.Horse.Out[i]; o.Why != Appointment && n.ends(EndsVetStop, o.From, o.End) {
				o.End = later(at, o.From)
			}
		}
	case NoteOwnTack:
		n.Horse.OwnTack = append(n.Horse.OwnTack, Span{From: at})
	case NoteOwnTackEnd:
		for i := range n.Horse.OwnTack {
			if s := &n.Horse.OwnTack[i]; n.ends(EndsVetStop, s.From, s.End) {
				s.End = later(at, s.From)
			}
		}
	case NotePieceOut:
		n.Piece.Out = append(n.Piece.Out, PieceOut{Why: n.Words, From: at, Note: n.Number})
	case NotePieceBack:
		for i := range n.Piece.Out {
			if o := &n.Piece.Out[i]; n.ends(EndsCheck, o.From, o.End) {
				o.End = later(at, o.From)
			}
		}
	case NoteCleaned:
		if n.mayEnd(EndsCleaning) && !n.IsToCome() {
			n.Piece.Cleaned = append(n.Piece.Cleaned, Cleaning{At: at, By: n.By.Name})
		}
	case NoteArenaClosed:
		n.Arena.Closures = append(n.Arena.Closures, n.period())
	case NoteAway:
		n.Instructor.Away = append(n.Instructor.Away, n.period())
	case NoteForm:
		if n.mayEnd(EndsForm) {
			n.Rider.FormUntil = max(n.Rider.FormUntil, n.Through)
		}
	}
}

func (n *Note) mayEnd(e Ends) bool { return n.By != nil && n.By.May(e) }

// IsToCome reports whether the note is for a time after it was written. Nothing
// is ended or cleaned ahead of time: a plan assumes none to come.
func (n *Note) IsToCome() bool { return !n.At.IsZero() && n.At.Before(Instant{n.Date, n.From}) }

// ends reports whether the note ends what began at from and has that end: not
// what begins on a later date, nor what has ended.
func (n *Note) ends(e Ends, from, end Instant) bool {
	return n.mayEnd(e) && !n.IsToCome() && end.IsZero() && from.Date <= n.Date
}

func later(i, j Instant) Instant {
	if i.Before(j) {
		return j
	}
	return i
}

// end is when an appointment ends: at the time it states, or with its last date.
func (n *Note) end() Instant {
	last := max(n.Date, n.Through)
	if n.Until == 0 {
		return Instant{Date: last + 1}
	}
	return Instant{last, n.Until}
}

func (n *Note) period() Period {
	return Period{From: n.Date, Until: max(n.Date, n.Through), Start: n.From, End: n.endOfDay(), Why: n.Words, At: n.known()}
}

// endOfDay is the note's Until, where a From alone means to the end of the date.
func (n *Note) endOfDay() Minute {
	if n.Until == 0 && n.From != 0 {
		return 24 * 60
	}
	return n.Until
}
