package sheet

import (
	"slices"
	"strings"

	"tackwright/model"
)

// people are those who are to be told of changes: instructors, then families.
func people(changes []model.Change, house *model.House) []Note {
	clock := func(m model.Minute) string { return m.Clock(house.TwelveHour) }
	var instructors, families []Note
	for _, c := range changes {
		r, teacher := c.Ride, c.Ride.Meeting.Instructor
		if c.OtherInstructor() {
			words := "lesson " + r.Meeting.Name + ": no longer yours"
			if teacher != nil {
				words = "lesson " + r.Meeting.Name + ": " + teacher.Name + " takes it"
			}
			instructors = told(instructors, Note{To: r.Was.Instructor.Name, Role: "instructor"}, words)
		}
		if teacher != nil {
			instructors = told(instructors, Note{To: teacher.Name, Role: "instructor"}, clock(r.Start)+" "+r.Rider.Called()+": "+forInstructor(c, clock))
		}
		if words := forFamily(c, clock); words != "" {
			families = told(families, Note{To: r.Rider.Called(), Role: "family", rider: r.Rider}, words)
		}
	}
	return append(instructors, families...)
}

// told adds to what a person is to be told, once. Two riders who are called the
// same are two families.
func told(notes []Note, to Note, words string) []Note {
	i := slices.IndexFunc(notes, func(n Note) bool { return n.To == to.To && n.Role == to.Role && n.rider == to.rider })
	switch {
	case i < 0:
		to.Words = []string{words}
		return append(notes, to)
	case !slices.Contains(notes[i].Words, words):
		notes[i].Words = append(notes[i].Words, words)
	}
	return notes
}

// forInstructor is a change in a few words.
func forInstructor(c model.Change, clock func(model.Minute) string) string {
	var s string
	switch how := c.How(); {
	case how == "does not ride" && c.Before != nil, how == "on the ground" && c.Before != nil:
		return how + ", was on " + c.Before.Horse.Name
	case how == "does not ride":
		return how
	case c.After == nil:
		s = "on the ground"
	default:
		s = c.After.Horse.Name + " in " + c.After.Seat.Tag
		switch how {
		case "rides":
			s = "rides " + s
		case "another horse":
			s += ", not " + c.Before.Horse.Name
		case "other tack":
			s += ", other tack"
		}
	}
	if c.OtherTime() {
		s += ", " + strings.TrimPrefix(otherTime(c, clock), "at "+clock(c.Ride.Start)+", ")
	}
	if c.OtherArena() && c.Ride.Meeting.Arena != nil {
		s += ", in " + c.Ride.Meeting.Arena.Name
	}
	if c.OtherInstructor() {
		s += "; you take the lesson"
	}
	return s
}

// otherTime are the new hours and the old.
func otherTime(c model.Change, clock func(model.Minute) string) string {
	r, was := c.Ride, c.Ride.Was
	if r.Start == was.Start {
		return "until " + clock(r.End) + ", not " + clock(was.End)
	}
	if r.Minutes() != int(was.End-was.Start) {
		return "at " + clock(r.Start) + " until " + clock(r.End) + ", not at " + clock(was.Start)
	}
	return "at " + clock(r.Start) + ", not at " + clock(was.Start)
}

// forFamily is what a family asks: is there a lesson, does she ride, when, where,
// and on the same horse. A change of tack is none of its concern, nor is a lesson
// that it knows to be off because the rider herself is away.
func forFamily(c model.Change, clock func(model.Minute) string) string {
	r := c.Ride
	known := r.Start // the hour that the family has in mind
	if r.Was != nil {
		known = r.Was.Start
	}
	if c.After == nil && model.NoLesson(r) != "" {
		return "no lesson at " + clock(known)
	}
	if r.State == model.Off {
		return ""
	}
	when := "at " + clock(r.Start)
	if c.OtherTime() {
		when = otherTime(c, clock)
		if r.Start == r.Was.Start {
			when = "at " + clock(r.Start) + " " + when
		}
	}
	if c.OtherArena() && r.Meeting.Arena != nil {
		when += ", in " + r.Meeting.Arena.Name
	}
	if c.OtherInstructor() && r.Meeting.Instructor != nil {
		when += ", with " + r.Meeting.Instructor.Name
	}
	switch how := c.How(); {
	case how == "other tack" && !c.OtherTime() && !c.OtherArena() && !c.OtherInstructor():
		return ""
	case how == "on the ground":
		return "has no horse " + when + "; the instructor decides what is done instead"
	case c.After == nil:
		return "the lesson is " + when + "; no horse, as before"
	case how == "another horse":
		when += ", on another horse"
	}
	if c.Before == nil || c.OtherTime() {
		return "rides " + when
	}
	return "still rides " + when
}
