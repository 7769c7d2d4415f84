package model

import "strings"

// Kind of a piece of tack. A kind that is none of these constants is an extra:
// what a rider needs beside (stirrups, reins, hand hold ...), by the house's
// own name for it.
type Kind string

const (
	Saddle      Kind = "saddle"
	Western     Kind = "western saddle"
	BarebackPad Kind = "bareback pad"
	Surcingle   Kind = "surcingle"
	Girth       Kind = "girth"
	Pad         Kind = "pad"
)

// IsSeat reports whether a rider sits on it.
func (k Kind) IsSeat() bool {
	return k == Saddle || k == Western || k == BarebackPad || k == Surcingle
}

// IsExtra reports whether it is none of seat, girth and pad.
func (k Kind) IsExtra() bool { return !k.IsSeat() && k != Girth && k != Pad }

// HasBars is whether seats of the kind have bars for stirrups unless they say
// otherwise: bareback pads and surcingles mostly have none (common practice).
func (k Kind) HasBars() bool { return k == Saddle || k == Western }

// HangsOnBars is whether extras of the kind hang on a seat's bars unless they
// say otherwise: anything that is called stirrups (common practice).
func (k Kind) HangsOnBars() bool { return strings.Contains(string(k), "stirrup") }

// TouchesSkin is whether pieces of the kind lie on the horse's skin unless they
// say otherwise (Equine Disease Communication Center; common practice).
func (k Kind) TouchesSkin() bool {
	return k == Girth || k == Pad || k == BarebackPad || k == Surcingle
}

// Family of girthing: which girth a seat takes, or which a girth is.
type Family string

const (
	NoFamily   Family = ""
	ShortGirth Family = "short"     // taken by seats with long billets
	LongGirth  Family = "long"      // taken by seats with short billets
	Cinch      Family = "cinch"     // taken by western rigging
	OwnGirth   Family = "own girth" // carries its own, takes no other
)

// Takes names what a seat of the family has, for people.
func (f Family) Takes() string {
	switch f {
	case ShortGirth:
		return "long billets"
	case LongGirth:
		return "short billets"
	case Cinch:
		return "western rigging"
	}
	return string(f)
}

// Piece is one physical, tagged thing; a pair is one piece.
type Piece struct {
	Tag       string
	Was       []string
	Kind      Kind
	Style     string // of a seat: what riders accept or not; the kind where none is stated
	Family    Family // of seats and girths
	Label     Label  // size of a seat or girth; 0 unknown or none
	Size      string // size of a pad or an extra, as printed; "" unknown or none
	Weight    Grams  // 0: assumed by kind
	Rack      string // its spot in the tack room
	Looks     string // what the eye finds
	Skin      bool   // touches the horse's skin
	CheckDue  Date   // 0 unknown
	WithSeat  *Piece // kept with this seat, and travels with it
	WithHorse *Horse // kept with this horse
	Bars      bool   // of a seat: stirrups can hang on it
	OnBars    bool   // of an extra: hangs on a seat's bars
	NoPad     bool   // of a seat: needs no pad beneath
	GoesOn    []Kind // of an extra: the kinds of seat it goes on; none: all
	Out       []PieceOut
	Cleaned   []Cleaning
}

// IsSeat reports whether a rider sits on the piece.
func (p *Piece) IsSeat() bool { return p.Kind.IsSeat() }

// TakesGirth reports whether the seat needs a girth beside it.
func (p *Piece) TakesGirth() bool { return p.Family != OwnGirth }

// Buckles reports whether a girth is of the family that the seat takes; where
// either states none, it does not.
func (p *Piece) Buckles(seat *Piece) bool {
	return p.Family != NoFamily && p.Family == seat.Family
}

// Loose reports whether the piece is kept neither with a seat nor with a horse.
func (p *Piece) Loose() bool { return p.WithSeat == nil && p.WithHorse == nil }

// WeightIn is the piece's weight, and whether it is assumed by its kind.
func (p *Piece) WeightIn(house *House) (w Grams, assumed bool) {
	if p.Weight != 0 {
		return p.Weight, false
	}
	a := &house.Assumed
	switch p.Kind {
	case Saddle:
		return a.Saddle, true
	case Western:
		return a.Western, true
	case BarebackPad, Surcingle:
		return a.Bareback, true
	case Pad:
		return a.Pad, true
	case Girth:
		return a.Girth, true
	}
	return a.Extra, true
}

// GoesOnSeat reports whether an extra can be used with the seat.
func (p *Piece) GoesOnSeat(seat *Piece) bool {
	if p.OnBars && !seat.Bars {
		return false
	}
	for _, k := range p.GoesOn {
		if k == seat.Kind {
			return true
		}
	}
	return len(p.GoesOn) == 0
}

// PieceOut is a time in which a piece is not in use; it ends when a named
// person has checked it.
type PieceOut struct {
	Why  string
	From Instant
	End  Instant // zero: not ended
	Note int
}

// Cleaning is a named person's word that a piece was cleaned.
type Cleaning struct {
	At Instant
	By string
}
