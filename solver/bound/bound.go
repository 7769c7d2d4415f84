// Package bound works out what no plan of a week can do better than, without searching for one: a
// Lagrangian relaxation (Fisher 1981, Management Science 27:1-18). Each horse's week is planned by
// itself, exactly, against prices: a ride pays the horse that carries it, a horse pays for the tack
// that others want too. Whatever the prices, the horses' best weeks together cost no more than the
// best plan, so every bound is proved; good prices, found step by step, make it a close one.
//
// [Market.Barter] looks for a good plan in the same terms: one for the search to begin with.
//
// It works in integers throughout: the same problem gives the same answer on every machine.
package bound

// Problem is a week as the relaxation sees it. What it leaves out of the rules only makes the bound
// lower.
type Problem struct {
	// Rides is their number. Each is carried once or is on the ground.
	Rides int
	// Pairs is the number of pairs of a ride and a horse in its lesson.
	Pairs int
	// Worn is the number of pairs of a ride and a horse that is saddled in a certain way; 0: they are not told apart.
	Worn int
	// Grounded says of some rides that no more than Most may be on the ground.
	Grounded []Grounded
	// OnGround is what each ride costs when it is on the ground.
	OnGround []int
	Spells   []Spell
	// Room is, of each thing that horses share at one time (a piece of tack, a place in the ring),
	// how many of them there are.
	Room []int
	// Slow says that good prices are long in coming, as where it costs something to work at all: staffing of 71
	// to 86 tasks came to 27.7 and 27.8 with the usual patience, to 28.0 and 28.6 with more, and 29 is best; of 228
	// tasks with a patience of 200 to 60.7, of 300 to 61.4, and 63 is best.
	Slow bool
}

// Grounded is a limit on rides on the ground: of Rides at most Most.
type Grounded struct {
	Rides []int
	Most  int
}

// Cut is known of every plan that matters: of Pairs that go together and Rides that are on the ground
// there are at least Least.
type Cut struct {
	Pairs, Rides []int
	Least        int
}

// Spell is a horse in one calendar week.
type Spell struct {
	Days     []Day
	MostWork int64 // over the days; below 0: no limit
	MostDays int   // of them with work that have none anyway; below 0: no limit
	MostRow  int   // dates in a row with work; 0: no limit
}

// Day is a horse on one date: stretches of work, the ways to work some of them, and what they can share.
type Day struct {
	Rested    bool // a date without work is between it and the day before, or before the first
	Sure      int  // dates right before it, since then, that have work anyway
	Works     bool // it has work anyway
	In        int  // what it costs to work on it at all
	Stretches []Stretch
	Shares    []Share
	Steps     []Step
}

// Stretch is work in one place or in several with no time between to change tack: one of the Ways to
// saddle the horse, and in each place one of its Riders.
type Stretch struct {
	Ways   []Way
	Places [][]Rider
	Within []int // shares of the day between two of its places
}

// Way uses things of Room: all of Uses, and one list of Girths where there are any.
type Way struct {
	Name   int // under which the answer speaks of it
	Uses   []int
	Girths [][]int
}

// Rider is a ride on the horse of a place: what it costs, what it takes of Room, the ways that suit
// it, and for each need the lists of Room of which one meets it. Pair is the number under which the
// answer speaks of the two.
type Rider struct {
	Pair, Ride, Cost int
	Uses             []int
	Ways             []Suits
	Needs            [][][]int
}

// Suits is a way that a rider can ride in, what that costs, and the number of the pair in it.
type Suits struct{ Way, Cost, Worn int }

// Answer tells what no plan can be better than.
type Answer struct {
	// Least is what the best plan costs, or less.
	Least int
	// With is, for each pair of rider and horse, what the best plan costs in which they go together,
	// or less.
	With []int
	// Value is what the best plan costs, or less, before it is rounded up to whole costs, and More how much more, at the
	// same prices, a plan costs in which a pair goes together, or less: in 1/Scale. What pairs of different spells cost
	// more adds up; Spell is the one that each is in.
	Value int64
	More  []int64
	Spell []int
	// Worn and MoreWorn are With and More of each pair in a certain way.
	Worn     []int
	MoreWorn []int64
	// Often are the pairs that go together in most of the weeks which the horses planned while the
	// prices settled, the most frequent first: a good plan has most of them.
	Often []int
}

// Scale is what a cost of 1 counts in prices.
const Scale = 1 << 20

const scale = Scale

// up is v in whole costs, rounded up: costs are whole.
func up(v int64) int {
	if v >= 0 {
		return int((v + scale - 1) / scale)
	}
	return int(v / scale)
}
