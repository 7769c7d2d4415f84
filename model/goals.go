package model

import "fmt"

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

// Gap is how far from best the plan can be in this goal, in words; "" where it
// is the best that there is.
func (g GoalResult) Gap() string {
	n := g.Value - g.Bound
	if g.Proved || n <= 0 {
		return ""
	}
	switch g.Name {
	case "seat a":
		return fmt.Sprintf("at most %d more could ride", n)
	case "seat b":
		return fmt.Sprintf("at most %d more who ride first could ride, in the place of others", n)
	case "seat c":
		return fmt.Sprintf("at most %d more who were on the ground last time could ride, in the place of others", n)
	case "told a":
		return fmt.Sprintf("at most %d more of those who were told so could ride", n)
	case "told b":
		return fmt.Sprintf("at most %d more who ride first could ride, in the place of others", n)
	case "keep a":
		return fmt.Sprintf("at most %d more could stay on the horse that was posted", n)
	case "keep b":
		return fmt.Sprintf("at most %d more could stay in the tack that was posted", n)
	case "besides":
		return fmt.Sprintf("at most %d more could ride besides", n)
	case "wishes":
		return fmt.Sprintf("wishes of a weight of at most %d more could be met", n)
	case "carry":
		return fmt.Sprintf("at most %d fewer changes of seat or shared pieces could do", n)
	case "fair a":
		return fmt.Sprintf("the busiest horse's week could be at most %d twentieths less full", n)
	case "fair b":
		return fmt.Sprintf("at most %d fewer horses could be as busy as the busiest", n)
	}
	return fmt.Sprintf("at most %d fewer horses could be brought in, date by date", n)
}
