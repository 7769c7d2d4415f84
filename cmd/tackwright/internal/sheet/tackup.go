package sheet

import (
	"cmp"
	"slices"

	"tackwright/model"
)

// TackUp is a horse made ready: what it wears until it is untacked, and whom it
// carries.
type TackUp struct {
	OnBy      Clock   `json:"on_by" about:"when all must be on"`
	Horse     string  `json:"horse"`
	Looks     string  `json:"looks,omitempty" about:"what the eye finds"`
	Kept      string  `json:"kept,omitempty" about:"stall or field"`
	Again     bool    `json:"again,omitempty" about:"it was tacked up before, and has rested"`
	CrossTies *Bay    `json:"cross_ties,omitempty" about:"when it stands in a bay"`
	NoBay     bool    `json:"no_bay,omitempty" about:"no bay of the cross ties is free in time"`
	Pieces    []Piece `json:"pieces" about:"beside its own bridle or halter"`
	WaitsFor  []Piece `json:"waits_for" about:"those of them that come off another horse too late for the ready time"`
	OthersBy  Clock   `json:"others_by,omitzero" about:"then: when all others are at the horse"`
	Rides     []Ride  `json:"rides" about:"in order; what changes between them is a changeover"`
	OffFrom   Clock   `json:"off_from" about:"when it is untacked"`

	begin model.Minute
}

// Bay is when a horse stands tacked up in the cross ties.
type Bay struct {
	From  Clock `json:"from"`
	Until Clock `json:"until"`
}

// CrossTies is how the bays of a centre come round.
type CrossTies struct {
	Bays   int     `json:"bays" about:"how many there are"`
	First  Clock   `json:"first,omitzero" about:"when the first horse goes in"`
	TooFew []Crowd `json:"too_few" about:"horses that cannot all be tacked up in time"`
}

// Crowd are horses that cannot all be tacked up in the bays in time; without any
// one of them the others could be.
type Crowd struct {
	Horses  []string `json:"horses"`
	From    Clock    `json:"from" about:"the earliest that any of them can begin"`
	Until   Clock    `json:"until" about:"the latest that any of them must be ready"`
	Without string   `json:"without" about:"the horse that is left without a bay"`
}

// tackUps are those of the day, in the order in which they begin.
func (d *day) tackUps() ([]TackUp, *CrossTies) {
	var ups []TackUp
	var jobs []tacking
	for _, s := range d.stints {
		if !d.isTackUp(s) {
			continue
		}
		u, job := d.tackUp(s)
		ups, jobs = append(ups, u), append(jobs, job)
	}
	ties := d.crossTies(ups, jobs)
	slices.SortStableFunc(ups, func(a, b TackUp) int {
		return cmp.Or(cmp.Compare(a.begin, b.begin), cmp.Compare(a.OnBy, b.OnBy))
	})
	return ups, ties
}

func (d *day) tackUp(s *model.Stint) (TackUp, tacking) {
	h := s.Turn.Horse
	job := tacking{due: d.onBy(s, core(s.Turn)...)}
	if last := before(d.horse[h], s); last != nil {
		job.free = last.End
	}
	for _, x := range core(s.Turn) {
		if last := before(d.piece[x], s); last != nil {
			job.free = max(job.free, last.End)
		}
	}
	u := TackUp{OnBy: Clock(job.due), Horse: h.Name, Looks: h.Looks, Kept: h.Kept,
		Again:  slices.ContainsFunc(d.horse[h][:slices.Index(d.horse[h], s)], wears),
		Pieces: d.pieces(s.Turn, s.Turn.Pieces()), begin: job.due - d.house.Tack}
	for i := range u.Pieces {
		p := &u.Pieces[i]
		g := d.giver(p.tagged, s)
		if g == nil {
			continue
		}
		p.From, p.OffAt, p.Waits = g.Turn.Horse.Name, Clock(g.End), d.rested(g, s)
		if rest := d.onBy(s); !p.Waits && rest < s.Start {
			u.WaitsFor, u.OthersBy = append(u.WaitsFor, *p), Clock(rest)
		}
	}
	for i, t := range d.run(s) {
		r := d.ride(t)
		r.NewTack = i > 0 && d.tackChanges(t)
		u.Rides = append(u.Rides, r)
		u.OffFrom = Clock(t.End)
	}
	return u, job
}

// crossTies gives each tack-up its time in a bay, and says which horses the
// bays are too few for. It leaves out one horse of each such crowd, the one with
// the least time.
func (d *day) crossTies(ups []TackUp, jobs []tacking) *CrossTies {
	if d.house.CrossTies <= 0 {
		return nil
	}
	ties := &CrossTies{Bays: d.house.CrossTies}
	in := make([]int, len(jobs))
	for i := range in {
		in[i] = i
	}
	for {
		few := crowd(only(jobs, in), ties.Bays, d.house.Tack)
		if few == nil {
			break
		}
		for i, k := range few {
			few[i] = in[k]
		}
		c, out := crowded(ups, jobs, few)
		ties.TooFew = append(ties.TooFew, c)
		ups[out].NoBay = true
		in = slices.DeleteFunc(in, func(i int) bool { return i == out })
	}
	begin, _ := latest(only(jobs, in), ties.Bays, d.house.Tack)
	for k, i := range in {
		u := &ups[i]
		u.begin = begin[k]
		u.CrossTies = &Bay{From: Clock(u.begin), Until: Clock(u.begin + d.house.Tack)}
		if k == 0 || u.CrossTies.From < ties.First {
			ties.First = u.CrossTies.From
		}
	}
	return ties
}

func crowded(ups []TackUp, jobs []tacking, few []int) (Crowd, int) {
	c := Crowd{From: Clock(jobs[few[0]].free), Until: Clock(jobs[few[0]].due)}
	out := few[0]
	for _, i := range few {
		c.Horses = append(c.Horses, ups[i].Horse)
		c.From, c.Until = min(c.From, Clock(jobs[i].free)), max(c.Until, Clock(jobs[i].due))
		if jobs[i].due-jobs[i].free < jobs[out].due-jobs[out].free {
			out = i
		}
	}
	c.Without = ups[out].Horse
	return c, out
}
