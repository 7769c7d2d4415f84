package command

import (
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
)

// clock is what a command takes today to be, and whether that is a fact.
type clock struct {
	today model.Date
	real  bool // it is the computer's, not one that a flag or the folder sets
	now   model.Instant
}

// todayFlag declares the flag that sets the date of today.
func todayFlag(fs *pflag.FlagSet) *string {
	return fs.String("today", "", "take `DATE` for today (else the folder's today, else the computer's)")
}

// clock reads the clock at the centre. flag is the --today that was typed.
func (c *call) clock(centre *model.Centre, flag string) (clock, error) {
	t := c.env.Now().In(centre.Location())
	k := clock{today: model.DateOf(t), real: true, now: model.Instant{Date: model.DateOf(t), Minute: minuteOf(t)}}
	if centre.Today != 0 {
		k.today, k.real = centre.Today, false
	}
	if flag != "" {
		d, err := model.ParseDate(flag)
		if err != nil {
			return k, wrongUse("--today: %v", err)
		}
		k.today, k.real = d, false
	}
	return k, nil
}

// begun is up to when rides have started: now, where that is known, else the
// beginning of today.
func (k clock) begun() model.Instant {
	if k.real {
		return k.now
	}
	return model.Instant{Date: k.today}
}

func minuteOf(t time.Time) model.Minute { return model.Minute(t.Hour()*60 + t.Minute()) }

// date reads a date as people say it: 2026-11-25, today, tomorrow, or a weekday,
// which is the next of that name from today on.
func (k clock) date(s string) (model.Date, error) {
	switch word := strings.ToLower(s); word {
	case "today":
		return k.today, nil
	case "tomorrow":
		return k.today + 1, nil
	default:
		for d := k.today; d < k.today+7; d++ {
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
	day, hour := k.today, s
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
	s.Printed = k.now
	return s
}
