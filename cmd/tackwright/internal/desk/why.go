package desk

import (
	"encoding/json"

	"tackwright/model"
)

// askWhy asks why a ride is on the ground.
func askWhy(v *visit) error {
	_, ride, err := v.ride()
	if err != nil {
		return err
	}
	return v.ask(ride, "Why is "+ride.Rider.Called()+" on the ground?", "why")
}

// askWhyNot asks why a ride is not on a horse.
func askWhyNot(v *visit) error {
	_, ride, err := v.ride()
	if err != nil {
		return err
	}
	horse := v.r.PostFormValue("horse")
	return v.ask(ride, "Why is "+ride.Rider.Called()+" not on "+horse+"?", "whynot", "--horse", horse)
}

// askWays asks what would seat a ride that is on the ground.
func askWays(v *visit) error {
	_, ride, err := v.ride()
	if err != nil {
		return err
	}
	return v.ask(ride, "What would seat "+ride.Rider.Called()+"?", "ways")
}

// ask has a command asked about a ride; its page is named as the command is.
func (v *visit) ask(r *model.Ride, title, command string, flags ...string) error {
	args := append([]string{command, "--date", r.Date().String(), "--time", r.Start.String(), "--json"}, flags...)
	args = append(args, "--", v.Dir, r.Rider.Name)
	j := v.start(&job{page: command, title: title, least: model.Instructor, back: ridePath(r), args: args})
	return v.see("/job/" + j.id)
}

// told reads the answer of a command, or says what went wrong.
func (j *job) told(a any) (wrong string, err error) {
	if j.answer.Status != 0 {
		return model.Sentence(j.answer.Complaint()), nil
	}
	return "", json.Unmarshal([]byte(j.answer.Out), a)
}

// whyView is an answer in sentences, and what would change.
type whyView struct {
	Back    string
	Said    []string
	Changes []whyChange
	Wrong   string
}

type whyChange struct {
	Date, Start, Rider string
	Horse, Now         string
}

func showWhy(v *visit, j *job) error {
	x := &whyView{Back: j.back}
	type price struct {
		Changes []whyChange `json:"changes"`
	}
	var a struct {
		Said   []string `json:"said"`
		Better *price   `json:"better"`
		Choice *struct {
			Price *price `json:"price"`
		} `json:"choice"`
	}
	var err error
	if x.Wrong, err = j.told(&a); err != nil {
		return err
	}
	x.Said = a.Said
	switch {
	case a.Choice != nil && a.Choice.Price != nil:
		x.Changes = a.Choice.Price.Changes
	case a.Better != nil:
		x.Changes = a.Better.Changes
	}
	return v.show("why", j.title, x)
}
