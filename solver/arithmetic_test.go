package solver

import (
	"os"
	"path/filepath"
	"testing"

	"tackwright/fixtures/smptsp"
	"tackwright/model"
)

// Optima as published beside the instances (Krishnamoorthy, Ernst & Baatar 2012,
// Eur. J. Oper. Res. 219:34-48).
func TestArithmeticKnowsThePublishedNumberOfWorkersWhereTheLargestOverlapIsIt(t *testing.T) {
	for name, optimum := range map[string]int{"data_1_23_40_66": 20, "data_2_24_40_33": 20, "data_9_49_104_33": 40,
		"data_21_93_175_33": 80, "data_35_171_280_33": 140} {
		in, err := smptsp.Read(filepath.Join("..", "..", "shared", "bench", "smptsp", name+".dat"))
		if os.IsNotExist(err) {
			t.Skip("the outside instances are not here: ", err)
		}
		if err != nil {
			t.Fatal(err)
		}
		e := choices(in.Week(), nil, false)
		if got := e.leastBroughtIn(0); got != optimum {
			t.Errorf("%s: at least %d by arithmetic, and %d is best", name, got, optimum)
		}
		if got := e.leastBroughtIn(3); got != optimum-3 {
			t.Errorf("%s: at least %d with three on the ground, and each may be one of the overlap", name, got)
		}
	}
}

// A horse with a work at the time is no horse for a ride, and one with a work at
// another time may be.
func TestHorsesWithWorksComeInAnyway(t *testing.T) {
	c := slots(1, 3)
	c.House.Goals = []model.GoalKind{model.GoalBringIn}
	for start, want := range map[model.Minute]int{0: 2, 400: 1} {
		c.Works = []*model.Work{{Kind: "schooling", Horse: c.Horses[0], On: smptsp.Date, Start: start, End: start + 30}}
		if got := choices(c.Week(smptsp.Date, 1, model.Instant{}), nil, false).leastBroughtIn(0); got != want {
			t.Errorf("work at %d: at least %d, want %d", start, got, want)
		}
	}
}

// slots is a centre of so many rides of 30 min, one after another, that each of so
// many horses can carry.
func slots(rides, horses int) *model.Centre {
	in := &smptsp.Instance{Name: "slots", Workers: everyone(horses, rides)}
	for i := range rides {
		in.Tasks = append(in.Tasks, smptsp.Task{Start: 30 * i, End: 30*i + 30})
	}
	return in.Centre()
}

// Four times 30 min on two horses of 100 min a week each: 12 twentieths of their
// 200 at the least, and with one on the ground 9. A horse with no allowance may
// carry all.
func TestSomeHorseIsAsBusyAsTheHerdOnTheWhole(t *testing.T) {
	c := slots(4, 2)
	c.House.Limits.WeekMinutes = 100
	share := func(onGround, highest int) int {
		e := choices(c.Week(smptsp.Date, 1, model.Instant{}), nil, false)
		return e.leastShare(e.spells(), onGround, highest)
	}
	for _, x := range []struct{ onGround, highest, want int }{{0, 20, 12}, {1, 20, 9}, {4, 20, 0}, {0, 11, 11}} {
		if got := share(x.onGround, x.highest); got != x.want {
			t.Errorf("%d on the ground: at least %d, want %d", x.onGround, got, x.want)
		}
	}
	c.Horses[0].Limits.WeekMinutes = 30 // 18 twentieths of both are 117 min
	if got := share(0, 20); got != 19 {
		t.Errorf("at least %d, want 19", got)
	}
	c.House.Limits.WeekMinutes = 0 // the other has none
	if got := share(0, 20); got != 0 {
		t.Errorf("at least %d, want 0", got)
	}
}

// Four rides of 30 min, one after another, on two horses: what each has left of its
// week, or may do in a day, is less than two rides.
func TestAHorseCarriesNoMoreThanItHasLeft(t *testing.T) {
	for _, x := range []struct {
		name   string
		limits model.Limits // of the first horse; the other has none
		only   bool         // there is no other
		want   int          // on the ground
	}{
		{"two rides left of the week", model.Limits{WeekMinutes: 89}, true, 2},
		{"one ride in a day", model.Limits{DaySessions: 1}, true, 3},
		{"minutes of a day", model.Limits{DayMinutes: 90}, true, 1},
		{"another horse carries the others", model.Limits{DaySessions: 1}, false, 0},
	} {
		horses := 2
		if x.only {
			horses = 1
		}
		c := slots(4, horses)
		c.Horses[0].Limits = x.limits
		w := c.Repair(smptsp.Date, 1, model.Instant{})
		for _, r := range w.Rides {
			r.Due = true
		}
		least := 0
		for _, count := range encode(w).goals()[0].Counts {
			least += count.Least
		}
		if least != x.want {
			t.Errorf("%s: %d on the ground by arithmetic, want %d", x.name, least, x.want)
		}
	}
}
