package model

// GoalKind is one of the goals that a centre may put in an order of its own,
// after Seat, which always comes first.
type GoalKind string

const (
	GoalWishes  GoalKind = "wishes"
	GoalCarry   GoalKind = "carry"
	GoalFair    GoalKind = "fair"
	GoalBringIn GoalKind = "bring in" // optional: as few horses a date as can be
)

// DefaultGoals is the order in which goals after Seat are proved.
func DefaultGoals() []GoalKind { return []GoalKind{GoalWishes, GoalCarry, GoalFair} }

// Wishes are the weights of wishes that a ride does not meet; 0 leaves one out.
// Likes and dislikes have weights of their own.
type Wishes struct {
	UsualHorse int // not on the usual horse
	UsualSeat  int // not in the usual seat
	Style      int // for each step down the rider's styles
	Marked     int // load above the share that is marked
}

// DefaultWishes are the weights of a centre that sets none (ours).
func DefaultWishes() Wishes { return Wishes{UsualHorse: 4, UsualSeat: 1, Style: 1, Marked: 2} }
