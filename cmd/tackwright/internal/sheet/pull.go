package sheet

import (
	"tackwright/model"
)

// PullList is a day in the tack room: what to pull for which horse by when,
// what moves between horses, and what goes back where. As JSON its times are
// "09:50" on a 24-hour clock and its dates "2026-11-26".
type PullList struct {
	Header
	CrossTies     *CrossTies   `json:"cross_ties,omitempty" about:"where the centre states how many"`
	TackUps       []TackUp     `json:"tack_ups" about:"in the order in which helpers begin"`
	Changeovers   []Changeover `json:"changeovers" about:"tack that goes to another horse, or a horse that changes tack"`
	BesideTheRing []Needs      `json:"beside_the_ring" about:"what riders wear themselves"`
	PutAway       []PutAway    `json:"put_away" about:"by rack spot"`

	twelve bool // the house's clock, for layouts
}

// Pull is the pull list of a plan for one date of its week. Rides that have
// started are in it as they were told. The error is a date that the week does
// not plan: a sheet that read "no rides" then would be wrong.
func Pull(w *model.Week, p *model.Plan, date model.Date, stamp Stamp) (*PullList, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	l := &PullList{Header: d.header(stamp), twelve: w.House.TwelveHour}
	l.TackUps, l.CrossTies = d.tackUps()
	l.Changeovers = d.changeovers()
	l.BesideTheRing = d.besideTheRing()
	l.PutAway = d.putAway()
	return l, nil
}
