package model

import "slices"

// Barrel is how wide a horse is to sit on.
type Barrel string

const (
	Narrow Barrel = "narrow"
	Medium Barrel = "medium"
	Wide   Barrel = "wide"
)

// Horse of the herd. Its bridle and halter belong to it.
type Horse struct {
	Name     string
	Was      []string
	Height   Length
	Weight   Grams // by scale, or the estimate by tape; 0 unknown
	ByTape   bool  // Weight is an estimate: 10 % less counts for load
	Weighed  Date
	Barrel   Barrel // "" unknown
	Foaled   Date   // a year alone counts as its 31 December; 0 unknown
	Looks    string // what a helper sees: "bay, white sock behind"
	Kept     string // stall or field
	Limits   Limits // of its own; what is 0 is the house's
	Factor   Percent
	Mounting []string // mounting places it stands at; none: not recorded
	Skills   []string
	Levels   []string // of riders it takes; none: all
	MustLead bool

	LoadPercent Percent // its own share of body weight, if lower than the house's
	MaxLoad     Grams   // its own most load; 0 none stated
	MaxSupport  Grams   // most load with a rider who needs support; 0 none stated

	InFoalUntil     Date // not worked up to and including this date; 0 not in foal
	Arrived         Date
	QuarantineUntil Date   // 0 with Arrived set: the house's quarantine
	OwnTack         []Span // times in which it is marked own tack only
	DaysOff         []Period
	Out             []Out
	Apart           []*Horse // never in one lesson with these; both ways
}

// Share is the most load as a share of body weight, in percent.
func (h *Horse) Share(house *House) Percent {
	if h.LoadPercent != 0 && h.LoadPercent < house.LoadPercent {
		return h.LoadPercent
	}
	return house.LoadPercent
}

// SafeWeight is the body weight that counts for load: 10 % less by tape.
// It is in tenths of a gram, so that it is exact.
func (h *Horse) safeWeight() int64 {
	if h.ByTape {
		return int64(h.Weight) * 9
	}
	return int64(h.Weight) * 10
}

// Carries reports whether a load is within the horse's limits; support is
// whether the rider needs it. A horse of unknown weight carries nothing.
func (h *Horse) Carries(load Grams, support bool, house *House) bool {
	switch {
	case h.Weight == 0,
		int64(load)*1000 > h.safeWeight()*int64(h.Share(house)),
		h.MaxLoad != 0 && load > h.MaxLoad,
		support && h.MaxSupport != 0 && load > h.MaxSupport:
		return false
	}
	return true
}

// Marked reports whether a load is above (not at) the share that is marked.
func (h *Horse) Marked(load Grams, house *House) bool {
	return int64(load)*1000 > h.safeWeight()*int64(house.MarkPercent)
}

// AgeOn is the horse's age in whole years on a date; -1 where the year it was
// foaled is unknown.
func (h *Horse) AgeOn(d Date) int {
	if h.Foaled == 0 {
		return -1
	}
	age := d.Year() - h.Foaled.Year()
	if h.Foaled.AddYears(age) > d {
		age--
	}
	return age
}

// QuarantineEnds is the last date of the horse's quarantine; 0 is none.
func (h *Horse) QuarantineEnds(house *House) Date {
	if h.QuarantineUntil != 0 {
		return h.QuarantineUntil
	}
	if h.Arrived != 0 && house.Quarantine > 0 {
		return h.Arrived + Date(house.Quarantine) - 1
	}
	return 0
}

// IsApart reports whether h and k must not be in one lesson.
func (h *Horse) IsApart(k *Horse) bool {
	for _, x := range h.Apart {
		if x == k {
			return true
		}
	}
	for _, x := range k.Apart {
		if x == h {
			return true
		}
	}
	return false
}

// OutWhy is why a horse does not work.
type OutWhy string

const (
	Lame        OutWhy = "lame"
	Ill         OutWhy = "ill"
	VetStop     OutWhy = "vet's stop"
	Appointment OutWhy = "appointment" // farrier, dentist: ends by itself
)

// Out is a time in which a horse does not work. Only an appointment ends by
// itself; of the others Review is when somebody looks again, and End is set
// when a named person has ended it.
type Out struct {
	Why    OutWhy
	From   Instant
	End    Instant // zero: not ended
	Review Date
	Note   int     // number of the note it came from
	At     Instant // when it was noted; zero: known from the start of its first date
}

func (o Out) known() Instant {
	if o.At.IsZero() {
		return Instant{Date: o.From.Date}
	}
	return o.At
}

// wasOut reports whether the horse was out over the whole of [start, end) of a
// date, and that was known before it began.
func (h *Horse) wasOut(d Date, start, end Minute) bool {
	from := Instant{d, start}
	return slices.ContainsFunc(h.Out, func(o Out) bool {
		return o.known().Before(from) && !from.Before(o.From) && (o.End.IsZero() || !o.End.Before(Instant{d, end}))
	})
}

// Meets reports whether the horse is out during part of [start, end) of d.
func (o Out) Meets(d Date, start, end Minute) bool {
	return o.From.Before(Instant{d, end}) && (o.End.IsZero() || Instant{d, start}.Before(o.End))
}

// Span runs from one instant to another; a zero End is not ended yet.
type Span struct{ From, End Instant }

// Has reports whether the instant lies in the span.
func (s Span) Has(i Instant) bool {
	return !i.Before(s.From) && (s.End.IsZero() || i.Before(s.End))
}

// ownTackMarks are the spans in which the horse is marked own tack only, its
// quarantine among them.
func (h *Horse) ownTackMarks(house *House) []Span {
	marks := h.OwnTack
	if last := h.QuarantineEnds(house); last != 0 {
		marks = append(marks[:len(marks):len(marks)], Span{From: Instant{Date: h.Arrived}, End: Instant{Date: last + 1}})
	}
	return marks
}
