package folder

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

var tack = to("tack", `"S3"`, func(r *reader) *index[model.Piece] { return &r.pieces },
	func(tag string) *model.Piece { return &model.Piece{Tag: tag} })

// pieceOutEntry is a time out of use, as it is written.
type pieceOutEntry struct {
	model.PieceOut
	endedBy *model.Person
}

var pieceOutKeys = &table[pieceOutEntry]{
	head:  "[[tack.out]]",
	about: "A time in which the piece is not used. It is back when a named person has checked it.",
	keys: []key[pieceOutEntry]{
		is("why", text, "what is wrong with it", "", func(o *pieceOutEntry, v string) { o.Why = v }).eg(`"billet torn"`),
		is("from", instants, "since when", "", func(o *pieceOutEntry, v model.Instant) { o.From = v }),
		is("end", instants, "when it was checked", "not yet", func(o *pieceOutEntry, v model.Instant) { o.End = v }),
		is("ended_by", person, "who checked it; she has \"check\" in may_end", "nobody", func(o *pieceOutEntry, v *model.Person) { o.endedBy = v }),
	},
}

var pieceOuts = func() form[model.PieceOut] {
	f := tableForm("a time out", `{ why = "billet torn", from = 2026-11-24T16:00 }`, pieceOutKeys)
	return form[model.PieceOut]{words: f.words, like: f.like, sub: f.sub, read: func(r *reader, n *node) (model.PieceOut, bool) {
		o, ok := f.read(r, n)
		if ok && !o.End.IsZero() {
			if !o.From.Before(o.End) {
				r.mistake(n.spot("end"), fmt.Sprintf("it ends at %s, which is not after %s", o.End, o.From), "mend from or end")
			}
			r.mayEnd(n, o.endedBy, model.EndsCheck)
		}
		return o.PieceOut, ok
	}}
}()

var cleaningKeys = &table[model.Cleaning]{
	head:  "[[tack.cleaned]]",
	about: "A named person's word that the piece was cleaned.",
	keys: []key[model.Cleaning]{
		is("at", instants, "when", "", func(c *model.Cleaning, v model.Instant) { c.At = v }),
		is("by", person, "who; she has \"cleaning\" in may_end", "", func(c *model.Cleaning, v *model.Person) { c.By = v.Name }),
	},
}

// cleanings are checked for who may say so.
var cleanings = func() form[model.Cleaning] {
	f := tableForm("a cleaning", `{ at = 2026-11-24T17:00, by = "Jo Marsh" }`, cleaningKeys)
	return form[model.Cleaning]{words: f.words, like: f.like, sub: f.sub, read: func(r *reader, n *node) (model.Cleaning, bool) {
		c, ok := f.read(r, n)
		if by := r.persons.by[c.By]; ok && by != nil && !by.May(model.EndsCleaning) {
			r.mistake(n.spot("by"), fmt.Sprintf("%s may not end this", by.Name),
				r.whoMay(model.EndsCleaning, by))
		}
		return c, ok
	}}
}()

// kinds of tack: the known ones, and the house's own names for extras.
var (
	seatKinds  = []model.Kind{model.Saddle, model.Western, model.BarebackPad, model.Surcingle}
	knownKinds = append(slices.Clone(seatKinds), model.Girth, model.Pad)
	// oftenMeant are words that people use for a known kind.
	oftenMeant = map[string]model.Kind{
		"cinch": model.Girth, "saddle pad": model.Pad, "saddlepad": model.Pad, "numnah": model.Pad, "western": model.Western,
		"bareback": model.BarebackPad, "english saddle": model.Saddle, "dressage saddle": model.Saddle, "roller": model.Surcingle,
	}
)

var tackKind = func() form[model.Kind] {
	f := textForm("a kind of tack", `"saddle" or "western saddle" or "bareback pad" or "surcingle" or "girth" or "pad" or "safety stirrups"`,
		"Anything that is not one of the first six is an extra, by the house's own name for it.", kindOfTack)
	for _, k := range knownKinds {
		f.choices = append(f.choices, string(k))
	}
	f.free = true
	return f
}()

// extraKind is the kind of what a rider needs beside seat, pad and girth.
var extraKind = textForm("a kind of extra", `"safety stirrups" or "hand hold"`,
	"Anything but a seat, a pad or a girth, by the house's own name for it.", kindOfExtra)

func kindOfTack(s string) (model.Kind, error) {
	k := model.Kind(strings.ToLower(tidy(s)))
	if k == "" {
		return "", errForm
	}
	if slices.Contains(knownKinds, k) {
		return k, nil
	}
	meant, ok := oftenMeant[string(k)]
	for _, x := range knownKinds {
		if d := distance(string(k), string(x)); !ok && d > 0 && d <= (len(x)+2)/4 {
			meant, ok = x, true
		}
	}
	if ok {
		return "", fmt.Errorf("did you mean %q?", meant)
	}
	return k, nil
}

func kindOfExtra(s string) (model.Kind, error) {
	k := model.Kind(strings.ToLower(tidy(s)))
	switch {
	case k == "":
		return "", errForm
	case slices.Contains(knownKinds, k):
		return "", errors.New("seats, pads and girths come of themselves")
	}
	return k, nil
}

// tackEntry is a piece as it is written.
type tackEntry struct {
	*model.Piece
	billets  string
	family   model.Family
	ownGirth *bool
	size     string
}

var tackKeys = &table[tackEntry]{
	head:  "[[tack]]",
	about: "One physical, tagged thing of the tack room; a pair is one piece.",
	keys: []key[tackEntry]{
		is("tag", naming, "what is written on it, unique among pieces", "", func(t *tackEntry, v string) { t.Tag = v }).eg(`"S3"`),
		is("was", oldNames, "earlier tags", "none", func(t *tackEntry, v []string) { t.Was = v }).eg(`["S13"]`),
		is("kind", tackKind, "what it is", "", func(t *tackEntry, v model.Kind) { t.Kind = v }),
		is("style", text, "style of a seat, which riders accept or not: \"dressage\", \"jumping\" ...", "its kind", func(t *tackEntry, v string) { t.Style = v }).eg(`"dressage"`),
		is("billets", oneOf("a length of billets", "long", "short"), "of a seat: long billets take a short girth, short billets a long one", "unknown; a western saddle takes a cinch, a bareback pad or surcingle has a girth of its own", func(t *tackEntry, v string) { t.billets = v }),
		is("own_girth", yes, "of a seat: it carries its girth and takes no other", "true for a bareback pad or surcingle that states no billets", func(t *tackEntry, v bool) { t.ownGirth = &v }),
		is("family", oneOf("a family of girths", model.ShortGirth, model.LongGirth, model.Cinch), "of a girth", "unknown: goes on no seat", func(t *tackEntry, v model.Family) { t.family = v }),
		is("size", words("a size as printed", `"17 in" or "26 in" or "65 cm" or "cob"`), "of a saddle in inches, of a girth in inches or centimetres (label: inches times 2.5), of anything else as printed", "unknown: not checked", func(t *tackEntry, v string) { t.size = v }),
		is("weight", pieceWeights, "its weight", "assumed by its kind", func(t *tackEntry, v model.Grams) { t.Weight = v }),
		is("rack", text, "its spot in the tack room", "none", func(t *tackEntry, v string) { t.Rack = v }).eg(`"A1"`),
		is("looks", text, "what the eye finds; printed on every pull list", "none", func(t *tackEntry, v string) { t.Looks = v }).eg(`"blue tape, left buckle new"`),
		is("touches_skin", yes, "it lies on the horse's skin", "true for girths, pads, bareback pads and surcingles", func(t *tackEntry, v bool) { t.Skin = v }).eg(`false`),
		is("check_due", dates, "when its next check is due", "unknown: not checked", func(t *tackEntry, v model.Date) { t.CheckDue = v }),
		is("with_seat", tack, "it is kept with this seat and travels with it", "loose", func(t *tackEntry, v *model.Piece) { t.WithSeat = v }),
		is("with_horse", horse, "it is kept with this horse", "loose", func(t *tackEntry, v *model.Horse) { t.WithHorse = v }),
		is("bars", yes, "of a seat: stirrups can hang on it", "true for saddles and western saddles", func(t *tackEntry, v bool) { t.Bars = v }).eg(`false`),
		is("hangs_on_bars", yes, "of an extra: it hangs on a seat's bars", "true for anything called stirrups", func(t *tackEntry, v bool) { t.OnBars = v }),
		is("needs_pad", yes, "of a seat: a pad lies beneath it", "true", func(t *tackEntry, v bool) { t.NoPad = !v }).eg(`false`),
		is("goes_on", list(tackKind, "a list of kinds of seats"), "of an extra: the kinds of seats it goes on", "all", func(t *tackEntry, v []model.Kind) { t.GoesOn = v }).eg(`["saddle", "western saddle"]`),
		is("out", list(pieceOuts, "a list of times out"), "when it is out of use", "never", func(t *tackEntry, v []model.PieceOut) { t.Out = v }),
		is("cleaned", list(cleanings, "a list of cleanings"), "when it was cleaned, and by whom", "never", func(t *tackEntry, v []model.Cleaning) { t.Cleaned = v }),
	},
}

// only says which kinds a key of [[tack]] is for.
var only = []struct {
	key  string
	has  func(model.Kind) bool
	what string
}{
	{"style", model.Kind.IsSeat, "a seat"},
	{"billets", func(k model.Kind) bool { return k.IsSeat() && k != model.Western }, "a saddle, bareback pad or surcingle"},
	{"own_girth", model.Kind.IsSeat, "a seat"},
	{"family", func(k model.Kind) bool { return k == model.Girth }, "a girth"},
	{"bars", model.Kind.IsSeat, "a seat"},
	{"needs_pad", model.Kind.IsSeat, "a seat"},
	{"hangs_on_bars", model.Kind.IsExtra, "an extra"},
	{"goes_on", model.Kind.IsExtra, "an extra"},
	{"with_seat", func(k model.Kind) bool { return !k.IsSeat() }, "anything but a seat"},
}

// finish gives a piece what its kind gives it where the file says nothing.
func (t *tackEntry) finish(r *reader, n *node) {
	p := t.Piece
	for _, o := range only {
		if k := n.get(o.key); k != nil && p.Kind != "" && !o.has(p.Kind) {
			mend := "leave it out, or mend kind"
			if o.key == "billets" && p.Kind == model.Girth {
				mend = `of a girth say family: "short" goes on long billets, "long" on short ones`
			}
			r.mistake(k.span(), fmt.Sprintf("%s is for %s, and %s is a %s", o.key, o.what, p.Tag, p.Kind), mend)
		}
	}
	if n.get("touches_skin") == nil {
		p.Skin = p.Kind.TouchesSkin()
	}
	if n.get("bars") == nil {
		p.Bars = p.Kind.HasBars()
	}
	if n.get("hangs_on_bars") == nil {
		p.OnBars = p.Kind.IsExtra() && p.Kind.HangsOnBars()
	}
	if p.Style == "" && p.Kind.IsSeat() {
		p.Style = string(p.Kind)
	}
	p.Family = t.girthing(r, n)
	t.sized(r, n)
	if p.WithSeat != nil && p.WithHorse != nil {
		r.mistake(n.spot("with_horse"), fmt.Sprintf("%s is kept with a seat and with a horse", p.Tag), "leave one of them out")
	}
	for i, k := range p.GoesOn {
		if !k.IsSeat() {
			r.mistake(r.at(p, "goes_on", i), fmt.Sprintf("%q is no kind of seat", k), `seats are: "saddle", "western saddle", "bareback pad", "surcingle"`)
		}
	}
}

func (t *tackEntry) girthing(r *reader, n *node) model.Family {
	switch {
	case t.Kind == model.Girth:
		return t.family
	case !t.Kind.IsSeat():
		return model.NoFamily
	case t.ownGirth != nil && *t.ownGirth:
		if t.billets != "" {
			r.mistake(n.spot("billets"), fmt.Sprintf("%s has a girth of its own, and billets for another", t.Tag), "leave one of them out")
		}
		return model.OwnGirth
	case t.billets == "long":
		return model.ShortGirth
	case t.billets == "short":
		return model.LongGirth
	case t.Kind == model.Western:
		return model.Cinch
	case (t.Kind == model.BarebackPad || t.Kind == model.Surcingle) && t.ownGirth == nil:
		return model.OwnGirth
	}
	return model.NoFamily
}

func (t *tackEntry) sized(r *reader, n *node) {
	at := n.get("size")
	switch {
	case at == nil || t.size == "":
	case t.Kind == model.Girth:
		f := textForm("a girth's size", `"26 in" or "65 cm"`, "", func(s string) (model.Label, error) {
			e, err := rangeOf(girthSize, 120, 640, "girths are between 12 in and 64 in")(s)
			if e.lo != e.hi && err == nil {
				err = errForm
			}
			return e.lo, err
		})
		t.Label, _ = f.read(r, at.val)
	case t.Kind == model.Saddle || t.Kind == model.Western:
		f := within(textForm("a seat's size", `"17 in" or "17.5 in"`, "", seatSize), 90, 220, "seats are between 9 in and 22 in")
		t.Label, _ = f.read(r, at.val)
	default:
		t.Size = t.size
	}
}
