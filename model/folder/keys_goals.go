package folder

import (
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"tackwright/model"
)

var wishKeys = &table[model.Wishes]{
	head:  "[house.wishes]",
	about: "How much each wish that a ride does not get counts; 0 leaves it out. A rider's likes and dislikes have weights of their own, 1, 2 or 4.",
	keys: []key[model.Wishes]{
		is("usual_horse", wishWeight, "not on the usual horse", "4", func(w *model.Wishes, v int) { w.UsualHorse = v }).eg(`4`),
		is("usual_seat", wishWeight, "not in the usual seat, or one alike", "1", func(w *model.Wishes, v int) { w.UsualSeat = v }).eg(`1`),
		is("style", wishWeight, "each step down the rider's styles of seat", "1", func(w *model.Wishes, v int) { w.Style = v }).eg(`1`),
		is("marked_load", wishWeight, "a load above mark_load", "2", func(w *model.Wishes, v int) { w.Marked = v }).eg(`2`),
	},
}

const mostWishWeight = 100

var wishWeight = func() form[int] {
	f := integer
	f.words, f.like = "the weight of a wish", "4"
	f.read = func(r *reader, n *node) (int, bool) {
		v, ok := integer.read(r, n)
		if ok && (v < 0 || v > mostWishWeight) {
			r.mistake(n.span(), fmt.Sprintf("%d is no weight of a wish: it is between 0 and %d", v, mostWishWeight), "write 0 to leave the wish out, or a greater number the more it counts")
			return 0, false
		}
		return v, ok
	}
	return f
}()

// goalOrder is the order of the goals after seating as many as can be: each of
// the default ones once, and bringing in few horses where the centre wants that.
var goalOrder = func() form[[]model.GoalKind] {
	goal := oneOf("a goal", model.GoalWishes, model.GoalCarry, model.GoalFair, model.GoalBringIn)
	f := list(goal, "an order of goals")
	f.like = `["carry", "wishes", "fair"]`
	inner := f.read
	f.read = func(r *reader, n *node) ([]model.GoalKind, bool) {
		before := len(r.troubles)
		goals, ok := inner(r, n)
		if len(r.troubles) > before {
			return nil, false
		}
		for i, g := range goals {
			if slices.Contains(goals[:i], g) {
				at := n
				if n.kind == unstable.Array {
					at = n.items[i]
				}
				r.mistake(at.span(), fmt.Sprintf("%q is in the order twice", g), "leave one of the two out")
				return nil, false
			}
		}
		var missing []string
		for _, g := range model.DefaultGoals() {
			if !slices.Contains(goals, g) {
				missing = append(missing, fmt.Sprintf("%q", g))
			}
		}
		if len(missing) > 0 {
			r.mistake(n.span(), "the order does not have "+strings.Join(missing, " and "), "add "+strings.Join(missing, " and ")+" where it belongs; a goal never harms one before it")
			return nil, false
		}
		return goals, ok
	}
	return f
}()
