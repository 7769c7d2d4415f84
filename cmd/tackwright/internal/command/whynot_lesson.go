package command

import (
	"context"
	"fmt"
	"strings"

	"tackwright/model"
	"tackwright/solver"
)

// lessonOptions say which other lesson is asked about.
type lessonOptions struct{ lesson, at, on string }

// meeting is the lesson that is meant.
func (l *lessonOptions) meeting(q *asked) (*model.Meeting, error) {
	date, err := q.dateOn(l.on, q.ride)
	if err != nil {
		return nil, err
	}
	if l.lesson != "" {
		return meetingNamed(q.week, l.lesson, date)
	}
	if l.at == "" {
		return nil, wrongUse("say which lesson of that date: --lesson NAME, or --at TIME")
	}
	at, err := timeOfDay(l.at)
	if err != nil {
		return nil, err
	}
	var found, names []string
	var m *model.Meeting
	for _, x := range q.week.Meetings {
		if x.Date != date || x == q.ride.Meeting {
			continue
		}
		names = append(names, x.Name)
		if x.Start == at {
			m, found = x, append(found, x.Name)
		}
	}
	switch {
	case len(found) == 1:
		return m, nil
	case len(found) > 1:
		return nil, no("more than one lesson begins then: %s; say which with --lesson", strings.Join(found, ", "))
	case len(names) == 0:
		return nil, no("the plan has no other lesson on %s", date.Words())
	}
	return nil, no("no lesson begins then; on %s there are: %s", date.Words(), strings.Join(names, ", "))
}

// dateOn is the --on that was typed, a weekday being one of the
// plan; "" is the ride's.
func (q *asked) dateOn(said string, r *model.Ride) (model.Date, error) {
	if said == "" {
		return r.Date(), nil
	}
	switch strings.ToLower(said) {
	case "today", "tomorrow":
		return q.clock.date(said)
	}
	return clock{model.Clock{Today: q.week.From}}.date(said)
}

func whyNotIn(c *call, o *rideOptions, l *lessonOptions) error {
	q, err := o.ask(c, "to be planned", func(r *model.Ride, p *model.Plan) bool { return r.State == model.Open })
	if err != nil {
		return err
	}
	m, err := l.meeting(q)
	switch {
	case err != nil:
		return err
	case m == q.ride.Meeting:
		return no("%s rides in %s", q.ride, m.Name)
	}
	ctx, cancel := context.WithTimeout(c.ctx, o.limit)
	defer cancel()
	found, err := solver.WhyNotIn(ctx, q.week, q.plan, q.ride, m)
	if err != nil {
		return err
	}
	a := &whyNotAnswer{Ride: askedOf(q.ride, q.plan), Lesson: m.Name, On: m.Date.String()}
	a.fillLesson(q, found)
	if a.canChange() {
		a.Take = o.changeLine(c, q, q.ride.Rider, q.ride.Date(), m.Name, m.Date).typed(byName...)
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(q))
}

func (a *whyNotAnswer) fillLesson(q *asked, found *solver.WhyLesson) {
	name := q.ride.Rider.Called()
	switch {
	case found.Refused != "":
		a.Alone = found.Refused
		a.Said = []string{fmt.Sprintf("%s does not take %s in: %s.", a.Lesson, name, strings.TrimSuffix(found.Refused, "."))}
		return
	case len(found.Alone) > 0:
		a.Alone = strings.Join(found.Alone, "; ")
		a.Said = []string{"Even with every other open ride on the ground that cannot be."}
		for _, why := range found.Alone {
			a.Said = append(a.Said, model.Sentence(why))
		}
		return
	}
	there := &asked{&kept{week: found.Week, plan: found.Was}, found.There, q.folder, q.clock}
	a.Together, a.Choice = togetherOf(there, found.Together), choiceOf(there, found.Choice)
	a.Said = a.say()
	if p := a.price(); p != nil {
		turn := found.Choice.Price.Plan.Turns[found.There.Index]
		for i, x := range p.Changes { // hers is said, and not that she was on the ground
			if x.askedRide == askedOf(found.There, found.Was) {
				p.Changes = append(p.Changes[:i], p.Changes[i+1:]...)
				break
			}
		}
		a.Said = append(a.Said, fmt.Sprintf("%s would ride %s in %s.", name, turn.Horse.Name, turn.Seat.Tag))
	}
	switch q.ride.Rider.MayChange {
	case model.ChangeFreely:
	case model.ChangeNever:
		a.Said = append(a.Said, name+" is never to be moved to another lesson: the rider's entry says so.")
	default:
		a.Said = append(a.Said, "Ask first: "+strings.TrimSuffix(name, ".")+".")
	}
}

// canChange reports whether she could ride in the lesson with all that ride now.
func (a *whyNotAnswer) canChange() bool {
	return a.Alone == "" && a.Together == nil && a.Choice != nil && a.Choice.Price != nil
}
