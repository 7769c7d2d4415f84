package command

import (
	"regexp"
	"strconv"
	"strings"
	"time"

	"tackwright/model"
)

// timeOfDay reads a time as people type it: 7:40, 07.40 or 2:30pm.
func timeOfDay(said string) (model.Minute, error) {
	s := strings.ReplaceAll(strings.ToLower(strings.Join(strings.Fields(said), "")), ".", ":")
	for _, form := range []string{"15:04", "3:04pm", "3pm"} {
		if t, err := time.Parse(form, s); err == nil {
			return model.MinuteOf(t), nil
		}
	}
	if s == "24:00" {
		return 24 * 60, nil
	}
	return 0, wrongUse("%q is not a time of day like 10:30", said)
}

// hours reads two times of day: 12:30-12:50.
func hours(said string) (from, until model.Minute, err error) {
	a, b, ok := strings.Cut(strings.ReplaceAll(said, "–", "-"), "-")
	if !ok {
		return 0, 0, wrongUse("%q are not hours like 12:30-12:50", said)
	}
	if from, err = timeOfDay(a); err == nil {
		until, err = timeOfDay(b)
	}
	if err == nil && until <= from {
		err = wrongUse("%q does not end after it begins", said)
	}
	return from, until, err
}

var lengthForm = regexp.MustCompile(`^(?:(\d+) ?h(?:ours?)?)? ?(?:(\d+) ?(?:m|min|mins|minutes)?)?$`)

// minutes reads a length of time: 30m, 30 min, 45 or 1h15m.
func minutes(said string) (model.Minute, error) {
	m := lengthForm.FindStringSubmatch(strings.ToLower(strings.TrimSpace(said)))
	if m == nil || m[1]+m[2] == "" || len(m[1]+m[2]) > 4 {
		return 0, wrongUse("%q is not a length of time like 30m or 1h15m", said)
	}
	h, _ := strconv.Atoi("0" + m[1]) // digits, by the form
	min, _ := strconv.Atoi("0" + m[2])
	return model.Minute(60*h + min), nil
}

var warmthForm = regexp.MustCompile(`^(-?\d{1,3}) ?°? ?([cfCF]?)$`)

// warmth reads a temperature, 84F or 29C, in °F; one of no unit is in that of
// the house. Part of a degree Fahrenheit counts as a whole one: that is the
// careful end.
func warmth(said string, units model.Units) (int, error) {
	m := warmthForm.FindStringSubmatch(strings.TrimSpace(said))
	if m == nil {
		return 0, wrongUse("%q is not a temperature like 84F or 29C", said)
	}
	n, err := strconv.Atoi(m[1])
	if err != nil {
		return 0, err
	}
	if unit := strings.ToUpper(m[2]); unit == "F" || unit == "" && units == model.Imperial {
		return n, nil
	}
	fifths := n*9 + 160
	f := fifths / 5
	if fifths%5 > 0 {
		f++
	}
	return f, nil
}

// percent reads a share: 60 or 60%.
func percent(said string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(said, "%")))
	if err != nil || n < 0 || n > 100 {
		return 0, wrongUse("%q is not a humidity like 60%%", said)
	}
	return n, nil
}
