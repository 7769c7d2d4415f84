package solver

import (
	"slices"

	"tackwright/model"
)

// lookout looks for changes that could help a ride.
type lookout struct {
	w     *model.Week
	p     *model.Plan
	r     *model.Ride
	now   model.Instant
	rides []*model.Ride // that take part in what stands in its way
}

// lookouts are the kinds of changes, those first that ask nobody to come at another
// time. Whether a change helps is found by planning with it.
var lookouts = []func(*lookout) []*Way{
	(*lookout).piecesBack, (*lookout).holdsLifted, (*lookout).worksLeftOut, (*lookout).moreHands,
	(*lookout).otherArenas, (*lookout).otherInstructors,
	(*lookout).toOtherLessons, (*lookout).lessonsLater, (*lookout).swaps,
}

// piecesBack are the pieces that are out over the ride, and that somebody may end.
func (l *lookout) piecesBack() (ways []*Way) {
	i := slices.IndexFunc(l.w.Centre.Persons, func(x *model.Person) bool { return x.May(model.EndsCheck) })
	if i < 0 {
		return nil
	}
	for _, x := range l.w.Centre.Pieces {
		if slices.ContainsFunc(x.Out, func(o model.PieceOut) bool {
			return o.End.IsZero() && o.From.Before(model.Instant{Date: l.r.Date(), Minute: l.r.End})
		}) {
			ways = append(ways, &Way{Kind: PieceBack, Notes: []*model.Note{{Kind: model.NotePieceBack, Piece: x, Date: l.r.Date(), By: l.w.Centre.Persons[i]}}})
		}
	}
	return ways
}

// holdsLifted are the notes that keep a rider of the date on a horse or in a seat.
func (l *lookout) holdsLifted() (ways []*Way) {
	var seen []int
	for _, x := range l.w.Rides {
		if x.Date() == l.r.Date() && x.State == model.Open && x.Held != nil && !slices.Contains(seen, x.Held.Note) {
			seen = append(seen, x.Held.Note)
			ways = append(ways, &Way{Kind: HoldLifted, Notes: []*model.Note{{Undoes: x.Held.Note, Date: l.r.Date(), Hands: model.NoHands}}})
		}
	}
	return ways
}

// worksLeftOut are the works of the date.
func (l *lookout) worksLeftOut() (ways []*Way) {
	for _, f := range l.w.Facts {
		if f.Date == l.r.Date() && f.Rider == nil && f.Meeting == nil && !l.hasBegun(f.Date, f.Start) {
			ways = append(ways, &Way{Kind: WorkLeftOut, Notes: []*model.Note{{Kind: model.NoteWorkOff, Horse: f.Turn.Horse, From: f.Start, Date: f.Date, Hands: model.NoHands}}})
		}
	}
	return ways
}

func (l *lookout) hasBegun(d model.Date, at model.Minute) bool {
	return !l.now.IsZero() && !l.now.Before(model.Instant{Date: d, Minute: at})
}

// moreHands are one or two helpers more than the lesson can count on.
func (l *lookout) moreHands() (ways []*Way) {
	m := l.r.Meeting
	more := func(leaders, sidewalkers int) {
		h := m.Hands
		if h.Leaders >= 0 {
			h.Leaders += leaders
		}
		if h.Sidewalkers >= 0 {
			h.Sidewalkers += sidewalkers
		}
		ways = append(ways, &Way{Kind: MoreHands, Notes: []*model.Note{{Kind: model.NoteHands, Lesson: m.Lesson, Date: m.Date, Hands: h}}})
	}
	if m.Hands.Sidewalkers >= 0 {
		more(0, 1)
	}
	if m.Hands.Leaders >= 0 {
		more(1, 0)
	}
	if m.Hands.Sidewalkers >= 0 {
		more(0, 2)
	}
	if m.Hands.Leaders >= 0 && m.Hands.Sidewalkers >= 0 {
		more(1, 1)
		more(1, 2)
	}
	return ways
}

// otherArenas are those that the lesson is not in.
func (l *lookout) otherArenas() (ways []*Way) {
	for _, x := range l.w.Centre.Arenas {
		if x != l.r.Meeting.Arena {
			ways = append(ways, &Way{Kind: InArena, Notes: []*model.Note{{Kind: model.NoteMoved, Lesson: l.r.Meeting.Lesson, Date: l.r.Date(), Arena: x, Hands: model.NoHands}}})
		}
	}
	return ways
}

// otherInstructors are those who do not take the lesson.
func (l *lookout) otherInstructors() (ways []*Way) {
	for _, x := range l.w.Centre.Persons {
		if x.Role == model.Instructor && x != l.r.Meeting.Instructor {
			ways = append(ways, &Way{Kind: OtherInstructor, Notes: []*model.Note{{Kind: model.NoteInstructor, Lesson: l.r.Meeting.Lesson, Date: l.r.Date(), Instructor: x, Hands: model.NoHands}}})
		}
	}
	return ways
}

// moves is a way that moves riders; nil where one of them is not to be moved.
func moves(kind WayKind, riders []*model.Rider, notes ...*model.Note) *Way {
	x := &Way{Kind: kind, Notes: notes, Moved: riders}
	for _, r := range riders {
		switch r.MayChange {
		case model.ChangeNever:
			return nil
		case model.ChangeFreely:
		default:
			x.Ask = append(x.Ask, r)
		}
	}
	return x
}

// Change are the notes by which a rider rides in another lesson, the one that adds
// her first, so that she is never in none.
func Change(r *model.Rider, from, to *model.Meeting) []*model.Note {
	return []*model.Note{
		{Kind: model.NoteRiderAdded, Rider: r, Lesson: to.Lesson, Date: to.Date, Hands: model.NoHands},
		{Kind: model.NoteRiderAway, Rider: r, Lesson: from.Lesson, Date: from.Date, Hands: model.NoHands},
	}
}

// toOtherLessons has the rider, or one who is in her way, ride in a lesson with room.
func (l *lookout) toOtherLessons() (ways []*Way) {
	for _, x := range append([]*model.Ride{l.r}, l.rides...) {
		if x.State != model.Open || x.Meeting.Lesson == nil || x.Date() != l.r.Date() {
			continue
		}
		for _, m := range l.w.Meetings {
			if m == x.Meeting || l.hasBegun(m.Date, m.Start) || l.w.NoPlace(model.Ask{Rider: x.Rider, Meeting: m}, nil) != "" {
				continue
			}
			if way := moves(OtherLesson, []*model.Rider{x.Rider}, Change(x.Rider, x.Meeting, m)...); way != nil {
				ways = append(ways, way)
			}
		}
	}
	return ways
}

// delays of a lesson that are tried, in minutes.
var delays = []model.Minute{5, 10, 15, 20, 30, 45, 60}

// lessonsLater has the lesson begin later, or one that is in its way.
func (l *lookout) lessonsLater() (ways []*Way) {
	lessons := []*model.Meeting{l.r.Meeting}
	for _, x := range l.rides {
		if x.Date() == l.r.Date() && x.State == model.Open && !slices.Contains(lessons, x.Meeting) {
			lessons = append(lessons, x.Meeting)
		}
	}
	for _, m := range lessons {
		if m.Lesson == nil {
			continue
		}
		for _, later := range delays {
			if way := l.later(m, later); way != nil {
				ways = append(ways, way)
			}
		}
	}
	return ways
}

// later has a lesson begin so much later, if all can come then.
func (l *lookout) later(m *model.Meeting, by model.Minute) *Way {
	if m.End+by > 24*60 {
		return nil
	}
	var riders []*model.Rider
	for _, x := range l.w.Rides {
		if x.Meeting != m || x.State == model.Off {
			continue
		}
		if x.State == model.Started || x.Rider.NotFree(m.Date, x.Start+by, x.End+by) != "" {
			return nil
		}
		if !slices.Contains(riders, x.Rider) {
			riders = append(riders, x.Rider)
		}
	}
	way := moves(LessonLater, riders, &model.Note{Kind: model.NoteMoved, Lesson: m.Lesson, Date: m.Date, From: m.Start + by, Until: m.End + by, Hands: model.NoHands})
	if way != nil {
		way.Later = by
	}
	return way
}

// swaps have the rider change places with another of the date.
func (l *lookout) swaps() (ways []*Way) {
	r, m := l.r.Rider, l.r.Meeting
	for _, x := range l.w.Rides {
		if x.Date() != l.r.Date() || x.State != model.Open || x.Meeting == m || x.Meeting.Lesson == nil || x.Rider == r ||
			l.w.NoPlace(model.Ask{Rider: r, Meeting: x.Meeting}, x.Rider) != "" || l.w.NoPlace(model.Ask{Rider: x.Rider, Meeting: m}, r) != "" {
			continue
		}
		notes := append(Change(r, m, x.Meeting), Change(x.Rider, x.Meeting, m)...)
		if way := moves(Swap, []*model.Rider{r, x.Rider}, notes...); way != nil {
			ways = append(ways, way)
		}
	}
	return ways
}
