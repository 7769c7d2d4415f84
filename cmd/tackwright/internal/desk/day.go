package desk

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// dayView is one date: the wall chart, its lessons, its herd, its notes.
type dayView struct {
	Date          model.Date
	Name          string
	Before, After model.Date
	Plan          string // in words
	Posted        bool
	None          bool   // there is no plan yet
	Wrong         string // why a plan that is pencilled cannot be shown
	Over          bool
	Newer         bool // notes say otherwise than what is posted goes by
	Broken        []string
	Inherited     []string
	Gone          []string
	Chart         *paper.Sheet
	Lessons       []lessonView
	Herd          []herdView
	Notes         []noteView
	Slips         []noteView // that who looks may take back
	May           bool       // who looks may note and mend
	Office        bool       // who looks may plan
	Close         string     // what to do about closing it; "" nothing
	Weather       []string   // as it was noted
}

// herdView is a horse on a date.
type herdView struct {
	Name, Path string
	Rides      int
	Work       string
	Stopped    string // why it does not work then
}

// noteView is a note in force that is for a date.
type noteView struct {
	Number   int
	Words    string
	By       string
	Liftable bool
}

func showDay(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	d := v.date()
	x := &dayView{Date: d, Name: r.dayName(d), Before: d - 1, After: d + 1, Over: d < r.Today, May: v.notes(), Office: v.role == model.Office}
	s, err := r.on(d)
	if err != nil {
		x.Wrong = model.Sentence(err.Error())
	}
	if err != nil || s == nil {
		x.None, s = true, r.bare(d)
	} else {
		if err := x.tell(r, s); err != nil {
			return err
		}
	}
	if x.May && r.Centre.VersionOn(d) > 0 && (d < r.Today || d == r.Today && r.hasBegun(d)) {
		x.Close = "Close the day: what was ridden"
		if r.Centre.ClosedOn(d) != nil {
			x.Close = "Closed: what was ridden"
		}
	}
	for _, n := range v.notesOn(d, func(n *model.Note) bool { return n.Kind == model.NoteWeather }) {
		x.Weather = append(x.Weather, model.Sentence(n.Words))
	}
	x.Lessons = lessonsOf(s, d)
	x.Herd = herdOf(s, d)
	x.Notes = v.notesOn(d, func(*model.Note) bool { return true })
	x.Slips = v.slipsOn(d)
	return v.show("day", x.Name, x)
}

// hasBegun reports whether the first lesson of today has: before it nothing was
// ridden. Where the time of day is not the computer's own, it has.
func (r *reading) hasBegun(d model.Date) bool {
	return !r.Real || slices.ContainsFunc(r.bare(d).week.Meetings, func(m *model.Meeting) bool { return m.Start <= r.Now.Minute })
}

// dayName is a date as a heading has it, with its year where that is not this one.
func (r *reading) dayName(d model.Date) string { return (&model.Week{}).DayName(d) + r.year(d) }

// year is that of a date, behind the rest of it; "" is this one.
func (r *reading) year(d model.Date) string {
	if y := d.Time(time.UTC).Year(); y != r.Today.Time(time.UTC).Year() {
		return fmt.Sprintf(" %d", y)
	}
	return ""
}

// tell says which plan it is, and what of it can no longer be.
func (x *dayView) tell(r *reading, s *standing) error {
	x.Posted = s.posted()
	x.Plan = planWords(r, s)
	x.Newer = s.newer
	for _, b := range s.found {
		if b.Inherited {
			x.Inherited = append(x.Inherited, model.Sentence(b.Words))
		} else {
			x.Broken = append(x.Broken, model.Sentence(b.Words))
		}
	}
	for _, t := range s.gone {
		x.Gone = append(x.Gone, t.Start.Clock(r.Centre.House.TwelveHour)+" "+t.LessonName)
	}
	chart, err := once(r, "chart "+x.Date.String(), func() (*paper.Sheet, error) {
		return sheet.WallChart(s.week, s.plan, x.Date, s.stamp)
	})
	x.Chart = chart
	return err
}

// planWords say which plan it is: a version, or pencilled.
func planWords(r *reading, s *standing) string {
	if !s.posted() {
		words := "Pencilled, not posted yet"
		if s.edited {
			words += "; edited by hand"
		}
		return words
	}
	words := fmt.Sprintf("Version %d, posted by %s on %s", s.stamp.Version, cmp.Or(s.stamp.By, "somebody"), instantWords(r.Centre, s.stamp.At))
	if s.stamp.Notes > 0 {
		words += fmt.Sprintf("; with notes up to %d", s.stamp.Notes)
	}
	if s.stamp.Unread != "" {
		words += "; " + s.stamp.Unread
	}
	return words
}

func instantWords(c *model.Centre, i model.Instant) string {
	return i.Date.Words() + " " + i.Minute.Clock(c.House.TwelveHour)
}

// herdOf are the horses of the centre on a date, those that work first.
func herdOf(s *standing, d model.Date) []herdView {
	rides := map[*model.Horse]int{}
	work := map[*model.Horse]int64{}
	for _, x := range s.week.Stints(s.plan) {
		if x.Date == d {
			work[x.Turn.Horse] += x.Work
			if x.Rider != nil {
				rides[x.Turn.Horse]++
			}
		}
	}
	var all []herdView
	for _, h := range s.week.Centre.Horses {
		x := herdView{Name: h.Name, Path: horsePath(h, d), Rides: rides[h], Stopped: s.week.NotThere(h, d, 0, 24*60)}
		if work[h] > 0 {
			x.Work = model.InHours(work[h])
		}
		all = append(all, x)
	}
	slices.SortStableFunc(all, func(a, b herdView) int {
		return cmp.Or(cmp.Compare(b2i(b.Rides > 0), b2i(a.Rides > 0)), cmp.Compare(a.Name, b.Name))
	})
	return all
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
