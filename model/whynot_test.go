package model_test

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// Mia usually rides Star. The plan has her on Bay, and the first reason is told
// that keeps her off Star in this plan.
func TestWhyARideIsNotOnItsUsualHorse(t *testing.T) {
	for _, c := range []struct {
		name  string
		stage func(b *fixtures.Barn)
		want  string
	}{
		{"out by a note", func(b *fixtures.Barn) { b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame}) },
			"Star is out (lame) until a named person ends it"},
		{"a day off", func(b *fixtures.Barn) { b.Star.DaysOff = []model.Period{{From: fixtures.Monday}} }, "Star has the day off"},
		{"an appointment", func(b *fixtures.Barn) {
			b.Star.Out = []model.Out{{Why: model.Appointment, From: monday("09:00"), End: monday("12:00")}}
		}, "Star has an appointment"},
		{"a note keeps her elsewhere", func(b *fixtures.Barn) { b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Horse: b.Horses[1]}) },
			"a note keeps this rider on Bay"},
		{"it does not suit", func(b *fixtures.Barn) { b.Star.Height = 1; b.Mia.HorseMin = 2 }, "Star is not of the height wanted"},
		{"it has worked too much before", func(b *fixtures.Barn) {
			b.House.Limits.WeekMinutes = 60
			b.Work(b.Star, fixtures.Monday+1, "10:00-10:30")
		}, "Star: the horse has no work left in its week"},
		{"it is at work", func(b *fixtures.Barn) { b.Work(b.Star, fixtures.Monday, "10:30-11:30") },
			"Star: the horse is at work elsewhere then, or too shortly before or after"},
		{"it carries another", func(b *fixtures.Barn) { b.Part(b.Lessons[0], b.Riders[1], "10:30-11:00") }, "Star carries Noor then"},
		{"with another ride of the plan it would be too much", func(b *fixtures.Barn) {
			b.Star.Limits.WeekMinutes = 60
			b.Lesson(fixtures.Monday, "14:00-15:00", b.Riders[1])
		}, "Star: 120 min of work in the week from Mon 23 Nov, and 60 are its limit"},
		{"its saddle is on another horse", func(b *fixtures.Barn) {
			b.Row(b.Horses[2], b.Oak)
			b.Part(b.Lessons[0], b.Rider("Zoe"), "10:00-11:00")
		}, "no seat for Star that fits the rider is free then"},
		{"she dislikes it more than she is used to it", func(b *fixtures.Barn) {
			b.House.Wishes.UsualHorse = 1
			b.Mia.Likings = []model.Liking{{Horse: b.Star, Dislike: true, Weight: 2}}
		}, "given up so that fewer wishes are lost"},
		{"as good", func(b *fixtures.Barn) { b.House.Wishes.UsualHorse = 0 }, "nothing stands in its way: the plan would be as good by every goal"},
		{"nothing", func(b *fixtures.Barn) {}, "nothing stands in its way: this plan was not proved to be best"},
	} {
		b := fixtures.New()
		bay, roan := b.Horse("Bay"), b.Horse("Roan")
		elm := b.Saddle("elm", bay)
		noor := b.Rider("Noor")
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		c.stage(b)
		w := b.Week()
		p := fixtures.Plan(w)
		for i, r := range w.Rides {
			switch r.Rider {
			case b.Mia:
				p.Turns[i] = b.Turn(bay, elm)
			case noor:
				p.Turns[i] = b.Turn(b.Star, b.Oak)
			default:
				p.Turns[i] = b.Turn(roan, b.Oak)
			}
		}
		b.Mia.Usual = b.Star
		t.Run(c.name, func(t *testing.T) {
			for _, r := range w.Rides {
				if r.Rider != b.Mia {
					continue
				}
				if got := w.WhyNot(p, r, b.Star, nil); got != c.want {
					t.Errorf("%q, want %q", got, c.want)
				}
				if got := w.WhyNot(p, r, bay, nil); got != "" {
					t.Errorf("she is on Bay, and yet not: %q", got)
				}
			}
		})
	}
}

func TestWhyARideIsNotInItsUsualSeat(t *testing.T) {
	for _, c := range []struct {
		name  string
		stage func(b *fixtures.Barn, elm *model.Piece)
		want  string
	}{
		{"not charted", func(b *fixtures.Barn, elm *model.Piece) { b.Chart = b.Chart[:1] }, "elm is not approved for Star on that date"},
		{"out of use", func(b *fixtures.Barn, elm *model.Piece) {
			elm.Label, elm.Out = model.Inches(18), []model.PieceOut{{Why: "tree", From: monday("08:00")}}
		},
			"elm is out of use (tree) until a named person has checked it"},
		{"too small", func(b *fixtures.Barn, elm *model.Piece) {
			elm.Label, b.Mia.SeatMin, b.Mia.SeatMax = model.Inches(15), model.Inches(16), model.Inches(17)
		}, "elm is not of the rider's size"},
		{"on another horse", func(b *fixtures.Barn, elm *model.Piece) {
			b.Row(b.Horses[1], elm)
			b.Lesson(fixtures.Monday, "11:00-12:00", b.Riders[1])
		}, "elm is on Bay at 11:00"},
		{"its girth is on another horse", func(b *fixtures.Barn, elm *model.Piece) {
			elm.Label = model.Inches(18)
			b.Chart[1].GirthMin, b.Chart[1].GirthMax = model.Inches(26), model.Inches(26)
			b.Tag("elm girth").Label = model.Inches(26)
			b.Saddle("fir", b.Horses[1])
			b.Chart[2].GirthMin, b.Chart[2].GirthMax = model.Inches(26), model.Inches(26)
			b.Part(b.Lessons[0], b.Riders[1], "10:00-11:00")
		}, "no girth for elm on Star is free then"},
		{"alike to the one that she has", func(b *fixtures.Barn, elm *model.Piece) {}, ""},
	} {
		b := fixtures.New()
		bay := b.Horse("Bay")
		elm := b.Saddle("elm", b.Star)
		b.Rider("Noor")
		b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
		c.stage(b, elm)
		w := b.Week()
		p := fixtures.Plan(w, b.Turn(b.Star, b.Oak))
		if len(w.Rides) > 1 {
			p.Turns[1] = b.Turn(bay, b.Chart[len(b.Chart)-1].Seat) // Noor
		}
		if got := w.WhyNot(p, w.Rides[0], b.Star, elm); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
