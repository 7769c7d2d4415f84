package sheet

import (
	"cmp"
	"fmt"
	"slices"

	"tackwright/model"
)

// Piece is one thing to carry, as its tag and the tack room have it.
type Piece struct {
	Kind     string `json:"kind" about:"saddle, pad, girth ..."`
	Layer    int    `json:"layer,omitempty" about:"of two pads and more: 1 lies on the horse's back"`
	Tag      string `json:"piece" about:"tag"`
	Size     string `json:"size,omitempty" about:"of a girth in the centre's units"`
	Rack     string `json:"rack,omitempty" about:"its spot, or that of the seat it is kept with"`
	KeptWith string `json:"kept_with,omitempty" about:"the seat that it is kept with"`
	KeptAt   string `json:"kept_at,omitempty" about:"the horse that it is kept with"`
	Travels  bool   `json:"travels,omitempty" about:"carried with that seat: nobody looks for it"`
	Looks    string `json:"looks,omitempty" about:"what the eye finds"`

	From    string `json:"from,omitempty" about:"the horse that wears it before"`
	Waits   bool   `json:"waits,omitempty" about:"a rest or longer since then: it hangs at its rack"`
	OffAt   Clock  `json:"off_at,omitzero" about:"when that ride ends"`
	OnAgain Clock  `json:"on_again,omitzero" about:"when the horse it came off wears it again"`
	tagged  *model.Piece
}

func (d *day) asPiece(x *model.Piece) Piece {
	p := Piece{Kind: string(x.Kind), Tag: x.Tag, Size: SizeOf(x, d.house.Units), Rack: x.Rack, Looks: x.Looks, tagged: x}
	switch {
	case x.WithSeat != nil:
		p.KeptWith, p.Rack = x.WithSeat.Tag, cmp.Or(x.WithSeat.Rack, x.Rack)
	case x.WithHorse != nil:
		p.KeptAt, p.Rack = x.WithHorse.Name, ""
	}
	return p
}

// pieces are those of a turn that are in some list, in the order in which they
// go on: seat first since it is what a helper looks for, then what it takes.
func (d *day) pieces(t *model.Turn, in []*model.Piece) []Piece {
	var out []Piece
	for _, x := range t.Pieces() {
		if !slices.Contains(in, x) {
			continue
		}
		p := d.asPiece(x)
		if len(t.Pads) > 1 {
			p.Layer = slices.Index(t.Pads, x) + 1
		}
		p.Travels = x.WithSeat != nil && slices.Contains(in, x.WithSeat)
		out = append(out, p)
	}
	return out
}

// SizeOf a piece as the label has it: seats are sold by the inch everywhere, girths by
// the inch or in centimetres (trade size charts).
func SizeOf(x *model.Piece, units model.Units) string {
	switch cm := x.Label.Centimetres(); {
	case x.Label == 0:
		return x.Size
	case x.Kind != model.Girth || units != model.Metric:
		return x.Label.String()
	case cm%10 == 0:
		return fmt.Sprintf("%d cm", cm/10)
	default:
		return fmt.Sprintf("%d.%d cm", cm/10, cm%10)
	}
}
