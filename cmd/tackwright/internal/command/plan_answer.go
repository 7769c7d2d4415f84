package command

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// planAnswer is what plan says as JSON. Riders go by first name and mark.
type planAnswer struct {
	Centre    string     `json:"centre"`
	From      string     `json:"from" about:"first date"`
	Until     string     `json:"until" about:"last date, which counts"`
	Now       string     `json:"now,omitempty" about:"rides that had started then are facts"`
	Open      int        `json:"open_rides" about:"rides to be planned"`
	Seated    int        `json:"seated" about:"those of them that have a horse"`
	OnUsual   int        `json:"on_usual_horse" about:"those of them that are on their usual horse"`
	HaveUsual int        `json:"have_usual_horse" about:"those of them that have one"`
	Moves     int        `json:"changeovers" about:"pieces that go from one horse to another within a date"`
	Busiest   *busiest   `json:"busiest,omitempty" about:"the horse that has least of its week left"`
	Summary   string     `json:"summary" about:"these counts in words"`
	CouldBe   string     `json:"could_be,omitempty" about:"how far from best it can be, where that was not proved"`
	Started   int        `json:"started,omitempty" about:"rides that are facts"`
	Off       []off      `json:"off" about:"rides that count in no goal"`
	Rides     []planRide `json:"rides" about:"open and started ones, by date, start, lesson and rider"`
	Differs   []differs  `json:"differs" about:"rides that are not as their standing pairing has them"`
	Suspended []string   `json:"suspended" about:"what was to be kept and could not be"`
	Goals     []goal     `json:"goals" about:"in order; less is better"`
	Proved    bool       `json:"proved" about:"every goal is"`
	File      string     `json:"file,omitempty" about:"where the plan was written"`
	Kept      string     `json:"kept,omitempty" about:"where an older one is kept that was edited by hand"`
}

type busiest struct {
	Horse   string `json:"horse"`
	Percent int    `json:"percent" about:"of what it may work in a calendar week, rounded up"`
}

type planRide struct {
	Date       string   `json:"date"`
	Start      string   `json:"start" about:"24-hour clock"`
	End        string   `json:"end"`
	Lesson     string   `json:"lesson"`
	Arena      string   `json:"arena,omitempty"`
	Instructor string   `json:"instructor,omitempty"`
	Rider      string   `json:"rider" about:"first name, and a mark where two share it"`
	Started    bool     `json:"started,omitempty" about:"it is a fact"`
	Horse      string   `json:"horse,omitempty" about:"none: on the ground"`
	Seat       string   `json:"seat,omitempty" about:"tag"`
	Pads       []string `json:"pads" about:"tags, from the horse's back"`
	Girth      string   `json:"girth,omitempty" about:"tag"`
	Extras     []string `json:"extras" about:"tags"`
	Ground     []string `json:"ground" about:"what stands in the way"`

	ride *model.Ride
}

type off struct {
	Why   string `json:"why"`
	Rides int    `json:"rides" about:"how many"`
}

type goal struct {
	Name   string `json:"name" about:"its stable name"`
	Words  string `json:"words" about:"what is counted"`
	Value  int    `json:"value" about:"what the plan reaches"`
	Bound  int    `json:"bound" about:"no plan that is as good in the goals before has less"`
	Proved bool   `json:"proved" about:"the value is the least there is"`
}

func planOf(w *model.Week, p *model.Plan) *planAnswer {
	a := &planAnswer{Centre: w.Centre.Name, From: w.From.String(), Until: w.Until.String(), Rides: []planRide{},
		Suspended: w.Suspended, Goals: goalsOf(w, p, true), Proved: p.Proof.Proved()}
	if !w.Now.IsZero() {
		a.Now = w.Now.String()
	}
	a.Open, a.Seated = seated(w, p)
	a.sum(w, p)
	a.Differs = differsOf(w, p)
	for i, r := range w.Rides {
		switch r.State {
		case model.Off:
			a.addOff(offWhy(w, r))
			continue
		case model.Started:
			a.Started++
		}
		x := planRide{Date: r.Date().String(), Start: r.Start.String(), End: r.End.String(), Lesson: r.Meeting.Name,
			Rider: r.Rider.Called(), Started: r.State == model.Started, ride: r}
		if r.Meeting.Arena != nil {
			x.Arena = r.Meeting.Arena.Name
		}
		if r.Meeting.Instructor != nil {
			x.Instructor = r.Meeting.Instructor.Name
		}
		if t := p.Turns[i]; t != nil {
			x.wear(t)
		} else {
			x.Ground = p.Ground[i]
		}
		a.Rides = append(a.Rides, x)
	}
	return a
}

// sum says in words what a coordinator asks first.
func (a *planAnswer) sum(w *model.Week, p *model.Plan) {
	a.OnUsual, a.HaveUsual = w.OnUsual(p)
	a.Moves = len(w.Moves(p))
	verb := "ride"
	if a.Seated == 1 {
		verb = "rides"
	}
	parts := []string{fmt.Sprintf("%d of %d %s", a.Seated, a.Open, verb)}
	if n := a.Open - a.Seated; n > 0 {
		parts = append(parts, fmt.Sprintf("%d on the ground", n))
	}
	if a.HaveUsual > 0 {
		parts = append(parts, fmt.Sprintf("%d of %d on their usual horse", a.OnUsual, a.HaveUsual))
	}
	parts = append(parts, model.Count(a.Moves, "changeover"))
	if h, percent := w.Busiest(p); h != nil {
		a.Busiest = &busiest{h.Name, percent}
		parts = append(parts, fmt.Sprintf("busiest: %s at %d %% of its week", h.Name, percent))
	}
	a.Summary = strings.Join(parts, "; ")
	if i := slices.IndexFunc(p.Proof.Goals, func(g model.GoalResult) bool { return !g.Proved }); i >= 0 {
		a.CouldBe = p.Proof.Goals[i].Gap()
	}
}

// offWhy is why a ride counts in no goal. What a person wrote of a rider's
// absence stays in the folder.
func offWhy(w *model.Week, r *model.Ride) string {
	switch {
	case r.Meeting.NotHeld != "":
		return "the lesson is not held" + closedFor(w, r)
	case r.Closed() != "":
		return "the centre is closed for that part of the lesson"
	case r.Past:
		return "the hour is past and nothing was posted for it"
	case r.Start >= r.Meeting.End:
		return "the lesson was shortened, and ends before it"
	}
	return "the rider is away"
}

func (a *planAnswer) addOff(why string) {
	for i := range a.Off {
		if a.Off[i].Why == why {
			a.Off[i].Rides++
			return
		}
	}
	a.Off = append(a.Off, off{why, 1})
}

func (x *planRide) wear(t *model.Turn) {
	x.Horse, x.Pads, x.Extras = t.Horse.Name, tags(t.Pads), tags(t.Extras)
	if t.Seat != nil {
		x.Seat = t.Seat.Tag
	}
	if t.Girth != nil {
		x.Girth = t.Girth.Tag
	}
}

func tags(ps []*model.Piece) []string {
	var tags []string
	for _, p := range ps {
		tags = append(tags, p.Tag)
	}
	return tags
}

// seated counts the open rides, and those of them that have a horse.
func seated(w *model.Week, p *model.Plan) (open, seated int) {
	for i, r := range w.Rides {
		if r.State != model.Open {
			continue
		}
		open++
		if p.Turns[i] != nil {
			seated++
		}
	}
	return open, seated
}

// goalsOf is the score of the plan in the goals that it was made for, with what
// the proof knows of each where it covers the plan.
func goalsOf(w *model.Week, p *model.Plan, covered bool) []goal {
	score, goals := w.Score(p), []goal{}
	for _, r := range p.Proof.Goals {
		i := slices.IndexFunc(score, func(g model.GoalValue) bool { return g.Name == r.Name })
		if i < 0 {
			continue // a goal of a house that has changed since
		}
		x := goal{Name: r.Name, Words: score[i].Words, Value: score[i].Value}
		if covered {
			x.Bound, x.Proved = r.Bound, r.Proved
		}
		goals = append(goals, x)
	}
	return goals
}

func (g goal) result() model.GoalResult {
	return model.GoalResult{Name: g.Name, Value: g.Value, Bound: g.Bound, Proved: g.Proved}
}
