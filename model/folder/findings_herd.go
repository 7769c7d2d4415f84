package folder

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// hands names lessons of the coming week whose riders need more helpers than
// the lesson can count on.
func (l *finder) hands(m *model.Meeting) {
	for _, s := range l.week.HandsShort(m) {
		at := l.r.at(m.Lesson) // where a note says the number
		if h, ok := m.Lesson.HandsOn[m.Date]; ok && h == m.Hands {
			at = l.r.at(m.Lesson, "helpers_on")
		} else if m.Lesson.Hands == m.Hands {
			at = l.r.at(m.Lesson, s.What)
		}
		l.find(m.Lesson, at, s.Over, fmt.Sprintf("%s on %s: %s", m.Name, long(m.Date), s),
			"find helpers and mend the number (helpers_on is for one date), or move somebody to another lesson")
	}
}

// herd names a rider whom no horse suits and may carry. A horse of unknown
// weight or age might: that is a finding of its own.
func (l *finder) herd(x *model.Rider) {
	if x.Weight == 0 || len(l.c.Horses) == 0 || unread[model.Horse](l) || l.mistaken(x, "weight", "never_on", "barrels", "horse_height", "skills", "mounting", "level") {
		return
	}
	for _, skill := range x.Skills {
		if l.c.House.Skills && !slices.ContainsFunc(l.c.Horses, func(h *model.Horse) bool { return slices.Contains(h.Skills, skill) }) {
			return // told as a word that no horse has
		}
	}
	rides := 0
	arenas := []*model.Arena{nil} // of the lessons as they are on any date: what notes say is of one
	for _, r := range l.week.Rides {
		if r.Rider == x && r.State == model.Open && r.Meeting.Lesson != nil {
			if rides == 0 {
				arenas = nil
			}
			rides++
			arenas = append(arenas, r.Meeting.Lesson.Arena)
		}
	}
	horses := map[string][]string{} // by what is in the way
	var order []string
	for _, h := range l.c.Horses {
		why := ""
		for _, a := range arenas {
			if why = l.week.Unsuited(&model.Ride{Rider: x, Meeting: &model.Meeting{Date: l.today, Arena: a}}, h); why == "" {
				break
			}
		}
		switch {
		case why != "":
			why = strings.ReplaceAll(why, h.Name, "the horse")
		case h.Weight == 0 || h.Foaled == 0:
			return
		case l.week.TooYoung(h, l.today, x.Support) != "":
			why = "the horse is too young"
		case !h.Carries(x.Weight, x.Support, &l.c.House):
			why = "the rider is more than the horse may carry, even before tack"
		default:
			return
		}
		if horses[why] == nil {
			order = append(order, why)
		}
		horses[why] = append(horses[why], h.Name)
	}
	var reasons []string
	for _, why := range order {
		reasons = append(reasons, why+": "+strings.Join(horses[why], ", "))
	}
	l.find(x, l.r.at(x), rides, fmt.Sprintf("no horse of the herd suits %s and may carry her (%s)", x.Name, strings.Join(reasons, "; ")),
		"mend what the rider asks of a horse, or what the horses have; as it stands she cannot ride here")
}
