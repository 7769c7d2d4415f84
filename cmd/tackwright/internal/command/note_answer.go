package command

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// noteAnswer is what note says as JSON.
type noteAnswer struct {
	Number    int          `json:"number" about:"of the note"`
	Kind      string       `json:"kind"`
	Date      string       `json:"date" about:"that it is for"`
	By        string       `json:"by" about:"who wrote it"`
	Suspended []string     `json:"suspended" about:"holds and works that it makes impossible"`
	Breaks    []noteBreak  `json:"breaks" about:"what of the posted plans no longer keeps every rule because of it"`
	Off       []noteRide   `json:"off" about:"posted rides that do not take place because of it"`
	Lessons   []noteLesson `json:"lessons" about:"that have other hours, another arena or another instructor because of it"`
	Added     []noteRide   `json:"added" about:"rides that it adds, and that no plan has yet"`
	May       []noteRide   `json:"may_ride" about:"posted rides on the ground that it may let ride: a repair tells"`
	Exposed   []exposed    `json:"exposed" about:"who shared skin contact with a horse that is on its own tack from now on, in the 14 days before"`
	Heat      string       `json:"heat,omitempty" about:"of weather: go, caution or stop; a person decides"`
	Next      []string     `json:"next" about:"commands that mend what it breaks"`

	Doubt string `json:"doubt,omitempty" about:"why it may not be what was meant"`

	Unsaid bool `json:"unsaid,omitempty" about:"a file of the centre has a mistake, so what follows from the note cannot be said yet"`

	warmth, humidity int
	date, through    model.Date
	posted           bool // something is, for the note's date
}

// noteBreak is a rule that a posted plan breaks.
type noteBreak struct {
	Date  string   `json:"date"`
	Rule  string   `json:"rule" about:"its stable name"`
	Words string   `json:"words"`
	Rides []string `json:"rides" about:"that take part"`

	date  model.Date
	start model.Minute
}

type noteRide struct {
	Date   string `json:"date"`
	Start  string `json:"start"`
	Lesson string `json:"lesson"`
	Rider  string `json:"rider" about:"first name, and a mark where two share it"`
	Horse  string `json:"horse,omitempty" about:"that was posted"`

	date  model.Date
	start model.Minute
}

type noteLesson struct {
	Date       string `json:"date"`
	Lesson     string `json:"lesson"`
	Start      string `json:"start"`
	End        string `json:"end"`
	Arena      string `json:"arena"`
	Instructor string `json:"instructor"`

	date       model.Date
	start, end model.Minute
}

type exposed struct {
	Horse  string `json:"horse,omitempty" about:"none: a piece"`
	Tack   string `json:"tack" about:"tag; of a horse: of a piece that it shared"`
	Last   string `json:"last" about:"when it was shared last, or worn"`
	Direct bool   `json:"direct" about:"with that very horse; else over others"`

	last model.Instant
}

// noteReach is how many dates from the note's on are looked at for rides that
// it breaks: more than anybody posts ahead.
const noteReach = 35

// compare finds what the note has changed.
func (a *noteAnswer) compare(before, after *model.Centre, n *model.Note) {
	last := max(n.Date+6, n.Through)
	for _, p := range after.Posted {
		last = max(last, p.Until)
	}
	for d := n.Date; d <= min(last, n.Date+noteReach); d++ {
		was, is := postedDay(before, d, n.At), postedDay(after, d, n.At)
		a.posted = a.posted || d == n.Date && is.posted
		for _, s := range is.week.Suspended {
			if !slices.Contains(was.week.Suspended, s) {
				a.Suspended = append(a.Suspended, s)
			}
		}
		for _, b := range is.breaks {
			same := func(o noteBreak) bool { return o.Words == b.Words }
			if !slices.ContainsFunc(was.breaks, same) && !slices.ContainsFunc(a.Breaks, same) {
				a.Breaks = append(a.Breaks, b)
			}
		}
		a.Off = append(a.Off, without(was.ride, is.ride)...)
		a.Added = append(a.Added, without(is.due, was.due)...)
		if a.Doubt == "" {
			a.May = append(a.May, is.freed(n)...)
		}
		before := lessonsOf(was.week)
		for _, x := range lessonsOf(is.week) {
			if !slices.Contains(before, x) {
				a.Lessons = append(a.Lessons, x)
			}
		}
	}
	slices.SortStableFunc(a.Breaks, func(x, y noteBreak) int { return cmp.Or(cmp.Compare(x.date, y.date), cmp.Compare(x.start, y.start)) })
	switch n.Kind {
	case model.NoteOwnTack:
		for _, x := range before.Exposed(n.Horse, model.Instant{Date: n.Date, Minute: n.From}) {
			e := exposed{Tack: x.Piece.Tag, Last: x.Last.String(), Direct: x.Direct, last: x.Last}
			if x.Horse != nil {
				e.Horse = x.Horse.Name
			}
			a.Exposed = append(a.Exposed, e)
		}
	case model.NoteWeather:
		a.Heat = string(model.HeatOf(n.Warmth, n.Humidity))
		a.warmth, a.humidity = n.Warmth, n.Humidity
	}
}

// day is what was posted for a date, as things stand.
type day struct {
	posted bool
	week   *model.Week
	breaks []noteBreak
	ride   []noteRide // posted on a horse, and to take place
	due    []noteRide // to be planned besides
	ground []noteRide // by ride: posted on the ground, and open; else empty
}

func postedDay(c *model.Centre, d model.Date, now model.Instant) *day {
	x := &day{week: c.Repair(d, 1, now)}
	x.posted = c.VersionOn(d) > 0
	p := &model.Plan{Turns: make([]*model.Turn, len(x.week.Rides))}
	x.ground = make([]noteRide, len(x.week.Rides))
	for i, r := range x.week.Rides {
		ride := noteRide{Date: d.String(), Start: r.Start.String(), Lesson: r.Meeting.Name, Rider: r.Rider.Called(), date: d, start: r.Start}
		switch {
		case r.State == model.Started:
			p.Turns[i] = r.Told
		case r.State == model.Open && r.Posted != nil:
			p.Turns[i] = r.Posted
			ride.Horse = r.Posted.Horse.Name
			x.ride = append(x.ride, ride)
		case r.State == model.Open && r.Due:
			x.due = append(x.due, ride)
		case r.State == model.Open && r.Was != nil:
			x.ground[i] = ride
		}
	}
	for _, v := range model.Broken(x.week.Audit(p)) {
		b := noteBreak{Rule: v.Rule.Name, Words: v.Words, date: d}
		for _, s := range v.Stints { // the latest is the one that comes to grief
			b.Rides = append(b.Rides, s.Name)
			if s.Date > b.date || s.Date == b.date && s.Start > b.start {
				b.date, b.start = s.Date, s.Start
			}
		}
		b.Date = b.date.String()
		x.breaks = append(x.breaks, b)
	}
	return x
}

// lessonsOf are the lessons that are held on the week's date, as things stand.
func lessonsOf(w *model.Week) (all []noteLesson) {
	for _, m := range w.Meetings {
		if m.NotHeld == "" {
			all = append(all, noteLesson{Date: m.Date.String(), Lesson: m.Name, Start: m.Start.String(), End: m.End.String(),
				Arena: m.Arena.Name, Instructor: m.Instructor.Name, date: m.Date, start: m.Start, end: m.End})
		}
	}
	return all
}

// without are the rides of a that b does not have, whatever their hours.
func without(a, b []noteRide) (left []noteRide) {
	b = slices.Clone(b)
	for _, x := range a {
		i := slices.IndexFunc(b, func(y noteRide) bool { return y.Lesson == x.Lesson && y.Rider == x.Rider })
		if i < 0 {
			left = append(left, x)
		} else {
			b = slices.Delete(b, i, i+1)
		}
	}
	return left
}

// advise says what to do next.
func (a *noteAnswer) advise(dir string, c *model.Centre, n *model.Note) {
	var dates []model.Date
	for _, x := range a.Breaks {
		dates = append(dates, x.date)
	}
	for _, x := range a.Lessons {
		dates = append(dates, x.date)
	}
	for _, x := range slices.Concat(a.Off, a.Added, a.May) {
		dates = append(dates, x.date)
	}
	slices.Sort(dates)
	for _, d := range slices.Compact(dates) {
		switch {
		case d < n.At.Date || c.VersionOn(d) == 0:
		case d == n.At.Date:
			a.Next = append(a.Next, fmt.Sprintf("tackwright repair %s %s --from %s", typed(dir), d, n.At.Minute))
		default:
			a.Next = append(a.Next, fmt.Sprintf("tackwright repair %s %s", typed(dir), d))
		}
	}
	if a.Heat != "" && a.Heat != string(model.HeatGo) {
		for _, x := range c.Arenas {
			if !x.Indoor && (n.Arena == nil || n.Arena == x) {
				a.Next = append(a.Next, fmt.Sprintf("tackwright note %s close %s FROM UNTIL", typed(dir), typed(x.Name)))
			}
		}
		a.Next = append(a.Next, fmt.Sprintf("tackwright note %s shorten LESSON 30m", typed(dir)))
	}
}

func (a *noteAnswer) text(dir string, c *model.Centre) string {
	twelve := c.House.TwelveHour
	var b strings.Builder
	fmt.Fprintf(&b, "Note %d is written, for %s: %s.\n", a.Number, a.date.Words(), a.Kind)
	if a.Heat != "" {
		fmt.Fprintf(&b, "%s. A person decides.\n", model.HeatWords(a.warmth, a.humidity, c.House.Units))
	}
	if a.Doubt != "" {
		b.WriteString(wrap("", a.Doubt+". If it was not meant so: tackwright undo "+typed(dir)+"."))
	}
	list := func(title string, n int, line func(int) string) {
		if n > 0 {
			b.WriteString("\n" + title + "\n")
		}
		for i := range n {
			b.WriteString(wrap("  ", line(i)))
		}
	}
	ride := func(x noteRide) string {
		s := fmt.Sprintf("%s %s %s (%s)", x.date.Words(), x.start.Clock(twelve), x.Rider, x.Lesson)
		if x.Horse != "" {
			s += ", on " + x.Horse
		}
		return s
	}
	list("SUSPENDED", len(a.Suspended), func(i int) string { return a.Suspended[i] })
	later := slices.IndexFunc(a.Breaks, func(x noteBreak) bool { return x.date > a.through })
	if later < 0 {
		later = len(a.Breaks)
	}
	list("POSTED, AND NO LONGER POSSIBLE", later, func(i int) string { return a.Breaks[i].Words })
	list("AND ON LATER DATES, for the office", len(a.Breaks)-later, func(i int) string { return a.Breaks[later+i].Words })
	list("POSTED, AND NOT RIDDEN NOW", len(a.Off), func(i int) string { return ride(a.Off[i]) })
	list("LESSONS AS THEY ARE NOW", len(a.Lessons), func(i int) string {
		x := a.Lessons[i]
		return fmt.Sprintf("%s, lesson %s: %s to %s, %s, %s", x.date.Words(), x.Lesson, x.start.Clock(twelve), x.end.Clock(twelve), x.Arena, x.Instructor)
	})
	list("TO BE PLANNED", len(a.Added), func(i int) string { return ride(a.Added[i]) })
	list("ON THE GROUND AS POSTED, and may ride now", len(a.May), func(i int) string { return ride(a.May[i]) })
	list("EXPOSED in the 14 days before, for a person to look at", len(a.Exposed), func(i int) string { return a.Exposed[i].words(c) })
	switch {
	case a.Unsaid:
		b.WriteString("What follows from it cannot be said before the folder is mended.\n")
	case len(a.Next) > 0:
		b.WriteString("\nWhat to do next:\n  " + strings.Join(a.Next, "\n  ") + "\n")
	case !a.posted:
		b.WriteString("Nothing is posted for that date yet; the next plan goes by it.\n")
	default:
		b.WriteString("It changes nothing that is posted for that date.\n")
	}
	return b.String()
}

func (x exposed) words(c *model.Centre) string {
	over := "directly"
	if !x.Direct {
		over = "over others"
	}
	return fmt.Sprintf("%s, %s: %s", cmp.Or(x.Horse, x.Tack), over, lastShared(c, x))
}

func lastShared(c *model.Centre, x exposed) string {
	if x.Horse != "" {
		return "shared " + x.Tack + ", " + instantWords(c, x.last)
	}
	return "worn " + instantWords(c, x.last)
}
