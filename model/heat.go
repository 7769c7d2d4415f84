package model

import "fmt"

// Heat is what the weather says of work: for a person to decide by.
type Heat string

const (
	HeatGo      Heat = "go"
	HeatCaution Heat = "caution"
	HeatStop    Heat = "stop"
)

// HeatOf goes by the sum of °F and % relative humidity: under 130 go, above 150
// caution, 180 and up stop (extension handbooks). They say nothing of 130 to
// 150, which counts as caution here: the careful end.
func HeatOf(warmth, humidity int) Heat {
	switch sum := warmth + humidity; {
	case sum >= 180:
		return HeatStop
	case sum >= 130:
		return HeatCaution
	}
	return HeatGo
}

// HeatWords are air temperature, in the centre's units, and humidity with what
// they say of work; the sum goes by °F.
func HeatWords(warmth, humidity int, u Units) string {
	air := fmt.Sprintf("%d °F", warmth)
	if u != Imperial {
		air += fmt.Sprintf(" (%d °C)", (10*(warmth-32)+9)/18) // to the nearest
	}
	return fmt.Sprintf("%s and %d %% make %d: %s", air, humidity, warmth+humidity, HeatOf(warmth, humidity))
}
