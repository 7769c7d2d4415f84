package folder

import (
	"fmt"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

var centreKeys = &table[model.Centre]{
	head:  "[centre]",
	about: "The centre itself, and how its figures are shown.",
	keys: []key[model.Centre]{
		is("name", naming, "name of the centre", "", func(c *model.Centre, v string) { c.Name = v }).eg(`"Larkfield"`),
		is("zone", words("the name of a time zone", `"Europe/London" or "America/Chicago"`),
			"time zone, by its IANA name", "the computer's own", func(c *model.Centre, v string) { c.House.Zone = v }),
		is("units", oneOf("a system of units", model.Metric, model.Imperial),
			"units in which weights, lengths and sizes are shown", `"metric"`, func(c *model.Centre, v model.Units) { c.House.Units = v }),
		is("clock", plainChoice("a clock", 24, 12), "hours of the clock on sheets", "24", func(c *model.Centre, v int) { c.House.TwelveHour = v == 12 }),
		is("paper", oneOf("a size of paper", "A4", "Letter"), "paper that sheets are made for", `"A4"`, func(c *model.Centre, v string) { c.House.Paper = v }),
		is("week_starts", weekdays, "first day of the calendar week", `"Monday"`, func(c *model.Centre, v time.Weekday) { c.House.WeekStarts = v }),
		is("cross_ties", counts, "bays in which horses are tacked up", "not stated: any number at once", func(c *model.Centre, v int) { c.House.CrossTies = v }).eg(`3`),
		is("afternoon_from", times, "when the afternoon crew takes over", "one crew all day", func(c *model.Centre, v model.Minute) { c.House.AfternoonAt = v }).eg(`13:00`),
		is("weigh_every", days, "how long after a weighing of a horse the next is due", "not stated: due names none", func(c *model.Centre, v int) { c.WeighAge = v }).eg(`"90 days"`),
		is("today", dates, "the date that counts as today, for a folder that is a demonstration", "the computer's date", func(c *model.Centre, v model.Date) { c.Today = v }).eg(`2026-11-23`),
	},
}

// gaps, limits and assumed weights are tables within others.
var gapKeys = &table[model.House]{
	head:  "[house.gaps]",
	about: "The least time from the end of one ride or work to the start of the next, all that is to be done in it included. They grow from stay to move.",
	keys: []key[model.House]{
		is("stay", gap, "same horse, same tack, staying in the arena", `"0 min"`, func(h *model.House, v int) { h.Stay = model.Minute(v) }).eg(`"0 min"`),
		is("same", gap, "same horse, same tack, another arena", `"5 min"`, func(h *model.House, v int) { h.Same = model.Minute(v) }).eg(`"5 min"`),
		is("other", gap, "same horse, other tack", `"10 min"`, func(h *model.House, v int) { h.Other = model.Minute(v) }).eg(`"10 min"`),
		is("move", gap, "a piece going to another horse", `"15 min"`, func(h *model.House, v int) { h.Move = model.Minute(v) }).eg(`"15 min"`),
	},
}

var limitKeys = &table[model.Limits]{
	head:  "limits",
	about: "How much a horse works at most. In [house] they hold for every horse, in a horse's own table for that horse. No day is longer than 6 h (Certified Horsemanship Association) and no run longer than 3 h, whatever is written.",
	keys: []key[model.Limits]{
		is("day", longTime, "work on one date, short gaps counted in", `"3h30m"`, func(l *model.Limits, v int) { l.DayMinutes = v }).eg(`"3h30m"`),
		is("day_sessions", counts, "lessons or works on one date", "4", func(l *model.Limits, v int) { l.DaySessions = v }).eg(`4`),
		is("run", longTime, "from the start of a run of work to its end, with no rest between", `"2h30m"`, func(l *model.Limits, v int) { l.RunMinutes = v }).eg(`"2h30m"`),
		is("run_sessions", counts, "lessons or works with no rest between", "3", func(l *model.Limits, v int) { l.RunSessions = v }).eg(`3`),
		is("week", longTime, "work in a calendar week", `"15h"`, func(l *model.Limits, v int) { l.WeekMinutes = v }).eg(`"15 h"`),
		is("week_days", within(integer, 1, 7, "a week has seven days"), "dates worked in a calendar week", "5", func(l *model.Limits, v int) { l.WeekDays = v }).eg(`5`),
		is("days_in_a_row", within(integer, 1, 30, "it is between 1 and 30"), "dates worked one after another", "6", func(l *model.Limits, v int) { l.RowDates = v }).eg(`6`),
	},
}

var assumedKeys = &table[model.House]{
	head:  "[house.assumed]",
	about: "What a piece is taken to weigh that states no weight. Sheets mark it as assumed.",
	keys: []key[model.House]{
		is("saddle", pieceWeights, "a saddle", `"9 kg"`, func(h *model.House, v model.Grams) { h.Assumed.Saddle = v }).eg(`"9 kg"`),
		is("western_saddle", pieceWeights, "a western saddle", `"16 kg"`, func(h *model.House, v model.Grams) { h.Assumed.Western = v }).eg(`"16 kg"`),
		is("bareback_pad", pieceWeights, "a bareback pad or surcingle", `"3 kg"`, func(h *model.House, v model.Grams) { h.Assumed.Bareback = v }).eg(`"3 kg"`),
		is("pad", pieceWeights, "a saddle pad", `"1.5 kg"`, func(h *model.House, v model.Grams) { h.Assumed.Pad = v }).eg(`"1.5 kg"`),
		is("girth", pieceWeights, "a girth", `"1 kg"`, func(h *model.House, v model.Grams) { h.Assumed.Girth = v }).eg(`"1 kg"`),
		is("extra", pieceWeights, "anything else", `"500 g"`, func(h *model.House, v model.Grams) { h.Assumed.Extra = v }).eg(`"500 g"`),
	},
}

var houseKeys = &table[model.House]{
	head:  "[house]",
	about: "The rules that the centre sets for itself. Whatever is left out is as common practice of the trade has it.",
	keys: []key[model.House]{
		is("gaps", into("the gaps", `{ same = "5 min", other = "10 min" }`, gapKeys), "least time between rides", "as below", keep[model.House]),
		is("rest", within(duration, 1, 240, "a rest is between 1 min and 4 h"), "a gap this long ends a run of work", `"30 min"`, func(h *model.House, v int) { h.Rest = model.Minute(v) }).eg(`"30 min"`),
		is("ready", gap, "how long before the start a first tack-up is on", `"10 min"`, func(h *model.House, v int) { h.Ready = model.Minute(v) }).eg(`"10 min"`),
		is("tacking", gap, "how long a helper takes to tack up a clean horse", `"10 min"`, func(h *model.House, v int) { h.Tack = model.Minute(v) }).eg(`"10 min"`),
		is("limits", into("limits", `{ day = "3h30m", week_days = 5 }`, limitKeys), "how much a horse works at most", "as below", func(h *model.House, set func(*model.Limits)) { set(&h.Limits) }),
		is("load", loadShares, "most load, rider dressed and all tack, as a share of the horse's weight", `"20 %"`, func(h *model.House, v model.Percent) { h.LoadPercent = v }).eg(`"20 %"`),
		is("mark_load", loadShares, "load above this share is marked", `"15 %"`, func(h *model.House, v model.Percent) { h.MarkPercent = v }).eg(`"15 %"`),
		is("age_ridden", years, "least years of a horse that is ridden", "3", func(h *model.House, v int) { h.AgeRidden = v }),
		is("age_adaptive", years, "least years of a horse with a rider who needs support", "5", func(h *model.House, v int) { h.AgeAdaptive = v }).eg(`5`),
		is("quarantine", days, "days that a new arrival keeps its tack to itself", "14", func(h *model.House, v int) { h.Quarantine = v }),
		is("elsewhere", list(oneOf("a record", "forms", "fit dates", "tack checks"), "a list of records"),
			"records that the centre keeps outside this folder; sheets then say \"not checked here\"", "none",
			func(h *model.House, vs []string) {
				for _, v := range vs {
					h.Elsewhere.Forms = h.Elsewhere.Forms || v == "forms"
					h.Elsewhere.FitDates = h.Elsewhere.FitDates || v == "fit dates"
					h.Elsewhere.TackChecks = h.Elsewhere.TackChecks || v == "tack checks"
				}
			}).eg(`["forms", "fit dates", "tack checks"]`),
		is("records", list(oneOf("a record", "mounting", "skills"), "a list of records"),
			"what is recorded of every rider and horse, and so binds: mounting places, skills", "neither binds",
			func(h *model.House, vs []string) {
				for _, v := range vs {
					h.Mounting = h.Mounting || v == "mounting"
					h.Skills = h.Skills || v == "skills"
				}
			}).eg(`["mounting", "skills"]`),
		is("levels", oldNames, "riders' levels, lowest first", "none", func(h *model.House, v []string) { h.Levels = v }).eg(`["beginner", "novice", "independent"]`),
		is("factors", factorMap, "how hard a kind of lesson or work is", "every kind 100 %", func(h *model.House, v map[string]model.Percent) { h.Factors = v }),
		is("assumed", into("weights", `{ saddle = "9 kg" }`, assumedKeys), "weights of pieces that state none", "as below", keep[model.House]),
		is("goals", goalOrder, "what counts after seating as many rides as can be, in order, each proved before the next: wishes that rides get; carry, so that tack stays put; fair, so that work is shared out; and, where it is wanted, bring in, so that few horses are brought in a day", `["wishes", "carry", "fair"]`,
			func(h *model.House, v []model.GoalKind) { h.Goals = v }).eg(`["carry", "wishes", "fair", "bring in"]`),
		is("wishes", into("weights", `{ usual_horse = 4, usual_seat = 1 }`, wishKeys), "how much each wish counts", "as below", func(h *model.House, set func(*model.Wishes)) { set(&h.Wishes) }),
	},
}

// into is a form that is a table whose keys go where the caller says.
func into[T any](what, like string, t *table[T]) form[func(*T)] {
	return form[func(*T)]{
		words: what, like: like, sub: t.sheet(),
		read: func(r *reader, n *node) (func(*T), bool) {
			if n.kind != unstable.InlineTable {
				notA(r, n, form[T]{words: "a table of " + what, like: like})
				return nil, false
			}
			return func(v *T) { t.read(r, n, v) }, true
		},
	}
}

// keep lets the keys of an inner table go to the noun of the outer one.
func keep[T any](v *T, set func(*T)) { set(v) }

// factorMap is a table whose keys are kinds of lessons and works.
var factorMap = func() form[map[string]model.Percent] {
	f := form[map[string]model.Percent]{words: "a table of percentages by kind", like: `{ lunging = "60 %", private = 100 }`}
	f.read = func(r *reader, n *node) (map[string]model.Percent, bool) {
		if n.kind != unstable.InlineTable {
			notA(r, n, f)
			return nil, false
		}
		m := map[string]model.Percent{}
		for _, p := range n.pairs {
			if v, ok := factors.read(r, p.val); ok {
				m[p.key] = v
			}
		}
		return m, true
	}
	return f
}()

// plainChoice is one of a few whole numbers.
func plainChoice(what string, all ...int) form[int] {
	var shown []string
	for _, v := range all {
		shown = append(shown, fmt.Sprint(v))
	}
	f := integer
	f.words, f.like, f.choices = what, strings.Join(shown, " or "), shown
	f.read = func(r *reader, n *node) (int, bool) {
		v, ok := integer.read(r, n)
		for _, x := range all {
			if v == x && ok {
				return v, true
			}
		}
		if ok {
			r.mistake(n.span(), fmt.Sprintf("%d is not %s", v, what), "it is "+f.like)
		}
		return 0, false
	}
	return f
}

var (
	person = to("person", `"Jo Marsh"`, func(r *reader) *index[model.Person] { return &r.persons },
		func(name string) *model.Person { return &model.Person{Name: name} })
	arena = to("arena", `"Indoor"`, func(r *reader) *index[model.Arena] { return &r.arenas },
		func(name string) *model.Arena { return &model.Arena{Name: name} })
)

var personKeys = &table[model.Person]{
	head:  "[[person]]",
	about: "Somebody who works at the centre. Every note and posted plan names one.",
	keys: []key[model.Person]{
		is("name", naming, "name, unique among persons", "", func(p *model.Person, v string) { p.Name = v }).eg(`"Jo Marsh"`),
		is("was", oldNames, "earlier names", "none", func(p *model.Person, v []string) { p.Was = v }).eg(`["Jo Bell"]`),
		is("role", oneOf("a role", model.Barn, model.Instructor, model.Office), "what she does at the centre", "", func(p *model.Person, v model.Role) { p.Role = v }),
		is("riders_at_once", counts, "riders that an instructor teaches at once", "no limit stated", func(p *model.Person, v int) { p.RidersAtOnce = v }).eg(`4`),
		is("away", periods, "when she is away", "never", func(p *model.Person, v []model.Period) { p.Away = v }),
		is("may_end", list(oneOf("a thing that a named person ends", model.EndsVetStop, model.EndsCleaning, model.EndsCheck, model.EndsForm), "a list"),
			"what only a named person ends, and she may: a horse out lame, ill or by a vet's stop; the need to clean a piece; a piece out of use; a form that has run out", "nothing",
			func(p *model.Person, v []model.Ends) { p.MayEnd = v }).eg(`["vet's stop", "cleaning", "check", "form"]`),
	},
}

var arenaKeys = &table[model.Arena]{
	head:  "[[arena]]",
	about: "A place for lessons and work.",
	keys: []key[model.Arena]{
		is("name", naming, "name, unique among arenas", "", func(a *model.Arena, v string) { a.Name = v }).eg(`"Indoor"`),
		is("was", oldNames, "earlier names", "none", func(a *model.Arena, v []string) { a.Was = v }).eg(`["Old barn"]`),
		is("riders_at_once", counts, "riders at once; a work takes the place of one", "no limit stated", func(a *model.Arena, v int) { a.RidersAtOnce = v }).eg(`5`),
		is("indoor", yes, "it has a roof", "false", func(a *model.Arena, v bool) { a.Indoor = v }),
		is("mounting", texts, "mounting places: ramp, block, lift, ground ...", "not recorded", func(a *model.Arena, v []string) { a.Mounting = v }).eg(`["ramp", "block"]`),
		is("closed", periods, "when it is closed", "never", func(a *model.Arena, v []model.Period) { a.Closures = v }),
	},
}
