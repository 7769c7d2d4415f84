package sheet

import (
	"cmp"
	"slices"

	"tackwright/model"
)

// Changeover is tack going from one horse to another, or a horse changing tack
// between two rides with no rest. What stays on a horse is none.
type Changeover struct {
	OffAt  Clock    `json:"off_at" about:"when the earlier ride ends"`
	OnBy   Clock    `json:"on_by" about:"when it must be on"`
	From   Ride     `json:"from" about:"the horse that gives; the same where it changes tack"`
	To     Ride     `json:"to" about:"the horse that gets"`
	On     []Piece  `json:"on" about:"put on"`
	Off    []Piece  `json:"off" about:"taken off, and not for another horse"`
	Stays  []string `json:"stays_on" about:"tags of what the horse keeps on"`
	Waits  bool     `json:"waits,omitempty" about:"a rest or longer: it may hang at its rack until then"`
	NoTime bool     `json:"no_time,omitempty" about:"the next ride starts as the last one ends: it is done in the ring"`
}

// SameHorse reports whether a horse changes tack, and none gives to another.
func (c *Changeover) SameHorse() bool { return c.From.Horse == c.To.Horse }

// racks are where the pieces may hang between the two rides.
func (c *Changeover) racks() []string {
	var racks []string
	for _, p := range c.On {
		p.From = ""
		if at := where(p); !p.Travels && !slices.Contains(racks, at) {
			racks = append(racks, at)
		}
	}
	return racks
}

// changeovers of the day, in the order in which tack comes off.
func (d *day) changeovers() []Changeover {
	var out []Changeover
	for _, s := range d.stints {
		if c, ok := d.changed(s); ok {
			out = append(out, c)
		}
		out = append(out, d.given(s)...)
	}
	slices.SortStableFunc(out, func(a, b Changeover) int {
		return cmp.Or(cmp.Compare(a.OffAt, b.OffAt), cmp.Compare(a.OnBy, b.OnBy))
	})
	return out
}

// given are the pieces that a ride gets from other horses, an entry for each
// that gives.
func (d *day) given(s *model.Stint) []Changeover {
	var givers []*model.Stint
	from := map[*model.Stint][]*model.Piece{}
	for _, x := range s.Turn.Pieces() {
		if g := d.giver(x, s); g != nil {
			if from[g] == nil {
				givers = append(givers, g)
			}
			from[g] = append(from[g], x)
		}
	}
	var out []Changeover
	for _, g := range givers {
		c := Changeover{OffAt: Clock(g.End), OnBy: Clock(d.onBy(s, from[g]...)), From: d.ride(g),
			To: d.ride(s), On: d.pieces(s.Turn, from[g]), Waits: d.rested(g, s)}
		for i := range c.On {
			c.On[i].From, c.On[i].Waits = g.Turn.Horse.Name, c.Waits
		}
		out = append(out, c)
	}
	return out
}

// changed is what a horse puts on and takes off between two rides of a run, but
// for what comes from another horse or goes to one.
func (d *day) changed(s *model.Stint) (c Changeover, ok bool) {
	last := before(d.horse[s.Turn.Horse], s)
	if !wears(s) || d.isTackUp(s) {
		return c, false
	}
	var on, off []*model.Piece
	had, has := last.Turn.Pieces(), s.Turn.Pieces()
	for _, x := range has {
		switch {
		case slices.Contains(had, x):
			c.Stays = append(c.Stays, x.Tag)
		case d.giver(x, s) == nil:
			on = append(on, x)
		}
	}
	for _, x := range had {
		next := after(d.piece[x], last)
		if !slices.Contains(has, x) && (next == nil || next.Turn.Horse == s.Turn.Horse) {
			off = append(off, x)
		}
	}
	if len(on)+len(off) == 0 {
		return c, false
	}
	c.OffAt, c.OnBy, c.From, c.To = Clock(last.End), Clock(d.onBy(s)), d.ride(last), d.ride(s)
	c.NoTime = c.OnBy <= c.OffAt
	c.On, c.Off = d.pieces(s.Turn, on), d.pieces(last.Turn, off)
	for i := range c.Off {
		if next := after(d.piece[c.Off[i].tagged], last); next != nil {
			c.Off[i].OnAgain = Clock(d.onBy(next))
		}
	}
	return c, true
}
