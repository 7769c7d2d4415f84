package folder

import (
	"testing"

	"tackwright/model"
)

// Nothing ridden ever differs: at noon the ride of ten o'clock was ridden as the
// version told that is withdrawn.
func TestWhatHadStartedStaysAsTheWithdrawnVersionToldIt(t *testing.T) {
	ridden := "Ada Grey on Duke, Cy Reed on the ground"
	for _, c := range []struct {
		name   string
		noted  bool // Ada's lesson is moved to 9:30, ahead of the second version
		second bool // a second version has her on the ground
		at     model.Minute
		want   string
	}{
		{"before the ride", false, true, 8 * 60, "v3 " + ridden},
		{"as it starts", false, true, 10 * 60, "v3 Ada Grey on the ground, Cy Reed on the ground"},
		{"by a note that the version went by", true, true, 10 * 60, "v3 Ada Grey on the ground, Cy Reed on the ground"},
		{"the only version", false, false, 12 * 60, "v2 " + ridden},
		{"the only version, before the ride", false, false, 9 * 60, "nothing"},
	} {
		f := openYard(t)
		post(t, f, monday, adaRides)
		f = reopen(t, f)
		if c.noted {
			noted(t, f, &model.Note{Kind: model.NoteMoved, By: f.Centre.Persons[0], At: tuesdayMorning, Lesson: f.Centre.Lessons[0], From: 9*60 + 30, Until: 10*60 + 15})
			f = reopen(t, f)
		}
		if c.second {
			post(t, f, monday, onGround)
			f = reopen(t, f)
		}
		last := 0
		if c.second && c.noted {
			last = 3
		}
		if _, err := f.Undo(last, f.Centre.Persons[0], model.Instant{Date: monday + 1, Minute: c.at}); err != nil {
			t.Fatal(err)
		}
		f = reopen(t, f)
		if got := standing(f, monday+1); got != c.want {
			t.Errorf("%s: %s stands, want %s", c.name, got, c.want)
		}
		for _, told := range f.Centre.ToldOn(monday + 1) {
			if c.noted && told.Start != 9*60+30 {
				t.Errorf("%s: it was ridden at %s", c.name, told.Start)
			}
		}
		if c.want == "nothing" || c.at < 10*60 {
			continue
		}
		if _, err := f.Undo(f.opened, f.Centre.Persons[0], model.Instant{Date: monday + 2}); err != nil {
			t.Fatal(err)
		}
		if got := standing(reopen(t, f), monday+1); got[2:] != c.want[2:] {
			t.Errorf("%s: the withdrawal withdrawn, %s stands", c.name, got)
		}
	}
}
