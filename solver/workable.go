package solver

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// workable lists every set of places of a date in which a horse can work
// together, as far as its own limits say, those of its week where the date is the
// only one; a day's facts are in all of them. What is worked in a place also depends
// on the one before, where tack stays on.
type workable struct {
	e      *encoder
	day    []entry
	places []*place
	dayOf  func(dayState, entry) (dayState, verdict)
	runOf  func(runState, entry) (runState, verdict)
	left   int64 // of the horse's week, where the date is the only one; below 0: no limit

	at    []int // of each entry: its place
	taken []int // places
	found map[string]int
	out   []stretch
	all   []set
}

// set is stretches that a horse can work in a day, and their work.
type set struct {
	work      int64
	stretches []int
}

// stretch is places that a horse works in one after the other with no time to
// change tack; after are those that it works next, while what it wore could not
// yet be on another horse.
type stretch struct {
	places []*place
	after  []*place
}

// sets lists the stretches of a day and the sets of them. It reports false where
// there would be more than most sets.
func (e *encoder) sets(h *model.Horse, places []*place, most int) ([]stretch, []set, bool) {
	limits := e.w.LimitsOf(h)
	w := &workable{e: e, day: e.diary(h, places[0].meeting.Date), places: places, left: -1, found: map[string]int{}}
	if e.w.From == e.w.Until && e.on("week's work") {
		w.left = e.workLeft(h)
	}
	w.dayOf = e.dayStep(w.day, limits)
	w.runOf = e.runStep(w.day, limits)
	place := func(x entry) int {
		return slices.IndexFunc(places, func(p *place) bool { return !x.fact && p.worked == x.lit })
	}
	if e.on("horse in one place") {
		w.day = slices.DeleteFunc(w.day, func(x entry) bool { // too near a fact
			i := place(x)
			return i >= 0 && slices.ContainsFunc(e.facts[h], func(f *model.Stint) bool { return e.crowded(places[i], f) })
		})
	}
	for _, x := range w.day {
		w.at = append(w.at, place(x))
	}
	ok := w.from(0, dayState{}, runState{}, 0, most)
	return w.out, w.all, ok
}

// from goes on from an entry, with what has been worked before it.
func (w *workable) from(i int, day dayState, run runState, work int64, most int) bool {
	if i == len(w.day) {
		if len(w.taken) > 0 {
			w.all = append(w.all, set{work, w.stretches()})
		}
		return len(w.all) <= most
	}
	x := w.day[i]
	if !x.fact && !w.from(i+1, day, run, work, most) {
		return false
	}
	if n := len(w.taken); !x.fact && n > 0 && w.apart(w.taken[n-1], w.at[i]) {
		return true
	}
	nextDay, good := w.dayOf(day, x)
	nextRun, fair := w.runOf(run, x)
	if x.fact {
		return w.from(i+1, nextDay, nextRun, work, most)
	}
	if good != fine || fair != fine || w.left >= 0 && work+x.work > w.left {
		return true
	}
	w.taken = append(w.taken, w.at[i])
	ok := w.from(i+1, nextDay, nextRun, work+x.work, most)
	w.taken = w.taken[:len(w.taken)-1]
	return ok
}

// apart tells whether a horse cannot go from one place to another, whatever it
// wears.
func (w *workable) apart(i, j int) bool {
	p, q := w.places[i], w.places[j]
	return w.e.tooClose(q.start-p.end, p.meeting.Arena, q.meeting.Arena)
}

// stretches of the places taken, by number.
func (w *workable) stretches() []int {
	var numbers []int
	house := w.e.w.House
	for i := 0; i < len(w.taken); {
		from := i
		for i++; i < len(w.taken) && w.places[w.taken[i]].start-w.places[w.taken[i-1]].end < house.Other; i++ {
		}
		after := i
		for after < len(w.taken) && w.places[w.taken[after]].start-w.places[w.taken[i-1]].end < house.Move {
			after++
		}
		key := fmt.Sprint(w.taken[from:i], w.taken[i:after])
		n, ok := w.found[key]
		if !ok {
			n = len(w.out)
			w.found[key] = n
			w.out = append(w.out, stretch{w.these(w.taken[from:i]), w.these(w.taken[i:after])})
		}
		numbers = append(numbers, n)
	}
	return numbers
}

func (w *workable) these(at []int) []*place {
	var places []*place
	for _, i := range at {
		places = append(places, w.places[i])
	}
	return places
}
