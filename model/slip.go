package model

import (
	"fmt"
	"slices"
)

// NoSlip says why a person cannot take back a note as a slip of her own on a day;
// "" is that she can. To take a slip back ends nothing: what the note said was never
// so, and it stays on record with the note that undoes it. She takes back her own
// note, on the day on which she wrote it, while nobody goes by it yet; a vet's stop
// never.
func (c *Centre) NoSlip(n *Note, by *Person, today Date) string {
	switch p := c.restsOn(n); {
	case n.Kind == "":
		return fmt.Sprintf("note %d only takes another back; what is so after all is noted anew", n.Number)
	case n.Why == VetStop:
		return fmt.Sprintf("note %d is a vet's stop: it is not taken back, and ends on the word of who may end it", n.Number)
	case n.By == nil || n.By != by:
		return fmt.Sprintf("note %d was written by somebody else: who wrote it takes it back, or the office does", n.Number)
	case n.At.Date != today:
		return fmt.Sprintf("note %d was written on another day: the office takes it back", n.Number)
	case p != nil:
		return fmt.Sprintf("version %d was posted with note %d in it: the office takes it back", p.Version, n.Number)
	case c.closedWith(n):
		return fmt.Sprintf("%s was closed with note %d in it: the office takes it back", n.Date.Words(), n.Number)
	}
	return ""
}

// restsOn is what was posted last for a date that the note is for, or may be, and
// goes by it; nil is nothing.
func (c *Centre) restsOn(n *Note) *Posted {
	last := max(n.Date, n.Through)
	lasts := slices.Contains([]NoteKind{NoteHorseOut, NoteHorseBack, NoteOwnTack, NoteOwnTackEnd, NotePieceOut, NotePieceBack, NoteCleaned, NoteForm}, n.Kind)
	for _, p := range slices.Backward(c.Posted) {
		if p.Notes >= n.Number && n.Date <= p.Until && (lasts || p.From <= last) {
			return p
		}
	}
	return nil
}

// closedWith reports whether a date that the note is for was closed after it.
func (c *Centre) closedWith(n *Note) bool {
	return slices.ContainsFunc(c.Ridden, func(x *Ridden) bool { return n.isFor(x.Date) && !x.At.Before(n.At) })
}
