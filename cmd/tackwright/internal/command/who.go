package command

import (
	"cmp"
	"fmt"

	"github.com/spf13/pflag"

	"tackwright/model"
)

// byFlag declares the flag that names who does something.
func byFlag(fs *pflag.FlagSet) *string {
	return fs.String("by", "", "the `NAME` of the person who does this; else the name that TACKWRIGHT_BY holds on this computer")
}

// who is the person of --by, or the one whose name is set for this computer.
func (c *call) who(centre *model.Centre, flag string) (*model.Person, error) {
	name := cmp.Or(flag, c.env.By)
	if name == "" {
		return nil, wrongUse("say who does this: --by NAME, or set TACKWRIGHT_BY to the name of whoever sits at this computer")
	}
	return personNamed(centre, name)
}

// nowFlag declares the flag that sets the time of a change.
func nowFlag(fs *pflag.FlagSet) *string {
	return fs.String("now", "", "take this `TIME`, such as 10:30 or 2026-11-25T10:30, for now")
}

// at is when a change is made: the time that was typed, else the computer's time
// of day on the date that is taken for today.
func (k clock) at(flag string) (model.Instant, error) {
	if flag != "" {
		return k.instant(flag)
	}
	return model.Instant{Date: k.Today, Minute: k.Now.Minute}, nil
}

// by is who makes a change, and when: as typed, else as this computer has it.
func (c *call) by(centre *model.Centre, k clock, flag, now string) (*model.Person, model.Instant, error) {
	by, err := c.who(centre, flag)
	if err != nil {
		return nil, model.Instant{}, err
	}
	at, err := k.at(now)
	return by, at, err
}

// instantWords are an instant as people here read it: "Wed 25 Nov 10:00".
func instantWords(c *model.Centre, i model.Instant) string {
	return fmt.Sprintf("%s %s", i.Date.Words(), i.Minute.Clock(c.House.TwelveHour))
}
