package sheet

import (
	"cmp"
	"slices"

	"tackwright/model"
)

// barn compares two days of tack, the one that was posted and hangs in the tack
// room, and the one that is: what each horse and piece does in order of time.
type barn struct {
	now, posted *day
	moves       []Move
}

// inOrder are the moves by the time that each has to be seen to.
func (b *barn) inOrder() []Move {
	due := func(m Move) Clock { return cmp.Or(m.OnBy, m.Start) }
	slices.SortStableFunc(b.moves, func(x, y Move) int { return cmp.Compare(due(x), due(y)) })
	return b.moves
}

// move adds a ride that goes otherwise than posted.
func (b *barn) move(c model.Change) {
	m := Move{Start: Clock(c.Ride.Start), End: Clock(c.Ride.End), Rider: c.Ride.Rider.Called(), Lesson: c.Ride.Meeting.Name, How: c.How(), ride: c.Ride}
	if was := c.Ride.Was; was != nil && was.Start != c.Ride.Start {
		m.WasStart = Clock(was.Start)
	}
	if was := c.Ride.Was; was != nil && was.End != c.Ride.End {
		m.WasEnd = Clock(was.End)
	}
	if c.OtherArena() && c.Ride.Meeting.Arena != nil {
		m.Arena = c.Ride.Meeting.Arena.Name
	}
	if c.Before != nil {
		m.Was = c.Before.Horse.Name
	}
	if c.After != nil {
		m.Now = c.After.Horse.Name
		s := stintOf(b.now, c.Ride)
		m.OnBy = Clock(b.now.onBy(s, core(s.Turn)...))
	}
	b.moves = append(b.moves, m)
}

// stintOf is the stint of a ride in a day, or nil.
func stintOf(d *day, r *model.Ride) *model.Stint {
	if i := slices.IndexFunc(d.stints, func(s *model.Stint) bool { return r != nil && s.Ride == r }); i >= 0 {
		return d.stints[i]
	}
	return nil
}

// at is the move of a stint: one that is there, or a new one of a ride that goes
// as it was posted or that the date no longer has.
func (b *barn) at(s *model.Stint) *Move {
	if i := slices.IndexFunc(b.moves, func(m Move) bool { return m.ride != nil && m.ride == s.Ride }); i >= 0 {
		return &b.moves[i]
	}
	r := b.now.ride(s)
	m := Move{Start: Clock(s.Start), End: Clock(s.End), Rider: r.Rider, Lesson: r.Lesson, ride: s.Ride, How: "as posted", Now: r.Horse, OnBy: Clock(b.now.onBy(s, core(s.Turn)...))}
	switch {
	case s.Rider == nil && !slices.Contains(b.now.stints, s): // it was to be done when the day was posted
		m.Rider, m.Lesson, m.How, m.Was, m.Now, m.OnBy = "", r.Work, "is not done", r.Horse, "", 0
	case s.Rider == nil:
		m.Rider, m.Lesson = "", r.Work
	case s.Ride == nil: // gone from the folder since
		m.Rider, m.Lesson, m.How, m.Was, m.Now, m.OnBy = s.Rider.Called(), s.Name, "does not ride", r.Horse, "", 0
	}
	b.moves = append(b.moves, m)
	return &b.moves[len(b.moves)-1]
}

// fetch adds to each ride what comes to its horse otherwise than posted.
func (b *barn) fetch() {
	for _, s := range b.now.stints {
		if s.Ride != nil && s.Ride.State == model.Started || b.begun(s) {
			continue
		}
		fetch := slices.DeleteFunc(s.Turn.Pieces(), func(x *model.Piece) bool { return !b.comesAnew(x, s) })
		if len(fetch) == 0 {
			continue
		}
		m := b.at(s)
		m.Fetch = b.now.pieces(s.Turn, fetch)
		for i := range m.Fetch {
			if g := b.now.giver(m.Fetch[i].tagged, s); g != nil {
				m.Fetch[i].From, m.Fetch[i].OffAt = g.Turn.Horse.Name, Clock(g.End)
			}
		}
	}
}

func (b *barn) begun(s *model.Stint) bool {
	now := b.now.week.Now
	return !now.IsZero() && !now.Before(model.Instant{Date: s.Date, Minute: s.Start})
}

// comesAnew reports whether somebody has to bring a piece to the horse of a stint
// who would not by the posted list: it is not on already, and that list does not
// have it on that horse by then, or has it come from elsewhere.
func (b *barn) comesAnew(x *model.Piece, s *model.Stint) bool {
	h := s.Turn.Horse
	if last := before(b.now.horse[h], s); last != nil && slices.Contains(last.Turn.Pieces(), x) && !b.now.rested(last, s) {
		return false
	}
	on := b.lastOn(x, s)
	if on == nil {
		return true
	}
	for { // back to when the posted list brings it there
		last := before(b.posted.piece[x], on)
		if last == nil || last.Turn.Horse != h {
			break
		}
		on = last
	}
	return giverOf(b.posted, x, on) != giverOf(b.now, x, s)
}

// lastOn is the posted stint for which the piece is on the horse of a stint at
// its start; nil is that it is not.
func (b *barn) lastOn(x *model.Piece, s *model.Stint) *model.Stint {
	same := stintOf(b.posted, s.Ride)
	if same != nil && same.Turn.Horse == s.Turn.Horse && slices.Contains(same.Turn.Pieces(), x) {
		return same
	}
	var on *model.Stint
	for _, u := range b.posted.piece[x] {
		if u.Start <= s.Start {
			on = u
		}
	}
	if on == nil || on.Turn.Horse != s.Turn.Horse || on.Start < s.Start && b.posted.rested(on, s) {
		return nil
	}
	return on
}

// giverOf is the horse that a piece comes from; nil is that it hangs at its rack.
func giverOf(d *day, x *model.Piece, s *model.Stint) *model.Horse {
	if g := d.giver(x, s); g != nil && !d.rested(g, s) {
		return g.Turn.Horse
	}
	return nil
}

// putBack adds each piece once that goes back to its rack otherwise than the
// posted list says: after its last ride, or at once where it has none any more.
func (b *barn) putBack() {
	type back struct {
		stint *model.Stint // of which it is the last, or was
		idle  bool         // nobody wears it any more
	}
	var order []back
	pieces := map[back][]*model.Piece{}
	for _, x := range b.now.week.Centre.Pieces {
		was, is := last(b.posted.piece[x]), last(b.now.piece[x])
		if was == nil && is == nil || was != nil && is != nil && was.Turn.Horse == is.Turn.Horse &&
			(was.End == is.End || was.Ride != nil && was.Ride == is.Ride) {
			continue
		}
		at := back{stint: is}
		if is == nil || was != nil && is.End < was.End && b.begun(is) {
			at = back{was, is == nil}
		}
		if pieces[at] == nil {
			order = append(order, at)
		}
		pieces[at] = append(pieces[at], x)
	}
	for _, at := range order {
		m := b.at(at.stint)
		returned := b.now.pieces(at.stint.Turn, pieces[at])
		for i := range returned {
			if is := last(b.now.piece[returned[i].tagged]); is != nil {
				returned[i].OffAt = Clock(is.End)
			}
		}
		m.Return = append(m.Return, returned...)
		slices.SortStableFunc(m.Return, func(x, y Piece) int { return cmp.Compare(x.OffAt, y.OffAt) })
	}
}

// leave adds to each ride what the posted list puts on its horse too early now:
// nobody wears it then, and somebody does later.
func (b *barn) leave() {
	for i := range b.moves {
		s := stintOf(b.posted, b.moves[i].ride)
		if s == nil {
			continue
		}
		now := stintOf(b.now, s.Ride)
		next := func(x *model.Piece) *model.Stint {
			for _, u := range b.now.piece[x] {
				switch {
				case u.Meets(s) || u == now:
					return nil
				case u.Start > s.Start:
					return u
				}
			}
			return nil
		}
		leave := b.posted.pieces(s.Turn, slices.DeleteFunc(s.Turn.Pieces(), func(x *model.Piece) bool { return next(x) == nil }))
		for i := range leave {
			u := next(leave[i].tagged)
			leave[i].OnAgain = Clock(b.now.onBy(u, core(u.Turn)...))
		}
		b.moves[i].Leave = leave
	}
}

func last(uses []*model.Stint) *model.Stint {
	if len(uses) == 0 {
		return nil
	}
	return uses[len(uses)-1]
}
