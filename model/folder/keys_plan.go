package folder

import "tackwright/model"

// planEntry is a file of plans/ as it is written.
type planEntry struct {
	centre      string
	from, until model.Date
	now         model.Instant
	proof       model.Proof
	rides       []*node
}

var goalKeys = &table[model.GoalResult]{
	head:  "[[goal]]",
	about: "What is known of one goal of the plan.",
	keys: []key[model.GoalResult]{
		is("name", text, "the goal", "", func(g *model.GoalResult, v string) { g.Name = v }).eg(`"seat a"`),
		is("value", integer, "what the plan reaches; less is better", "", func(g *model.GoalResult, v int) { g.Value = v }).eg(`4`),
		is("bound", integer, "no plan reaches less that is as good in the goals before", "", func(g *model.GoalResult, v int) { g.Bound = v }).eg(`4`),
		is("proved", yes, "the value is the least there is", "false", func(g *model.GoalResult, v bool) { g.Proved = v }),
	},
}

// seatedEntry is a ride of a plan as it is written.
type seatedEntry struct {
	date       model.Date
	start, end model.Minute
	lesson     *model.Lesson
	rider      *model.Rider
	turnEntry
}

var seatedKeys = &table[seatedEntry]{
	head:  "[[ride]] of a plan",
	about: "One ride: the horse and the tack that it gets, or why it is on the ground. To edit a plan, change these.",
	keys: append([]key[seatedEntry]{
		is("date", dates, "the date", "", func(s *seatedEntry, v model.Date) { s.date = v }),
		is("start", times, "when it starts", "", func(s *seatedEntry, v model.Minute) { s.start = v }).eg(`10:00`),
		is("end", times, "when it ends", "", func(s *seatedEntry, v model.Minute) { s.end = v }).eg(`10:45`),
		is("lesson", lesson, "the lesson", "", func(s *seatedEntry, v *model.Lesson) { s.lesson = v }),
		is("rider", rider, "the rider", "", func(s *seatedEntry, v *model.Rider) { s.rider = v }),
	}, turnKeys(func(s *seatedEntry) *turnEntry { return &s.turnEntry })...),
}

var planKeys = &table[planEntry]{
	head:  "plans/*.toml",
	about: "A plan of up to seven dates. What was proved is bound to the plan and to the folder it was made from: edited, or read when the folder has changed, it counts as not proved.",
	keys: []key[planEntry]{
		is("centre", text, "name of the centre", "not said", func(p *planEntry, v string) { p.centre = v }).eg(`"Larkfield"`),
		is("from", dates, "first date", "", func(p *planEntry, v model.Date) { p.from = v }),
		is("until", dates, "last date, which counts", "", func(p *planEntry, v model.Date) { p.until = v }),
		is("now", instants, "rides that had started then were facts", "none had", func(p *planEntry, v model.Instant) { p.now = v }),
		is("hash", words("hexadecimal digits", `"1b9f..."`), "what the proof is bound to", "nothing is proved", func(p *planEntry, v string) { p.proof.Hash = v }),
		is("goal", list(tableForm("a goal", `{ name = "seat a", value = 4, bound = 4, proved = true }`, goalKeys), "a list of goals"), "what is known of each goal", "nothing", func(p *planEntry, v []model.GoalResult) { p.proof.Goals = v }),
		is("ride", nodes(seatedKeys, `{ date = 2026-11-25, start = 10:00 }`), "its rides", "none", func(p *planEntry, v []*node) { p.rides = v }),
	},
}
