package command

import "tackwright/model"

// planAnswer is what plan says as JSON. Riders go by first name and mark.
type planAnswer struct {
	Centre    string     `json:"centre"`
	From      string     `json:"from" about:"first date"`
	Until     string     `json:"until" about:"last date, which counts"`
	Now       string     `json:"now,omitempty" about:"rides that had started then are facts"`
	Open      int        `json:"open_rides" about:"rides to be planned"`
	Seated    int        `json:"seated" about:"those of them that have a horse"`
	Started   int        `json:"started,omitempty" about:"rides that are facts"`
	Off       int        `json:"off,omitempty" about:"rider away, lesson cancelled, day closed"`
	Rides     []planRide `json:"rides" about:"open and started ones, by date, start, lesson and rider"`
	Suspended []string   `json:"suspended,omitempty" about:"what was to be kept and could not be"`
	Goals     []goal     `json:"goals" about:"in order; less is better"`
	Proved    bool       `json:"proved" about:"every goal is"`
	File      string     `json:"file" about:"where the plan was written"`
	Kept      string     `json:"kept,omitempty" about:"where an older one is kept that was edited by hand"`
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
	Pads       []string `json:"pads,omitempty" about:"tags, from the horse's back"`
	Girth      string   `json:"girth,omitempty" about:"tag"`
	Extras     []string `json:"extras,omitempty" about:"tags"`
	Ground     []string `json:"ground,omitempty" about:"what stands in the way"`

	ride *model.Ride
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
		Suspended: w.Suspended, Goals: goalsOf(w, p, p.Proof), Proved: p.Proof.Proved()}
	if !w.Now.IsZero() {
		a.Now = w.Now.String()
	}
	a.Open, a.Seated = seated(w, p)
	for i, r := range w.Rides {
		switch r.State {
		case model.Off:
			a.Off++
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

// goalsOf is the score of the plan with what the proof knows of each goal.
func goalsOf(w *model.Week, p *model.Plan, proof model.Proof) []goal {
	goals := []goal{}
	for i, g := range w.Score(p) {
		x := goal{Name: g.Name, Words: g.Words, Value: g.Value}
		if i < len(proof.Goals) && proof.Goals[i].Name == g.Name {
			x.Bound, x.Proved = proof.Goals[i].Bound, proof.Goals[i].Proved
		}
		goals = append(goals, x)
	}
	return goals
}
