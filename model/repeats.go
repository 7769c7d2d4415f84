package model

import "slices"

// overrides are the kinds of which a later note on the same thing makes an
// earlier one count no more, so that it can be said again.
var overrides = map[NoteKind][]NoteKind{
	NoteHorseOut: {NoteHorseBack}, NoteHorseBack: {NoteHorseOut},
	NoteOwnTack: {NoteOwnTackEnd}, NoteOwnTackEnd: {NoteOwnTack},
	NotePieceOut: {NotePieceBack}, NotePieceBack: {NotePieceOut},
	NoteMoved: {NoteMoved}, NoteShortened: {NoteMoved}, NoteHands: {NoteHands}, NoteInstructor: {NoteInstructor},
}

// Repeats is the note in force that says the very same as a new one, whoever
// wrote it, when, and with what words beside it; nil is none. Weather is told
// anew as often as somebody measures it.
func (c *Centre) Repeats(n *Note) *Note {
	bare := func(n *Note) Note {
		x := *n
		x.Number, x.At, x.By, x.Words = 0, Instant{}, nil, ""
		return x
	}
	for _, x := range slices.Backward(Standing(c.Notes)) {
		switch {
		case n.Kind == NoteWeather:
		case bare(x) == bare(n):
			return x
		case slices.Contains(overrides[n.Kind], x.Kind) && x.Horse == n.Horse && x.Piece == n.Piece && x.Lesson == n.Lesson:
			return nil
		}
	}
	return nil
}
