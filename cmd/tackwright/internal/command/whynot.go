package command

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/solver"
)

var whyNotCommand = &command{
	name: "whynot", args: "FOLDER RIDER",
	short: "say why a rider is not on a horse, in a seat, or in another lesson",
	about: `Says why a ride is not on the horse of --horse, or not in the seat of --seat (or
one alike), in the plan that was posted for its date, else in the pencilled one:
what forbids it even with every other open ride on the ground, and that is the
end of it; else at what price it is possible, with the goals before and after.
Where it cannot be with all that ride now, the reason says what forbids that.
With --seat alone it is asked of the horse that the ride has.

With --lesson, or --at for the one that begins then, it is asked why she does not
ride in that lesson in the place of hers, on its date or --on another of the plan:
its kind, level, size and her hours come first, then the rest as above.

RIDER is the rider's name, or its beginning. Where she has more than one ride,
say the date, and the time where she has two on it. Rules of care are never bent.
`,
	example: "tackwright whynot examples/sallowdene Barnaby --date 2026-10-17 --horse Quince",
	least:   2, most: 2, answer: whyNotAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o rideOptions
		horse := fs.String("horse", "", "the horse of this `NAME`")
		seat := fs.String("seat", "", "the seat of this `TAG`")
		var l lessonOptions
		fs.StringVar(&l.lesson, "lesson", "", "the lesson of this `NAME`")
		fs.StringVar(&l.at, "at", "", "the lesson that begins at this `TIME`")
		fs.StringVar(&l.on, "on", "", "the lesson on this `DATE`; the ride's if not said")
		o.flags(fs)
		return func(c *call) error {
			switch {
			case l == lessonOptions{}:
				return whyNot(c, &o, *horse, *seat)
			case *horse+*seat != "":
				return wrongUse("ask of a horse and a seat, or of a lesson; not of both at once")
			}
			return whyNotIn(c, &o, &l)
		}
	},
}

func whyNot(c *call, o *rideOptions, horse, seat string) error {
	if horse+seat == "" {
		return wrongUse("say what is asked for: --horse NAME, --seat TAG or both; or --lesson NAME")
	}
	q, err := o.ask(c, "to be planned", func(r *model.Ride, p *model.Plan) bool { return r.State == model.Open })
	if err != nil {
		return err
	}
	a := &whyNotAnswer{Ride: askedOf(q.ride, q.plan)}
	now := q.plan.Turns[q.ride.Index]
	var h *model.Horse
	switch {
	case horse != "":
		if h, err = horseNamed(q.week.Centre, horse); err != nil {
			return err
		}
	case now == nil:
		return no("%s is on the ground; say a horse too: --horse NAME", q.ride)
	default:
		h = now.Horse
	}
	a.Horse = h.Name
	var piece *model.Piece
	if seat != "" {
		if piece, err = pieceTagged(q.week.Centre, seat); err != nil {
			return err
		}
		if !piece.IsSeat() {
			return no("%s is a %s, not a seat", piece.Tag, piece.Kind)
		}
		a.Seat = piece.Tag
	}
	if now != nil && now.Horse == h && (piece == nil || q.week.Alike(piece) == q.week.Alike(now.Seat)) {
		return no("%s has that: %s in %s", q.ride, h.Name, now.Seat.Tag)
	}
	ctx, cancel := context.WithTimeout(c.ctx, o.limit)
	defer cancel()
	found, err := solver.WhyPairing(ctx, q.week, q.plan, q.ride, h, piece)
	if err != nil {
		return err
	}
	a.fill(q, found)
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(q))
}

// whyNotAnswer is what whynot says as JSON.
type whyNotAnswer struct {
	Ride     askedRide `json:"ride" about:"that is asked about"`
	Horse    string    `json:"horse,omitempty" about:"asked for"`
	Seat     string    `json:"seat,omitempty" about:"asked for, or one alike; tag"`
	Lesson   string    `json:"lesson,omitempty" about:"asked for, in the place of the ride's"`
	On       string    `json:"on,omitempty" about:"its date"`
	Alone    string    `json:"alone,omitempty" about:"what forbids it with every other open ride on the ground; none: it is possible"`
	Rule     string    `json:"rule,omitempty" about:"that forbids it, where it is one"`
	Care     bool      `json:"care_alone,omitempty" about:"that is a rule of care, which is never bent"`
	Together *together `json:"together,omitempty" about:"why it cannot be with all that ride now"`
	Choice   *choice   `json:"choice,omitempty" about:"plans in which it is so"`
	Take     string    `json:"take,omitempty" about:"the command that changes the lesson, where all that ride now still can"`
	Said     []string  `json:"said" about:"all of this in sentences"`
}

func (a *whyNotAnswer) fill(q *asked, found *solver.WhyNot) {
	a.Alone = strings.ReplaceAll(found.Alone, "the horse", a.Horse)
	if found.Rule != nil {
		a.Rule, a.Care = found.Rule.Name, found.Rule.Class == model.Care
	}
	a.Together, a.Choice = togetherOf(q, found.Together), choiceOf(q, found.Choice)
	a.Said = a.say()
}

func (a *whyNotAnswer) say() []string {
	if a.Alone != "" {
		said := []string{"Even with every other open ride on the ground that cannot be.", model.Sentence(a.Alone)}
		if a.Care {
			said = append(said, "That is a rule of care, and those are never bent.")
		}
		return said
	}
	var said []string
	if a.Together != nil {
		said = append(append(said, "That cannot be with all that ride now."), a.Together.Said...)
	}
	return append(said, a.Choice.cost()...)
}

// cost tells what something is possible at the price of.
func (c *choice) cost() []string {
	if c == nil || c.Price == nil {
		return []string{"At what price it could be was not found in the time given."}
	}
	said := "It is possible, at no price: a plan with it is as good in every goal."
	switch worse, better := c.Price.differences(); {
	case len(worse)+len(better) == 0:
	case len(better) == 0:
		said = "It is possible, at the price of: " + strings.Join(worse, "; ") + "."
	case len(worse) == 0:
		said = "It is possible, and better in: " + strings.Join(better, "; ") + "."
	case c.Price.gains():
		said = "It is possible, and better in: " + strings.Join(better, "; ") + "; at the price of: " + strings.Join(worse, "; ") + "."
	default:
		said = "It is possible, at the price of: " + strings.Join(worse, "; ") + "; better then: " + strings.Join(better, "; ") + "."
	}
	all := []string{said}
	if c.Fewer > 0 && c.Proved {
		all = append(all, fmt.Sprintf("At least %d more would be on the ground (proved).", c.Fewer))
	}
	if down := c.Price.stoodDown(); len(down) > 0 {
		all = append(all, fmt.Sprintf("It would take the place of %s.", namesOfRides(down)))
	}
	if !c.Price.Settled {
		all = append(all, "That is the best found in the time given, and not proved.")
	}
	return all
}

// stoodDown are the rides that would be on the ground.
func (p *price) stoodDown() []askedRide {
	var all []askedRide
	for _, x := range p.Changes {
		if x.Now == "" {
			all = append(all, x.askedRide)
		}
	}
	return all
}

// gains reports whether the first goal that differs is better.
func (p *price) gains() bool {
	i := slices.IndexFunc(p.Goals, func(g goalPrice) bool { return g.Before != g.After })
	return i >= 0 && p.Goals[i].After < p.Goals[i].Before
}

// differences are the goals in which a plan is worse, and those in which it is
// better, in their order.
func (p *price) differences() (worse, better []string) {
	for _, g := range p.Goals {
		words := fmt.Sprintf("%s, %d now and %d then", g.Words, g.Before, g.After)
		switch {
		case g.After > g.Before:
			worse = append(worse, words)
		case g.After < g.Before:
			better = append(better, words)
		}
	}
	return worse, better
}

func (a *whyNotAnswer) text(q *asked) string {
	var b strings.Builder
	wanted := a.Horse
	if a.Lesson != "" {
		wanted = a.Lesson
	}
	if a.Seat != "" {
		wanted += " in " + a.Seat
	}
	now := "is on the ground"
	if t := q.plan.Turns[q.ride.Index]; t != nil {
		now = fmt.Sprintf("rides %s in %s", t.Horse.Name, t.Seat.Tag)
	}
	fmt.Fprintf(&b, "%s (%s) %s. Why not %s?\n\n", q.ride, q.ride.Meeting.Name, now, wanted)
	for _, s := range a.Said {
		b.WriteString(wrap("", s))
	}
	if p := a.price(); p != nil {
		p.changes(&b)
	}
	if a.Take != "" {
		b.WriteString("\nTo have it:\n  " + a.Take + "\n")
	}
	return b.String()
}

func (a *whyNotAnswer) price() *price {
	if a.Choice == nil {
		return nil
	}
	return a.Choice.Price
}

func orGround(horse string) string {
	if horse == "" {
		return "on the ground"
	}
	return horse
}
