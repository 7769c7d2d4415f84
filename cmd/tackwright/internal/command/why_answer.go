package command

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
	"tackwright/solver"
)

// whyAnswer is what why says as JSON. Riders go by first name and mark.
type whyAnswer struct {
	Ride     askedRide `json:"ride" about:"that is on the ground"`
	Alone    []string  `json:"alone" about:"what stands in its way with every other open ride on the ground; none: it could ride"`
	Free     []string  `json:"free_alone" about:"horses that could carry it then"`
	Together *together `json:"together,omitempty" about:"why it cannot ride with all that ride now"`
	Better   *price    `json:"better,omitempty" about:"a plan in which it rides with all that ride now, where there is one"`
	Choice   *choice   `json:"choice,omitempty" about:"plans in which it rides"`
	Next     string    `json:"next" about:"the command that takes the better plan, else the one that says what would help"`
	Said     []string  `json:"said" about:"all of this in sentences"`
}

type askedRide struct {
	Date   string `json:"date"`
	Start  string `json:"start" about:"24-hour clock"`
	Lesson string `json:"lesson"`
	Rider  string `json:"rider" about:"first name, and a mark where two share it"`
	Horse  string `json:"horse,omitempty" about:"that it has in the plan; none: on the ground"`

	words string // the ride as people here read it
}

type together struct {
	Rides       []askedRide `json:"rides" about:"that ride besides"`
	Rules       []string    `json:"rules" about:"names of the rules that take part"`
	Care        bool        `json:"care_alone" about:"they are all rules of care, which are never bent"`
	Irreducible bool        `json:"irreducible" about:"without any one of rides and limits the others forbid nothing"`
	Said        []string    `json:"said" about:"the reason in sentences"`
}

type choice struct {
	Fewer     int         `json:"fewer" about:"rides that the best plan with it has less than this one; 0: as many could ride"`
	Proved    bool        `json:"proved" about:"that is the least"`
	Displaced []askedRide `json:"displaced" about:"that ride now and would not; as few as can be where fewest is true"`
	Fewest    bool        `json:"fewest"`
	Price     *price      `json:"price,omitempty" about:"what the best plan with it costs"`
}

type price struct {
	Decides string      `json:"decides,omitempty" about:"the first goal in which the plans differ; none: a tie"`
	Settled bool        `json:"settled" about:"that is proved"`
	Near    bool        `json:"near,omitempty" about:"of the plans that leave other dates as they are; others were not looked at long enough"`
	Goals   []goalPrice `json:"goals"`
	Changes []moved     `json:"changes" about:"rides that have another horse, or none"`
}

type goalPrice struct {
	Name   string `json:"name"`
	Words  string `json:"words" about:"what is counted; less is better"`
	Before int    `json:"before" about:"in the plan"`
	After  int    `json:"after" about:"in the one with what is asked for"`
}

type moved struct {
	askedRide
	Now string `json:"now,omitempty" about:"its horse then; none: on the ground"`
}

func askedOf(r *model.Ride, p *model.Plan) askedRide {
	a := askedRide{Date: r.Date().String(), Start: r.Start.String(), Lesson: r.Meeting.Name, Rider: r.Rider.Called(), words: r.String()}
	if t := p.Turns[r.Index]; t != nil {
		a.Horse = t.Horse.Name
	}
	return a
}

func whyOf(q *asked, found *solver.Why) *whyAnswer {
	a := &whyAnswer{Ride: askedOf(q.ride, q.plan), Alone: found.Alone}
	for _, h := range found.Free {
		a.Free = append(a.Free, h.Name)
	}
	if found.Better != nil {
		a.Better = priceOf(q, found.Better, q.week.Score(q.plan), q.week.Score(found.Better))
	}
	a.Together = togetherOf(q, found.Together)
	if found.Better == nil {
		a.Choice = choiceOf(q, found.Choice)
	}
	a.Said = a.say(q, found)
	return a
}

func togetherOf(q *asked, r *solver.Reason) *together {
	if r == nil {
		return nil
	}
	t := &together{Care: r.Care() && len(r.Limits) > 0, Irreducible: r.Irreducible, Said: r.Sentences(q.week)}
	for _, x := range r.Rides {
		t.Rides = append(t.Rides, askedOf(x, q.plan))
	}
	for _, l := range r.Limits {
		if !slices.Contains(t.Rules, l.Rule.Name) {
			t.Rules = append(t.Rules, l.Rule.Name)
		}
	}
	return t
}

func choiceOf(q *asked, x *solver.Choice) *choice {
	if x == nil {
		return nil
	}
	c := &choice{Fewer: x.With - x.Ground, Proved: x.Proved, Fewest: x.Fewest}
	for _, r := range x.Displaced {
		c.Displaced = append(c.Displaced, askedOf(r, q.plan))
	}
	if p := x.Price; p != nil {
		c.Price = priceOf(q, p.Plan, p.Before, p.After)
		c.Price.Settled, c.Price.Near = p.Settled, p.Near
		if p.Decides >= 0 {
			c.Price.Decides = p.Before[p.Decides].Name
		}
	}
	return c
}

// changes lists who has another horse, or none.
func (p *price) changes(b *strings.Builder) {
	if len(p.Changes) == 0 {
		return
	}
	b.WriteString("\nWHAT WOULD CHANGE\n")
	for _, x := range p.Changes {
		fmt.Fprintf(b, "  %s: %s, not %s\n", x.words, orGround(x.Now), orGround(x.Horse))
	}
}

func priceOf(q *asked, with *model.Plan, before, after []model.GoalValue) *price {
	p := &price{}
	for i, g := range before {
		p.Goals = append(p.Goals, goalPrice{g.Name, g.Words, g.Value, after[i].Value})
	}
	for i, r := range q.week.Rides {
		was, now := q.plan.Turns[i], with.Turns[i]
		if r.State != model.Open || (was == nil) == (now == nil) && (was == nil || was.Horse == now.Horse) {
			continue
		}
		c := moved{askedRide: askedOf(r, q.plan)}
		if now != nil {
			c.Now = now.Horse.Name
		}
		p.Changes = append(p.Changes, c)
	}
	return p
}

// say tells it in a few sentences.
func (a *whyAnswer) say(q *asked, found *solver.Why) []string {
	name := q.ride.Rider.Called()
	switch {
	case len(found.Free) == 0:
		said := []string{"Even with every other open ride on the ground " + name + " cannot ride."}
		for _, why := range found.Alone {
			said = append(said, model.Sentence(why))
		}
		return said
	case a.Better != nil:
		return []string{name + " can ride with all that ride now: the plan was not proved to seat the most, and a better one is there.",
			"Nothing else need change."}
	}
	var said []string
	if t := a.Together; t != nil {
		said = append(said, fmt.Sprintf("%s could ride alone, and not with all that ride now.", name))
		said = append(said, t.Said...)
		if !t.Irreducible && found.Together.Work == nil {
			said = append(said, "The time was over before each part of this was tried: some may not be needed.")
		}
	} else {
		said = append(said, fmt.Sprintf("%s could ride alone; why not with all that ride now was not found in the time given (--limit).", name))
		if q.seatsMost() {
			said = append(said, "No plan seats more than this one, which was proved when it was made.")
		}
	}
	return append(said, a.Choice.say(q, name)...)
}

// seatsMost reports whether the plan carries a proof that no other seats more.
func (q *asked) seatsMost() bool {
	goals := q.plan.Proof.Goals
	return len(goals) > 0 && goals[0].Name == "seat a" && goals[0].Proved && q.week.ProofCovers(q.plan)
}

// say tells what there is to choose.
func (c *choice) say(q *asked, name string) []string {
	switch {
	case c == nil:
		return []string{"Whether as many could ride with " + name + " among them was not found in the time given."}
	case c.Fewer > 0 && !c.Proved:
		return []string{fmt.Sprintf("Whether as many could ride with %s among them is not known: the best found has %d fewer.", name, c.Fewer)}
	case c.Fewer > 0:
		return []string{fmt.Sprintf("No plan with %s seats as many as this one: at least %d more would stay on the ground (proved), as with %s there.",
			name, c.Fewer, namesOfRides(c.Displaced))}
	}
	said := fmt.Sprintf("It was a choice: as many could ride with %s in the place of %s.", name, namesOfRides(c.Displaced))
	switch p := c.Price; {
	case p == nil:
		return []string{said, "Which goal decided was not found in the time given."}
	case p.Decides == "" && p.Settled:
		return []string{said, "It is a tie: that plan is as good in every goal."}
	case p.Decides == "":
		return []string{said, "No goal was found that decided."}
	default:
		return []string{said, p.decided(q.file == "")}
	}
}

// decided tells the goal by which a plan was chosen before another. What is posted was told, so a better
// plan of the week is none of the day.
func (p *price) decided(posted bool) string {
	i := slices.IndexFunc(p.Goals, func(g goalPrice) bool { return g.Name == p.Decides })
	g := p.Goals[i]
	switch {
	case g.After < g.Before && posted:
		return fmt.Sprintf("By the goals of a week that would be better: %s, %d now and %d then. But what is posted was told, and a repair stands nobody down for it.", g.Words, g.Before, g.After)
	case g.After < g.Before:
		return fmt.Sprintf("That would even be better: %s, %d now and %d then; this plan was not proved to be best.", g.Words, g.Before, g.After)
	case p.Settled && p.Near:
		return fmt.Sprintf("With the other dates as they are, this decided: %s, %d now and %d then.", g.Words, g.Before, g.After)
	case !p.Settled:
		return fmt.Sprintf("As far as was found, this decided: %s, %d now and %d then.", g.Words, g.Before, g.After)
	}
	return fmt.Sprintf("This decided: %s, %d now and %d then.", g.Words, g.Before, g.After)
}

func namesOfRides(all []askedRide) string {
	var names []string
	for _, r := range all {
		names = append(names, fmt.Sprintf("%s (%s)", r.Rider, r.Lesson))
	}
	if n := len(names) - 1; n > 0 {
		return strings.Join(names[:n], ", ") + " and " + names[n]
	}
	return strings.Join(names, "")
}

func (a *whyAnswer) text(q *asked) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s (%s) is on the ground.\n\n", q.ride, q.ride.Meeting.Name)
	for _, s := range a.Said {
		b.WriteString(wrap("", s))
	}
	if a.Better != nil {
		a.Better.changes(&b)
		b.WriteString("\nTo have it:\n")
	} else {
		b.WriteString("\nWhat would help:\n")
	}
	b.WriteString("  " + a.Next + "\n")
	return b.String()
}
