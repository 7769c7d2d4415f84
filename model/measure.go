package model

import "fmt"

// Grams is a weight or a load; 0 is unknown.
type Grams int64

// Length is a length in tenths of a millimetre, so that an inch (254) and a
// hand (1016) are exact; 0 is unknown.
type Length int

const (
	// Inch is 25.4 mm by definition (international yard and pound agreement, 1959).
	Inch Length = 254
	// Centimetre is 10 mm.
	Centimetre Length = 100
	// Hand is four inches, the unit of a horse's height.
	Hand = 4 * Inch
	// Kilogram is 1,000 g.
	Kilogram Grams = 1000
	// pound is 453.59237 g by definition, in hundred-thousandths of a gram.
	poundE5 = 45359237
)

// Pounds is a weight in grams, to the nearest gram.
func Pounds(lb float64) Grams { return Grams(lb*poundE5/1e5 + 0.5) }

// InPounds is the weight in pounds.
func (g Grams) InPounds() float64 { return float64(g) * 1e5 / poundE5 }

// Label is a size as printed on a seat or a girth, in tenths of an inch: 165 is
// 16.5 in. It is a name more than a length: a girth of 24 in is labelled 60 cm,
// cm = in x 2.5 (trade size charts). 0 is unknown.
type Label int

// Inches is a label of so many inches.
func Inches(in float64) Label { return Label(in*10 + 0.5) }

// String is the label in inches: "16.5 in".
func (l Label) String() string {
	if l%10 == 0 {
		return fmt.Sprintf("%d in", l/10)
	}
	return fmt.Sprintf("%d.%d in", l/10, l%10)
}

// Centimetres is what the same size reads on a label in centimetres, in tenths:
// 24 in (240) reads 60 cm (600).
func (l Label) Centimetres() int { return int(l) * 5 / 2 }

// Percent is a whole percent.
type Percent int

// TapeWeight estimates a horse's weight from a tape: heart girth squared x
// length / 11,900 with both in centimetres, in kilograms (Carroll & Huntington
// 1988, Equine Vet. J. 20:41-45). The error is about 10 % either way, so a
// weight by tape counts 10 % less for load.
func TapeWeight(heartGirth, length Length) Grams {
	g, l := int64(heartGirth), int64(length)
	return Grams(g * g * l / 1e3 / 11900) // (0.1 mm)^3 is 1e-6 cm^3, and kg are 1e3 g
}

// SeatByThigh is the English seat that a rider's thigh, buttock to knee, asks
// for (trade chart): to 16.5 in a 15, to 18.5 a 16, to 20 a 16.5, to 21.5 a 17,
// to 23 a 17.5, above that an 18. A western seat is labelled 2 in less.
func SeatByThigh(thigh Length) Label {
	for _, row := range []struct {
		to   Length
		seat Label
	}{{165, 150}, {185, 160}, {200, 165}, {215, 170}, {230, 175}} {
		if thigh*10 <= row.to*Inch {
			return row.seat
		}
	}
	return 180
}
