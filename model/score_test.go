package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestTheFirstGoalCountsThoseOnTheGroundByWhoTheyAre(t *testing.T) {
	b := fixtures.New()
	noor, zoe, ada := b.Rider("Noor"), b.Rider("Zoe"), b.Rider("Ada")
	noor.RideFirst = true
	b.Tell(b.Lesson(fixtures.Monday-3, "10:00-11:00", zoe), zoe, nil)
	ada.Away = []model.Period{{}}
	b.Lesson(fixtures.Monday, "10:00-11:00", ada, b.Mia, noor, zoe)
	w := b.Week() // Ada, Mia, Noor, Zoe
	for _, c := range []struct {
		name   string
		seated []int
		want   [3]int
	}{
		{"nobody rides: Ada, who is away, counts nowhere", nil, [3]int{3, 1, 1}},
		{"Mia rides", []int{1}, [3]int{2, 1, 1}},
		{"Noor, who rides first", []int{2}, [3]int{2, 0, 1}},
		{"Zoe, who was on the ground last time", []int{3}, [3]int{2, 1, 0}},
		{"all", []int{1, 2, 3}, [3]int{0, 0, 0}},
	} {
		p := fixtures.Plan(w)
		for _, i := range c.seated {
			p.Turns[i] = b.Turn(b.Star, b.Oak)
		}
		for i, g := range w.Score(p)[:3] {
			if g.Value != c.want[i] {
				t.Errorf("%s: %s is %d, want %d", c.name, g.Name, g.Value, c.want[i])
			}
		}
	}
}

func TestEveryGoalHasANameOfItsOwnAndWords(t *testing.T) {
	w := fixtures.New().Week()
	seen := map[string]bool{}
	for _, g := range w.Score(fixtures.Plan(w)) {
		if g.Name == "" || g.Words == "" || seen[g.Name] {
			t.Errorf("%+v", g)
		}
		seen[g.Name] = true
	}
}

func TestASeatThatARecordDoesNotNameCostsNothing(t *testing.T) {
	for _, seat := range []string{"oak", "elm"} {
		b := fixtures.New()
		b.House.MarkPercent = 1
		elm := b.Saddle("elm", b.Star)
		elm.Style = "jumping"
		b.Mia.Styles = []string{"english", "jumping"}
		b.Mia.Likings = []model.Liking{{Seat: b.Oak, Weight: 4}}
		l := b.Lesson(fixtures.Monday, "09:00-10:00", b.Mia)
		b.Tell(l, b.Mia, b.Turn(b.Star, b.Oak))
		b.Lesson(fixtures.Monday, "11:00-12:00", b.Rider("Noor"))
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, Differs: []model.Differs{
			{How: model.OtherHorse, Lesson: l, Rider: b.Mia, Turn: &model.Turn{Horse: b.Star}}}}}
		b.Now = monday("10:00")
		w := b.Week()
		for _, g := range w.Score(fixtures.Plan(w, w.Rides[0].Told, b.Turn(b.Star, b.Tag(seat)))) {
			// Noor's load is marked; Mia's is not known.
			if want, ok := map[string]int{"wishes": b.House.Wishes.Marked, "carry": 0}[g.Name]; ok && g.Value != want {
				t.Errorf("%s: %s %d", seat, g.Name, g.Value)
			}
		}
	}
}

func TestAHorseThatWorksWithNoRiderIsBroughtInToo(t *testing.T) {
	b := fixtures.New()
	b.House.Goals = []model.GoalKind{model.GoalBringIn}
	bay := b.Horse("Bay")
	b.Row(bay, b.Oak)
	b.Work(bay, fixtures.Monday, "08:00-08:30")
	b.Work(bay, fixtures.Monday+1, "08:00-08:30")
	b.Days = 1
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	for horse, want := range map[*model.Horse]int{b.Star: 2, bay: 1} {
		w := b.Week()
		if got := w.Score(fixtures.Plan(w, b.Turn(horse, b.Oak)))[3].Value; got != want {
			t.Errorf("on %s: %d horse-dates", horse.Name, got)
		}
	}
}
