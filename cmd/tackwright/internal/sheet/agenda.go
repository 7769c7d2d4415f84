package sheet

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/calendar"
	"tackwright/model"
)

// PostedDay is what was last posted for a date.
type PostedDay struct {
	Week   *model.Week
	Plan   *model.Plan
	Date   model.Date
	Stamp  Stamp
	Broken bool // it no longer keeps every rule
}

// Whose a calendar is: an instructor's, or a horse's.
type Whose struct {
	Instructor *model.Person
	Horse      *model.Horse
}

// name of whose it is.
func (x Whose) name() string {
	if x.Horse != nil {
		return x.Horse.Name
	}
	return x.Instructor.Name
}

// Agenda are the lessons of an instructor, or the rides and other work of a
// horse, as posted for some dates. What an earlier version told and the last one
// does not is in it too, as off, so that it leaves a phone that has it. It holds
// no caution, and no reason why a lesson is not held.
func Agenda(c *model.Centre, days []PostedDay, of Whose) *calendar.Calendar {
	cal := &calendar.Calendar{Name: of.name() + ", " + c.Name}
	for _, p := range days {
		a := &agenda{day: newDay(p.Week, p.Plan, p.Date), PostedDay: p, of: of}
		var events []calendar.Event
		if of.Horse != nil {
			events = a.ofHorse()
		} else {
			events = a.ofInstructor()
		}
		for _, told := range a.earlier(c) {
			if !slices.ContainsFunc(events, func(e calendar.Event) bool { return e.UID == told.UID }) {
				events = append(events, told)
			}
		}
		slices.SortStableFunc(events, func(a, b calendar.Event) int { return cmp.Compare(a.Start.Minute, b.Start.Minute) })
		cal.Events = append(cal.Events, events...)
	}
	return cal
}

// agenda is one date of it.
type agenda struct {
	*day
	PostedDay
	of Whose
}

// uid names a thing for good: it is made of nothing that a later version changes
// but by making another thing of it.
func (a *agenda) uid(what string, start model.Minute) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%q %q %q %s %s", a.week.Centre.Name, a.of.name(), what, a.Date, start))
	return fmt.Sprintf("%s-%s-%s@tackwright", a.Date, strings.ReplaceAll(start.String(), ":", ""), hex.EncodeToString(sum[:6]))
}

func (a *agenda) event(uid string, start, end model.Minute) calendar.Event {
	return calendar.Event{UID: uid, Sequence: a.Stamp.Version, Revised: a.revised(),
		Start: model.Instant{Date: a.Date, Minute: start}, End: model.Instant{Date: a.Date, Minute: end}, Busy: a.of.Instructor != nil}
}

// revised is when the date was posted, or when the latest note of it was written.
func (a *agenda) revised() model.Instant {
	at := a.Stamp.At
	for _, n := range a.week.Centre.Notes {
		if n.Number == a.Stamp.Notes && at.Before(n.At) {
			at = n.At
		}
	}
	return at
}

// foot is what every event says of the version that it is from.
func (a *agenda) foot() string {
	words := a.header(a.Stamp).Plan
	if a.Broken {
		words += "\nThis day is to be mended: what was posted no longer keeps every rule. Ask the office."
	}
	return words
}

func (a *agenda) ofInstructor() (events []calendar.Event) {
	mounts := a.mounts()
	for _, m := range a.meetings() {
		if m.Instructor != a.of.Instructor {
			continue
		}
		e := a.event(a.uid(m.Name, m.Start), m.Start, m.End)
		if m.Arena != nil {
			e.Where = m.Arena.Name
		}
		rides := a.asTheyMount(m, mounts)
		e.Summary = join(", ", m.Name, model.Count(len(rides), "rider"))
		if m.NotHeld != "" {
			e.Summary, e.Off = m.Name+", not held", true
		}
		var lines []string
		for _, s := range rides {
			words := called(s) + ": " + s.Turn.Horse.Name + ", " + strings.ReplaceAll(tackWords(s.Turn), "\n", ", ")
			lines = append(lines, join("; ", words, hands(a.ride(s)), mounts[s].onOneLine(a.day)))
		}
		for _, name := range a.groundedIn(m) {
			lines = append(lines, name+": on the ground")
		}
		e.Words = strings.Join(append(lines, a.foot()), "\n")
		events = append(events, e)
	}
	return events
}

func (a *agenda) ofHorse() (events []calendar.Event) {
	for _, s := range a.horse[a.of.Horse] {
		r := a.ride(s)
		e := a.event(a.uid(cmp.Or(r.Lesson, r.Work), s.Start), s.Start, s.End)
		e.Where = r.Arena
		e.Summary = a.of.Horse.Name + ": " + join(", ", who(r), r.Lesson)
		e.Words = join("\n", strings.ReplaceAll(tackWords(s.Turn), "\n", ", "), hands(r), join("", r.Instructor, r.By), a.foot())
		events = append(events, e)
	}
	return events
}

// earlier are what any version told for the date, as off.
func (a *agenda) earlier(c *model.Centre) (events []calendar.Event) {
	for _, p := range c.Posted {
		for _, t := range p.Told {
			mine := a.of.Instructor != nil && t.Instructor == a.of.Instructor ||
				a.of.Horse != nil && t.Turn != nil && t.Turn.Horse == a.of.Horse
			if t.Date != a.Date || !mine || p.Version > a.Stamp.Version {
				continue
			}
			start, end := t.Start, t.End
			if a.of.Instructor != nil && t.Lesson != nil { // a part of it may be what was told
				start, end = t.Lesson.Start, t.Lesson.End
			}
			e := a.event(a.uid(t.LessonName, start), start, end)
			e.Summary, e.Off, e.Words = t.LessonName+", not held", true, a.foot()
			if a.of.Horse != nil {
				e.Summary = a.of.Horse.Name + ": not in " + t.LessonName
			}
			events = append(events, e)
		}
	}
	return events
}
