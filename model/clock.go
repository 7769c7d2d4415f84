package model

import "time"

// Clock is what today is taken to be at a centre, and whether that is a fact.
type Clock struct {
	Today Date
	Real  bool    // it is the computer's, not one that the folder or a person sets
	Now   Instant // by the computer
}

// Clock is today at a time of the computer's: the centre's own where it has one.
func (c *Centre) Clock(t time.Time) Clock {
	t = t.In(c.Location())
	k := Clock{Today: DateOf(t), Real: true, Now: Instant{DateOf(t), MinuteOf(t)}}
	if c.Today != 0 {
		k.Today, k.Real = c.Today, false
	}
	return k
}

// MinuteOf is the minute of a time of day.
func MinuteOf(t time.Time) Minute { return Minute(t.Hour()*60 + t.Minute()) }

// Begun is up to when rides have started: now, where that is known, else the
// beginning of today.
func (k Clock) Begun() Instant {
	if k.Real {
		return k.Now
	}
	return Instant{Date: k.Today}
}

// At is when something is done: the computer's time of day, today.
func (k Clock) At() Instant { return Instant{k.Today, k.Now.Minute} }
