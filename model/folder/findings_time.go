package folder

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// lookAhead is how many dates ahead two lessons are compared: a usual term.
const lookAhead = 56

// lessons names lessons that are in each other's way, or have more riders than
// room, and riders who are asked to be in two places.
func (l *finder) lessons() {
	seen := map[[2]*model.Lesson]bool{}
	for d := l.today; d < l.today+lookAhead; d++ {
		for i, a := range l.c.Lessons {
			if !l.c.Holds(a, d) {
				continue
			}
			for _, b := range l.c.Lessons[:i] {
				if l.c.Holds(b, d) && a.Start < b.End && b.Start < a.End && a.Instructor == b.Instructor && !seen[[2]*model.Lesson{a, b}] {
					seen[[2]*model.Lesson{a, b}] = true
					l.find(a, l.r.at(a, "instructor"), l.heldUp(a, b), fmt.Sprintf("%s teaches %s and %s at once, from %s on", a.Instructor.Name, b.Name, a.Name, long(d)), "give one of them another instructor or hour")
				}
			}
		}
	}
	full := map[*model.Lesson]bool{}
	for _, m := range l.week.Meetings {
		if m.NotHeld == "" && !full[m.Lesson] {
			full[m.Lesson] = l.room(m)
		}
		if m.NotHeld == "" {
			l.hands(m)
		}
	}
	for i, r := range l.week.Rides {
		for _, q := range l.week.Rides[:i] {
			if r.Rider == q.Rider && r.Date() == q.Date() && r.Start < q.End && q.Start < r.End && r.State == model.Open && q.State == model.Open {
				l.find(r.Rider, l.r.at(r.Rider), 1, fmt.Sprintf("%s is to ride in %s and %s at once on %s", r.Rider.Name, q.Meeting.Name, r.Meeting.Name, long(r.Date())), "leave one of the places out, or give both their parts")
			}
		}
	}
	for _, b := range l.c.Bookings {
		stands := slices.ContainsFunc(b.Lesson.Places, func(p model.Place) bool {
			return p.Rider == b.Rider && p.On(b.Date, l.c.House.WeekStarts) && p.End == 0
		})
		if stands && b.Date >= l.today {
			l.find(b, l.r.at(b), 0, fmt.Sprintf("%s stands in %s on that date anyway", b.Rider.Name, b.Lesson.Name), "leave the booking out")
		}
	}
	for _, r := range l.week.Rides {
		if why := r.Closed(); r.State == model.Off && why != "" {
			for _, b := range l.c.Bookings {
				if b.Lesson == r.Meeting.Lesson && b.Date == r.Date() && b.Rider == r.Rider {
					l.find(b, l.r.at(b, "on"), 0, fmt.Sprintf("%s is not held on %s: %s", b.Lesson.Name, long(b.Date), why), "book another date")
				}
			}
		}
	}
	for i, t := range l.c.Terms {
		for _, u := range l.c.Terms[:i] {
			if t.First <= u.Last && u.First <= t.Last {
				l.find(t, l.r.at(t, "first"), 0, fmt.Sprintf("%s and %s overlap", u.Name, t.Name), "mend their dates")
			}
		}
		for j, p := range t.Pairings {
			if p.Rider.IsBanned(p.Horse) {
				l.find(t, l.r.at(t, "pairings", j), 0, fmt.Sprintf("%s is paired with %s, a horse never to ride", p.Rider.Name, p.Horse.Name), "mend the pairing, or never_on of the rider")
			}
		}
	}
}

// heldUp counts the rides of the coming week that stay on the ground because one
// person cannot hold both lessons: those of the one with fewer.
func (l *finder) heldUp(a, b *model.Lesson) int {
	n := 0
	for _, m := range l.week.Meetings {
		for _, o := range l.week.Meetings {
			if m.Lesson == a && o.Lesson == b && m.Instructor == o.Instructor && m.Meets(o) {
				n += min(l.waiting(func(r *model.Ride) bool { return r.Meeting == m }), l.waiting(func(r *model.Ride) bool { return r.Meeting == o }))
			}
		}
	}
	return n
}

// room reports whether a lesson has more riders at once than one of its limits
// has places for, and names it.
func (l *finder) room(m *model.Meeting) bool {
	most, at := 0, model.Minute(0)
	for _, r := range l.week.Rides {
		if r.Meeting != m || r.State != model.Open {
			continue
		}
		n := l.waiting(func(q *model.Ride) bool { return q.Meeting == m && q.Start <= r.Start && r.Start < q.End })
		if n > most {
			most, at = n, r.Start
		}
	}
	for _, limit := range []struct {
		n   int
		who string
	}{{m.Lesson.Size, "it takes"}, {m.Arena.RidersAtOnce, m.Arena.Name + " takes"}, {m.Instructor.RidersAtOnce, m.Instructor.Name + " takes"}} {
		if limit.n != 0 && most > limit.n {
			l.find(m.Lesson, l.r.at(m.Lesson, "riders"), most-limit.n, fmt.Sprintf("%s has %d riders at %s on %s, and %s %d at once",
				m.Name, most, at.Clock(l.c.House.TwelveHour), long(m.Date), limit.who, limit.n), "move somebody to another lesson, or mend the limit")
			return true
		}
	}
	return false
}

// unclosed are the dates that nobody has closed. They come before any other
// finding: what is ridden next counts on them.
func (l *finder) unclosed() {
	switch open := l.c.OpenDates(l.today); len(open) {
	case 0:
	case 1:
		l.find(&open[0], Span{}, 0, fmt.Sprintf("%s is not closed: it counts as posted, not confirmed", long(open[0].Date)),
			fmt.Sprintf("confirm what was ridden: tackwright close FOLDER %s", open[0].Date))
	default:
		l.find(&open[0], Span{}, 0, fmt.Sprintf("%d dates are not closed, from %s to %s: they count as posted, not confirmed", len(open), open[0].Date, open[len(open)-1].Date),
			fmt.Sprintf("confirm what was ridden, the first with: tackwright close FOLDER %s", open[0].Date))
	}
}

// records names what is gone.
func (l *finder) records() {
	for _, g := range []struct {
		kind  string
		names []string
	}{
		{"horses", l.r.horses.goneNames()}, {"tack", l.r.pieces.goneNames()}, {"riders", l.r.riders.goneNames()},
		{"lessons", l.r.lessons.goneNames()}, {"persons", l.r.persons.goneNames()}, {"arenas", l.r.arenas.goneNames()},
	} {
		if len(g.names) > 0 {
			l.find(nil, Span{}, 0, fmt.Sprintf("records name %s that the folder no longer has: %s", g.kind, strings.Join(g.names, ", ")),
				"if one was renamed, add its old name to was")
		}
	}
}
