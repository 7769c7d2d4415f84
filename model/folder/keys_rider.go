package folder

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

var rider = to("rider", `"Ada Grey"`, func(r *reader) *index[model.Rider] { return &r.riders },
	func(name string) *model.Rider { return &model.Rider{Name: name, First: firstName(name)} })

// riderEntry is a rider as it is written.
type riderEntry struct {
	*model.Rider
	seat, thigh ends2[model.Label]
	likes       []model.Liking
	dislikes    []model.Liking
}

var extraKeys = &table[model.ExtraNeed]{
	head:  "an extra such as { kind = \"hand hold\", size = \"small\" }",
	about: "What a rider needs beside seat, pad and girth.",
	keys: []key[model.ExtraNeed]{
		is("kind", extraKind, "what it is, by the name that [[tack]] has for it", "", func(e *model.ExtraNeed, v model.Kind) { e.Kind = v }),
		is("size", text, "its size as printed", "any", func(e *model.ExtraNeed, v string) { e.Size = v }).eg(`"small"`),
	},
}

var extra = or(textForm("a kind of extra", `"safety stirrups" or { kind = "hand hold", size = "small" }`, "", func(s string) (model.ExtraNeed, error) {
	k, err := kindOfExtra(s)
	return model.ExtraNeed{Kind: k}, err
}), tableForm("an extra", "", extraKeys), `"safety stirrups" or { kind = "hand hold", size = "small" }`)

var likingKeys = &table[model.Liking]{
	head:  "a wish such as { horse = \"Duke\", weight = 4 }",
	about: "A rider's wish for, or against, a horse or a seat.",
	keys: []key[model.Liking]{
		is("horse", horse, "the horse", "see seat", func(l *model.Liking, v *model.Horse) { l.Horse = v }),
		is("seat", tack, "tag of the seat", "see horse", func(l *model.Liking, v *model.Piece) { l.Seat = v }),
		is("weight", plainChoice("a weight of a wish", 1, 2, 4), "how much it counts", "1", func(l *model.Liking, v int) { l.Weight = v }),
	},
}

// liking is the name of a horse, the tag of a seat or a table.
var liking = func() form[model.Liking] {
	asTable := tableForm("a wish", "", likingKeys)
	f := form[model.Liking]{words: "the name of a horse or the tag of a seat", sub: asTable.sub,
		like: `"Duke" or { horse = "Duke", weight = 4 } or { seat = "S3", weight = 2 }`}
	f.read = func(r *reader, n *node) (model.Liking, bool) {
		switch n.kind {
		case unstable.InlineTable:
			l, ok := asTable.read(r, n)
			if l.Weight == 0 {
				l.Weight = 1
			}
			if ok && (l.Horse == nil) == (l.Seat == nil) {
				r.mistake(n.span(), "a wish names either a horse or a seat", "write it like "+f.like)
				return l, false
			}
			return l, ok
		case unstable.String:
			h, p := r.horses.by[n.text], r.pieces.by[n.text]
			switch {
			case h != nil && p != nil:
				r.mistake(n.span(), fmt.Sprintf("%q is a horse and a piece of tack", n.text),
					fmt.Sprintf("write { horse = %q } or { seat = %q }", n.text, n.text))
				return model.Liking{}, false
			case p != nil:
				return model.Liking{Seat: p, Weight: 1}, true
			}
			known := append(append([]string(nil), r.horses.known...), r.pieces.known...)
			if h == nil && len(known) > 0 {
				r.mistake(n.span(), fmt.Sprintf("there is no horse and no piece of tack %q", n.text), didYouMean(n.text, known))
				return model.Liking{}, false
			}
			h, ok := horse.read(r, n)
			return model.Liking{Horse: h, Weight: 1}, ok
		}
		notA(r, n, f)
		return model.Liking{}, false
	}
	return f
}()

var riderKeys = &table[riderEntry]{
	head:  "[[rider]]",
	about: "Somebody who takes lessons. Sheets show the first name alone.",
	keys: []key[riderEntry]{
		is("name", naming, "name, unique among riders; never on a sheet", "", func(e *riderEntry, v string) { e.Name = v }),
		is("was", oldNames, "earlier names", "none", func(e *riderEntry, v []string) { e.Was = v }).eg(`["Ada Bell"]`),
		is("first", text, "first name, for sheets", "the first word of the name; of \"Grey, Ada\" the first behind the comma", func(e *riderEntry, v string) { e.First = v }).eg(`"Ada"`),
		is("mark", words("a short mark", `"B."`), "tells two riders of one first name apart", "none; where two share one as much of the surname as tells them apart", func(e *riderEntry, v string) { e.Mark = v }),
		is("weight", riderWeights, "dressed to ride", "unknown: she does not ride", func(e *riderEntry, v model.Grams) { e.Weight = v }),
		is("height", riderHeights, "her height", "unknown: not checked", func(e *riderEntry, v model.Length) { e.Height = v }).eg(`"163 cm"`),
		is("seat", seatSizes, "size of English seats that fit her", "by thigh; else unknown: not checked", func(e *riderEntry, v ends2[model.Label]) { e.seat = v }),
		is("thigh", thighs, "buttock to knee; gives the seat by the trade chart, half an inch either way", "unknown", func(e *riderEntry, v model.Length) { e.thigh = around(model.SeatByThigh(v)) }).eg(`"20 in"`),
		is("support", yes, "she needs support, so that the ride is adaptive", "false", func(e *riderEntry, v bool) { e.Support = v }),
		is("level", text, "her level, one of the house's", "unknown: not checked", func(e *riderEntry, v string) { e.Level = v }).eg(`"beginner"`),
		is("mounting", texts, "mounting places that she can use", "any", func(e *riderEntry, v []string) { e.Mounting = v }).eg(`["ramp"]`),
		is("mounting_time", mountTime, "how long mounting takes her", "not stated", func(e *riderEntry, v int) { e.MountMinutes = v }).eg(`"4 min"`),
		is("barrels", list(oneOf("a barrel", model.Narrow, model.Medium, model.Wide), "a list of barrels"), "barrels of horses that suit her", "any", func(e *riderEntry, v []model.Barrel) { e.Barrels = v }).eg(`["wide", "medium"]`),
		is("horse_height", horseHeights, "heights of horses that suit her", "any", func(e *riderEntry, v ends2[model.Length]) { e.HorseMin, e.HorseMax = v.lo, v.hi }),
		is("skills", texts, "what her horse must be able to do", "nothing", func(e *riderEntry, v []string) { e.Skills = v }).eg(`["stands still"]`),
		is("styles", texts, "styles of seat that she accepts, best first", "any", func(e *riderEntry, v []string) { e.Styles = v }).eg(`["dressage", "bareback pad"]`),
		is("extras", list(extra, "a list of kinds of tack"), "what she needs beside", "nothing", func(e *riderEntry, v []model.ExtraNeed) { e.Extras = v }).eg(`["safety stirrups", { kind = "hand hold", size = "small" }]`),
		is("leader", yes, "she needs a leader", "false", func(e *riderEntry, v bool) { e.Leader = v }),
		is("sidewalkers", plainChoice("a number of sidewalkers", 0, 1, 2), "sidewalkers that she needs", "0", func(e *riderEntry, v int) { e.Sidewalkers = v }).eg(`2`),
		is("form_until", dates, "last date on which her form is valid", "unknown: she does not ride, unless forms are kept elsewhere", func(e *riderEntry, v model.Date) { e.FormUntil = v }),
		is("usual_horse", horse, "her usual horse, where no term says", "that of the term, else the one ridden most of late", func(e *riderEntry, v *model.Horse) { e.Usual = v }),
		is("never_on", list(horse, "a list of horses"), "horses that she must not ride", "none", func(e *riderEntry, v []*model.Horse) { e.Bans = v }),
		is("ride_first", yes, "of those who could be left on the ground she is the last", "false", func(e *riderEntry, v bool) { e.RideFirst = v }),
		is("likes", list(liking, "a list of horses and seats"), "horses and seats that she likes", "none", func(e *riderEntry, v []model.Liking) { e.likes = v }).eg(`["Duke", { seat = "S3", weight = 2 }]`),
		is("dislikes", list(liking, "a list of horses and seats"), "horses and seats that she dislikes", "none", func(e *riderEntry, v []model.Liking) { e.dislikes = v }),
		is("sessions", within(integer, 1, 7, "it is between 1 and 7"), "lessons that she wants in a week", "not stated", func(e *riderEntry, v int) { e.Sessions = v }).eg(`1`),
		is("free", periods, "when she could come", "not stated", func(e *riderEntry, v []model.Period) { e.Free = v }).eg(`["Wednesday", { weekdays = ["Mon", "Tue"], start = 15:00, end = 18:00 }]`),
		is("waiting_since", dates, "since when she is on the wait list", "she is not", func(e *riderEntry, v model.Date) { e.WaitingSince = v }),
		is("may_change", oneOf("a readiness to change lessons", model.ChangeFreely, model.ChangeAsk, model.ChangeNever), "whether she may be moved to another lesson", `"ask first"`, func(e *riderEntry, v model.MayChange) { e.MayChange = v }),
		is("cautions", texts, "for the instructor's sheet alone", "none", func(e *riderEntry, v []string) { e.Cautions = v }).eg(`["latex"]`),
		is("wears", texts, "what she herself wears: helmet size, gait belt ...", "none", func(e *riderEntry, v []string) { e.Wears = v }).eg(`["helmet M", "gait belt"]`),
		is("away", periods, "when she is away", "never", func(e *riderEntry, v []model.Period) { e.Away = v }),
	},
}

// finish puts together what the entry says in several keys.
func (e *riderEntry) finish(r *reader, n *node) {
	if e.First == "" {
		e.First = firstName(e.Name)
	}
	if e.MayChange == "" {
		e.MayChange = model.ChangeAsk
	}
	size := e.seat
	if n.get("seat") == nil {
		size = e.thigh
	}
	e.SeatMin, e.SeatMax = size.lo, size.hi
	e.Likings = append([]model.Liking(nil), e.likes...)
	for _, l := range e.dislikes {
		l.Dislike = true
		e.Likings = append(e.Likings, l)
	}
	for i, d := range e.dislikes {
		for _, l := range e.likes {
			if d.Horse == l.Horse && d.Seat == l.Seat {
				r.mistake(r.at(e.Rider, "dislikes", i), fmt.Sprintf("%s both likes and dislikes it", e.Name), "leave one of them out")
			}
		}
	}
}

// firstName is the first word of a name; of one written "Marsh, Cleo" the first
// behind the comma, so that no sheet shows a surname.
func firstName(name string) string {
	if _, behind, ok := strings.Cut(name, ","); ok && strings.TrimSpace(behind) != "" {
		name = strings.TrimSpace(behind)
	}
	first, _, _ := strings.Cut(name, " ")
	return strings.TrimSuffix(first, ",")
}
