package sheet

import (
	"slices"

	"tackwright/model"
)

// Ride is a horse's ride, or its other work, as a sheet names it.
type Ride struct {
	Start       Clock    `json:"start" about:"24-hour clock"`
	End         Clock    `json:"end"`
	Horse       string   `json:"horse,omitempty" about:"none: on the ground"`
	Rider       string   `json:"rider,omitempty" about:"first name and mark"`
	Work        string   `json:"work,omitempty" about:"of a horse's other work: schooling, lunging"`
	By          string   `json:"by,omitempty" about:"who does that work"`
	Lesson      string   `json:"lesson,omitempty" about:"none: other work"`
	Arena       string   `json:"arena,omitempty"`
	Instructor  string   `json:"instructor,omitempty"`
	Mounting    []string `json:"mounting" about:"places that rider, horse and arena share, first choice first; none: not recorded"`
	Leaders     int      `json:"leaders,omitempty" about:"that are needed"`
	Sidewalkers int      `json:"sidewalkers,omitempty" about:"that are needed"`
	NewTack     bool     `json:"new_tack,omitempty" about:"tack changes before it: see the changeovers"`
}

// ride describes a stint.
func (d *day) ride(s *model.Stint) Ride {
	r := Ride{Start: Clock(s.Start), End: Clock(s.End), Horse: s.Turn.Horse.Name}
	if s.Arena != nil {
		r.Arena = s.Arena.Name
	}
	if s.Meeting == nil {
		r.Work, r.By = d.workOf(s)
		return r
	}
	r.Lesson = s.Meeting.Name
	if s.Meeting.Instructor != nil {
		r.Instructor = s.Meeting.Instructor.Name
	}
	hands := s.Hands()
	r.Leaders, r.Sidewalkers = hands.Leaders, hands.Sidewalkers
	r.Rider = "a rider" // one who is no longer in the folder
	if s.Rider != nil {
		r.Rider = s.Rider.Called()
		r.Mounting = d.mounting(s)
	}
	return r
}

// mounting is where the rider mounts. A house that does not record places says
// nothing of them, but for a rider's own.
func (d *day) mounting(s *model.Stint) []string {
	if !d.house.Mounting {
		return s.Rider.Mounting
	}
	ride := s.Ride
	if ride == nil { // posted for a lesson that has changed since
		ride = &model.Ride{Meeting: s.Meeting, Rider: s.Rider}
	}
	return slices.DeleteFunc(slices.Clone(d.week.MountingFor(ride, s.Turn.Horse)), func(p string) bool { return p == "" })
}

// workOf finds what kind of work a stint is, and who does it.
func (d *day) workOf(s *model.Stint) (kind, by string) {
	is := func(x *model.Work) bool {
		return x.Horse == s.Turn.Horse && x.Start == s.Start && x.End == s.End
	}
	works := slices.DeleteFunc(slices.Clone(d.week.Centre.Works), func(x *model.Work) bool { return !x.IsOn(d.date) })
	for _, r := range d.week.Centre.Ridden {
		if r.Date == d.date {
			works = append(works, r.Works...)
		}
	}
	i := slices.IndexFunc(works, is)
	if i < 0 {
		return "other work", ""
	}
	if works[i].Person != nil {
		by = works[i].Person.Name
	}
	return works[i].Kind, by
}
