package folder

import (
	"fmt"
	"slices"

	"tackwright/model"
)

// readRecords reads the files of posted/ and ridden/. Names in them may be of
// nouns that are gone: those are then nouns of their own, not in the centre. It
// returns the latest version.
func (r *reader) readRecords(posted, ridden []*node) (latest int) {
	r.history = true
	versions := map[int]Span{}
	withdraws := map[*model.Posted]int{}
	for _, root := range posted {
		p := &model.Posted{}
		e := postedEntry{Posted: p}
		r.noun, r.entries[p] = p, root
		before := len(r.troubles)
		postedKeys.read(r, root, &e)
		e.finish(r, root)
		if old, taken := versions[p.Version]; taken && p.Version != 0 {
			r.mistake(root.spot("version"), fmt.Sprintf("two posted plans of version %d: the other is at %s", p.Version, old), "keep the one that was posted")
		}
		versions[p.Version] = root.spot("version")
		latest = max(latest, p.Version)
		if len(r.troubles) == before {
			r.centre.Posted = append(r.centre.Posted, p)
			withdraws[p] = e.withdraws
		}
	}
	slices.SortStableFunc(r.centre.Posted, func(a, b *model.Posted) int { return a.Version - b.Version })
	r.centre.Posted = r.withdraw(r.centre.Posted, withdraws)
	closed := map[model.Date]Span{}
	for _, root := range ridden {
		x := &model.Ridden{}
		e := riddenEntry{Ridden: x}
		r.noun, r.entries[x] = x, root
		before := len(r.troubles)
		riddenKeys.read(r, root, &e)
		e.finish(r, root)
		if old, taken := closed[x.Date]; taken && x.Date != 0 {
			r.mistake(root.spot("date"), fmt.Sprintf("%s is closed twice: the other is at %s", x.Date, old), "keep the one that is right")
		}
		closed[x.Date] = root.spot("date")
		if len(r.troubles) == before {
			r.centre.Ridden = append(r.centre.Ridden, x)
		}
	}
	slices.SortStableFunc(r.centre.Ridden, func(a, b *model.Ridden) int { return int(a.Date - b.Date) })
	r.noun, r.history = nil, false
	return latest
}
