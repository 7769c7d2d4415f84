package model

import "slices"

var horseSuitsRider = &Rule{
	Name: "horse suits rider", Class: Care,
	Sentence: "the horse is of a height, barrel, skill and level that suit the rider, is not banned for her, and she can mount it in that arena",
	audit: func(l *ledger) {
		for _, s := range l.rides {
			if why := l.Unsuited(s.ride(), s.Turn.Horse); why != "" {
				l.breaks([]*Stint{s}, "%s: %s", s.Name, why)
			}
		}
	},
}

// Unsuited says why a horse does not suit the rider of a ride; "" is that it
// does, or that what would tell is not known.
func (w *Week) Unsuited(ride *Ride, h *Horse) string {
	r := ride.Rider
	switch {
	case r.IsBanned(h):
		return h.Name + " is not for this rider"
	case slices.Contains(ride.Never, h):
		return "a note keeps this rider off " + h.Name
	case h.Height != 0 && (h.Height < r.HorseMin || r.HorseMax != 0 && h.Height > r.HorseMax):
		return h.Name + " is not of the height wanted"
	case h.Barrel != "" && len(r.Barrels) > 0 && !slices.Contains(r.Barrels, h.Barrel):
		return h.Name + " is not of the barrel wanted"
	case r.Level != "" && len(h.Levels) > 0 && !slices.Contains(h.Levels, r.Level):
		return h.Name + " does not take riders of this level"
	}
	if w.House.Skills {
		for _, skill := range r.Skills {
			if !slices.Contains(h.Skills, skill) {
				return h.Name + " lacks a skill: " + skill
			}
		}
	}
	if w.House.Mounting && len(w.MountingFor(ride, h)) == 0 {
		return "no mounting place is shared by rider, arena and " + h.Name
	}
	return ""
}

// anywhere is the mounting place of a ride for which nobody records one.
var anywhere = []string{""}

// MountingFor are the mounting places that rider, horse and arena share, in the
// order in which the rider, else the horse, else the arena lists them. Where one
// of the three records none, it stands at all; where all do, it is [""].
func (w *Week) MountingFor(ride *Ride, h *Horse) []string {
	shared := anywhere
	var arena []string
	if ride.Meeting.Arena != nil {
		arena = ride.Meeting.Arena.Mounting
	}
	for _, places := range [][]string{ride.Rider.Mounting, h.Mounting, arena} {
		switch {
		case len(places) == 0:
		case slices.Equal(shared, anywhere):
			shared = places
		default:
			shared = slices.DeleteFunc(slices.Clone(shared), func(p string) bool { return !slices.Contains(places, p) })
		}
	}
	return shared
}
