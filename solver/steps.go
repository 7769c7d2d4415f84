package solver

import (
	"cmp"
	"encoding/binary"
	"slices"

	"tackwright/model"
	"tackwright/solver/bound"
)

// dayWays are the ways for a horse to work a date; none where there are too many to look at.
type dayWays struct {
	stretches []stretch
	steps     []bound.Step
}

func (e *encoder) waysOf(h *model.Horse, places []*place) dayWays {
	if stretches, line, ok := e.line(h, places); ok {
		return dayWays{stretches, line}
	}
	stretches, sets, ok := e.sets(h, places, tooMany)
	if !ok {
		return dayWays{}
	}
	return dayWays{stretches, steps(sets)}
}

// steps are sets of stretches as ways through a day: those that begin alike go together, and then those that
// can go on alike, with the same work in the end.
func steps(sets []set) []bound.Step {
	tree := &branch{stretch: bound.Pause}
	for _, s := range sets {
		at := tree
		for _, x := range s.stretches {
			at = at.then(x)
		}
		at.last, at.work = true, s.work
	}
	var all []bound.Step // the last first
	var after [][]int    // of each
	alike := map[string]int{}
	var add func(*branch) int
	add = func(b *branch) int {
		key := binary.AppendVarint(binary.AppendVarint(nil, int64(b.stretch)), b.work)
		if b.last {
			key = append(key, 1)
		} else {
			key = append(key, 0)
		}
		var then []int
		for _, next := range b.next {
			then = append(then, add(next))
		}
		slices.Sort(then)
		for _, n := range then {
			key = binary.AppendVarint(key, int64(n))
		}
		return once(alike, string(key), func() int {
			all = append(all, bound.Step{Stretch: b.stretch, Last: b.last, Work: b.work})
			after = append(after, then)
			return len(all) - 1
		})
	}
	add(tree)
	slices.Reverse(all)
	for n := range all {
		for _, then := range after[len(all)-1-n] {
			step := &all[len(all)-1-then]
			step.After = append(step.After, n)
		}
	}
	return all
}

// branch is a stretch after those of the branches that it grows from.
type branch struct {
	stretch int
	last    bool
	work    int64
	next    []*branch
}

// then is the branch from b that goes on with a stretch.
func (b *branch) then(stretch int) *branch {
	at, ok := slices.BinarySearchFunc(b.next, stretch, func(n *branch, x int) int { return cmp.Compare(n.stretch, x) })
	if !ok {
		b.next = slices.Insert(b.next, at, &branch{stretch: stretch})
	}
	return b.next[at]
}

// line is the ways through a day where nothing but time limits what a horse works: of the places in the order of their
// ends, each after those of the first so many that end soon enough, however many they are. Their work counts for
// nothing. Where more than time limits it (work, a fact, a break long enough for the horse but too short for its
// tack to be changed) there is no line.
func (e *encoder) line(h *model.Horse, places []*place) ([]stretch, []bound.Step, bool) {
	limits := e.w.LimitsOf(h)
	limits.WeekDays, limits.RowDates = 0, 0 // of the week
	if limits != (model.Limits{}) || slices.ContainsFunc(e.facts[h], func(f *model.Stint) bool { return f.Date == places[0].meeting.Date }) {
		return nil, nil, false
	}
	byEnd := slices.SortedStableFunc(slices.Values(places), func(p, q *place) int { return cmp.Compare(p.end, q.end) })
	stretches, line := make([]stretch, len(byEnd)), []bound.Step{{Stretch: bound.Pause}}
	for i, q := range byEnd {
		stretches[i] = stretch{places: []*place{q}}
		before := 0
		for k, p := range byEnd[:i] {
			gap := q.start - p.end
			switch {
			case e.tooClose(gap, p.meeting.Arena, q.meeting.Arena):
			case before < k || gap < max(e.w.House.Other, e.w.House.Move):
				return nil, nil, false
			default:
				before = k + 1
			}
		}
		// Step 2k is after some of the first k. Last in After is what works least.
		works, pause := bound.Step{Stretch: i, After: []int{0}}, bound.Step{Stretch: bound.Pause, After: []int{2*i + 1}}
		if before > 0 {
			works.After = []int{2 * before, 0}
		}
		if i > 0 {
			pause.After = append(pause.After, 2*i)
		}
		line = append(line, works, pause)
	}
	line[len(line)-1].Last = true
	return stretches, line, true
}
