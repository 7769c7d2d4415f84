package model

// Class says who may change what a rule asks.
type Class string

const (
	// Care is welfare, safety and health: no explanation, fix or flag bends it.
	Care Class = "care"
	// Stock is what the tack room and the herd hold.
	Stock Class = "stock"
	// Timetable is what the centre has set and may change.
	Timetable Class = "timetable"
)

// Rule that every plan keeps.
type Rule struct {
	Name     string
	Class    Class
	Sentence string // what it asks, in the trade's words
	audit    func(*ledger)
}

// Rules are all the rules, in the order in which people ask about them.
var Rules = []*Rule{
	wholeSet, horseInOnePlace, horseAtWork, load, daysWork, runOfWork, weeksWork, horseSuitsRider,
	horsesApart, seatFitsHorse, seatFitsRider, girthFits, extrasFit, pieceInOnePlace, pieceInUse,
	ownTackOnly, roomInTheRing, handsInTheRing, instructorInOnePlace, riderInOnePlace, riderHere,
	formInDate, centreOpen, asTold,
}

// RuleNamed is the rule of that name, or nil.
func RuleNamed(name string) *Rule {
	for _, r := range Rules {
		if r.Name == name {
			return r
		}
	}
	return nil
}

// Violation is one way in which a plan breaks a rule.
type Violation struct {
	Rule      *Rule
	Inherited bool // only facts take part: no open ride of the plan does
	Words     string
	Stints    []*Stint // those that take part
}
