package desk

import (
	"time"

	"tackwright/model"
)

// clock is what the desk takes today to be, as commands do: the folder's own
// today where it has one, else the computer's.
type clock struct {
	today model.Date
	real  bool          // it is the computer's
	now   model.Instant // by the computer
}

func clockOf(c *model.Centre, t time.Time) clock {
	t = t.In(c.Location())
	k := clock{today: model.DateOf(t), real: true, now: model.Instant{Date: model.DateOf(t), Minute: model.Minute(t.Hour()*60 + t.Minute())}}
	if c.Today != 0 {
		k.today, k.real = c.Today, false
	}
	return k
}

// begun is up to when rides have started: now where that is known, else the
// beginning of today.
func (k clock) begun() model.Instant {
	if k.real {
		return k.now
	}
	return model.Instant{Date: k.today}
}

// at is when something is done: the computer's time of day, today.
func (k clock) at() model.Instant { return model.Instant{Date: k.today, Minute: k.now.Minute} }
