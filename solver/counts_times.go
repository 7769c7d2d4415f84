package solver

import (
	"cmp"
	"context"
	"slices"

	"tackwright/model"
)

// leastDown works out, for the one date of a week, how many due rides stay on the
// ground at least: the most that can be carried when a horse may take any ride of a
// lesson in which it can carry one. It counts what the horses before can carry of
// each lesson, all such numbers at once, as bits. What it returns runs by itself.
func (e *encoder) leastDown() func(context.Context) int {
	t := &tally{}
	down := 0 // no horse can carry them
	digits := map[*slot]int{}
	for _, s := range e.slots {
		need := 0
		for _, r := range s.rides {
			if r.Due && slices.ContainsFunc(e.on_[r], func(on rideOn) bool { return !e.barred[on.lit] }) {
				need++
			}
		}
		if need > 0 {
			digits[s] = len(t.need)
			t.need, t.minutes = append(t.need, need), append(t.minutes, int(s.end-s.start))
			down -= need
		}
	}
	for _, r := range e.w.Rides {
		if r.State == model.Open && r.Due {
			down++
		}
	}
	t.fold()
	for _, h := range e.w.Centre.Horses {
		if len(e.of[h]) == 0 {
			continue
		}
		sets, ok := e.daySets(h)
		if !ok {
			return func(context.Context) int { return 0 }
		}
		t.horse(e.of[h], sets, digits)
	}
	return func(ctx context.Context) int {
		carried, ok := t.most(ctx)
		if !ok {
			return 0
		}
		total := 0
		for _, n := range t.need {
			total += n
		}
		return down + total - carried
	}
}

// tally counts carried rides by lesson, as the digits of one number.
type tally struct {
	need    []int // of each digit
	minutes []int
	of      []int // the digit into which a lesson's has been folded
	size    []int // of one ride in each digit
	horses  [][][]int
}

// fold makes digits of lessons, of lessons of one length together as long as the
// numbers would otherwise be too many.
func (t *tally) fold() {
	const tooMany = 1 << 19
	lessons := make([]int, len(t.need))
	for i := range lessons {
		lessons[i] = i
	}
	slices.SortStableFunc(lessons, func(a, b int) int { return cmp.Compare(t.minutes[a], t.minutes[b]) })
	need := t.need
	t.of = make([]int, len(need))
	for at := 1; ; at++ { // lessons to a digit
		t.need = nil
		for i, l := range lessons {
			if i%at == 0 {
				t.need = append(t.need, 0)
			}
			t.of[l] = len(t.need) - 1
			t.need[len(t.need)-1] += need[l]
		}
		t.size = nil
		numbers := 1
		for _, n := range t.need {
			t.size = append(t.size, numbers)
			numbers *= n + 1
			if numbers > tooMany {
				break
			}
		}
		if numbers <= tooMany {
			return
		}
	}
}

// horse adds a horse with what it can carry: rides of digits, those sets that no other
// contains. In any place it may carry a ride that is not due, so fewer of the due ones
// too, whether or not it could then rest in that place.
func (t *tally) horse(places []*place, sets []daySet, digits map[*slot]int) {
	all := make([][]int, len(sets))
	for k, s := range sets {
		for i, p := range places {
			if d, due := digits[p.slot]; s.in[i] && due {
				all[k] = append(all[k], t.of[d])
			}
		}
		slices.Sort(all[k])
	}
	slices.SortFunc(all, func(a, b []int) int { return cmp.Or(cmp.Compare(len(b), len(a)), slices.Compare(a, b)) })
	var most [][]int
	for _, rides := range slices.CompactFunc(all, slices.Equal) {
		if !slices.ContainsFunc(most, func(m []int) bool { return contains(m, rides) }) {
			most = append(most, rides)
		}
	}
	slices.SortFunc(most, slices.Compare)
	t.horses = append(t.horses, most)
}

// contains reports whether one sorted list has all that another has, as often.
func contains(all, some []int) bool {
	for _, x := range some {
		at, found := slices.BinarySearch(all, x)
		if !found {
			return false
		}
		all = all[at+1:]
	}
	return true
}

// most is how many rides can be carried; false where ctx ends first. With a number it
// reaches all in which fewer are carried, so a horse that finds no ride left in one
// lesson of a set is thought of too.
func (t *tally) most(ctx context.Context) (int, bool) {
	numbers := 1
	for i, n := range t.need {
		numbers = t.size[i] * (n + 1)
	}
	reached := newBits(numbers)
	reached.set(0)
	room := t.room(numbers)
	for _, sets := range t.horses {
		next := slices.Clone(reached)
		from := []bitset{reached} // after each ride of the set looked at last
		var last []int
		for _, rides := range sets {
			if ctx.Err() != nil {
				return 0, false
			}
			same := 0
			for same < min(len(last), len(rides)) && last[same] == rides[same] {
				same++
			}
			from = from[:same+1]
			for _, d := range rides[same:] {
				before := from[len(from)-1]
				after := slices.Clone(before)
				after.and(room[d])
				moved := slices.Clone(before)
				moved.orMoved(after, t.size[d])
				from = append(from, moved)
			}
			next.or(from[len(rides)])
			last = rides
		}
		reached = next
	}
	most := 0
	for n := range numbers {
		if reached.has(n) {
			carried := 0
			for i, size := range t.size {
				carried += n / size % (t.need[i] + 1)
			}
			most = max(most, carried)
		}
	}
	return most, true
}

// room tells for each digit in which numbers there is room for one more.
func (t *tally) room(numbers int) []bitset {
	room := make([]bitset, len(t.need))
	for d, need := range t.need {
		room[d] = newBits(numbers)
		for n := range numbers {
			if n/t.size[d]%(need+1) < need {
				room[d].set(n)
			}
		}
	}
	return room
}

// bitset is a set of numbers.
type bitset []uint64

func newBits(n int) bitset { return make(bitset, n/64+1) }

func (b bitset) has(n int) bool { return b[n/64]&(1<<(n%64)) != 0 }
func (b bitset) set(n int)      { b[n/64] |= 1 << (n % 64) }

func (b bitset) and(other bitset) {
	for i := range b {
		b[i] &= other[i]
	}
}

func (b bitset) or(other bitset) {
	for i := range b {
		b[i] |= other[i]
	}
}

// orMoved adds the numbers of another set, each by so much greater.
func (b bitset) orMoved(other bitset, by int) {
	words, rest := by/64, by%64
	for i := words; i < len(b); i++ {
		w := other[i-words] << rest
		if rest > 0 && i > words {
			w |= other[i-words-1] >> (64 - rest)
		}
		b[i] |= w
	}
}
