package model

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Change is a ride that is not as it was posted.
type Change struct {
	Ride          *Ride
	Before, After *Turn // nil: on the ground
	Why           string

	closed bool // on the ground as before, and now there is no lesson
}

// How a ride differs from what was posted: the first of these that is so.
func (c Change) How() string {
	switch {
	case c.Ride.State == Off:
		return "does not ride"
	case c.After == nil && c.closed:
		return "does not ride"
	case c.After == nil && (c.Before != nil || c.Ride.Was == nil):
		return "on the ground"
	case c.Before == nil && c.After != nil:
		return "rides"
	case c.After != nil && c.Before.Horse != c.After.Horse:
		return "another horse"
	case !c.After.Equal(c.Before):
		return "other tack"
	case c.OtherTime():
		return "another time"
	case c.OtherArena():
		return "another arena"
	}
	return "another instructor"
}

// ThenAndNow are in words what was posted of the ride and what it has now.
func (c Change) ThenAndNow() (then, now string) {
	then, now = c.Before.Words(), c.After.Words()
	if c.Ride.Was == nil {
		then = "not posted"
	}
	if how := c.How(); how == "does not ride" {
		now = how
	}
	return then, now
}

// OtherTime reports whether the ride begins or ends at another time than was
// posted.
func (c Change) OtherTime() bool {
	was := c.Ride.Was
	return was != nil && (was.Start != c.Ride.Start || was.End != c.Ride.End)
}

// OtherArena reports whether it is in another arena; one that is no longer in the
// folder is not compared.
func (c Change) OtherArena() bool {
	was := c.Ride.Was
	return was != nil && was.Arena != nil && was.Arena != c.Ride.Meeting.Arena
}

// OtherInstructor reports whether somebody else takes it.
func (c Change) OtherInstructor() bool {
	was := c.Ride.Was
	return was != nil && was.Instructor != nil && was.Instructor != c.Ride.Meeting.Instructor
}

// Changes are the rides of a repair that are not as they were posted, in order,
// each with the reason. Those that had started, or whose hour is past, are never
// among them.
func (w *Week) Changes(p *Plan) []Change {
	var all []Change
	stops := w.stopsPosted()
	for i, r := range w.Rides {
		c := Change{Ride: r, Before: r.Posted, After: p.Turns[i]}
		if r.State == Off {
			c.After = nil
		}
		c.closed = r.Was != nil && c.Before == nil && c.After == nil && w.closedSince(r)
		if r.State == Started || r.Past || w.hasStarted(r.Date(), r.Start) || !c.isOne() {
			continue
		}
		c.Why = strings.Join(w.whyChanged(c, p, stops[r]), "; ")
		all = append(all, c)
	}
	return all
}

// isOne reports whether anything of the ride is to be told. Of one that a note
// added that is so whatever becomes of it.
func (c Change) isOne() bool {
	switch r := c.Ride; {
	case r.Was == nil:
		return r.State == Open && (c.After != nil || r.Due)
	case r.State == Off, c.closed:
		return true
	}
	return !c.After.Equal(c.Before) || c.OtherTime() || c.OtherArena() || c.OtherInstructor()
}

// whyChanged are the reasons of a change; stops are what the ride breaks as it
// was posted.
func (w *Week) whyChanged(c Change, p *Plan, stops []string) (why []string) {
	r := c.Ride
	switch {
	case r.State == Off:
		return []string{r.whyOff()}
	case c.closed:
		return []string{NoLesson(r)}
	case c.After == nil && c.Before == nil && r.Was != nil: // and nothing but its lesson is another
	case c.After == nil:
		why = slices.Clone(stops)
		told := slices.Clone(stops)
		if slices.ContainsFunc(stops, saysHandsShort) {
			for _, s := range w.HandsShort(r.Meeting) {
				told = append(told, s.String())
			}
		}
		for _, s := range p.Ground[r.Index] {
			if s = c.unsaid(s, told); s != "" {
				why = append(why, s)
			}
		}
	case r.Was == nil && r.Due:
		why = []string{"added by a note"}
	case c.Before == nil:
		why = []string{"there is a horse for it now"}
	case !c.After.Equal(c.Before) && len(stops) > 0:
		why = slices.Clone(stops)
	case !c.After.Equal(c.Before):
		why = []string{cmp.Or(w.WhyNot(p, r, c.Before.Horse, c.Before.Seat), "something else of its tack is used elsewhere then")}
	}
	return append(why, c.lessonNow()...)
}

// unsaid is a reason for being on the ground without what was told already, of the
// ride or of the horse that it was posted with; "" is that nothing is left of it.
func (c Change) unsaid(reason string, told []string) string {
	if slices.Contains(told, reason) {
		return ""
	}
	stops, list, of := strings.Cut(reason, ": ") // what stops horses, and which
	if c.Before == nil || !of {
		return reason
	}
	horses := strings.Split(list, ", ")
	i := slices.Index(horses, c.Before.Horse.Name)
	if i < 0 || !slices.Contains(told, strings.ReplaceAll(stops, "the horse", c.Before.Horse.Name)) {
		return reason
	}
	if len(horses) == 1 {
		return ""
	}
	return stops + ": " + strings.Join(slices.Delete(horses, i, i+1), ", ")
}

// lessonNow says how the ride's lesson is not as posted.
func (c Change) lessonNow() (words []string) {
	was, m := c.Ride.Was, c.Ride.Meeting
	clock := func(x Minute) string { return x.Clock(m.twelve) }
	if c.OtherTime() {
		words = append(words, fmt.Sprintf("it is from %s to %s, not from %s to %s",
			clock(c.Ride.Start), clock(c.Ride.End), clock(was.Start), clock(was.End)))
	}
	if c.OtherArena() && m.Arena != nil {
		words = append(words, "the lesson is in "+m.Arena.Name)
	}
	if c.OtherInstructor() && m.Instructor != nil {
		words = append(words, m.Instructor.Name+" takes the lesson")
	}
	return words
}

// whyOff is why a ride does not take place, as a sentence: what a note or a file
// says of an absence or a closure may be a word.
func (r *Ride) whyOff() string {
	whole := "the lesson is not held"
	if r.Closed() == "" && r.OffWhy != endsBefore {
		whole = r.Rider.Called() + " is away"
	}
	switch why := r.OffWhy; {
	case why == endsBefore || strings.Contains(why, " is "):
		return why
	default:
		return fmt.Sprintf("%s (%s)", whole, why)
	}
}

// NoLesson says why nobody can take the ride's part of its lesson then, on a
// horse or on the ground: it is not held, its arena is closed or its instructor
// away; "" is that somebody can.
func NoLesson(r *Ride) string {
	if r.Start >= r.Meeting.End {
		return endsBefore
	}
	return cmp.Or(NotOpen(r), InstructorAway(r.Meeting))
}

// stopsPosted is what the rides break as they were posted, if all others are as
// posted too, in words that do not name the ride again.
func (w *Week) stopsPosted() map[*Ride][]string {
	p := &Plan{Turns: make([]*Turn, len(w.Rides))}
	for i, r := range w.Rides {
		switch r.State {
		case Started:
			p.Turns[i] = r.Told
		case Open:
			p.Turns[i] = r.Posted
		}
	}
	stops := map[*Ride][]string{}
	for _, v := range Broken(w.Audit(p)) {
		for _, s := range v.Stints {
			if s.Ride == nil || s.Ride.State != Open {
				continue
			}
			why := v.Words
			for _, what := range []string{s.Name, lessonOn(s.Ride.Meeting), s.Date.Words() + " " + w.clock(s.Start)} {
				why = strings.TrimPrefix(why, what+": ")
			}
			if !slices.Contains(stops[s.Ride], why) {
				stops[s.Ride] = append(stops[s.Ride], why)
			}
		}
	}
	return stops
}
