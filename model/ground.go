package model

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Alone says what stands in a ride's way as if no other open ride of the week
// were seated; history, work, notes and limits stay. free are the horses that
// could carry it then: where there are any, it is the other rides that stand in
// its way.
func (w *Week) Alone(r *Ride) (reasons []string, free []*Horse) {
	for _, why := range []string{NotOpen(r), InstructorAway(r.Meeting), w.FormStops(r.Rider, r.Date())} {
		if why != "" {
			reasons = append(reasons, why)
		}
	}
	if r.State == Off && len(reasons) == 0 {
		reasons = append(reasons, r.OffWhy)
	}
	if r.Rider.Weight == 0 {
		reasons = append(reasons, "the weight of "+r.Rider.Called()+" is not known")
	}
	if len(reasons) > 0 {
		return reasons, nil
	}
	horses := map[string][]string{}
	var order []string
	for _, h := range w.Centre.Horses {
		why := w.horseStops(r, h)
		if why == "" {
			free = append(free, h)
			continue
		}
		if horses[why] == nil {
			order = append(order, why)
		}
		horses[why] = append(horses[why], h.Name)
	}
	if len(free) > 0 {
		return nil, free
	}
	slices.SortStableFunc(order, func(a, b string) int { return cmp.Compare(len(horses[b]), len(horses[a])) })
	for _, why := range order {
		names := strings.Join(horses[why], ", ")
		if n := len(w.Centre.Horses); n > 1 && n == len(horses[why]) {
			names = "every horse"
		}
		reasons = append(reasons, fmt.Sprintf("%s: %s", why, names))
	}
	return reasons, nil
}

// horseStops says why a ride cannot be on a horse with all other open rides on
// the ground, in words that read the same for every horse it is so for; "" is
// that it can.
func (w *Week) horseStops(r *Ride, h *Horse) string {
	if NotAsHeld(r, h, nil) != "" && r.Held.Horse != h {
		return "a note keeps the rider on " + r.Held.Horse.Name
	}
	if why := cmp.Or(w.NotThere(h, r.Date(), r.Start, r.End), w.TooYoung(h, r.Date(), r.Rider.Support), w.Unsuited(r, h)); why != "" {
		return strings.ReplaceAll(why, h.Name, "the horse")
	}
	switch {
	case h.Weight == 0:
		return "the horse's weight is not known"
	case !h.Carries(r.Rider.Weight, r.Rider.Support, w.House):
		return "the rider is more than the horse may carry"
	}
	if why := w.breaksAlone(r, &Turn{Horse: h}, bare...); why != "" {
		return why
	}
	return w.tackStops(r, h)
}

// tackStops looks for a tack set, and says which step first leaves none.
func (w *Week) tackStops(r *Ride, h *Horse) string {
	d := r.Date()
	// furthest is the last step that some set reached.
	furthest, why := -1, "no seat is approved for the horse by the fit chart"
	stop := func(step int, words string) {
		if step > furthest {
			furthest, why = step, words
		}
	}
	inUse := func(ps ...*Piece) bool {
		return !slices.ContainsFunc(ps, func(p *Piece) bool { return w.NotInUse(p, d, r.Start, r.End) != "" })
	}
	for _, seat := range w.Centre.Pieces {
		if !seat.IsSeat() {
			continue
		}
		for _, row := range w.RowsFor(h, seat, d) {
			switch {
			case SeatUnfit(r.Rider, seat) != "" || NotAsHeld(r, h, seat) != "":
				stop(0, "no charted seat that fits the rider")
				continue
			case !inUse(seat):
				stop(1, "every charted seat that fits the rider is out of use")
				continue
			}
			choices := slices.DeleteFunc(slices.Clone(w.PadChoices(h, seat, row)), func(c []*Piece) bool { return !inUse(c...) })
			if len(choices) == 0 {
				stop(2, "no pad in use for the seat that fits the rider")
				continue
			}
			extras, missing := w.extrasFor(r, h, seat, inUse)
			if missing != "" {
				stop(3, missing)
				continue
			}
			for _, pads := range choices {
				for _, girth := range w.girthsFor(seat, row, inUse) {
					t := &Turn{Horse: h, Seat: seat, Pads: pads, Girth: girth, Extras: extras}
					broken := w.breaksAlone(r, t)
					if broken == "" {
						return ""
					}
					stop(5, broken)
				}
			}
			stop(4, "no girth in use that the fit chart names for the seat")
		}
	}
	return why
}

// girthsFor are the girths of a row that are in use; one nil for a seat that
// takes none.
func (w *Week) girthsFor(seat *Piece, row *FitRow, inUse func(...*Piece) bool) []*Piece {
	if !seat.TakesGirth() {
		return []*Piece{nil}
	}
	var girths []*Piece
	for _, p := range w.Centre.Pieces {
		if p.Kind == Girth && p.Buckles(seat) && row.HasGirth(p) && inUse(p) {
			girths = append(girths, p)
		}
	}
	return girths
}

// bare are the rules that a turn without its tack set breaks, or may seem to:
// how long a change takes, or whether a held seat is kept, is not known before
// the seat is.
var bare = []string{"whole set", "horse in one place", "extras fit", "as told"}

// extrasFor are the lightest extras that can go on the horse with the seat
// beside what stands: a piece of its own for each need of the rider; else what
// is missing, in words.
func (w *Week) extrasFor(r *Ride, h *Horse, seat *Piece, inUse func(...*Piece) bool) (extras []*Piece, missing string) {
	var choices [][]*Piece
	for _, need := range r.Rider.Extras {
		var can []*Piece
		kind := string(need.Kind)
		furthest := 0 // step that some piece failed at
		steps := []string{"no " + kind + " in the tack room", "no " + kind + " of the rider's size", "no " + kind + " of the rider's size for the seat",
			"no " + kind + " of the rider's size for the seat in use", "no " + kind + " of the rider's size for the seat free beside what stands",
			"too few pieces of the rider's size, " + kind}
		for _, p := range w.Centre.Pieces {
			step := 0
			switch {
			case p.Kind != need.Kind:
			case !need.MetBy(p):
				step = 1
			case !p.GoesOnSeat(seat):
				step = 2
			case !inUse(p):
				step = 3
			case w.breaksAlone(r, &Turn{Horse: h, Extras: []*Piece{p}}, bare...) != "":
				step = 4
			default:
				step = 5
				can = append(can, p)
			}
			furthest = max(furthest, step)
		}
		choices = append(choices, can)
		if extras = w.lightest(choices, nil); extras == nil {
			return nil, steps[furthest]
		}
	}
	return extras, ""
}

// lightest picks a piece of its own from each of the choices, so that those not
// yet taken weigh least together; nil is that there are too few.
func (w *Week) lightest(choices [][]*Piece, taken []*Piece) []*Piece {
	if len(choices) == 0 {
		return []*Piece{}
	}
	var best []*Piece
	for _, p := range choices[0] {
		if slices.Contains(taken, p) {
			continue
		}
		rest := w.lightest(choices[1:], append(taken, p))
		if rest == nil {
			continue
		}
		if pick := append([]*Piece{p}, rest...); best == nil || w.weigh(pick) < w.weigh(best) {
			best = pick
		}
	}
	return best
}

func (w *Week) weigh(ps []*Piece) (sum Grams) {
	for _, p := range ps {
		g, _ := p.WeightIn(w.House)
		sum += g
	}
	return sum
}

// breaksAlone is the first rule, but for those excepted, that the ride seated
// alone breaks; "" is none.
func (w *Week) breaksAlone(r *Ride, t *Turn, except ...string) string {
	p := &Plan{Turns: make([]*Turn, len(w.Rides))}
	for i, x := range w.Rides {
		if x.State == Started {
			p.Turns[i] = x.Told
		}
	}
	p.Turns[r.Index] = t
	// Only what shares the date, the horse or a piece can take part in what it breaks.
	near := *w
	near.Facts = slices.DeleteFunc(slices.Clone(w.Facts), func(f *Stint) bool {
		return f.Date != r.Date() && f.Turn.Horse != t.Horse &&
			!slices.ContainsFunc(f.Turn.Pieces(), func(x *Piece) bool { return slices.Contains(t.Pieces(), x) })
	})
	for _, v := range Broken(near.Audit(p)) {
		if !slices.Contains(except, v.Rule.Name) {
			return cmp.Or(causes[v.Rule.Name], "beside what stands, "+v.Rule.Name)
		}
	}
	return ""
}

// causes are the rules that a ride seated alone can break, as what stands in its
// way: by name of the rule.
var causes = map[string]string{
	"load":                    "the rider is, with the tack, more than the horse may carry",
	"day's work":              "the horse has no work left in its day",
	"week's work":             "the horse has no work left in its week",
	"run of work":             "the horse would work too long without a rest",
	"horse in one place":      "the horse is at work elsewhere then, or too shortly before or after",
	"horses apart":            "the horse is kept apart from one that is in the lesson",
	"piece in one place":      "a piece that it needs is on another horse then",
	"own tack only":           "a piece that it needs has to be cleaned first",
	"room in the ring":        "the arena, the lesson or the instructor is full then",
	"hands in the ring":       "the lesson counts on too few helpers",
	"instructor in one place": "the instructor holds another lesson then",
	"rider in one place":      "the rider has another ride then",
}
