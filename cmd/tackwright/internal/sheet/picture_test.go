package sheet

import (
	"math"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// pictures are those of one of the sheets of a day.
func pictures(t *testing.T, name string, b *fixtures.Barn, turns ...*model.Turn) []paper.Picture {
	t.Helper()
	for _, x := range every(t, b, turns...) {
		if x.name == name {
			return x.sheet.Parts[0].Pictures
		}
	}
	t.Fatalf("there is no sheet %q", name)
	return nil
}

// around is the box that a text stands in.
func around(t *testing.T, p *paper.Picture, words string) paper.Box {
	t.Helper()
	for _, text := range p.Texts {
		for _, b := range p.Boxes {
			if text.Words == words && b.X <= text.X && text.X <= b.X+b.W && b.Y <= text.Y && text.Y <= b.Y+b.H {
				return b
			}
		}
	}
	t.Fatalf("%q stands in no box", words)
	return paper.Box{}
}

func near(a, b float64) bool { return math.Abs(a-b) < 0.02 }

func TestOnTheWallChartAnArrowGoesFromTheRideThatGivesTackToTheOneThatGetsIt(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	leo := b.Rider("Leo")
	b.Lesson(monday, "09:00-09:45", b.Mia)
	b.Lesson(monday, "10:00-10:45", leo)
	p := pictures(t, "wall", b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak))[0]
	gives, gets := around(t, &p, "Mia"), around(t, &p, "Leo")
	arrows := 0
	for _, l := range p.Lines {
		if !l.Arrow {
			continue
		}
		arrows++
		begin, end := l.Points[0], l.Points[len(l.Points)-1]
		if !near(begin[0], gives.X+gives.W) || begin[1] < gives.Y || begin[1] > gives.Y+gives.H {
			t.Errorf("it begins at %v, and the ride is at %+v", begin, gives)
		}
		if !near(end[0], gets.X) || end[1] < gets.Y || end[1] > gets.Y+gets.H {
			t.Errorf("it ends at %v, and the ride is at %+v", end, gets)
		}
	}
	if arrows != 1 { // saddle, pad and girth go together
		t.Errorf("%d arrows", arrows)
	}
	if gives.X >= gets.X || gives.Y >= gets.Y {
		t.Errorf("lessons go across and horses down: %+v, %+v", gives, gets)
	}
}

func TestTheTackRoomsDayIsDrawnToTime(t *testing.T) {
	b := fixtures.New()
	moss := b.Horse("Moss")
	b.Row(moss, b.Oak)
	b.Lesson(monday, "09:00-09:45", b.Mia)
	b.Lesson(monday, "10:30-12:00", b.Mia)
	p := pictures(t, "tack", b, b.Turn(b.Star, b.Oak), b.Turn(moss, b.Oak))[0]
	first, second := around(t, &p, "Star"), around(t, &p, "Moss")
	minute := first.W / 45
	if !near(second.W, 90*minute) || !near(second.X-first.X, 90*minute) {
		t.Errorf("45 min are %v mm, 90 min %v, from 09:00 to 10:30 %v", first.W, second.W, second.X-first.X)
	}
	for _, l := range p.Lines {
		if l.Arrow && (!near(l.Points[0][0], first.X+first.W) || !near(l.Points[1][0], second.X)) {
			t.Errorf("the arrow goes from %v to %v", l.Points[0], l.Points[1])
		}
	}
}

func TestAHorsesWeekIsDrawnToItsLimitsAndSaysWhatIsOver(t *testing.T) {
	b := fixtures.New()
	b.House.Limits = model.Limits{DayMinutes: 60, WeekMinutes: 300}
	b.Rode(b.Turn(b.Star, b.Oak), monday+1, "10:00-11:30") // posted before the limit was lowered
	b.Lesson(monday, "09:00-09:45", b.Mia)
	b.Days = 1
	p := pictures(t, "week", b, b.Turn(b.Star, b.Oak))[0]
	if len(p.Boxes) != 3 {
		t.Fatalf("%d bars", len(p.Boxes))
	}
	var limits []float64
	for _, l := range p.Lines {
		if l.Thick == 1 {
			limits = append(limits, l.Points[0][0])
		}
	}
	left := p.Boxes[0].X
	for i, bar := range []struct{ work, limit float64 }{{45, limits[0]}, {90, limits[1]}, {135, limits[7]}} {
		of := 60.0
		if i == 2 {
			of = 300
		}
		if !near(p.Boxes[i].W/bar.work, (bar.limit-left)/of) {
			t.Errorf("bar %d is %v mm for %v min, and the limit of %v is at %v", i, p.Boxes[i].W, bar.work, of, bar.limit-left)
		}
	}
	over := 0
	for _, text := range p.Texts {
		if text.Words == "1 h 30 of 1 h 00 ! OVER" {
			over++
		}
	}
	if over != 1 {
		t.Errorf("what is over is said %d times", over)
	}
}
