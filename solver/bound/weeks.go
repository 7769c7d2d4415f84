package bound

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// takings are what horses' weeks take of the rides and of all that is shared, and what they are worked out on.
type takings struct {
	carried []int // of each ride
	used    []int // of each thing of Room
	met     []int // of each cut
	picked  []int // pairs, in any order
	ridden  []int // the way that each of them rides in
	scratch *scratch
}

func (m *Market) noTakings() takings {
	return takings{carried: make([]int, len(m.ride)), used: make([]int, len(m.room)), met: make([]int, len(m.cut)), scratch: &scratch{}}
}

func (t *takings) clear() {
	clear(t.carried)
	clear(t.used)
	clear(t.met)
	t.picked, t.ridden = t.picked[:0], t.ridden[:0]
}

func (t *takings) add(o *takings) {
	for _, sums := range [][2][]int{{t.carried, o.carried}, {t.used, o.used}, {t.met, o.met}} {
		for i, n := range sums[1] {
			sums[0][i] += n
		}
	}
	t.picked, t.ridden = append(t.picked, o.picked...), append(t.ridden, o.ridden...)
}

// planWeeks lets horses plan their weeks at the prices, on as many processors as the process runs on, up to 8
// (each takes some memory), and counts what they take. What each week costs, and how many rides it has, is told.
func (m *Market) planWeeks(spells []int, tell func(spell int, cost int64, rides int)) {
	m.takings.clear()
	workers := max(1, min(runtime.GOMAXPROCS(0), 8, len(spells)))
	if m.alone {
		workers = 1
	}
	for len(m.beside) < workers-1 {
		m.beside = append(m.beside, m.noTakings())
	}
	markets := []*Market{m}
	for _, t := range m.beside[:workers-1] {
		own := *m // its prices, and takings of its own
		own.takings = t
		own.takings.clear()
		markets = append(markets, &own)
	}
	each(len(spells), workers, func(worker, i int) {
		m := markets[worker]
		b, before := m.book(spells[i]), len(m.picked)
		cost := b.best()
		b.take()
		tell(spells[i], cost, len(m.picked)-before)
	})
	for k, own := range markets[1:] {
		m.beside[k] = own.takings
		m.add(&own.takings)
	}
}

// each does n pieces of work, one after the other on so many workers side by side: the first is who calls.
func each(n, workers int, work func(worker, i int)) {
	var next atomic.Int64
	run := func(worker int) {
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			work(worker, i)
		}
	}
	var all sync.WaitGroup
	for worker := 1; worker < workers; worker++ {
		all.Go(func() { run(worker) })
	}
	run(0)
	all.Wait()
}
