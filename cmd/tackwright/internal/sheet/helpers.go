package sheet

import (
	"strings"

	"tackwright/model"
)

// helpersNeeded are the most leaders, and the most sidewalkers, that rides need at once.
func helpersNeeded(rides []*model.Stint) (need model.Hands) {
	for _, at := range rides {
		now := model.Hands{}
		for _, s := range rides {
			if s.Start <= at.Start && at.Start < s.End {
				now.Leaders += s.Hands().Leaders
				now.Sidewalkers += s.Hands().Sidewalkers
			}
		}
		need.Leaders, need.Sidewalkers = max(need.Leaders, now.Leaders), max(need.Sidewalkers, now.Sidewalkers)
	}
	return need
}

// helperWords say what a lesson needs, and of what it is short: for those who
// ride, and for all its riders where some are on the ground for want of helpers.
func (d *day) helperWords(m *model.Meeting) (lines []string) {
	need, have := helpersNeeded(d.inLesson(m)), m.Hands
	if need == (model.Hands{}) && len(d.week.HandsShort(m)) == 0 {
		return []string{"needs no helpers"}
	}
	words := "needs " + model.Count(need.Leaders, "leader") + " and " + model.Count(need.Sidewalkers, "sidewalker") + " at once"
	if have.Leaders >= 0 || have.Sidewalkers >= 0 {
		words += "; can count on " + counted(have.Leaders, "leader") + " and " + counted(have.Sidewalkers, "sidewalker")
	} else {
		words += "; nobody gave the number that it can count on"
	}
	lines = append(lines, words)
	most := need
	for _, s := range d.week.HandsShort(m) {
		if s.What == "leaders" {
			most.Leaders = max(most.Leaders, s.Need)
		} else {
			most.Sidewalkers = max(most.Sidewalkers, s.Need)
		}
	}
	var short []string
	if n := most.Leaders - have.Leaders; have.Leaders >= 0 && n > 0 {
		short = append(short, model.Count(n, "leader"))
	}
	if n := most.Sidewalkers - have.Sidewalkers; have.Sidewalkers >= 0 && n > 0 {
		short = append(short, model.Count(n, "sidewalker"))
	}
	if len(short) > 0 {
		lines = append(lines, "! SHORT by "+strings.Join(short, " and ")+" for all its riders to ride")
	}
	return lines
}

func counted(n int, of string) string {
	if n < 0 {
		return "no stated number of " + of + "s"
	}
	return model.Count(n, of)
}
