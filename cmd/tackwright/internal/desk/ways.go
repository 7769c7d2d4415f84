package desk

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tackwright/model"
)

// waysAnswer is what the command ways says, as far as the page tells it.
type waysAnswer struct {
	Ride   struct{ Rider, Date string }
	Better *struct{}
	Ways   []struct {
		Said    string
		Ask     []string
		Horse   string
		Seat    string
		Date    string
		Start   string
		Changes []whyChange
		Tack    []whyChange
		Take    []string `json:"take_words"`
	}
	Whole bool
	Care  bool     `json:"care_alone"`
	Take  []string `json:"take_words"`
}

// waysView is what would seat a ride.
type waysView struct {
	ID, Back string
	waysAnswer
	Office bool // who looks may take one
	Posted bool // the day is, so that what is taken stands at once
	Wrong  string
}

func showWays(v *visit, j *job) error {
	x := &waysView{ID: j.id, Back: j.back, Office: v.role == model.Office}
	var err error
	if x.Wrong, err = j.told(&x.waysAnswer); err != nil {
		return err
	}
	if d, err := model.ParseDate(x.Ride.Date); err == nil {
		x.Posted = v.reading.Centre.VersionOn(d) > 0
	}
	return v.show("ways", j.title, x)
}

// takeWay takes one of the ways that were found: the words of its command, with
// the name of who takes it.
func takeWay(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	if j.page != "ways" || !j.isOver() || j.wrong != nil {
		return notThere("no ways were looked for there")
	}
	by, err := v.person()
	if err != nil {
		return err
	}
	var a waysAnswer
	if wrong, err := j.told(&a); err != nil || wrong != "" {
		return no("%s", wrong)
	}
	take := a.Take
	if n, err := strconv.Atoi(v.r.PostFormValue("way")); err == nil && 0 <= n && n < len(a.Ways) {
		take = a.Ways[n].Take
	}
	if len(take) == 0 {
		return no("say which of them")
	}
	args := slices.Insert(slices.Clone(take), 1, "--by", by.Name, "--json")
	k := v.start(&job{page: "take", title: "Taking it", least: model.Office, back: j.back, args: args})
	return v.see("/job/" + k.id)
}

// showTaken says what stands now.
func showTaken(v *visit, j *job) error {
	v.readings.forget()
	var a struct {
		Ride struct {
			Rider, Horse string
		}
		Seat    string
		Changes []whyChange
		Posted  int
	}
	x := &whyView{Back: j.back}
	var err error
	if x.Wrong, err = j.told(&a); err != nil {
		return err
	}
	title := "Not taken"
	if x.Wrong == "" {
		title = "Taken"
		stands := "The plan that is pencilled has it."
		if a.Posted > 0 {
			stands = fmt.Sprintf("It stands, as version %d.", a.Posted)
		}
		x.Said = append(x.Said, strings.TrimSpace(fmt.Sprintf("%s rides %s in %s. %s", a.Ride.Rider, a.Ride.Horse, a.Seat, stands)))
		x.Changes = a.Changes
	}
	return v.show("why", title, x)
}
