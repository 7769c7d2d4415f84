package sheet

import (
	"slices"

	"tackwright/model"
)

// NotChecked is something that nobody recorded, so that no rule could look at
// it on this day. It names horses, pieces and lessons, never a rider.
type NotChecked struct {
	What string   `json:"what" about:"what is not known"`
	Of   []string `json:"of" about:"of which pieces, horses or lessons"`
}

// notChecked gathers what the rides of the day rest on unseen, and which records
// the centre keeps elsewhere.
func (d *day) notChecked() (list []NotChecked, here []string) {
	if len(d.stints) == 0 {
		return nil, nil
	}
	note := func(what, of string) {
		i := slices.IndexFunc(list, func(n NotChecked) bool { return n.What == what })
		if i < 0 {
			i, list = len(list), append(list, NotChecked{What: what})
		}
		if !slices.Contains(list[i].Of, of) {
			list[i].Of = append(list[i].Of, of)
		}
	}
	for _, s := range d.stints {
		if s.Rider != nil {
			PairNotChecked(s.Turn, s.Rider, note)
		}
	}
	for _, s := range d.stints {
		for _, x := range s.Turn.Pieces() {
			if x.CheckDue == 0 && !d.house.Elsewhere.TackChecks {
				note("date of the tack check", x.Tag)
			}
		}
	}
	for _, s := range d.stints {
		d.handsNotChecked(s, note)
	}
	e := d.house.Elsewhere
	for _, x := range []struct {
		is   bool
		what string
	}{{e.Forms, "riders' forms"}, {e.FitDates, "dates of fit approvals"}, {e.TackChecks, "dates of tack checks"}} {
		if x.is {
			here = append(here, x.what)
		}
	}
	return list, here
}

// PairNotChecked notes what is not known of a horse or a piece that the rider's
// entry asks about.
func PairNotChecked(t *model.Turn, r *model.Rider, note func(what, of string)) {
	h := t.Horse
	if h.Height == 0 && (r.HorseMin != 0 || r.HorseMax != 0) {
		note("height of horse", h.Name)
	}
	if h.Barrel == "" && len(r.Barrels) > 0 {
		note("barrel of horse", h.Name)
	}
	if r.Level == "" && len(h.Levels) > 0 {
		note("level, on a horse that takes only some", h.Name)
	}
	if t.Seat != nil {
		if _, known := r.SeatFits(t.Seat); !known && t.Seat.Label == 0 {
			note("size of seat", t.Seat.Tag)
		} else if !known {
			note("rider's size of seat, for the seat", t.Seat.Tag)
		}
	}
	for _, x := range t.Extras {
		if x.Size == "" && slices.ContainsFunc(r.Extras, func(n model.ExtraNeed) bool { return n.Kind == x.Kind && n.Size != "" }) {
			note("size of an extra", x.Tag)
		}
	}
}

// handsNotChecked notes lessons that need helpers and give no number of those
// that they can count on.
func (d *day) handsNotChecked(s *model.Stint, note func(what, of string)) {
	if s.Meeting == nil {
		return
	}
	if need := s.Hands(); need.Leaders > 0 && s.Meeting.Hands.Leaders < 0 || need.Sidewalkers > 0 && s.Meeting.Hands.Sidewalkers < 0 {
		note("helpers that the lesson can count on", s.Meeting.Name)
	}
}
