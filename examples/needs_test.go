package examples

import (
	"slices"
	"testing"

	"tackwright/model"
)

func TestRidersOfTheDemoHaveNeedsOfManyKinds(t *testing.T) {
	is := map[string]func(*model.Rider) bool{
		"needs support":          func(r *model.Rider) bool { return r.Support },
		"needs a leader":         func(r *model.Rider) bool { return r.Leader },
		"needs two sidewalkers":  func(r *model.Rider) bool { return r.Sidewalkers == 2 },
		"mounts at the ramp":     func(r *model.Rider) bool { return slices.Equal(r.Mounting, []string{"ramp"}) },
		"mounts at the lift":     func(r *model.Rider) bool { return slices.Equal(r.Mounting, []string{"lift"}) },
		"takes time to mount":    func(r *model.Rider) bool { return r.MountMinutes > 0 },
		"wants a barrel":         func(r *model.Rider) bool { return len(r.Barrels) == 1 },
		"wants a height":         func(r *model.Rider) bool { return r.HorseMax > 0 },
		"wants a skill":          func(r *model.Rider) bool { return len(r.Skills) > 0 },
		"has a level":            func(r *model.Rider) bool { return r.Level == "independent" },
		"puts styles in order":   func(r *model.Rider) bool { return len(r.Styles) > 1 },
		"rides western first":    func(r *model.Rider) bool { return len(r.Styles) > 0 && r.Styles[0] == "western saddle" },
		"rides a surcingle":      func(r *model.Rider) bool { return slices.Contains(r.Styles, "surcingle") },
		"needs safety stirrups":  func(r *model.Rider) bool { return r.Needs("safety stirrups") },
		"needs adapted reins":    func(r *model.Rider) bool { return r.Needs("adapted reins") },
		"needs two extras":       func(r *model.Rider) bool { return len(r.Extras) == 2 },
		"likes":                  func(r *model.Rider) bool { return len(r.Likings) > 0 && !r.Likings[0].Dislike },
		"dislikes":               func(r *model.Rider) bool { return len(r.Likings) > 0 && r.Likings[0].Dislike },
		"is never on a horse":    func(r *model.Rider) bool { return len(r.Bans) > 0 },
		"rides first":            func(r *model.Rider) bool { return r.RideFirst },
		"may change freely":      func(r *model.Rider) bool { return r.MayChange == model.ChangeFreely },
		"may change if asked":    func(r *model.Rider) bool { return r.MayChange == model.ChangeAsk },
		"may not change":         func(r *model.Rider) bool { return r.MayChange == model.ChangeNever },
		"is away":                func(r *model.Rider) bool { return len(r.Away) > 0 },
		"waits":                  func(r *model.Rider) bool { return r.WaitingSince > 0 },
		"has a caution":          func(r *model.Rider) bool { return len(r.Cautions) > 0 },
		"wears something":        func(r *model.Rider) bool { return len(r.Wears) > 0 },
		"is of no known height":  func(r *model.Rider) bool { return r.Height == 0 && r.Weight > 0 },
		"is of no known weight":  func(r *model.Rider) bool { return r.Weight == 0 },
		"says when she is free":  func(r *model.Rider) bool { return len(r.Free) > 0 },
		"has a usual horse":      func(r *model.Rider) bool { return r.Usual != nil },
		"has changed her name":   func(r *model.Rider) bool { return len(r.Was) > 0 },
		"wants two lessons":      func(r *model.Rider) bool { return r.Sessions == 2 },
		"takes a range of seats": func(r *model.Rider) bool { return r.SeatMin > 0 && r.SeatMax-r.SeatMin != 10 },
	}
	for _, what := range sorted(is) {
		if !slices.ContainsFunc(open(t).Centre.Riders, is[what]) {
			t.Errorf("no rider %s", what)
		}
	}
}

func TestHorsesOfTheDemoHaveLimitsOfManyKinds(t *testing.T) {
	c := open(t).Centre
	w := demoWeek(c)
	offAllDay := func(h *model.Horse, d model.Date) bool {
		return slices.ContainsFunc(h.DaysOff, func(p model.Period) bool { return p.Has(d) })
	}
	is := map[string]func(*model.Horse) bool{
		"is weighed by tape":              func(h *model.Horse) bool { return h.ByTape },
		"carries less than the house has": func(h *model.Horse) bool { return h.LoadPercent > 0 && h.LoadPercent < c.House.LoadPercent },
		"carries less with support":       func(h *model.Horse) bool { return h.MaxSupport > 0 },
		"works less":                      func(h *model.Horse) bool { return h.Limits.DayMinutes > 0 },
		"works at more than 100 %":        func(h *model.Horse) bool { return h.Factor > 100 },
		"is in quarantine":                func(h *model.Horse) bool { return h.QuarantineUntil >= w.Until-1 },
		"had its own tack only":           func(h *model.Horse) bool { return len(h.OwnTack) > 0 },
		"has a day off": func(h *model.Horse) bool {
			return slices.ContainsFunc(w.Dates(), func(d model.Date) bool { return offAllDay(h, d) })
		},
		"is kept apart":     func(h *model.Horse) bool { return len(h.Apart) > 0 },
		"must be led":       func(h *model.Horse) bool { return h.MustLead },
		"takes some levels": func(h *model.Horse) bool { return len(h.Levels) > 0 },
		"is old enough, but not for support": func(h *model.Horse) bool {
			return w.TooYoung(h, w.Until, false) == "" && w.TooYoung(h, w.Until, true) != ""
		},
		"is at the farrier's": func(h *model.Horse) bool {
			return slices.ContainsFunc(h.Out, func(o model.Out) bool { return o.Why == model.Appointment })
		},
		"is lame, with a date to look again": func(h *model.Horse) bool {
			return slices.ContainsFunc(h.Out, func(o model.Out) bool { return o.Why == model.Lame && o.Review > c.Today && o.End.IsZero() })
		},
	}
	for _, what := range sorted(is) {
		if !slices.ContainsFunc(c.Horses, is[what]) {
			t.Errorf("no horse %s", what)
		}
	}
}

func TestTackOfTheDemoIsKeptInEveryWay(t *testing.T) {
	c := open(t).Centre
	riserRows := 0
	for _, f := range c.Chart {
		if len(f.Pads) == 2 && f.Pads[1].Loose() {
			riserRows++
		}
	}
	if riserRows < 2 {
		t.Errorf("%d rows share the riser", riserRows)
	}
	is := map[string]func(*model.Piece) bool{
		"hangs with a seat":          func(p *model.Piece) bool { return p.Kind == model.Pad && p.WithSeat != nil },
		"is kept with a horse":       func(p *model.Piece) bool { return p.Kind == model.Pad && p.WithHorse != nil },
		"is out of use":              func(p *model.Piece) bool { return len(p.Out) > 0 },
		"has no date for its check":  func(p *model.Piece) bool { return p.IsSeat() && p.CheckDue == 0 },
		"weighs what is assumed":     func(p *model.Piece) bool { return p.IsSeat() && p.Weight == 0 },
		"goes on some kinds of seat": func(p *model.Piece) bool { return len(p.GoesOn) > 0 },
		"needs no pad":               func(p *model.Piece) bool { return p.NoPad },
		"was cleaned":                func(p *model.Piece) bool { return len(p.Cleaned) > 0 },
	}
	for _, what := range sorted(is) {
		if !slices.ContainsFunc(c.Pieces, is[what]) {
			t.Errorf("no piece %s", what)
		}
	}
}

func TestLessonsOfTheDemoAreTakenInEveryWay(t *testing.T) {
	c := open(t).Centre
	is := map[string]func(*model.Lesson) bool{
		"is shared in parts": func(l *model.Lesson) bool {
			return len(l.Places) == 2 && l.Places[0].End == l.Places[1].Start && l.Places[0].End > 0
		},
		"has a rider every other week": func(l *model.Lesson) bool {
			return slices.ContainsFunc(l.Places, func(p model.Place) bool { return p.EveryOther })
		},
		"is private":                  func(l *model.Lesson) bool { return l.Kind == model.Private },
		"is semi-private":             func(l *model.Lesson) bool { return l.Kind == model.SemiPrivate },
		"has four riders":             func(l *model.Lesson) bool { return len(l.Places) == 4 },
		"is outdoors":                 func(l *model.Lesson) bool { return !l.Arena.Indoor },
		"is open to others":           func(l *model.Lesson) bool { return l.Open },
		"is held once":                func(l *model.Lesson) bool { return l.On != 0 },
		"has other helpers on a date": func(l *model.Lesson) bool { return len(l.HandsOn) > 0 },
	}
	for _, what := range sorted(is) {
		if !slices.ContainsFunc(c.Lessons, is[what]) {
			t.Errorf("no lesson %s", what)
		}
	}
	for _, why := range []string{"make-up", "guest"} {
		if !slices.ContainsFunc(c.Bookings, func(b *model.Booking) bool { return len(b.Why) >= len(why) && b.Why[:len(why)] == why }) {
			t.Errorf("no %s is booked", why)
		}
	}
	for _, kind := range []string{"lunging", "schooling", "evaluation"} {
		if !slices.ContainsFunc(c.Works, func(w *model.Work) bool { return w.Kind == kind }) {
			t.Errorf("no %s", kind)
		}
	}
}

func sorted[V any](m map[string]V) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
