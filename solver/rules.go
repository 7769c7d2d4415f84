package solver

import (
	"tackwright/model"
)

// encoding is a rule as the search keeps it. What a rule says of one choice
// alone it says by forbidding the choice (ride, pair, wear, seat report true
// for what may not be); the rest it says in clauses under a selector.
type encoding struct {
	rule    string // its name in [model.Rules]
	ride    func(*encoder, *model.Ride) bool
	pair    func(*encoder, *model.Ride, *model.Horse) bool
	wear    func(*encoder, *slot, *model.Horse, *model.Piece) bool
	seat    func(*encoder, *model.Ride, *model.Horse, *option) bool
	clauses func(*encoder, under)
	// built marks the rules that the choices themselves are made of: exactly
	// one horse, one way to saddle it, one girth, the extras needed.
	built bool
}

// encodings are all the rules, in the order of [model.Rules].
var encodings []encoding

func init() { // a function, since the rules refer to the encoder that walks them
	encodings = []encoding{
		{rule: "whole set", built: true},
		{rule: "horse in one place", clauses: horseInOnePlace},
		{rule: "horse at work", pair: notAtWork},
		{rule: "load", ride: weightUnknown, seat: tooHeavyAtBest, clauses: load},
		{rule: "day's work", clauses: daysWork},
		{rule: "run of work", clauses: runOfWork},
		{rule: "week's work", clauses: weeksWork},
		{rule: "horse suits rider", pair: unsuited},
		{rule: "horses apart", clauses: horsesApart},
		{rule: "seat fits horse", built: true},
		{rule: "seat fits rider", seat: seatUnfit},
		{rule: "girth fits", built: true},
		{rule: "extras fit", built: true},
		{rule: "piece in one place", clauses: pieceInOnePlace},
		{rule: "piece in use", wear: notInUse},
		{rule: "own tack only", wear: contacted, clauses: ownTackOnly},
		{rule: "room in the ring", clauses: roomInTheRing},
		{rule: "hands in the ring", clauses: handsInTheRing},
		{rule: "instructor in one place", ride: instructorAway, clauses: instructorInOnePlace},
		{rule: "rider in one place", clauses: riderInOnePlace},
		{rule: "rider here", built: true}, // only open rides are encoded
		{rule: "form in date", ride: formStops},
		{rule: "centre open", ride: notOpen},
		{rule: "as told", pair: heldElsewhere, seat: heldOnOther},
	}
}

func weightUnknown(_ *encoder, r *model.Ride) bool  { return r.Rider.Weight == 0 }
func instructorAway(_ *encoder, r *model.Ride) bool { return model.InstructorAway(r.Meeting) != "" }
func formStops(e *encoder, r *model.Ride) bool      { return e.w.FormStops(r.Rider, r.Date()) != "" }
func notOpen(_ *encoder, r *model.Ride) bool        { return model.NotOpen(r) != "" }

func notAtWork(e *encoder, r *model.Ride, h *model.Horse) bool {
	return e.w.NotThere(h, r.Date(), r.Start, r.End) != "" || e.w.TooYoung(h, r.Date(), r.Rider.Support) != ""
}

func unsuited(e *encoder, r *model.Ride, h *model.Horse) bool { return e.w.Unsuited(r, h) != "" }

func heldElsewhere(_ *encoder, r *model.Ride, h *model.Horse) bool {
	return r.Held != nil && r.Held.Horse != h
}

func heldOnOther(_ *encoder, r *model.Ride, h *model.Horse, o *option) bool {
	return r.Held != nil && model.NotAsHeld(r, h, o.seat.one()) != ""
}

func seatUnfit(e *encoder, r *model.Ride, _ *model.Horse, o *option) bool {
	return !e.sits(r.Rider)[o.seat.index]
}

func notInUse(e *encoder, s *slot, _ *model.Horse, p *model.Piece) bool {
	return e.w.NotInUse(p, s.meeting.Date, s.start, s.end) != ""
}

func contacted(e *encoder, s *slot, h *model.Horse, p *model.Piece) bool {
	for _, x := range e.w.Contacted(p, s.instant()) {
		if x != h && p.Skin {
			return true
		}
	}
	return false
}
