package command

import (
	"fmt"
	"strings"

	"tackwright/model"
)

// differs is a ride that is not as its standing pairing has it.
type differs struct {
	Date   string `json:"date"`
	Start  string `json:"start"`
	Lesson string `json:"lesson"`
	Rider  string `json:"rider"`
	Horse  string `json:"horse" about:"that it has in this plan"`
	Seat   string `json:"seat" about:"tag"`
	Usual  string `json:"usual_horse" about:"of the standing pairing"`
	Sits   string `json:"usual_seat,omitempty" about:"tag; none stated where it is missing"`
	Why    string `json:"why" about:"what keeps it from that"`

	ride *model.Ride
}

// differsOf are the seated open rides that are not on the horse, or not in the
// seat or one alike, of their standing pairing. Why is told of the horse first.
func differsOf(w *model.Week, p *model.Plan) []differs {
	var all []differs
	for i, r := range w.Rides {
		t, usual := p.Turns[i], w.Standing(r)
		if r.State != model.Open || t == nil || usual == nil {
			continue
		}
		why := w.WhyNot(p, r, usual.Horse, usual.Seat)
		if why == "" {
			continue
		}
		x := differs{Date: r.Date().String(), Start: r.Start.String(), Lesson: r.Meeting.Name, Rider: r.Rider.Called(),
			Horse: t.Horse.Name, Seat: t.Seat.Tag, Usual: usual.Horse.Name, Why: why, ride: r}
		if usual.Seat != nil {
			x.Sits = usual.Seat.Tag
		}
		all = append(all, x)
	}
	return all
}

func differsText(b *strings.Builder, w *model.Week, all []differs) {
	if len(all) > 0 {
		b.WriteString("\nDIFFERENT FROM THE STANDING PAIRINGS\n")
	}
	for _, x := range all {
		now, usual := x.Horse, x.Usual
		if now == usual {
			now, usual = x.Seat, x.Sits
		}
		fmt.Fprintf(b, "  %s %s  %s (%s): %s, not %s\n", x.ride.Date().Words(), x.ride.Start.Clock(w.House.TwelveHour), x.Rider, x.Lesson, now, usual)
		b.WriteString(wrap("      ", x.Why))
	}
}
