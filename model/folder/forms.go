package folder

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

// The forms of plain values. What the page says of each is made from here.
var (
	text   = words("a text", `"bay, white sock behind"`)
	texts  = list(text, "a list of texts")
	naming = func() form[string] {
		f := words("a name", `"Ada Grey"`)
		inner := f.read
		f.read = func(r *reader, n *node) (string, bool) {
			s, ok := inner(r, n)
			if !ok {
				return "", false
			}
			if bad := badName(s); bad != "" {
				r.mistake(n.span(), bad, "write the name alone")
				return "", false
			}
			return s, true
		}
		return f
	}()
	oldNames = list(naming, "a list of names")

	weights = textForm("a horse's weight", `"472 kg" or "1040 lb" or "9 st 4 lb"`,
		"A pound is 453.59237 g, a stone 14 lb.", weight)
	lengths = textForm("a length", `"72 in" or "183 cm" or "5 ft 4 in"`, "An inch is 25.4 mm.", length)
	heights = within(textForm("a height", `"14.3 hh" or "151 cm"`,
		"14.3 hh is 14 hands and 3 inches; a hand has four.", height),
		5*model.Hand, 22*model.Hand, "horses are between 5 hh and 22 hh")
	horseWeights = within(weights, 40*model.Kilogram, 1500*model.Kilogram, "horses weigh between %s and %s")
	riderWeights = within(textForm("a rider's weight", `"62 kg" or "137 lb" or "9 st 11 lb" or "< 80 kg"`,
		`A band such as "< 80 kg" or "70-80 kg" counts at its careful end, 80 kg.`, careful),
		5*model.Kilogram, 300*model.Kilogram, "riders weigh between %s and %s")
	loads        = within(textForm("a load", `"90 kg" or "198 lb" or "14 st"`, weights.about, weight), model.Kilogram, 300*model.Kilogram, "a horse's load is between %s and %s")
	pieceWeights = within(textForm("the weight of a piece of tack", `"7.5 kg" or "16 lb" or "800 g"`, weights.about, weight),
		10, 60*model.Kilogram, "a piece of tack weighs between %s and %s")
	riderHeights = within(lengths, 40*model.Centimetre, 250*model.Centimetre, "riders are between %s and %s")
	girthSizes   = textForm("a size, or a range of sizes, of girths", `"26 in" or "65 cm" or "24-28 in"`,
		"A girth's label in centimetres is its inches times 2.5 (trade size charts): 24 in is 60 cm.",
		rangeOf(girthSize, 120, 640, "girths are between 12 in and 64 in"))
	seatSizes = textForm("a size of seats, or a range of them", `"17 in" or "16-17 in"`,
		"One size counts half an inch either way (trade chart), a range as it stands.", seatRange)
	thighs       = within(textForm("a length of thigh", `"20 in" or "51 cm"`, lengths.about, length), 6*model.Inch, 40*model.Inch, "thighs are between %s and %s")
	horseHeights = textForm("a range of heights", `"14-15.2 hh" or "140-155 cm"`, "",
		rangeOf(height, 5*model.Hand, 22*model.Hand, "horses are between 5 hh and 22 hh"))

	duration  = textForm("a duration", `"45 min" or "2h30m" or "3 h"`, "Hours and minutes.", minutes)
	gap       = within(duration, 0, 240, "a gap is no longer than 4 h")
	longTime  = within(duration, 1, 7*24*60, "a week has 168 h")
	mountTime = within(textForm("a time for mounting", `"4 min"`, duration.about, minutes), 0, 60, "mounting takes between 0 and 60 min")
	weekdays  = func() form[time.Weekday] {
		f := textForm("a weekday", `"Monday" or "Mon"`, "", weekday)
		for d := range 7 {
			f.choices = append(f.choices, time.Weekday((d+1)%7).String())
		}
		return f
	}()

	yes = func() form[bool] {
		f := plainForm("true or false", "true or false", unstable.Bool, func(s string) (bool, error) { return s == "true", nil })
		f.choices = []string{"yes", "no"} // in a spreadsheet
		return f
	}()
	integer = plainForm("a whole number", "3", unstable.Integer, func(s string) (int, error) {
		n, err := strconv.ParseInt(s, 0, 32)
		if err != nil {
			return 0, errors.New("too large")
		}
		return int(n), nil
	})
	counts = within(integer, 1, 1000, "it is between 1 and 1000")
	some   = within(integer, 0, 1000, "it is between 0 and 1000")
	years  = within(integer, 0, 40, "ages here are between 0 and 40 years")
	days   = either(within(integer, 0, 365, "it is between 0 and 365 days"),
		textForm("a number of days", `14 or "14 days"`, "", func(s string) (int, error) {
			n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(tidy(s), "s"), "day")))
			if err != nil || n < 0 || n > 365 {
				return 0, errForm
			}
			return n, nil
		}))
	shares = either(plainForm("a percentage", `20 or "20 %"`, unstable.Integer, func(s string) (model.Percent, error) {
		n, err := strconv.ParseInt(s, 0, 32)
		return model.Percent(n), err
	}), textForm("a percentage", `20 or "20 %"`, "With the sign, or the number alone.", percent))
	loadShares = within(shares, 1, 30, "a load is between 1 % and 30 % of the horse's weight")
	factors    = within(shares, 1, 400, "a factor is between 1 % and 400 %")

	dates = either(plainForm("a date", "2026-11-25", unstable.LocalDate, isoDate),
		textForm("a date", "2026-11-25", "", isoDate))
	// foaled is a date, or a year of which the last day counts.
	foaled = either(dates, plainForm("a year or a date", "2012 or 2012-05-20", unstable.Integer,
		func(s string) (model.Date, error) {
			n, err := strconv.Atoi(s)
			if err != nil || n < 1960 || n > 2100 {
				return 0, errors.New("no horse of today was foaled in that year")
			}
			return model.On(n, time.December, 31), nil
		}))
	times = either(plainForm("a time of day", `14:30 or "2:30 pm"`, unstable.LocalTime, func(s string) (model.Minute, error) {
		t, err := clock(s)
		if err == nil && (t.Second() != 0 || t.Nanosecond() != 0) {
			return 0, errors.New("times go in whole minutes")
		}
		return model.Minute(t.Hour()*60 + t.Minute()), err
	}), textForm("a time of day", `14:30 or "2:30 pm"`, `The end of a date is "24:00".`, timeOfDay))
	instants = either(plainForm("a date and time", "2026-11-25T07:40", unstable.LocalDateTime, func(s string) (model.Instant, error) {
		d, err := model.ParseDate(s[:10])
		if err != nil {
			return model.Instant{}, err
		}
		t, err := clock(s[11:])
		return model.Instant{Date: d, Minute: model.Minute(t.Hour()*60 + t.Minute())}, err
	}), plainForm("a date and time", "2026-11-25T07:40 or 2026-11-25", unstable.LocalDate, func(s string) (model.Instant, error) {
		d, err := model.ParseDate(s)
		return model.Instant{Date: d}, err
	}))

	periods = list(period, "a list of times")
)

// isoDate is model.ParseDate with no more to say than that it is none.
func isoDate(s string) (model.Date, error) {
	d, err := model.ParseDate(s)
	if err != nil {
		err = errForm
	}
	return d, err
}

// words is a form of plain text.
func words(what, like string) form[string] {
	return textForm(what, like, "", func(s string) (string, error) { return s, nil })
}

// plainForm is a form that is written as a plain value other than a text.
func plainForm[V any](what, like string, kind unstable.Kind, parse func(string) (V, error)) form[V] {
	f := form[V]{words: what, like: like, kinds: []unstable.Kind{kind}}
	f.read = func(r *reader, n *node) (v V, ok bool) {
		if n.kind != kind {
			notA(r, n, f)
			return v, false
		}
		v, err := parse(n.text)
		if err != nil {
			r.mistake(n.span(), fmt.Sprintf("%s is not %s: %s", n.text, what, err), "write it like "+like)
			return v, false
		}
		return v, true
	}
	return f
}

// either is the form of two whose kind of value is written; what is neither is
// put to the other, whose words are those of both.
func either[V any](one, other form[V]) form[V] {
	f := other
	f.kinds = slices.Concat(one.kinds, other.kinds)
	f.read = func(r *reader, n *node) (V, bool) {
		if slices.Contains(one.kinds, n.kind) {
			return one.read(r, n)
		}
		return other.read(r, n)
	}
	return f
}

// ends2 is a range.
type ends2[T any] struct{ lo, hi T }

// rangeOf reads a range whose ends lie within [lo, hi].
func rangeOf[T ~int](one func(string) (T, error), lo, hi T, why string) func(string) (ends2[T], error) {
	return func(s string) (ends2[T], error) {
		a, b, err := span2(s, one)
		if err == nil && (a < lo || b > hi) {
			err = errors.New(why)
		}
		return ends2[T]{a, b}, err
	}
}

// seatRange reads the sizes of seats that fit a rider: a range as it stands, one
// size with half an inch either way.
func seatRange(s string) (ends2[model.Label], error) {
	e, err := rangeOf(seatSize, 90, 220, "seats are between 9 in and 22 in")(s)
	if e.lo == e.hi && err == nil {
		return around(e.lo), nil
	}
	return e, err
}

// around is half an inch either way of a seat (trade chart).
func around(l model.Label) ends2[model.Label] { return ends2[model.Label]{l - 5, l + 5} }
