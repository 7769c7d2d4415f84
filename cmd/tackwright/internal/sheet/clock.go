package sheet

import "tackwright/model"

// Clock is a time of the day.
type Clock model.Minute

// MarshalText writes the time on a 24-hour clock, "09:50", whatever the house's
// clock is.
func (c Clock) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// String is the time on a 24-hour clock.
func (c Clock) String() string { return model.Minute(c).String() }
