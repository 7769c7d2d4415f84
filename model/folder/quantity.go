package folder

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
	"time"

	"tackwright/model"
)

// errForm says no more than that a text is not of the form that was asked for.
var errForm = errors.New("")

// tidy makes one blank of any run of blanks, of any kind, and writes halves as
// people type them ("17½", "17 1/2") with a point.
func tidy(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	return strings.NewReplacer(" ½", ".5", "½", ".5", " 1/2", ".5", "–", "-", "″", "in", "″", "in").Replace(s)
}

// thousandths reads a decimal number exactly, in thousandths. Larger numbers
// than anything here are refused.
func thousandths(s string) (int64, error) {
	if strings.Contains(s, ",") {
		return 0, errors.New("write decimals with a point, and no comma between thousands")
	}
	whole, part, _ := strings.Cut(s, ".")
	if len(whole) > 7 || len(part) > 3 {
		return 0, errors.New("a number of that many digits")
	}
	n, err := strconv.ParseInt(whole+part+strings.Repeat("0", 3-len(part)), 10, 64)
	if err != nil {
		return 0, errForm
	}
	return n, nil
}

const number = `(\d+(?:[.,]\d+)*)`

var (
	weightForm = regexp.MustCompile(`^` + number + ` ?(kg|kgs|g|lb|lbs|st)(?: ` + number + ` ?(lb|lbs))?$`)
	lengthForm = regexp.MustCompile(`^` + number + ` ?(mm|cm|m|in|ft|')(?: ?` + number + ` ?(in|"|'')?)?$`)
	handsForm  = regexp.MustCompile(`^` + number + ` ?(hh|h|hands)$`)
	labelForm  = regexp.MustCompile(`^` + number + ` ?(in|"|cm)$`)
	rangeForm  = regexp.MustCompile(`^` + number + ` ?([a-z"']*)(?: ?- ?| to )(` + number + ` ?[a-z"']+)$`)
	hoursForm  = regexp.MustCompile(`^(?:(\d{1,3}) ?h(?:ours?)?)? ?(?:(\d{1,4}) ?(?:m|min|mins|minutes?)?)?$`)
	clockForm  = regexp.MustCompile(`^(\d{1,2})(?:[:.](\d\d))? ?(am|pm)?$`)
	shareForm  = regexp.MustCompile(`^(\d{1,3}) ?(?:%|percent|per cent)$`)
)

// weight reads "472 kg", "1040 lb", "9 st 4 lb" or "800 g". A pound is
// 453.59237 g and a stone 14 lb, to the nearest gram.
func weight(s string) (model.Grams, error) {
	m := weightForm.FindStringSubmatch(strings.ToLower(tidy(s)))
	if m == nil || m[3] != "" && m[2] != "st" {
		return 0, errForm
	}
	n, err := thousandths(m[1])
	if err != nil {
		return 0, err
	}
	switch m[2] {
	case "kg", "kgs":
		return model.Grams(n), nil
	case "g":
		return model.Grams(n / 1000), nil
	case "st":
		n *= 14
		if m[3] != "" {
			lb, err := thousandths(m[3])
			if err != nil {
				return 0, err
			}
			n += lb
		}
	}
	return model.Pounds(float64(n) / 1000), nil
}

// careful reads a rider's weight, which may be a band: "< 80 kg" and "70-80 kg"
// count as 80 kg, the end that is on the safe side.
func careful(s string) (model.Grams, error) {
	t := tidy(s)
	if strings.HasPrefix(t, ">") {
		return 0, errors.New("a weight that is only more than something has no safe side")
	}
	for _, below := range []string{"<", "under ", "up to "} {
		if rest, ok := strings.CutPrefix(t, below); ok {
			return weight(strings.TrimSpace(strings.TrimPrefix(rest, "=")))
		}
	}
	if from, to, ok := cutRange(t); ok {
		lo, err := weight(from)
		if err != nil {
			return 0, err
		}
		hi, err := weight(to)
		if err == nil && lo > hi {
			return 0, errors.New("a band goes from less to more")
		}
		return hi, err
	}
	return weight(t)
}

// cutRange cuts "14-15.2 hh" or "24 in - 26 in" into two quantities; a unit
// that stands behind the second alone counts for both.
func cutRange(s string) (from, to string, ok bool) {
	m := rangeForm.FindStringSubmatch(strings.ToLower(s))
	if m == nil {
		return "", "", false
	}
	unit := m[2]
	if unit == "" {
		unit = strings.TrimLeft(m[3], "0123456789., ")
	}
	return m[1] + " " + unit, m[3], true
}

// length reads "72 in", "183 cm", "1.63 m" or "5 ft 4 in"; an inch is 25.4 mm.
func length(s string) (model.Length, error) {
	m := lengthForm.FindStringSubmatch(strings.ToLower(tidy(s)))
	if m == nil || m[3] != "" && m[2] != "ft" && m[2] != "'" {
		return 0, errForm
	}
	n, err := thousandths(m[1])
	if err != nil {
		return 0, err
	}
	tenths := map[string]int64{"mm": 10, "cm": 100, "m": 10000, "in": 254, "ft": 12 * 254, "'": 12 * 254}
	n *= tenths[m[2]]
	if m[3] != "" {
		in, err := thousandths(m[3])
		if err != nil {
			return 0, err
		}
		n += in * 254
	}
	return model.Length((n + 500) / 1000), nil
}

// height reads a horse's height: "14.3 hh" is 14 hands and 3 inches, of which a
// hand has four; or a length.
func height(s string) (model.Length, error) {
	m := handsForm.FindStringSubmatch(strings.ToLower(tidy(s)))
	if m == nil {
		return length(s)
	}
	hands, inches, _ := strings.Cut(m[1], ".")
	whole, half, _ := strings.Cut(inches, ".") // "14.2 1/2 hh" is tidied to 14.2.5
	if len(whole) > 1 || whole > "3" || half != "" && half != "5" {
		return 0, errors.New("a hand has four inches, so behind the point stands 0, 1, 2 or 3")
	}
	n, err := thousandths(hands)
	if err != nil {
		return 0, err
	}
	h := model.Length(n/1000) * model.Hand
	if whole != "" {
		h += model.Length(whole[0]-'0') * model.Inch
	}
	if half != "" {
		h += model.Inch / 2
	}
	return h, nil
}

// girthSize reads the label of a girth: "26 in" or "65 cm", of which an inch is
// 2.5 (trade size charts). It comes in half inches.
func girthSize(s string) (model.Label, error) { return label(s, true) }

// seatSize reads the label of a saddle's seat, which is in inches: "17.5 in".
func seatSize(s string) (model.Label, error) { return label(s, false) }

func label(s string, cm bool) (model.Label, error) {
	m := labelForm.FindStringSubmatch(strings.ToLower(tidy(s)))
	if m == nil {
		return 0, errForm
	}
	n, err := thousandths(m[1])
	if err != nil {
		return 0, err
	}
	if m[2] == "cm" {
		if !cm {
			return 0, errors.New("a seat's size is in inches")
		}
		if n*2%5 != 0 || n*2/5%500 != 0 {
			return 0, errors.New("a label in centimetres is its inches times 2.5, and those go in halves")
		}
		n = n * 2 / 5
	}
	if n%500 != 0 {
		return 0, errors.New("sizes go in half inches")
	}
	return model.Label(n / 100), nil
}

// span2 reads a range "24-26 in", or one quantity, which is a range of one.
func span2[T ~int](s string, one func(string) (T, error)) (lo, hi T, err error) {
	from, to, ok := cutRange(tidy(s))
	if !ok {
		lo, err = one(s)
		return lo, lo, err
	}
	if lo, err = one(from); err == nil {
		hi, err = one(to)
	}
	if err == nil && lo > hi {
		err = errors.New("a range goes from less to more")
	}
	return lo, hi, err
}

// minutes reads a duration: "2h30m", "45 min", "3 h".
func minutes(s string) (int, error) {
	t := strings.ToLower(tidy(s))
	m := hoursForm.FindStringSubmatch(t)
	if m == nil || t == "" || m[1] == "" && strings.Trim(t, "0123456789") == "" {
		return 0, errForm
	}
	h, _ := strconv.Atoi(m[1]) // "" is none
	min, _ := strconv.Atoi(m[2])
	return h*60 + min, nil
}

// timeOfDay reads "14:30", "2:30 pm" and, for the end of a date, "24:00".
func timeOfDay(s string) (model.Minute, error) {
	m := clockForm.FindStringSubmatch(strings.ToLower(tidy(s)))
	if m == nil || m[2] == "" && m[3] == "" {
		return 0, errForm
	}
	h, _ := strconv.Atoi(m[1])
	min, _ := strconv.Atoi(m[2])
	if m[3] != "" {
		if h < 1 || h > 12 {
			return 0, errForm
		}
		h %= 12
		if m[3] == "pm" {
			h += 12
		}
	}
	t := model.Minute(h*60 + min)
	if min > 59 || t > 24*60 {
		return 0, errors.New("a date has 24 hours")
	}
	return t, nil
}

// weekday reads "Monday" or "Mon", with capitals or without.
func weekday(s string) (time.Weekday, error) {
	t := strings.ToLower(tidy(s))
	for d := time.Sunday; d <= time.Saturday; d++ {
		if name := strings.ToLower(d.String()); len(t) >= 3 && strings.HasPrefix(name, t) {
			return d, nil
		}
	}
	return 0, errForm
}

// percent reads "20 %".
func percent(s string) (model.Percent, error) {
	m := shareForm.FindStringSubmatch(strings.ToLower(tidy(s)))
	if m == nil {
		return 0, errForm
	}
	n, err := strconv.Atoi(m[1])
	return model.Percent(n), err
}

// inUnits shows a weight or a length, rounded, in the units that a centre chose;
// anything else as a number.
func inUnits[V ~int | ~int32 | ~int64](v V, units model.Units) string {
	tenths := func(x float64, unit string) string {
		digits := 1
		if x >= 10 {
			digits = 0
		} else if x < 1 {
			digits = 2
		}
		return strings.TrimSuffix(strconv.FormatFloat(x, 'f', digits, 64), ".0") + " " + unit
	}
	switch x := any(v).(type) {
	case model.Grams:
		switch {
		case units == model.Imperial:
			return tenths(x.InPounds(), "lb")
		case x < model.Kilogram:
			return strconv.Itoa(int(x)) + " g"
		}
		return tenths(float64(x)/float64(model.Kilogram), "kg")
	case model.Length:
		if units == model.Imperial {
			return tenths(float64(x)/float64(model.Inch), "in")
		}
		return tenths(float64(x)/float64(model.Centimetre), "cm")
	}
	return strconv.Itoa(int(v))
}
