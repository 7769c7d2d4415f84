package folder

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

var horse = to("horse", `"Duke"`, func(r *reader) *index[model.Horse] { return &r.horses },
	func(name string) *model.Horse { return &model.Horse{Name: name} })

// weighing is a horse's weight as it was found.
type weighing struct {
	grams  model.Grams
	tape   bool
	girth  model.Length
	length model.Length
}

var tapeKeys = &table[weighing]{
	head:  "a weight by tape such as { girth = \"72 in\", length = \"66 in\" }",
	about: "Heart girth squared x length / 11,900 in centimetres gives kilograms (Carroll & Huntington 1988). It is an estimate, about 10 % either way: for load it counts 10 % less.",
	keys: []key[weighing]{
		is("girth", within(lengths, 60*model.Centimetre, 280*model.Centimetre, "heart girths are between %s and %s"), "heart girth", "", func(w *weighing, v model.Length) { w.girth = v }),
		is("length", within(lengths, 50*model.Centimetre, 260*model.Centimetre, "bodies are between %s and %s long"), "from the point of the shoulder to the point of the buttock", "", func(w *weighing, v model.Length) { w.length = v }),
	},
}

// weighed is a weight by scale or by tape.
var weighed = func() form[weighing] {
	tape := tableForm("a weight by tape", "", tapeKeys)
	f := form[weighing]{words: "a horse's weight, or a table of tape measures", sub: tape.sub,
		like: `"472 kg" or "1040 lb" or { girth = "72 in", length = "66 in" }`, about: weights.about}
	f.read = func(r *reader, n *node) (weighing, bool) {
		if n.kind != unstable.InlineTable {
			g, ok := horseWeights.read(r, n)
			return weighing{grams: g}, ok
		}
		w, ok := tape.read(r, n)
		w.grams, w.tape = model.TapeWeight(w.girth, w.length), true
		return w, ok
	}
	return f
}()

// outEntry is a time in which a horse does not work, as it is written.
type outEntry struct {
	model.Out
	endedBy *model.Person
}

var outKeys = &table[outEntry]{
	head:  "[[horse.out]]",
	about: "A time in which the horse does not work. Only an appointment ends by itself: of the others review is when somebody looks again, and end and ended_by say who ended it. Day notes do the same.",
	keys: []key[outEntry]{
		is("why", oneOf("a reason", model.Lame, model.Ill, model.VetStop, model.Appointment), "why it does not work", "", func(o *outEntry, v model.OutWhy) { o.Why = v }),
		is("from", instants, "since when; a date alone means its midnight", "", func(o *outEntry, v model.Instant) { o.From = v }),
		is("end", instants, "when it was ended", "not ended", func(o *outEntry, v model.Instant) { o.End = v }),
		is("ended_by", person, "who ended it; she has \"vet's stop\" in may_end", "nobody", func(o *outEntry, v *model.Person) { o.endedBy = v }),
		is("review", dates, "when somebody looks again", "none", func(o *outEntry, v model.Date) { o.Review = v }),
	},
}

// outs are checked for who may end them.
var outs = func() form[model.Out] {
	f := tableForm("a time out", `{ why = "lame", from = 2026-11-24T07:40, review = 2026-11-26 }`, outKeys)
	return form[model.Out]{words: f.words, like: f.like, sub: f.sub, read: func(r *reader, n *node) (model.Out, bool) {
		o, ok := f.read(r, n)
		if !ok {
			return o.Out, false
		}
		if !o.End.IsZero() && !o.From.Before(o.End) {
			r.mistake(n.spot("end"), fmt.Sprintf("it ends at %s, which is not after %s", o.End, o.From), "mend from or end")
		}
		switch {
		case o.Why == model.Appointment:
			if o.End.IsZero() {
				r.mistake(n.span(), "an appointment has an end", "add a line such as: end = 2026-11-25T12:00")
			}
		case !o.End.IsZero():
			r.mayEnd(n, o.endedBy, model.EndsVetStop)
		}
		return o.Out, true
	}}
}()

// mayEnd reports an end that no person stands for who may.
func (r *reader) mayEnd(n *node, by *model.Person, what model.Ends) {
	switch {
	case by == nil && n.get("ended_by") == nil:
		r.mistake(n.spot("end"), "only a named person ends this", `add a line such as: ended_by = "Jo Marsh"`)
	case by != nil && !by.May(what):
		r.mistake(n.spot("ended_by"), fmt.Sprintf("%s may not end this", by.Name),
			r.whoMay(what, by))
	}
}

// whoMay is how to mend an end by a person who may not: who may, by name.
func (r *reader) whoMay(what model.Ends, not *model.Person) string {
	var may []string
	for _, name := range r.persons.known {
		if p := r.persons.by[name]; p.Name == name && p.May(what) {
			may = append(may, name)
		}
	}
	add := fmt.Sprintf("add %q to may_end of %s", what, not.Name)
	if len(may) == 0 {
		return "nobody may yet: " + add
	}
	return "name one who may (" + strings.Join(may, ", ") + "), or " + add
}

var markKeys = &table[model.Span]{
	head:  "[[horse.own_tack_only]]",
	about: "A time in which what touches this horse's skin goes to no other horse until a named person has cleaned it.",
	keys: []key[model.Span]{
		is("from", instants, "since when", "", func(s *model.Span, v model.Instant) { s.From = v }),
		is("end", instants, "until when", "not ended", func(s *model.Span, v model.Instant) { s.End = v }),
	},
}

var horseKeys = &table[model.Horse]{
	head:  "[[horse]]",
	about: "A horse of the herd. Its bridle and halter belong to it.",
	keys: []key[model.Horse]{
		is("name", naming, "name, unique among horses", "", func(h *model.Horse, v string) { h.Name = v }).eg(`"Duke"`),
		is("was", oldNames, "earlier names", "none", func(h *model.Horse, v []string) { h.Was = v }).eg(`["Dukie"]`),
		is("height", heights, "height at the withers", "unknown: not checked", func(h *model.Horse, v model.Length) { h.Height = v }),
		is("weight", weighed, "body weight, by scale or by tape", "unknown: nobody rides it", func(h *model.Horse, v weighing) { h.Weight, h.ByTape = v.grams, v.tape }),
		is("weighed", dates, "when it was weighed", "unknown", func(h *model.Horse, v model.Date) { h.Weighed = v }),
		is("barrel", oneOf("a barrel", model.Narrow, model.Medium, model.Wide), "how wide it is to sit on", "unknown: not checked", func(h *model.Horse, v model.Barrel) { h.Barrel = v }),
		is("foaled", foaled, "year or date of birth; a year counts as its 31 December", "unknown: nobody rides it", func(h *model.Horse, v model.Date) { h.Foaled = v }),
		is("looks", text, "what a helper sees", "none", func(h *model.Horse, v string) { h.Looks = v }),
		is("kept", text, "stall or field", "none", func(h *model.Horse, v string) { h.Kept = v }).eg(`"stall 3"`),
		is("limits", into("limits", `{ day = "2 h", week_days = 4 }`, limitKeys), "work at most, where it is less than the house's", "the house's", func(h *model.Horse, set func(*model.Limits)) { set(&h.Limits) }),
		is("factor", factors, "how hard work is for it", `"100 %"`, func(h *model.Horse, v model.Percent) { h.Factor = v }).eg(`"120 %"`),
		is("mounting", texts, "mounting places it stands at", "not recorded", func(h *model.Horse, v []string) { h.Mounting = v }).eg(`["ramp", "block"]`),
		is("skills", texts, "what it can do", "none", func(h *model.Horse, v []string) { h.Skills = v }).eg(`["stands still"]`),
		is("levels", texts, "levels of riders it takes", "all", func(h *model.Horse, v []string) { h.Levels = v }).eg(`["beginner", "novice"]`),
		is("must_be_led", yes, "it is led whoever rides", "false", func(h *model.Horse, v bool) { h.MustLead = v }),
		is("load", loadShares, "most load as a share of its weight, where it is less than the house's", "the house's", func(h *model.Horse, v model.Percent) { h.LoadPercent = v }).eg(`"18 %"`),
		is("max_load", loads, "most load as a weight", "none of its own", func(h *model.Horse, v model.Grams) { h.MaxLoad = v }).eg(`"90 kg"`),
		is("max_load_support", loads, "most load with a rider who needs support", "none of its own", func(h *model.Horse, v model.Grams) { h.MaxSupport = v }).eg(`"80 kg"`),
		is("in_foal_until", dates, "it does not work up to this date", "not in foal", func(h *model.Horse, v model.Date) { h.InFoalUntil = v }),
		is("arrived", dates, "when it came; its quarantine begins then", "long ago", func(h *model.Horse, v model.Date) { h.Arrived = v }),
		is("quarantine_until", dates, "last date of its quarantine", "as long as the house's", func(h *model.Horse, v model.Date) { h.QuarantineUntil = v }),
		is("own_tack_only", list(tableForm("a time", `{ from = 2026-11-20 }`, markKeys), "a list of times"), "its tack goes to no other horse", "never", func(h *model.Horse, v []model.Span) { h.OwnTack = v }),
		is("days_off", periods, "when it does not work", "none", func(h *model.Horse, v []model.Period) { h.DaysOff = v }).eg(`["Sunday", 2026-11-30]`),
		is("out", list(outs, "a list of times out"), "when it is out lame, ill, by a vet's stop or for an appointment", "never", func(h *model.Horse, v []model.Out) { h.Out = v }),
		is("apart", list(horse, "a list of horses"), "never in one lesson with these", "none", func(h *model.Horse, v []*model.Horse) { h.Apart = v }).eg(`["Pepper"]`),
	},
}
