package sheet

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// newSheet is a sheet of the day with what every sheet says of itself, and no
// part yet.
func (d *day) newSheet(title string, stamp Stamp) *paper.Sheet {
	h := d.header(stamp)
	return h.sheet(title)
}

func (h *Header) sheet(title string) *paper.Sheet {
	return &paper.Sheet{
		Title: title,
		Facts: []paper.Fact{{Words: h.Day}, {Words: h.Centre}, {Name: "plan", Words: h.Plan}},
		Short: h.short, Printed: h.printed, Date: h.Date, Plan: h.Plan, PrintedAt: h.Printed,
		Cautions: h.Cautions, Deferral: h.Deferral, Paper: h.house.Paper,
	}
}

// onDate is the day of a plan that a sheet is of. The error is a date that the
// week does not plan: a sheet that read "no rides" then would be wrong.
func onDate(w *model.Week, p *model.Plan, date model.Date) (*day, error) {
	if date < w.From || date > w.Until {
		return nil, fmt.Errorf("%s is not in the plan, which is for %s to %s", date.Words(), w.From.Words(), w.Until.Words())
	}
	return newDay(w, p, date), nil
}

func (d *day) clock(m model.Minute) string { return m.Clock(d.house.TwelveHour) }

// meetings are the lessons of the date, by start and name: those of the week, and
// those that a posted ride is in that the folder no longer has.
func (d *day) meetings() []*model.Meeting {
	var all []*model.Meeting
	for _, m := range d.week.Meetings {
		if m.Date == d.date {
			all = append(all, m)
		}
	}
	for _, s := range d.stints {
		if s.Meeting != nil && !slices.Contains(all, s.Meeting) {
			all = append(all, s.Meeting)
		}
	}
	slices.SortStableFunc(all, func(a, b *model.Meeting) int { return int(a.Start - b.Start) })
	return all
}

// inLesson are the seated rides of a lesson, by start and horse.
func (d *day) inLesson(m *model.Meeting) (in []*model.Stint) {
	for _, s := range d.stints {
		if s.Meeting == m {
			in = append(in, s)
		}
	}
	return in
}

// groundedIn are the riders of a lesson who are on the ground.
func (d *day) groundedIn(m *model.Meeting) (names []string) {
	for i, r := range d.week.Rides {
		if r.Meeting == m && d.isOnGround(i) {
			names = append(names, r.Rider.Called())
		}
	}
	return names
}

// isOnGround reports whether a ride of the date has no horse, and is not off.
func (d *day) isOnGround(i int) bool {
	r := d.week.Rides[i]
	var t *model.Turn
	switch {
	case r.State == model.Started:
		t = r.Told
	case i < len(d.plan.Turns):
		t = d.plan.Turns[i]
	}
	return r.Date() == d.date && r.State != model.Off && (t == nil || t.Horse == nil)
}

// lessonWords name a lesson above its rides.
func (d *day) lessonWords(m *model.Meeting) string {
	arena, instructor := "", ""
	if m.Arena != nil {
		arena = m.Arena.Name
	}
	if m.Instructor != nil {
		instructor = m.Instructor.Name
	}
	words := d.clock(m.Start) + " to " + d.clock(m.End) + ", " + m.Name
	if where := join(", ", arena, instructor); where != "" {
		words += " (" + where + ")"
	}
	return words
}

// called is the rider of a stint as sheets name her.
func called(s *model.Stint) string {
	if s.Rider == nil {
		return "a rider" // one who is no longer in the folder
	}
	return s.Rider.Called()
}

// riderInColumn is the rider of a lesson's ride, with its hours where it is a part
// of the lesson.
func (d *day) riderInColumn(s *model.Stint) string {
	if s.Start == s.Meeting.Start && s.End == s.Meeting.End {
		return called(s)
	}
	return called(s) + "\n" + d.clock(s.Start) + " to " + d.clock(s.End)
}

// crews parts what happens on a day by the crew that sees to it. A centre of one
// crew has one part with no title.
func crews[T any](house *model.House, all []T, at func(T) model.Minute) (parts []crew[T]) {
	noon := house.AfternoonAt
	if noon == 0 {
		return []crew[T]{{"", all}}
	}
	morning, afternoon := crew[T]{"Morning crew", nil}, crew[T]{"Afternoon crew, from " + noon.Clock(house.TwelveHour), nil}
	for _, x := range all {
		if at(x) < noon {
			morning.of = append(morning.of, x)
		} else {
			afternoon.of = append(afternoon.of, x)
		}
	}
	for _, c := range []crew[T]{morning, afternoon} {
		if len(c.of) > 0 {
			parts = append(parts, c)
		}
	}
	return parts
}

// crew is what one crew sees to.
type crew[T any] struct {
	title string
	of    []T
}

// tackWords are a turn's pieces: a line of tags, then a line for each extra.
func tackWords(t *model.Turn) string { return tackLines(t, ", ") }

// tackInColumn are the same for a narrow column: the girth has a line of its own.
func tackInColumn(t *model.Turn) string { return tackLines(t, "\n") }

func tackLines(t *model.Turn, beforeGirth string) string {
	set := ""
	for _, x := range core(t) {
		switch {
		case set == "":
		case x.Kind == model.Girth:
			set += beforeGirth
		default:
			set += ", "
		}
		set += x.Tag
	}
	lines := []string{set}
	for _, x := range t.Extras {
		lines = append(lines, x.Tag+" "+string(x.Kind))
	}
	return strings.Join(lines, "\n")
}
