package sheet

import (
	"fmt"
	"slices"

	"tackwright/cmd/tackwright/internal/sheet/paper"
)

// boxed is the room for a box, or for what stands in its place.
const boxed = 4

// Signs that stand before a piece, each with one meaning.
const (
	toCarry  = "[ ] " // to be carried, and ticked
	hangsOn  = "  + " // comes with the piece above it
	comesOff = "  > " // comes off another horse, and is ticked among the changeovers
)

// sign is the one of a piece of a tack-up.
func sign(p Piece) string {
	switch {
	case p.From != "":
		return comesOff
	case p.Travels:
		return hangsOn
	}
	return toCarry
}

// box is the sign of a piece that is not on another horse.
func box(carry bool) string {
	if carry {
		return toCarry
	}
	return hangsOn
}

// signWords explain the signs that stand in a part beside the boxes.
func signWords(pieces []Piece) string {
	words := "Tick what is carried."
	for _, x := range []struct {
		sign, words string
	}{{hangsOn, "+ comes with the piece above."}, {comesOff, "> see the changeovers."}} {
		if slices.ContainsFunc(pieces, func(p Piece) bool { return sign(p) == x.sign }) {
			words += "  " + x.words
		}
	}
	return words
}

// pieceHeads name the columns of a line that names a piece.
func pieceHeads() []string { return []string{"what", "tag", "size", "where", "looks like"} }

// table settles the columns of such lines, one for pull and changeovers alike.
func (t *pullText) table() {
	rows := [][]string{pieceHeads()}
	for _, u := range t.TackUps {
		for _, p := range u.carry() {
			rows = append(rows, t.cellsOf(p))
		}
	}
	for _, c := range t.Changeovers {
		for _, p := range c.Off {
			rows = append(rows, t.cellsOf(back(p)))
		}
		for _, p := range c.On {
			rows = append(rows, t.cellsOf(p))
		}
	}
	t.widths = paper.Fit(boxed, []int{16, 12, 8, 16, 0}, rows)
}

func (t *pullText) heads() {
	t.Cells("    ", t.widths, pieceHeads()...)
}

// piece is a line that names a piece.
func (t *pullText) piece(lead string, p Piece) { t.Cells(lead, t.widths, t.cellsOf(p)...) }

func (t *pullText) cellsOf(p Piece) []string {
	kind := p.Kind
	switch p.Layer {
	case 0:
	case 1:
		kind += " (1st on)"
	case 2:
		kind += " (2nd on)"
	default:
		kind += fmt.Sprintf(" (%dth on)", p.Layer)
	}
	at := where(p)
	if p.OffAt != 0 && !p.Waits {
		at += ", " + t.clock(p.OffAt)
	}
	return []string{kind, p.Tag, p.Size, at, p.Looks}
}

// carry are the pieces of a tack-up, bridle or halter first; what is kept with
// the horse needs no name to find it.
func (u *TackUp) carry() []Piece {
	all := append([]Piece{{Kind: bridle, KeptAt: u.Horse}}, u.Pieces...)
	for i := range all {
		if all[i].KeptAt == u.Horse {
			all[i].KeptAt = "the horse"
		}
	}
	return all
}

// back says of a piece that is taken off that its rack is where it goes.
func back(p Piece) Piece {
	if p.KeptWith == "" && p.Rack != "" {
		p.Rack = "back to " + p.Rack
	}
	return p
}

// where a helper finds the piece, or takes it back to.
func where(p Piece) string {
	switch {
	case p.From != "" && p.Waits && !p.Travels:
		after := p.From
		p.From = ""
		return where(p) + " (after " + after + ")"
	case p.From != "" && !p.Waits:
		return "from " + p.From
	case p.Travels:
		return "with " + p.KeptWith
	case p.KeptAt != "":
		return "at " + p.KeptAt
	case p.KeptWith != "":
		return join(", ", p.Rack, "with "+p.KeptWith)
	case p.Rack == "":
		return "no spot known"
	}
	return p.Rack
}
