package solver

import (
	"context"
	"slices"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// twoRides is a barn in which Mia and Leo ride at ten on the one saddle, which fits
// Star and Duke: one of them is on the ground.
type twoRides struct {
	*fixtures.Barn
	duke *model.Horse
	leo  *model.Rider
	ten  *model.Lesson
}

func newTwoRides() *twoRides {
	b := fixtures.New()
	y := &twoRides{Barn: b, duke: b.Horse("Duke"), leo: b.Rider("Leo")}
	b.Row(y.duke, b.Oak)
	y.ten = b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia, y.leo)
	y.ten.Open, y.ten.Size = true, 3
	return y
}

// grounded is the first ride on the ground in the best plan.
func grounded(t *testing.T, w *model.Week) (*model.Plan, *model.Ride) {
	t.Helper()
	p, err := Plan(context.Background(), w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(w.Rides, func(r *model.Ride) bool { return r.State == model.Open && p.Turns[r.Index] == nil })
	if i < 0 {
		t.Fatal("all ride")
	}
	return p, w.Rides[i]
}

func kindsOf(ways []*Way) (kinds []WayKind) {
	for _, x := range ways {
		kinds = append(kinds, x.Kind)
	}
	return kinds
}

// Each case plants one thing that would help, and it is the one that is found.
func TestWhatWouldHelpIsFound(t *testing.T) {
	elm := func(y *twoRides) *model.Piece { return y.Saddle("elm", y.duke, y.Star) }
	for _, c := range []struct {
		name  string
		plant func(*twoRides)
		want  []WayKind
	}{
		{"nothing", func(*twoRides) {}, nil},
		{"a saddle comes back from repair", func(y *twoRides) { elm(y).Out = []model.PieceOut{{Why: "tree"}} }, []WayKind{PieceBack}},
		{"a girth comes back from repair", func(y *twoRides) { elm(y); y.Tag("elm girth").Out = []model.PieceOut{{}} }, []WayKind{PieceBack}},
		{"a horse need not be lunged", func(y *twoRides) { elm(y); y.Work(y.duke, fixtures.Monday, "10:30-11:00") }, []WayKind{WorkLeftOut}},
		{"a rider need not be kept on a horse", func(y *twoRides) {
			elm(y)
			y.duke.Weight = 300 * model.Kilogram // carries Mia, who is lighter
			y.Mia.Weight = 40 * model.Kilogram
			y.Note(model.Note{Kind: model.NoteKeep, Rider: y.Mia, Horse: y.Star})
		}, []WayKind{HoldLifted}},
		{"a rider could take her second style", func(y *twoRides) {
			y.Bareback("fleece", y.duke, y.Star)
			y.Mia.Styles, y.leo.Styles = []string{"english", "bareback"}, []string{"english"}
			y.Note(model.Note{Kind: model.NoteKeep, Rider: y.Mia, Horse: y.Star, Seat: y.Oak})
		}, []WayKind{HoldLifted}},
		{"one more sidewalker", func(y *twoRides) {
			elm(y)
			y.Mia.Sidewalkers, y.leo.Sidewalkers = 1, 1
			y.ten.Hands.Sidewalkers = 1
		}, []WayKind{MoreHands}},
		{"another arena", func(y *twoRides) { elm(y); y.Ring.RidersAtOnce = 1; y.Arena("field") }, []WayKind{InArena}},
		{"another instructor", func(y *twoRides) { elm(y); y.Ann.RidersAtOnce = 1; y.Person("Bea") }, []WayKind{OtherInstructor}},
		{"a lesson with room", func(y *twoRides) {
			l := y.Lesson(fixtures.Monday, "14:00-15:00")
			l.Open, l.Size = true, 2
		}, []WayKind{OtherLesson, OtherLesson}},
		{"a lesson with room on another date of the plan", func(y *twoRides) {
			l := y.Lesson(fixtures.Monday+1, "14:00-15:00")
			l.Open, l.Size = true, 2
		}, []WayKind{OtherLesson, OtherLesson}},
		{"a little later", func(y *twoRides) {
			y.ten.Places = y.ten.Places[:1]
			y.leo.Bans = []*model.Horse{y.Star}
			y.Mia.Bans = []*model.Horse{y.duke}
			y.Lesson(fixtures.Monday, "11:05-12:00", y.leo)
		}, []WayKind{LessonLater}},
		{"two riders change places", func(y *twoRides) {
			y.ten.Places, y.ten.Size = y.ten.Places[1:], 1
			l := y.Lesson(fixtures.Monday, "14:00-15:00", y.Mia)
			l.Open, l.Size = true, 1
			y.leo.Bans = []*model.Horse{y.duke}
			y.Star.Out = []model.Out{{Why: model.Appointment, From: model.Instant{Date: fixtures.Monday}, End: model.Instant{Date: fixtures.Monday, Minute: 12 * 60}}}
		}, []WayKind{Swap}},
		{"only a private lesson", func(y *twoRides) {
			l := y.Lesson(fixtures.Monday, "14:00-15:00")
			l.Kind, l.Open, l.Size = model.Private, true, 2
		}, nil},
		{"only a lesson that is closed to others", func(y *twoRides) { y.Lesson(fixtures.Monday, "14:00-15:00").Size = 2 }, nil},
		{"only a lesson that is full", func(y *twoRides) {
			l := y.Lesson(fixtures.Monday, "14:00-15:00", y.Rider("Noor"))
			l.Open, l.Size, y.Riders[2].MayChange = true, 1, model.ChangeNever
		}, nil},
		{"only riders who are never moved", func(y *twoRides) {
			l := y.Lesson(fixtures.Monday, "14:00-15:00")
			l.Open, l.Size = true, 2
			y.Mia.MayChange, y.leo.MayChange = model.ChangeNever, model.ChangeNever
		}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			y := newTwoRides()
			c.plant(y)
			w := y.Week()
			p, r := grounded(t, w)
			found, err := WaysOut(context.Background(), w, p, r, model.Instant{})
			if err != nil {
				t.Fatal(err)
			}
			if got := kindsOf(found.Ways); !slices.Equal(got, c.want) || !found.Whole || found.Better != nil {
				t.Errorf("found %v, whole %v, better %v; want %v", got, found.Whole, found.Better != nil, c.want)
			}
		})
	}
}

func TestAWaySaysWhomToAskFirst(t *testing.T) {
	for _, c := range []struct {
		mia, leo model.MayChange
		ask      []int // of each way
	}{
		{model.ChangeAsk, model.ChangeAsk, []int{1, 1}},
		{model.ChangeFreely, model.ChangeAsk, []int{0, 1}},
		{model.ChangeNever, model.ChangeFreely, []int{0}},
	} {
		y := newTwoRides()
		l := y.Lesson(fixtures.Monday, "14:00-15:00")
		l.Open, l.Size = true, 2
		y.Mia.MayChange, y.leo.MayChange = c.mia, c.leo
		w := y.Week()
		p, r := grounded(t, w)
		found, err := WaysOut(context.Background(), w, p, r, model.Instant{})
		if err != nil {
			t.Fatal(err)
		}
		var ask []int
		for _, x := range found.Ways {
			ask = append(ask, len(x.Ask))
		}
		if !slices.Equal(ask, c.ask) {
			t.Errorf("Mia %s, Leo %s: %v to ask, want %v", c.mia, c.leo, ask, c.ask)
		}
	}
}

// The least that does is told: ten minutes later, and not fifteen as well.
func TestALessonIsMovedNoLaterThanItNeedsToBe(t *testing.T) {
	y := newTwoRides()
	y.ten.Places = y.ten.Places[:1]
	y.leo.Bans, y.Mia.Bans = []*model.Horse{y.Star}, []*model.Horse{y.duke}
	y.Lesson(fixtures.Monday, "11:05-12:00", y.leo)
	w := y.Week()
	p, r := grounded(t, w)
	found, err := WaysOut(context.Background(), w, p, r, model.Instant{})
	if err != nil || len(found.Ways) != 1 || found.Ways[0].Later != 10 {
		t.Errorf("%+v, %v", found, err)
	}
}

func TestWhereOnlyRulesOfCareStandInTheWayItIsSaid(t *testing.T) {
	for _, c := range []struct {
		name  string
		plant func(*twoRides)
		care  bool
	}{
		{"one saddle", func(*twoRides) {}, false},
		{"a form has expired", func(y *twoRides) { y.leo.FormUntil = fixtures.Monday - 1 }, true},
		{"a horse at its limit", func(y *twoRides) {
			y.duke.Weight = 100 * model.Kilogram
			y.Saddle("elm", y.Star)
			y.ten.Places = y.ten.Places[:1]
			y.Lesson(fixtures.Monday, "12:00-13:00", y.leo)
			y.Star.Limits.DayMinutes = 100
		}, true},
		{"the arena is closed", func(y *twoRides) { y.Ring.Closures = []model.Period{{}} }, false},
	} {
		y := newTwoRides()
		c.plant(y)
		w := y.Week()
		p, r := grounded(t, w)
		found, err := WaysOut(context.Background(), w, p, r, model.Instant{})
		if err != nil || len(found.Ways) > 0 || found.Care != c.care {
			t.Errorf("%s: %v, care %v, want %v; %v", c.name, kindsOf(found.Ways), found.Care, c.care, err)
		}
	}
}

func TestWhereThePlanWasNotTheBestABetterOneIsTheWay(t *testing.T) {
	y := newTwoRides()
	y.Saddle("elm", y.duke, y.Star)
	w := y.Week()
	found, err := WaysOut(context.Background(), w, fixtures.Plan(w, y.Turn(y.Star, y.Oak)), w.Rides[1], model.Instant{})
	if err != nil || found.Better == nil || len(found.Ways) > 0 {
		t.Fatalf("%+v, %v", found, err)
	}
	if a, b := found.Better.Turns[0], found.Better.Turns[1]; a == nil || a.Horse != y.Star || b == nil || b.Horse != y.duke {
		t.Errorf("%v and %v", a, b)
	}
}
