package command

import (
	"cmp"
	"slices"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/solver"
)

// roomAnswer is what room says as JSON. Riders go by first name and mark.
type roomAnswer struct {
	Centre   string       `json:"centre"`
	From     string       `json:"from" about:"first date"`
	Until    string       `json:"until" about:"last date, which counts"`
	Plan     string       `json:"plan" about:"that it goes by: posted, pencilled, posted and pencilled, or made now"`
	Ground   int          `json:"on_the_ground" about:"rides that are on the ground in it, and stay there"`
	Riders   []*roomRider `json:"riders" about:"who waits longest first"`
	AtOnce   *roomAtOnce  `json:"at_once,omitempty" about:"of more than one rider; none: nothing was found in the time given"`
	Cautions []string     `json:"cautions" about:"who decides"`
	ToPlace  string       `json:"to_place" about:"how a rider is placed"`

	week *model.Week
}

type roomRider struct {
	Rider    string        `json:"rider"`
	Since    string        `json:"waiting_since,omitempty"`
	Sessions int           `json:"sessions,omitempty" about:"lessons that she wants in a week"`
	Has      int           `json:"has,omitempty" about:"lessons of the week that she is in"`
	Lessons  []*roomLesson `json:"lessons" about:"of the week: first with room, where fewest are disturbed; then by date and start"`
	Place    *roomLesson   `json:"place,omitempty" about:"of more than one rider: what she has at once with the others"`

	rider *model.Rider
}

type roomLesson struct {
	Date       string       `json:"date"`
	Start      string       `json:"start" about:"24-hour clock"`
	End        string       `json:"end"`
	Lesson     string       `json:"lesson"`
	Arena      string       `json:"arena,omitempty"`
	Instructor string       `json:"instructor,omitempty"`
	Why        string       `json:"takes_her_not,omitempty" about:"why the lesson does not take her in, whatever horses there are"`
	Unchecked  []string     `json:"not_checked" about:"what is not known, of the lesson, her, the horse and the tack, and so was not checked"`
	Alone      []string     `json:"alone" about:"what stands in her way even with every other open ride on the ground"`
	Full       bool         `json:"no_horse" about:"proved: no horse and tack for her with all that ride now"`
	Horse      string       `json:"horse,omitempty" about:"that she would have; none: there is no room, or none was found in the time given"`
	Seat       string       `json:"seat,omitempty" about:"tag"`
	Pads       []string     `json:"pads" about:"tags, from the horse's back"`
	Girth      string       `json:"girth,omitempty" about:"tag"`
	Extras     []string     `json:"extras" about:"tags"`
	Changes    []roomChange `json:"changes" about:"rides that would have another horse, then those in other tack"`
	Fewest     bool         `json:"fewest" about:"proved: no fewer"`

	meeting *model.Meeting
}

type roomChange struct {
	askedRide
	Now string `json:"now" about:"its horse then; the same: in other tack"`
	Ask bool   `json:"ask_first" about:"her entry does not say that she may be changed freely"`
}

type roomAtOnce struct {
	Placed  int          `json:"placed" about:"riders that have a place"`
	Most    int          `json:"at_most" about:"no plan places more"`
	Proved  bool         `json:"proved" about:"they are equal"`
	Changes []roomChange `json:"changes"`
	Fewest  bool         `json:"fewest" about:"proved: no fewer changes with those placed"`
}

var roomCautions = []string{"Nobody is placed by this. A rider is placed with a form in date and the instructor's go-ahead."}

// toPlace is how a rider is placed in a file.
const toPlace = "To place a rider, add the name to the lesson's riders, or a [[booking]] for that date; then plan again or repair."

func lessonOf(w *model.Week, k model.Ask) *roomLesson {
	m := k.Meeting
	l := &roomLesson{Date: m.Date.String(), Start: m.Start.String(), End: m.End.String(), Lesson: m.Name, meeting: m}
	if m.Arena != nil {
		l.Arena = m.Arena.Name
	}
	if m.Instructor != nil {
		l.Instructor = m.Instructor.Name
	}
	return l
}

func (a *roomAnswer) of(r *model.Rider) *roomRider {
	i := slices.IndexFunc(a.Riders, func(x *roomRider) bool { return x.rider == r })
	return a.Riders[i]
}

func (x *roomRider) lesson(m *model.Meeting) *roomLesson {
	i := slices.IndexFunc(x.Lessons, func(l *roomLesson) bool { return l.Lesson == m.Name && l.Date == m.Date.String() })
	return x.Lessons[i]
}

// fill tells of a lesson what was found, and ranks the lessons.
func (a *roomAnswer) fill(r *solver.Room) {
	x := a.of(r.Rider)
	l := x.lesson(r.Meeting)
	l.Alone, l.Full = r.Alone, r.Full
	if r.With != nil {
		l.wear(a.week.House, r.Rider, r.With.Plan.Turns[r.With.Rides[0].Index])
		l.Changes, l.Fewest = changesOf(r.With), r.With.Fewest
	}
	rank := func(l *roomLesson) int {
		if l.Horse == "" {
			return 1 << 20
		}
		return 1000*l.others() + len(l.Changes)
	}
	slices.SortStableFunc(x.Lessons, func(a, b *roomLesson) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Date, b.Date), cmp.Compare(a.Start, b.Start), cmp.Compare(a.Lesson, b.Lesson))
	})
}

// others is how many would have another horse.
func (l *roomLesson) others() int {
	n := 0
	for _, c := range l.Changes {
		if c.Now != c.Horse {
			n++
		}
	}
	return n
}

// wear is what she would have, with what nobody recorded of it.
func (l *roomLesson) wear(house *model.House, r *model.Rider, t *model.Turn) {
	note := func(what, of string) { l.Unchecked = append(l.Unchecked, what+": "+of) }
	l.Unchecked = slices.Clone(l.Unchecked)
	sheet.PairNotChecked(t, r, note)
	for _, x := range t.Pieces() {
		if x.CheckDue == 0 && !house.Elsewhere.TackChecks {
			note("date of the tack check", x.Tag)
		}
	}
	var x planRide
	x.wear(t)
	l.Horse, l.Seat, l.Pads, l.Girth, l.Extras = x.Horse, x.Seat, x.Pads, x.Girth, x.Extras
}

func changesOf(p *solver.Placed) (all []roomChange) {
	for _, r := range slices.Concat(p.Horse, p.Tack) {
		c := roomChange{askedRide: askedOf(r, p.Plan), Ask: r.Rider.MayChange != model.ChangeFreely}
		c.Now, c.Horse = c.Horse, r.Posted.Horse.Name
		all = append(all, c)
	}
	return all
}

// atOnce tells who has a place at once with others.
func (a *roomAnswer) atOnce(p *solver.Placed, most int) {
	if p == nil {
		return
	}
	a.AtOnce = &roomAtOnce{Placed: len(p.Rides), Most: most, Proved: len(p.Rides) == most, Changes: changesOf(p), Fewest: p.Fewest}
	for _, r := range p.Rides {
		x := a.of(r.Rider)
		l := *x.lesson(r.Meeting)
		l.wear(a.week.House, r.Rider, p.Plan.Turns[r.Index])
		x.Place = &l
	}
}
