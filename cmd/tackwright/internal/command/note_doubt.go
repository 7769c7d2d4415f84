package command

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// doubt says why a note may not be what was meant, going by the centre before it:
// it ends what is not so, or somebody is away who was not to come; "" is that
// nothing seems odd. It is taken all the same.
func doubt(c *model.Centre, n *model.Note) string {
	out := func(h *model.Horse) bool {
		return slices.ContainsFunc(h.Out, func(o model.Out) bool {
			return o.Why != model.Appointment && o.End.IsZero() && o.From.Date <= n.Date
		})
	}
	marked := func(h *model.Horse) bool { return isMarked(h, n.Date) }
	mended := func(p *model.Piece) bool {
		return slices.ContainsFunc(p.Out, func(o model.PieceOut) bool { return o.End.IsZero() && o.From.Date <= n.Date })
	}
	switch {
	case n.Kind == model.NoteHorseBack && !out(n.Horse):
		return fmt.Sprintf("%s was not out, so it ends nothing%s", n.Horse.Name, those("out", c.Horses, out, func(h *model.Horse) string { return h.Name }))
	case n.Kind == model.NoteOwnTackEnd && !marked(n.Horse):
		return fmt.Sprintf("%s was not on its own tack, so it ends nothing%s", n.Horse.Name, those("so marked", c.Horses, marked, func(h *model.Horse) string { return h.Name }))
	case n.Kind == model.NotePieceBack && !mended(n.Piece):
		return fmt.Sprintf("%s was not out of use, so it ends nothing%s", n.Piece.Tag, those("out of use", c.Pieces, mended, func(p *model.Piece) string { return p.Tag }))
	case n.Kind == model.NoteRiderAway:
		return notThere(c, n)
	}
	return ""
}

// isMarked reports whether the horse is on its own tack from then, or before, on.
func isMarked(h *model.Horse, d model.Date) bool {
	return slices.ContainsFunc(h.OwnTack, func(s model.Span) bool { return s.End.IsZero() && s.From.Date <= d })
}

// those lists what it is so of: "; out: Bracken".
func those[T any](what string, all []T, is func(T) bool, name func(T) string) string {
	var names []string
	for _, x := range all {
		if is(x) {
			names = append(names, name(x))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "; " + what + ": " + strings.Join(names, ", ")
}

// notThere says that a rider who is noted away has no ride then.
func notThere(c *model.Centre, n *model.Note) string {
	last := max(n.Date, n.Through)
	for d := n.Date; d <= min(last, n.Date+noteReach); d++ {
		for _, r := range c.Repair(d, 1, n.At).Rides {
			if r.Rider == n.Rider && (n.Lesson == nil || r.Meeting.Lesson == n.Lesson) {
				return ""
			}
		}
	}
	on, in := "on "+n.Date.Words(), ""
	if last > n.Date {
		on = "from " + n.Date.Words() + " to " + last.Words()
	}
	if n.Lesson != nil {
		in = " in " + n.Lesson.Name
	}
	return fmt.Sprintf("%s has no ride%s %s", n.Rider.Called(), in, on)
}

// freed are the rides on the ground as posted that a note may let ride.
func (x *day) freed(n *model.Note) (all []noteRide) {
	for i, r := range x.week.Rides {
		if x.ground[i].Rider == "" {
			continue
		}
		may := false
		switch _, free := x.week.Alone(r); n.Kind {
		case model.NoteForm:
			may = r.Rider.Name == n.Rider.Name && len(free) > 0
		case model.NoteHorseBack:
			may = slices.ContainsFunc(free, func(h *model.Horse) bool { return h.Name == n.Horse.Name })
		case model.NoteHands:
			may = r.Meeting.Name == n.Lesson.Name && len(free) > 0
		case model.NotePieceBack, model.NoteOwnTackEnd:
			may = len(free) > 0
		case model.NoteCleaned:
			may = len(free) > 0 && slices.ContainsFunc(x.week.Centre.Horses, func(h *model.Horse) bool {
				return isMarked(h, n.Date) || h.QuarantineEnds(x.week.House) >= n.Date
			})
		}
		if may {
			all = append(all, x.ground[i])
		}
	}
	return all
}
