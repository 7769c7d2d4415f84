package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures/oracle"
	"tackwright/fixtures/random"
	"tackwright/model"
)

// byTryingAll reports whether some legal plan of a week seats a ride and all that are
// seated in another.
func byTryingAll(w *model.Week, was *model.Plan, r *model.Ride) bool {
	judge, found := oracle.For(w), false
	judge.Choices().Each(func(p *model.Plan) bool {
		for i := range w.Rides {
			if p.Turns[i] == nil && (was.Turns[i] != nil || i == r.Index) {
				return true
			}
		}
		found = judge.Legal(p)
		return !found
	})
	return found
}

// Lessons of the random weeks are made open, with room, so that there are places to
// go to; every change that is looked at is tried by all plans of the changed week.
func TestAWayHelpsExactlyWhereSomePlanOfTheChangedWeekDoes(t *testing.T) {
	helps, not := map[WayKind]int{}, 0
	for seed := range uint64(*weeks) / 10 {
		w := random.Week(seed, 300)
		for _, l := range w.Centre.Lessons {
			l.Open = true
		}
		p, err := Plan(context.Background(), w, Options{Goals: 1})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range w.Rides {
			if r.State != model.Open || p.Turns[r.Index] != nil {
				continue
			}
			look := &lookout{w: w, p: p, r: r, rides: slices.DeleteFunc(slices.Clone(w.Rides), func(x *model.Ride) bool { return x == r || x.State != model.Open })}
			for _, kind := range lookouts {
				for _, x := range kind(look) {
					if err := x.try(context.Background(), w, p, r); err != nil {
						t.Fatalf("week %d (%s): %s: %v", seed, w.Centre.Name, x.Kind, err)
					}
					was, ok := x.carry(w, p)
					ride := x.same(r)
					if !ok || ride == nil || ride.State != model.Open {
						continue
					}
					changed := x.Week.Beside(was, x.dates(r, ride)...)
					if oracle.For(changed).Choices().Raw() > 3000 {
						continue
					}
					if can := byTryingAll(changed, was, ride); can != (x.Plan != nil) {
						t.Errorf("week %d (%s): %s of %s helps %s: %v, and by trying all plans: %v", seed, w.Centre.Name, x.Kind, x.Notes[0].Date, r, x.Plan != nil, can)
					}
					if x.Plan == nil {
						not++
						continue
					}
					helps[x.Kind]++
					if broken := model.Broken(x.Week.Audit(x.Plan)); len(broken) > 0 || x.Plan.Turns[ride.Index] == nil {
						t.Errorf("week %d (%s): %s: %v", seed, w.Centre.Name, x.Kind, broken)
					}
					if byTryingAll(w.Beside(p, r.Date()), p, r) {
						t.Errorf("week %d (%s): %s could ride with no change", seed, w.Centre.Name, r)
					}
				}
			}
		}
	}
	t.Logf("helped %v, %d did not", helps, not)
	if len(helps) < 3 || not < 100 {
		t.Errorf("helped %v, %d did not", helps, not)
	}
}
