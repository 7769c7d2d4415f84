package folder

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/model"
)

// What was ridden can be told wrong; a day that is repaired meanwhile does not
// make that what was posted.
func TestAWrongClosingIsMendedAfterADayWasRepairedByIt(t *testing.T) {
	noon := model.Instant{Date: monday + 1, Minute: 12 * 60}
	for name, wrong := range map[string]model.Differs{
		"no-show":   {How: model.NoShow},
		"cut short": {How: model.CutShort, End: 10*60 + 20},
	} {
		f := openYard(t)
		post(t, f, monday, adaRides)
		f = reopen(t, f)
		wrong.Lesson, wrong.Rider = f.Centre.Lessons[0], f.Centre.Riders[0]
		if err := f.Close(&model.Ridden{Date: monday + 1, By: f.Centre.Persons[0], At: noon, Differs: []model.Differs{wrong}}); err != nil {
			t.Fatal(err)
		}
		f = reopen(t, f)
		w := f.Centre.Repair(monday+1, 1, noon)
		p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
		for i, r := range w.Rides {
			p.Turns[i] = r.Told
		}
		p.Proof.Hash = f.Centre.Week(monday+1, 1, noon).Fingerprint(p)
		if _, err := f.Post(w, p, f.Centre.Persons[0], noon); err != nil {
			t.Fatal(err)
		}
		f = reopen(t, f)
		v2 := f.Centre.Posted[1]
		then, told, troubles, err := f.ReadPosted(v2)
		if err != nil || len(troubles) > 0 || !cmp.Equal(then.Fingerprint(told), p.Proof.Hash) {
			t.Errorf("%s: what was posted is read as another plan: %v %s", name, err, shown(troubles))
		}
		if err := f.Close(&model.Ridden{Date: monday + 1, By: f.Centre.Persons[0], At: noon}); err != nil {
			t.Fatal(err)
		}
		ridden := reopen(t, f).Centre.RiddenOn(monday + 1)
		if len(ridden) != 2 || ridden[0].Turn == nil || ridden[0].End != 10*60+45 {
			t.Errorf("%s: closed anew as posted, it is %+v", name, ridden)
		}
	}
}
