package model

import "time"

// House holds the rules that a centre sets for itself. [DefaultHouse] has what
// a centre gets that sets nothing.
type House struct {
	Zone        string       // IANA name of the time zone; "" is the computer's
	Units       Units        // for weights, lengths and sizes that are shown
	TwelveHour  bool         // clock
	Paper       string       // "A4" or "Letter"
	WeekStarts  time.Weekday // first day of the calendar week
	CrossTies   int          // bays in which horses are tacked up; 0: not stated
	AfternoonAt Minute       // when the afternoon crew takes over; 0: one crew

	// Gaps from the end of one ride or work to the start of the next, in
	// minutes; Stay <= Same <= Other <= Move (checked when read).
	Stay  Minute // same horse, same tack, staying in the arena
	Same  Minute // same horse, same tack, another arena
	Other Minute // same horse, other tack
	Move  Minute // a piece going to another horse
	Rest  Minute // a gap this long ends a run of work
	Ready Minute // how long before the start a first tack-up must be on
	Tack  Minute // how long tacking a clean horse takes a helper

	Limits      Limits  // for horses that state none of their own
	LoadPercent Percent // most load, as a share of body weight
	MarkPercent Percent // load above this share is marked
	AgeRidden   int     // least years to be ridden
	AgeAdaptive int     // least years to carry a rider who needs support
	Quarantine  int     // days that a new arrival keeps its tack to itself

	Elsewhere Elsewhere          // records that the centre keeps elsewhere
	Mounting  bool               // the house records mounting places: they bind
	Skills    bool               // the house records skills: they bind
	Levels    []string           // riders' levels, lowest first
	Factors   map[string]Percent // of a kind of lesson or work; 100 where absent
	Assumed   Assumed            // weights of pieces that state none

	Goals  []GoalKind // after Seat, in order
	Wishes Wishes
}

// Units are those in which figures are shown.
type Units string

const (
	Metric   Units = "metric"
	Imperial Units = "imperial"
)

// Elsewhere says which records a centre keeps outside this program. What they
// would stop is then allowed, and sheets say "not checked here".
type Elsewhere struct {
	Forms      bool // riders' medical forms
	FitDates   bool // until when a fit is approved
	TackChecks bool // when a piece's check is due
}

// Limits of a horse's work; 0 is none stated.
type Limits struct {
	DayMinutes  int // in a date, gaps shorter than the rest counted in
	DaySessions int // lessons or works in a date
	RunMinutes  int // from the first start to the last end, with no rest between
	RunSessions int // lessons or works with no rest between
	WeekMinutes int // in a calendar week, gaps not counted
	WeekDays    int // dates worked in a calendar week
	RowDates    int // dates worked in a row
}

// Or is l, with what l does not state taken from rest.
func (l Limits) Or(rest Limits) Limits {
	pick := func(a, b int) int {
		if a != 0 {
			return a
		}
		return b
	}
	return Limits{
		DayMinutes:  pick(l.DayMinutes, rest.DayMinutes),
		DaySessions: pick(l.DaySessions, rest.DaySessions),
		RunMinutes:  pick(l.RunMinutes, rest.RunMinutes),
		RunSessions: pick(l.RunSessions, rest.RunSessions),
		WeekMinutes: pick(l.WeekMinutes, rest.WeekMinutes),
		WeekDays:    pick(l.WeekDays, rest.WeekDays),
		RowDates:    pick(l.RowDates, rest.RowDates),
	}
}

const (
	// MostDayMinutes is the ceiling of any day's limit: 6 h in the arena
	// (Certified Horsemanship Association, Maximum workloads for horses).
	MostDayMinutes = 360
	// MostRunMinutes is the ceiling of any run's limit: 3 h (standard for
	// therapeutic horses as worded in hours: from memory).
	MostRunMinutes = 180
)

// Assumed weights, by kind, of pieces that state none; shown as assumed.
type Assumed struct {
	Saddle, Western, Bareback, Pad, Girth, Extra Grams
}

// DefaultHouse is the house rules of a centre that sets nothing: estimates of
// ours for gaps and weights of tack, common practice of the trade for limits.
// Ages: SI 2018/486 Sch. 5 para 6(4) (3 years) and RDA UK national guidance
// (5 for adaptive riding). Load: Powell et al. 2008, J. Equine Vet. Sci.;
// Equestrian Australia 2022 (20 %, marked above 15).
func DefaultHouse() House {
	return House{
		Units: Metric, Paper: "A4", WeekStarts: time.Monday,
		Stay: 0, Same: 5, Other: 10, Move: 15, Rest: 30, Ready: 10, Tack: 10,
		Limits: Limits{DayMinutes: 210, DaySessions: 4, RunMinutes: 150, RunSessions: 3,
			WeekMinutes: 900, WeekDays: 5, RowDates: 6},
		LoadPercent: 20, MarkPercent: 15,
		AgeRidden: 3, AgeAdaptive: 5, Quarantine: 14,
		Goals: DefaultGoals(), Wishes: DefaultWishes(),
		Assumed: Assumed{Saddle: 9000, Western: 16000, Bareback: 3000, Pad: 1500, Girth: 1000, Extra: 500},
	}
}

// Factor of a kind of lesson or work, in percent.
func (h *House) Factor(kind string) Percent {
	if f, ok := h.Factors[kind]; ok {
		return f
	}
	return 100
}
