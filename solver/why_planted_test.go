package solver

import (
	"context"
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// Each case plants one cause in a week in which Mia and Leo could both ride
// otherwise, on Star and Duke under oak and elm. One of them is on the ground, and
// why says that cause and no other.
func TestAPlantedCauseIsTheOneThatIsTold(t *testing.T) {
	monday := fixtures.Monday
	type yard struct {
		*fixtures.Barn
		duke *model.Horse
		elm  *model.Piece
		leo  *model.Rider
	}
	together := func(y *yard) { y.Lesson(monday, "10:00-11:00", y.Mia, y.leo) }
	follow := func(y *yard) {
		y.Lesson(monday, "10:00-11:00", y.Mia)
		y.Lesson(monday, "11:30-12:30", y.leo)
	}
	alone := func(y *yard) { y.Lesson(monday, "10:00-11:00", y.Mia) }
	noDuke := func(y *yard) { y.duke.DaysOff = []model.Period{{}} }
	for _, c := range []struct {
		name  string
		plant func(*yard)
		rides func(*yard)
		want  string // in what is told
	}{
		{"one horse too few", noDuke, together, "Two rides meet, or follow on too soon to change tack: Mia, and Leo (10:00). There is one horse that can carry them then: Star."},
		{"one seat too few", func(y *yard) { y.elm.Out = []model.PieceOut{{}}; y.Row(y.duke, y.Oak) }, together, "there is one saddle to go round, with"},
		{"one girth too few", func(y *yard) { y.Tag("elm girth").Out = []model.PieceOut{{}} }, together, "there is one girth to go round, with"},
		{"one girth of a size too few", func(y *yard) {
			y.Tag("elm girth").Label = model.Inches(26) // for no horse here
			y.Saddle("ash", y.duke, y.Star)
		}, func(y *yard) {
			noor := y.Rider("Noor")
			bay := y.Horse("Bay")
			for _, tag := range []string{"oak", "elm", "ash"} {
				y.Row(bay, y.Tag(tag))
			}
			y.Lesson(monday, "10:00-11:00", y.Mia, y.leo, noor)
		}, "there are two girths to go round, with 15 minutes to carry one from horse to horse: all of 24 in, oak girth and ash girth."},
		{"a day's minutes", func(y *yard) { noDuke(y); y.Star.Limits.DayMinutes = 100 }, follow, "Star works at most 100 minutes on Mon 23 Nov, short gaps counted in."},
		{"a day's sessions", func(y *yard) { noDuke(y); y.Star.Limits.DaySessions = 1 }, follow, "Star works in at most one session on Mon 23 Nov."},
		{"a run", func(y *yard) { noDuke(y); y.House.Rest = 60; y.Star.Limits.RunMinutes = 120 }, follow, "Star works at most 120 minutes before it rests, on Mon 23 Nov."},
		{"a week's minutes", func(y *yard) { noDuke(y); y.Star.Limits.WeekMinutes = 100 }, follow, "Star works at most 100 minutes in the week of Mon 23 Nov."},
		{"a week's dates", func(y *yard) { noDuke(y); y.Star.Limits.WeekDays = 1 }, func(y *yard) {
			alone(y)
			y.Lesson(monday+2, "10:00-11:00", y.leo)
		}, "Star works on at most one date in the week of Mon 23 Nov."},
		{"dates in a row", func(y *yard) { noDuke(y); y.Star.Limits.RowDates = 1 }, func(y *yard) {
			alone(y)
			y.Lesson(monday+1, "10:00-11:00", y.leo)
		}, "Star works on at most one date in a row."},
		{"horses apart", func(y *yard) { y.Star.Apart = []*model.Horse{y.duke} }, together, "Duke and Star are to be kept apart"},
		{"room in the ring", func(y *yard) { y.Ring.RidersAtOnce = 1 }, together, "ring has room for one rider at 10:00."},
		{"sidewalkers", func(y *yard) { y.Mia.Sidewalkers, y.leo.Sidewalkers = 1, 1 }, func(y *yard) {
			y.Lesson(monday, "10:00-11:00", y.Mia, y.leo).Hands = model.Hands{Leaders: -1, Sidewalkers: 1}
		}, "can count on one sidewalker at 10:00. Rules of care alone stand in the way, and those are never bent."},
		{"an instructor in two places", func(*yard) {}, func(y *yard) {
			alone(y)
			y.Lesson(monday, "10:30-11:30", y.leo)
		}, "Ann would hold Mon 23 Nov 10:00 and Mon 23 Nov 10:30 at once."},
		{"a rider in two places", func(y *yard) { y.Person("Bea") }, func(y *yard) {
			alone(y)
			y.Lesson(monday, "10:30-11:30", y.Mia).Instructor = y.Persons[1]
		}, "Mia has one ride at a time."},
		{"an expired form", func(y *yard) { y.Mia.FormUntil = monday - 1 }, alone, "Mia's form has expired"},
		{"a closed arena", func(y *yard) { y.Ring.Closures = []model.Period{{Why: "the ring is harrowed"}} }, alone, "the ring is harrowed"},
		{"an instructor away", func(y *yard) { y.Ann.Away = []model.Period{{Why: "a sprained wrist"}} }, alone, "Ann is away"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := fixtures.New()
			y := &yard{Barn: b, duke: b.Horse("Duke"), leo: b.Rider("Leo")}
			y.elm = b.Saddle("elm", y.duke, b.Star)
			c.plant(y)
			c.rides(y)
			w := y.Week()
			p, err := Plan(context.Background(), w, Options{})
			if err != nil {
				t.Fatal(err)
			}
			i := slices.IndexFunc(w.Rides, func(r *model.Ride) bool { return r.State == model.Open && p.Turns[r.Index] == nil })
			if i < 0 {
				t.Fatal("all ride")
			}
			why, err := WhyGround(context.Background(), w, p, w.Rides[i])
			if err != nil {
				t.Fatal(err)
			}
			said, causes := why.Alone, len(why.Alone)
			if why.Together != nil {
				said, causes = why.Together.Sentences(w), len(why.Together.Limits)
			}
			if c.name == "horses apart" {
				causes -= 2 // each of the two carries one rider, too
			}
			if got := strings.Join(said, " "); !strings.Contains(got, c.want) || causes != 1 || strings.Contains(got, "wrist") { // her reason is hers
				t.Errorf("told %q, and %q was planted", got, c.want)
			}
		})
	}
}
