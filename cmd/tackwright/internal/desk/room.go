package desk

import (
	"slices"

	"tackwright/model"
)

// askRoom looks for room in a week for all who wait.
func askRoom(v *visit) error {
	return v.askOf("room", "Room for the wait list", "/week/"+v.date().String(), []string{"--week", v.date().String()})
}

// askRoomFor looks for room for one rider.
func askRoomFor(v *visit) error {
	r, err := v.rider()
	if err != nil {
		return err
	}
	return v.askOf("room", "Room for "+r.Called(), riderPath(r, v.date()), []string{"--week", v.date().String()}, r.Name)
}

// askBuy asks what one thing more would bring in a week.
func askBuy(v *visit) error {
	return v.askOf("buy", "What one thing more would bring", "/week/"+v.date().String(), nil, v.date().String())
}

// askOf has a command asked about a week; said is what stands behind the folder.
func (v *visit) askOf(command, title, back string, flags []string, said ...string) error {
	args := slices.Concat([]string{command, "--json"}, flags, []string{"--", v.Dir}, said)
	j := v.start(&job{page: command, title: title, least: model.Office, back: back, args: args})
	return v.see("/job/" + j.id)
}

// roomView is where riders who wait could ride.
type roomView struct {
	Back, Wrong string
	Plan        string
	Ground      int `json:"on_the_ground"`
	Riders      []struct {
		Rider    string
		Since    string `json:"waiting_since"`
		Sessions int
		Has      int
		Lessons  []roomLesson
		Place    *roomLesson
	}
	AtOnce *struct {
		Placed  int
		Most    int `json:"at_most"`
		Proved  bool
		Changes []roomChange
	} `json:"at_once"`
	Cautions []string
}

type roomLesson struct {
	Date, Start, Lesson string
	Arena, Instructor   string
	Horse, Seat, Girth  string
	Why                 string   `json:"takes_her_not"`
	Full                bool     `json:"no_horse"`
	Alone               []string // what stands in the way whatever else rides
	Unchecked           []string `json:"not_checked"`
	Changes             []roomChange
}

type roomChange struct {
	Date, Start, Rider string
	Horse, Now         string
	Ask                bool `json:"ask_first"`
}

func showRoom(v *visit, j *job) error {
	x := &roomView{Back: j.back}
	var err error
	if x.Wrong, err = j.told(x); err != nil {
		return err
	}
	return v.show("room", j.title, x)
}

// nowhere reports whether a rider has room in no lesson, as far as was found.
func nowhere(all []roomLesson) bool {
	return !slices.ContainsFunc(all, func(l roomLesson) bool { return l.Horse != "" })
}

// buyView is what one thing more would bring.
type buyView struct {
	Back, Wrong string
	Open        int `json:"open_rides"`
	Seated      int
	AtMost      int `json:"at_most"`
	Spares      []struct {
		What   string
		More   int `json:"more_rides"`
		Most   int `json:"at_most"`
		Proved bool
		Best   *struct {
			Rides  []struct{ Rider, Lesson string }
			Ground []struct{ Rider, Lesson string }
		}
	}
	Cautions []string
}

func showBuy(v *visit, j *job) error {
	x := &buyView{Back: j.back}
	var err error
	if x.Wrong, err = j.told(x); err != nil {
		return err
	}
	return v.show("buy", j.title, x)
}
