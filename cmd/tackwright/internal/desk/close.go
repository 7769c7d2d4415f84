package desk

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"tackwright/model"
)

// closeView is a date to be closed: what was told, and in what it was not so.
type closeView struct {
	Date   model.Date
	By     string // who closed it before; "" nobody
	Rides  []closeRide
	Kept   []string // what was said of it besides, and stays
	Horses []string
	Wrong  string
}

// closeRide is a ride that was told.
type closeRide struct {
	ID, When, Rider, Lesson string
	Told                    string // horse
	How, Horse, Until       string // as it was; How "" is as told

	told model.Told
}

// hows are the ways in which a ride was not as told, as a form has them.
var hows = map[string]model.DiffersHow{"no-show": model.NoShow, "horse": model.OtherHorse, "short": model.CutShort}

func (v *visit) closeView(d model.Date) (*closeView, error) {
	r := v.reading
	switch {
	case d > r.Today:
		return nil, no("%s is still to come", d.Words())
	case r.Centre.VersionOn(d) == 0:
		return nil, no("nothing was posted for %s, so there is nothing to close", d.Words())
	}
	x := &closeView{Date: d}
	old := r.Centre.ClosedOn(d)
	if old != nil && old.By != nil {
		x.By = old.By.Name
	}
	for _, t := range r.Centre.ToldOn(d) {
		if t.Turn == nil || t.Rider == nil {
			continue
		}
		y := closeRide{ID: "ride" + key("told", t.Rider.Name, t.LessonName, t.Start.String(), t.Turn.Horse.Name), When: t.Start.Clock(r.Centre.House.TwelveHour) + " to " + t.End.Clock(r.Centre.House.TwelveHour),
			Rider: t.Rider.Called(), Lesson: t.LessonName, Told: t.Turn.Horse.Name, told: t}
		if old != nil {
			for _, z := range old.Differs {
				if z.How != model.ExtraRide && of(z, t) {
					y.was(z)
				}
			}
		}
		x.Rides = append(x.Rides, y)
	}
	if old != nil {
		for _, z := range old.Differs {
			if z.How == model.ExtraRide && z.Rider != nil {
				x.Kept = append(x.Kept, z.Rider.Called()+" rode besides")
			}
		}
		for _, w := range old.Works {
			x.Kept = append(x.Kept, w.Horse.Name+": "+w.Kind)
		}
	}
	for _, h := range r.Centre.Horses {
		x.Horses = append(x.Horses, h.Name)
	}
	return x, nil
}

// of reports whether a difference is of a ride.
func of(z model.Differs, t model.Told) bool {
	return z.Lesson == t.Lesson && z.Rider == t.Rider && (z.Start == 0 || z.Start == t.Start)
}

func (y *closeRide) was(z model.Differs) {
	switch z.How {
	case model.NoShow:
		y.How = "no-show"
	case model.OtherHorse:
		y.How = "horse"
		if z.Turn != nil {
			y.Horse = z.Turn.Horse.Name
		}
	case model.CutShort:
		y.How, y.Until = "short", z.End.String()
	}
}

func showClose(v *visit) error {
	v.reading.Lock()
	defer v.reading.Unlock()
	x, err := v.closeView(v.date())
	if err != nil {
		return err
	}
	if v.refilled() {
		x.fill(v)
		x.Wrong = notSent
	}
	return v.show("close", "What was ridden on "+x.Date.Words(), x)
}

// closeDay writes down what was ridden. Extra rides and other work that were said
// before stay.
func closeDay(v *visit) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	r := v.reading
	r.Lock()
	defer r.Unlock()
	x, err := v.closeView(v.date())
	if err != nil {
		return err
	}
	record := &model.Ridden{Date: x.Date, By: by, At: r.At()}
	if old := r.Centre.ClosedOn(x.Date); old != nil {
		record.Works = old.Works
		for _, z := range old.Differs {
			if z.How == model.ExtraRide || !slices.ContainsFunc(x.Rides, func(y closeRide) bool { return of(z, y.told) }) {
				record.Differs = append(record.Differs, z)
			}
		}
	}
	// A ride that is told otherwise since she looked at it is another one here, also
	// where she left it as told.
	for field := range v.r.PostForm {
		id, is := strings.CutSuffix(field, "-how")
		if is && !slices.ContainsFunc(x.Rides, func(y closeRide) bool { return y.ID == id }) {
			return no("what was told for %s has changed since you looked at it; look again, and close that", x.Date.Words())
		}
	}
	x.fill(v)
	for i := range x.Rides {
		y := &x.Rides[i]
		if y.How == "" {
			continue
		}
		z, wrong := r.differs(y)
		if wrong != "" {
			x.Wrong = y.Rider + ": " + wrong
			return v.page(http.StatusConflict, "close", "What was ridden on "+x.Date.Words(), x)
		}
		record.Differs = append(record.Differs, z)
	}
	if x.Wrong = twice(x.Rides); x.Wrong != "" {
		return v.page(http.StatusConflict, "close", "What was ridden on "+x.Date.Words(), x)
	}
	err = r.Close(record)
	v.readings.forget()
	if err != nil {
		return err
	}
	return v.see("/day/" + x.Date.String())
}

// fill puts into the form what was said in it.
func (x *closeView) fill(v *visit) {
	for i := range x.Rides {
		y := &x.Rides[i]
		y.How, y.Horse, y.Until = form(v, y.ID+"-how"), form(v, y.ID+"-horse"), form(v, y.ID+"-until")
	}
}

// differs is a difference as a form has it; of another horse the tack is not
// recorded.
func (r *reading) differs(y *closeRide) (z model.Differs, wrong string) {
	z = model.Differs{How: hows[y.How], Lesson: y.told.Lesson, Rider: y.told.Rider, Start: y.told.Start, End: y.told.End}
	switch y.How {
	case "no-show":
	case "horse":
		i := slices.IndexFunc(r.Centre.Horses, func(h *model.Horse) bool { return h.Name == y.Horse })
		if i < 0 {
			return z, "say which horse she had"
		}
		z.Turn = &model.Turn{Horse: r.Centre.Horses[i]}
	case "short":
		until, err := timeOf(y.Until)
		if err != nil || until <= y.told.Start || until >= y.told.End {
			return z, "say when it ended: after it began, and before its end"
		}
		z.End = until
	default:
		return z, "say what was not as told"
	}
	return z, ""
}

// twice says which horse two riders had at once; "" none.
func twice(rides []closeRide) string {
	horse := func(y closeRide) string {
		switch y.How {
		case "no-show":
			return ""
		case "horse":
			return y.Horse
		}
		return y.Told
	}
	for i, a := range rides {
		for _, b := range rides[:i] {
			if h := horse(a); h != "" && h == horse(b) && a.told.Start < b.told.End && b.told.Start < a.told.End {
				return fmt.Sprintf("%s and %s cannot both have had %s: %s", b.Rider, a.Rider, h, a.When)
			}
		}
	}
	return ""
}
