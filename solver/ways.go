package solver

import (
	"cmp"
	"context"
	"errors"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// Ways are what would help a ride that is on the ground.
type Ways struct {
	Ride *model.Ride
	// Better seats it with all that ride in the plan, and nothing need change: where
	// there is one, there are no other ways.
	Better *model.Plan
	Ways   []*Way // those that ask least first; none contains another
	Whole  bool   // each change was tried that is looked at
	// Care: rules of care alone stand in its way, and those are never bent.
	Care bool
}

// Way is a change to the week with which a ride that is on the ground is seated and
// all that are seated in the plan are still, those of other dates as they are.
type Way struct {
	Kind  WayKind
	Notes []*model.Note  // that make it, in the order in which to write them; By and At are not said
	Moved []*model.Rider // who ride at another time by it
	Ask   []*model.Rider // of them, those who are to be asked first
	Later model.Minute   // of a lesson that begins later

	Week *model.Week // as it would be; its nouns are its own
	Ride *model.Ride // in that week: the one that was on the ground
	Plan *model.Plan // of that week, audited; nothing is proved of it but that it is one
	Was  *model.Plan // of that week: what the plan was, with no more changed than the way asks
}

// WayKind is what a way asks for.
type WayKind string

const (
	PieceBack       WayKind = "piece back"
	HoldLifted      WayKind = "note lifted"
	WorkLeftOut     WayKind = "work left out"
	MoreHands       WayKind = "more helpers"
	InArena         WayKind = "another arena"
	OtherInstructor WayKind = "another instructor"
	OtherLesson     WayKind = "another lesson" // one rider rides in another
	LessonLater     WayKind = "lesson later"
	Swap            WayKind = "swap" // two riders change places
)

// Changed are the rides of the week that the way seats on another horse than they
// have, or in other tack, but for the one that was on the ground.
func (x *Way) Changed() (rides []*model.Ride) {
	for i, r := range x.Week.Rides {
		was, now := x.Was.Turns[i], x.Plan.Turns[i]
		if r != x.Ride && was != nil && now != nil && (was.Horse != now.Horse || !x.Week.AlikeTack(was, now)) {
			rides = append(rides, r)
		}
	}
	return rides
}

// mostWays are shown, and so many of a kind.
const mostWays, mostOfAKind = 6, 3

// some are the first ways, not all of a kind.
func some(ways []*Way) (shown []*Way) {
	of := map[WayKind]int{}
	for _, x := range ways {
		if of[x.Kind]++; of[x.Kind] <= mostOfAKind && len(shown) < mostWays {
			shown = append(shown, x)
		}
	}
	return shown
}

// WaysOut looks for what would help a ride that is on the ground in a plan: one
// change each, to its date and, where a rider comes on another date of the plan, to
// that; nobody comes to a lesson that has begun by now, which may be zero. Whatever is
// found has been planned with and audited.
func WaysOut(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, now model.Instant) (*Ways, error) {
	ways := &Ways{Ride: r}
	var err error
	if ways.Better, err = nearestOn(ctx, w, p, r, toRide(r), r.Date()); err != nil || ways.Better != nil {
		return ways, err
	}
	part, cancel := half(ctx)
	reason, _, err := whyNotTogether(part, w, p, r, toRide(r))
	cancel()
	if err != nil {
		return nil, err
	}
	if now.Before(w.Now) {
		now = w.Now
	}
	look := &lookout{w: w, p: p, r: r, now: now}
	if reason != nil {
		look.rides = reason.Rides
	}
	for _, kind := range lookouts {
		for _, x := range kind(look) {
			if ctx.Err() != nil || slices.ContainsFunc(ways.Ways, x.contains) {
				continue
			}
			if err := x.try(ctx, w, p, r); err != nil {
				return nil, err
			}
			if x.Plan != nil {
				ways.Ways = append(ways.Ways, x)
			}
		}
	}
	ways.Whole = ctx.Err() == nil
	slices.SortStableFunc(ways.Ways, (*Way).asks)
	ways.Ways = some(ways.Ways)
	if len(ways.Ways) == 0 && ways.Whole {
		ways.Care = careAlone(ctx, w, p, r)
	}
	return ways, nil
}

// asks compares how much two ways ask: of people first, then of horses and tack.
func (x *Way) asks(y *Way) int {
	return cmp.Or(cmp.Compare(len(x.Ask), len(y.Ask)), cmp.Compare(len(x.Moved), len(y.Moved)),
		cmp.Compare(x.otherDates(), y.otherDates()), cmp.Compare(len(x.Changed()), len(y.Changed())))
}

// otherDates are the notes for another date than the first is for.
func (x *Way) otherDates() (n int) {
	for _, y := range x.Notes {
		if y.Date != x.Notes[0].Date {
			n++
		}
	}
	return n
}

// contains reports whether the way asks for all that another one does, and more.
func (x *Way) contains(y *Way) bool {
	if x.Kind == LessonLater && y.Kind == LessonLater || x.Kind == MoreHands && y.Kind == MoreHands {
		return x.Notes[0].Lesson == y.Notes[0].Lesson // less of it did
	}
	return len(x.Notes) > len(y.Notes) && !slices.ContainsFunc(y.Notes, func(n *model.Note) bool {
		return !slices.ContainsFunc(x.Notes, func(m *model.Note) bool { return *m == *n })
	})
}

// Seat plans with notes that are not written, so that a ride is seated with all that
// are seated in a plan; those of dates that the notes do not touch stay as they are.
// nil is that there is no such plan, or that none was found before ctx ended.
func Seat(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride, notes ...*model.Note) (*Way, error) {
	x := &Way{Notes: notes}
	if err := x.try(ctx, w, p, r); err != nil || x.Plan == nil {
		return nil, err
	}
	return x, nil
}

// try plans with the change. Plan stays nil where it does not help.
func (x *Way) try(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride) error {
	x.Week = w.With(x.Notes...)
	was, ok := x.carry(w, p)
	ride := x.same(r)
	if !ok || ride == nil || ride.State != model.Open {
		return nil
	}
	plan, err := nearestOn(ctx, x.Week, was, ride, toRide(ride), x.dates(r, ride)...)
	if err != nil || plan == nil {
		return err
	}
	x.Ride, x.Was, x.Plan = ride, was, plan
	return nil
}

// dates are those on which rides may change: where the ride was and is, and those of
// the notes.
func (x *Way) dates(r, now *model.Ride) []model.Date {
	dates := []model.Date{r.Date(), now.Date()}
	for _, n := range x.Notes {
		dates = append(dates, n.Date)
	}
	return dates
}

// Transfer is a plan of one reading of a week as a plan of another, which has all
// rides that the plan seats; it is audited there, and nothing is proved of it.
func Transfer(to, from *model.Week, p *model.Plan) (*model.Plan, error) {
	plan, ok := (&Way{Week: to}).carry(from, p)
	if !ok {
		return nil, errors.New("the week no longer has all rides that the plan seats")
	}
	return plan, finish(to, plan)
}

// carry is the plan in the week with the change. It reports false where not all that
// are seated have their ride there.
func (x *Way) carry(w *model.Week, p *model.Plan) (*model.Plan, bool) {
	there := translator{nouns(x.Week.Centre.Horses, func(h *model.Horse) string { return h.Name }),
		nouns(x.Week.Centre.Pieces, func(p *model.Piece) string { return p.Tag })}
	was := &model.Plan{Turns: make([]*model.Turn, len(x.Week.Rides)), Ground: make([][]string, len(x.Week.Rides))}
	for i, r := range w.Rides {
		if p.Turns[i] == nil {
			continue
		}
		ride := x.same(r)
		if ride == nil || ride.State == model.Off {
			return nil, false
		}
		was.Turns[ride.Index] = there.turn(p.Turns[i])
	}
	return was, true
}

// same is the ride in the week with the change: where its rider goes to another
// lesson, the one there.
func (x *Way) same(r *model.Ride) *model.Ride {
	for _, away := range x.Notes {
		if away.Kind != model.NoteRiderAway || away.Rider != r.Rider || away.Lesson != r.Meeting.Lesson || away.Date != r.Date() {
			continue
		}
		for _, added := range x.Notes {
			if added.Kind == model.NoteRiderAdded && added.Rider == r.Rider {
				return x.Week.RideOf(added.Rider.Name, added.Lesson.Name, added.Date)
			}
		}
	}
	return x.Week.Same(r)
}

// careAlone reports whether the ride could not be seated with all that are seated even
// if no rule held but those of care.
func careAlone(ctx context.Context, w *model.Week, p *model.Plan, r *model.Ride) bool {
	left := map[string]bool{}
	for _, x := range model.Rules {
		if x.Class != model.Care && !builtIn(x.Name) {
			left[x.Name] = true
		}
	}
	e := encodeBut(narrow(w, p, r, func(x *model.Ride) bool { return x.Date() == r.Date() }), left, false)
	var all []sat.Lit
	for _, x := range e.w.Rides {
		if x.State == model.Open {
			all = append(all, e.isSeated(x))
		}
	}
	return e.s.Solve(ctx, all...) == sat.Unsat
}

func builtIn(rule string) bool {
	return slices.ContainsFunc(encodings, func(x encoding) bool { return x.rule == rule && x.built })
}
