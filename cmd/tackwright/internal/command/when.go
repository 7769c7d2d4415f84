package command

import (
	"strings"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
)

// clock is what a command takes today to be.
type clock struct{ model.Clock }

// todayFlag declares the flag that sets the date of today.
func todayFlag(fs *pflag.FlagSet) *string {
	return fs.String("today", "", "take `DATE` for today (else the folder's today, else the computer's)")
}

// clock reads the clock at the centre. flag is the --today that was typed.
func (c *call) clock(centre *model.Centre, flag string) (clock, error) {
	k := clock{centre.Clock(c.env.Now())}
	if flag != "" {
		d, err := model.ParseDate(flag)
		if err != nil {
			return k, wrongUse("--today: %v", err)
		}
		k.Today, k.Real = d, false
	}
	return k, nil
}

// date reads a date as people say it: 2026-11-25, today, tomorrow, or a weekday,
// which is the next of that name from today on.
func (k clock) date(s string) (model.Date, error) {
	switch word := strings.ToLower(s); word {
	case "today":
		return k.Today, nil
	case "tomorrow":
		return k.Today + 1, nil
	default:
		for d := k.Today; d < k.Today+7; d++ {
			if name := strings.ToLower(d.Weekday().String()); word == name || word == name[:3] {
				return d, nil
			}
		}
	}
	d, err := model.ParseDate(s)
	if err != nil {
		return 0, wrongUse("%v, nor is it today, tomorrow or a weekday", err)
	}
	return d, nil
}

// instant reads a time of today, 10:30, or of a date, 2026-11-25T10:30.
func (k clock) instant(s string) (model.Instant, error) {
	day, hour := k.Today, s
	if date, rest, ok := strings.Cut(s, "T"); ok {
		d, err := model.ParseDate(date)
		if err != nil {
			return model.Instant{}, wrongUse("--now: %v", err)
		}
		day, hour = d, rest
	}
	at, err := timeOfDay(hour)
	if err != nil || at >= 24*60 {
		return model.Instant{}, wrongUse("--now: %q is not a time like 10:30 or 2026-11-25T10:30", s)
	}
	return model.Instant{Date: day, Minute: at}, nil
}

// printed is when a sheet is printed: the computer's own time, whatever is
// taken for today.
func (k clock) printed(s sheet.Stamp) sheet.Stamp {
	s.Printed = k.Now
	return s
}
