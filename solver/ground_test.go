package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestARideThatOthersKeepOnTheGroundSaysWhatWouldDo(t *testing.T) {
	for _, c := range []struct {
		name  string
		hands model.Hands
		want  []string
	}{
		{"helpers enough", model.Hands{Leaders: 3, Sidewalkers: 0}, []string{"Star or Bay would do, but other rides of the week need them"}},
		{"helpers short", model.Hands{Leaders: 2, Sidewalkers: 0},
			[]string{"the riders of the lesson need 3 leaders at once, and it counts on 2",
				"with enough of them Star or Bay would do, unless other rides of the week need them"}},
	} {
		b := fixtures.New()
		b.Saddle("elm", b.Horse("Bay"))
		riders := []*model.Rider{b.Mia, b.Rider("Leo"), b.Rider("Noor")}
		for _, r := range riders {
			r.Leader = true
		}
		b.Lesson(fixtures.Monday, "10:00-11:00", riders...).Hands = c.hands
		plan, err := Plan(context.Background(), b.Week(), Options{})
		if err != nil {
			t.Fatal(err)
		}
		i := slices.Index(plan.Turns, nil)
		if i < 0 || !slices.Equal(plan.Ground[i], c.want) {
			t.Errorf("%s: %q", c.name, plan.Ground)
		}
	}
}

func TestOneHorseThatOthersNeedIsNamedAsOne(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, b.Rider("Leo"))
	plan, err := Plan(context.Background(), b.Week(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	i := slices.Index(plan.Turns, nil)
	if want := []string{"Star would do, but other rides of the week need it"}; i < 0 || !slices.Equal(plan.Ground[i], want) {
		t.Errorf("%q", plan.Ground)
	}
}
