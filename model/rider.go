package model

// Rider who takes lessons.
type Rider struct {
	Name  string // unique; never on a sheet
	Was   []string
	First string // first name, for sheets
	Mark  string // short mark that tells two riders of one first name apart

	Weight  Grams // dressed to ride; the careful end of a band; 0 unknown
	Height  Length
	SeatMin Label // English seat sizes that fit her; 0 unknown
	SeatMax Label
	Support bool // needs support: the ride is adaptive
	Level   string

	Mounting     []string // mounting places she can use; none: any
	MountMinutes int      // that mounting takes; 0 not stated
	Barrels      []Barrel // wanted; none: any
	HorseMin     Length   // height of horse wanted; 0 none
	HorseMax     Length
	Skills       []string // that her horse must have
	Styles       []string // of seat accepted, best first; none: any
	Extras       []ExtraNeed
	Leader       bool
	Sidewalkers  int

	FormUntil Date // her form is valid up to and including it; 0 unknown
	Usual     *Horse
	Bans      []*Horse
	RideFirst bool
	Likings   []Liking

	Sessions     int // wanted in a week; 0 not stated
	Free         []Period
	WaitingSince Date
	MayChange    MayChange
	Cautions     []string // for the instructor's sheet alone
	Wears        []string // what she herself wears
	Away         []Period
}

// Called is how sheets name the rider: first name, and the mark if she has one.
func (r *Rider) Called() string {
	if r.Mark == "" {
		return r.First
	}
	return r.First + " " + r.Mark
}

// IsBanned reports whether the rider must not ride h.
func (r *Rider) IsBanned(h *Horse) bool {
	for _, b := range r.Bans {
		if b == h {
			return true
		}
	}
	return false
}

// ExtraNeed is a kind of piece that a rider needs beside seat, pad and girth.
type ExtraNeed struct {
	Kind Kind
	Size string // "" any
}

// MetBy reports whether the piece is of the kind and, where both sizes are
// known, of the size.
func (n ExtraNeed) MetBy(p *Piece) bool {
	return p.Kind == n.Kind && (n.Size == "" || p.Size == "" || p.Size == n.Size)
}

// Liking is a wish for, or against, a horse or a seat.
type Liking struct {
	Horse   *Horse
	Seat    *Piece
	Dislike bool
	Weight  int // 1, 2 or 4
}

// MayChange is whether a rider may be asked to ride in another lesson.
type MayChange string

const (
	ChangeFreely MayChange = "freely"
	ChangeAsk    MayChange = "ask first"
	ChangeNever  MayChange = "never"
)

// StyleStep is how far down the rider's styles a seat is: 0 for her first or
// where she names none; ok is false where she does not accept it.
func (r *Rider) StyleStep(seat *Piece) (step int, ok bool) {
	for i, s := range r.Styles {
		if s == seat.Style {
			return i, true
		}
	}
	return 0, len(r.Styles) == 0
}

// SeatFits reports whether a seat's size is in her range; known is false where
// either size is unknown. Bareback pads and surcingles have no size, and a
// western seat is labelled 2 in less than an English one (trade chart).
func (r *Rider) SeatFits(seat *Piece) (fits, known bool) {
	if seat.Kind == BarebackPad || seat.Kind == Surcingle {
		return true, true
	}
	if seat.Label == 0 || r.SeatMin == 0 {
		return true, false
	}
	size := seat.Label
	if seat.Kind == Western {
		size += 20
	}
	return r.SeatMin <= size && size <= r.SeatMax, true
}
