package sheet

import (
	"slices"

	"tackwright/model"
)

// tacking is a tack-up that needs a bay of the cross ties for a fixed time: it
// may begin at free, and must be over by due.
type tacking struct{ free, due model.Minute }

// latest finds when each tacking begins so that no more than bays of them are
// under way at once, and each as late as can be: the last one begins as late as
// in any other order, and so does the last but one, and so on. ok is false where
// no order has all of them over in time.
//
// Seen from the evening backwards it is earliest deadline first for jobs of one
// length on alike machines. That alone is exact where every tacking may begin
// at any hour; where one has to wait for its horse or for a piece, a place in
// the order may have to stay empty for it, which a lid on that place says
// (Simons, SIAM J. Computing 12, 1983: from memory).
func latest(jobs []tacking, bays int, length model.Minute) (begin []model.Minute, ok bool) {
	const never = model.Minute(1 << 30)
	lids := slices.Repeat([]model.Minute{never}, len(jobs))
	for {
		order, ends, ok := backwards(jobs, bays, length, lids)
		if ok {
			begin = make([]model.Minute, len(jobs))
			for k, j := range order {
				begin[j] = ends[k] - length
			}
			return begin, true
		}
		// The last of the order cannot begin in time. The latest place that a
		// tacking with more room has taken has to go to one of those after it.
		last := len(order) - 1
		room := jobs[order[last]].free
		k := last
		for k >= 0 && jobs[order[k]].free >= room {
			k--
		}
		if k < 0 {
			return nil, false
		}
		lids[k] = 0
		for _, j := range order[k+1:] {
			lids[k] = max(lids[k], jobs[j].due)
		}
	}
}

// backwards gives the places in the order, from the evening on, to tackings. It
// stops with ok false at the first that would begin before it may.
func backwards(jobs []tacking, bays int, length model.Minute, lids []model.Minute) (order []int, ends []model.Minute, ok bool) {
	left := make([]int, len(jobs))
	for j := range left {
		left[j] = j
	}
	for k := range jobs {
		end := lids[k]
		if k > 0 {
			end = min(end, ends[k-1])
		}
		if k >= bays {
			end = min(end, ends[k-bays]-length)
		}
		last := left[0]
		for _, j := range left {
			if jobs[j].due > jobs[last].due {
				last = j
			}
		}
		end = min(end, jobs[last].due)
		pick := -1
		for _, j := range left {
			if jobs[j].due < end {
				continue
			}
			a := jobs[j]
			if pick < 0 || a.free > jobs[pick].free || a.free == jobs[pick].free && a.due >= jobs[pick].due {
				pick = j
			}
		}
		order, ends = append(order, pick), append(ends, end)
		if end-length < jobs[pick].free {
			return order, ends, false
		}
		left = slices.DeleteFunc(left, func(j int) bool { return j == pick })
	}
	return order, ends, true
}

// crowd is a smallest set of tackings that cannot all be over in time: without
// any one of them the others can. It is nil where all can.
func crowd(jobs []tacking, bays int, length model.Minute) []int {
	if _, ok := latest(jobs, bays, length); ok {
		return nil
	}
	in := make([]int, len(jobs))
	for j := range in {
		in[j] = j
	}
	for j := range jobs {
		without := slices.DeleteFunc(slices.Clone(in), func(x int) bool { return x == j })
		if _, ok := latest(only(jobs, without), bays, length); !ok {
			in = without
		}
	}
	return in
}

// only picks the tackings of those numbers.
func only(jobs []tacking, numbers []int) []tacking {
	var out []tacking
	for _, j := range numbers {
		out = append(out, jobs[j])
	}
	return out
}
