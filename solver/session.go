package solver

import (
	"context"
	"fmt"
	"slices"

	"tackwright/model"
	"tackwright/solver/sat"
)

// Session answers one question after another about the same dates: what if this
// horse is out, that rider away, this pairing held. The rules are written down
// once; what differs from question to question are assumptions over them. Where
// a question is about more (a lesson moved, a piece out, a ride started) the
// rules are written anew. One Session belongs to one goroutine.
type Session struct {
	base    *model.Week // of what is written; its rides have the state of the question asked last
	bedrock string
	e       *encoder
	barred  map[riding]bool // pairs that the base forbids by themselves
	index   map[string]int  // of the base's rides, by what they are called
	grown   int             // variables from which on it is better to begin anew
	written int
}

// riding is a ride of the base, by index, on one of its horses.
type riding struct {
	ride  int
	horse *model.Horse
}

// Written is how often the rules were written down.
func (s *Session) Written() int { return s.written }

// Plan is what [Plan] would return for the week: the same score in every goal
// that is proved, though where several plans are best it may be another.
func (s *Session) Plan(ctx context.Context, w *model.Week, opts Options) (*model.Plan, error) {
	assume, ok := s.assume(w)
	if !ok {
		s.write(w)
		if assume, ok = s.assume(w); !ok {
			return Plan(ctx, w, opts) // two rides of one name
		}
	}
	plan, err := s.e.solve(ctx, assume, s.e.goals(), opts)
	if err != nil {
		return nil, err
	}
	plan, err = s.translate(w, plan)
	if err != nil {
		return nil, err
	}
	return plan, finish(w, plan)
}

// write writes the rules of a week down.
func (s *Session) write(w *model.Week) {
	s.base, s.bedrock = w.Copy(), w.Bedrock()
	s.e = encode(s.base)
	s.barred, s.index = map[riding]bool{}, map[string]int{}
	for i, r := range s.base.Rides {
		s.index[named(r)] = i
		for _, h := range s.base.Centre.Horses {
			if s.e.stopped(r) || r.State != model.Open || s.e.unpaired(r, h) {
				s.barred[riding{i, h}] = true
			}
		}
	}
	s.grown = 4*s.e.s.Vars() + 20_000
	s.written++
}

// named tells a ride from all others of a week.
func named(r *model.Ride) string {
	return fmt.Sprint(r.Meeting.Date, r.Meeting.Name, "\n", r.Start, r.End, r.Rider.Name)
}

// assume brings the base to the state of a week, and lists what is not possible
// in that week and was when the rules were written. It reports false where the
// two differ in more.
func (s *Session) assume(w *model.Week) ([]sat.Lit, bool) {
	if s.e == nil || s.e.s.Vars() > s.grown || len(s.index) != len(s.base.Rides) || w.Bedrock() != s.bedrock {
		return nil, false
	}
	asked := make([]*model.Ride, len(s.base.Rides))
	for _, r := range w.Rides {
		i, ok := s.index[named(r)]
		if !ok || asked[i] != nil {
			return nil, false
		}
		asked[i] = r
	}
	now := &encoder{w: w}
	horses := nouns(w.Centre.Horses, func(h *model.Horse) string { return h.Name })
	home := s.home()
	var assume []sat.Lit
	for i, base := range s.base.Rides {
		r := asked[i]
		if r == nil {
			base.State, base.OffWhy = model.Off, "not in the week"
		} else {
			base.State, base.OffWhy, base.Past = r.State, r.OffWhy, r.Past
			base.Due, base.Posted = r.Due, home.turn(r.Posted)
		}
		stopped := r == nil || r.State != model.Open || now.stopped(r)
		for _, h := range s.base.Centre.Horses {
			barred := stopped || horses[h.Name] == nil || now.unpaired(r, horses[h.Name])
			if was := s.barred[riding{i, h}]; was && !barred {
				return nil, false
			}
		}
		for _, on := range s.e.on_[base] {
			if h := horses[on.at.horse.Name]; stopped || h == nil || now.unpaired(r, h) {
				assume = append(assume, on.lit.Not())
			}
		}
	}
	s.e.barred = map[sat.Lit]bool{}
	for _, l := range assume {
		s.e.barred[l.Not()] = true
	}
	return assume, s.elsewhere(w)
}

// elsewhere takes in what horses do on other dates, which a note about one of them
// may change. It reports false where another is not the same for a horse that can
// carry a ride, since the rules written about it count that, or for any where what
// is worn on one date keeps it from a horse on another.
func (s *Session) elsewhere(w *model.Week) bool {
	base, now := s.otherDates(s.base), s.otherDates(w)
	marked := anyMarked(s.base) || anyMarked(w)
	s.e.idle = map[*model.Horse][]*model.Stint{}
	for _, h := range s.e.horses() {
		if slices.EqualFunc(base[h.Name], now[h.Name], sameWork) && (!marked || slices.EqualFunc(base[h.Name], now[h.Name], sameTack)) {
			continue
		}
		if marked || slices.ContainsFunc(s.e.of[h], func(p *place) bool {
			return slices.ContainsFunc(p.rides, func(on rideOn) bool { return !s.e.barred[on.lit] })
		}) {
			return false
		}
		s.e.idle[h] = append(slices.DeleteFunc(slices.Clone(s.e.facts[h]), func(f *model.Stint) bool { return !s.dated(f) }), now[h.Name]...)
	}
	return true
}

// dated reports whether a fact is on a date planned.
func (s *Session) dated(f *model.Stint) bool { return s.base.From <= f.Date && f.Date <= s.base.Until }

// otherDates are the facts of other dates, by horse.
func (s *Session) otherDates(w *model.Week) map[string][]*model.Stint {
	facts := map[string][]*model.Stint{}
	for _, f := range w.Facts {
		if !s.dated(f) {
			facts[f.Turn.Horse.Name] = append(facts[f.Turn.Horse.Name], f)
		}
	}
	return facts
}

// sameWork reports whether two facts are the same to a horse's limits.
func sameWork(f, g *model.Stint) bool {
	return f.Date == g.Date && f.Start == g.Start && f.End == g.End && f.Work == g.Work && (f.Meeting == nil) == (g.Meeting == nil)
}

// sameTack reports whether two facts of a horse wear the same pieces.
func sameTack(f, g *model.Stint) bool {
	return slices.EqualFunc(f.Turn.Pieces(), g.Turn.Pieces(), func(x, y *model.Piece) bool { return x.Tag == y.Tag })
}

func anyMarked(w *model.Week) bool {
	marked, _ := markedHorses(w)
	return marked
}

// translate tells a plan of the base in the nouns of a week.
func (s *Session) translate(w *model.Week, p *model.Plan) (*model.Plan, error) {
	there := translator{nouns(w.Centre.Horses, func(h *model.Horse) string { return h.Name }),
		nouns(w.Centre.Pieces, func(x *model.Piece) string { return x.Tag })}
	out := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides)), Proof: p.Proof}
	for i, r := range w.Rides {
		k, ok := s.index[named(r)]
		if !ok {
			return nil, fmt.Errorf("%s is not in the session, which is a bug of this program", r)
		}
		out.Turns[i], out.Ground[i] = there.turn(p.Turns[k]), p.Ground[k]
		if r.State == model.Started {
			out.Turns[i] = r.Told
		}
	}
	return out, nil
}

// translator finds the same nouns in another reading of the centre.
type translator struct {
	horses map[string]*model.Horse
	pieces map[string]*model.Piece
}

func (s *Session) home() translator {
	c := s.base.Centre
	return translator{nouns(c.Horses, func(h *model.Horse) string { return h.Name }), nouns(c.Pieces, func(x *model.Piece) string { return x.Tag })}
}

func nouns[T any](all []*T, name func(*T) string) map[string]*T {
	by := map[string]*T{}
	for _, x := range all {
		by[name(x)] = x
	}
	return by
}

// turn is the same turn there; nil where there is none, or its horse is not there.
func (t translator) turn(was *model.Turn) *model.Turn {
	if was == nil || was.Horse == nil {
		return nil
	}
	horse := t.horses[was.Horse.Name]
	if horse == nil { // it has left
		horse = was.Horse
	}
	piece := func(x *model.Piece) *model.Piece {
		if x == nil {
			return nil
		}
		if here := t.pieces[x.Tag]; here != nil {
			return here
		}
		return x
	}
	turn := &model.Turn{Horse: horse, Seat: piece(was.Seat), Girth: piece(was.Girth)}
	for _, x := range was.Pads {
		turn.Pads = append(turn.Pads, piece(x))
	}
	for _, x := range was.Extras {
		turn.Extras = append(turn.Extras, piece(x))
	}
	return turn
}
