package model_test

import (
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// record is Star's record of Monday's week, seen from the week after.
func record(t *testing.T, change ...func(*fixtures.Barn)) *model.Workload {
	t.Helper()
	b := fixtures.New()
	b.Also(change...).Obey()
	all := b.Workloads(fixtures.Monday, fixtures.Monday+6, model.Instant{Date: fixtures.Monday + 7})
	if len(all) != len(b.Horses) || all[0].Horse != b.Star {
		t.Fatalf("%d records of %d horses", len(all), len(b.Horses))
	}
	return all[0]
}

// worked is Star at work on Monday, an hour each, from the hour on.
func worked(hours ...string) func(*fixtures.Barn) {
	return func(b *fixtures.Barn) {
		for _, h := range hours {
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday, h)
		}
	}
}

// Certified Horsemanship Association, Maximum workloads for horses: at most 6 h
// in the arena in a day, switching riders included (as trade.md has it).
func TestSixHoursADayAreInOrderAndAMinuteMoreIsOver(t *testing.T) {
	for _, c := range []struct {
		hours  []string
		worked string
		over   []string
	}{
		{[]string{"09:00-11:00", "12:00-14:00", "15:00-17:00"}, "6 h 00", nil},
		{[]string{"09:00-11:00", "12:00-14:00", "15:00-17:01"}, "6 h 01", []string{"day's work"}},
		{[]string{"09:00-12:00", "12:20-15:00"}, "6 h 00", nil}, // 20 min are no rest
		{[]string{"09:00-12:00", "12:20-15:01"}, "6 h 01", []string{"day's work"}},
	} {
		x := record(t, worked(c.hours...), func(b *fixtures.Barn) { b.House.Limits.DayMinutes = 360 })
		d := x.Dates[0]
		if got := model.InHours(d.Work); got != c.worked || !slices.Equal(d.Over, c.over) || len(x.Over) != len(c.over) {
			t.Errorf("%v: %s, over %q, %q", c.hours, got, d.Over, x.Over)
		}
	}
}

// Three hours in a row: standard for therapeutic horses as worded in hours
// (from memory).
func TestARunOfThreeHoursIsInOrderAndAMinuteMoreIsOver(t *testing.T) {
	for last, want := range map[string][]string{"10:10-12:00": nil, "10:10-12:01": {"run of work"}} {
		x := record(t, worked("09:00-10:00", last), func(b *fixtures.Barn) { b.House.Limits.RunMinutes = 180 })
		if d := x.Dates[0]; !slices.Equal(d.Over, want) || len(d.Runs) != 1 || d.Runs[0].Sessions != 2 {
			t.Errorf("to %s: over %q in %+v", last, d.Over, d.Runs)
		}
	}
}

func TestARestDividesRunsOfWork(t *testing.T) {
	x := record(t, worked("09:00-10:00", "10:29-11:00", "11:30-12:00"))
	if runs := x.Dates[0].Runs; len(runs) != 2 || runs[0].End != fixtures.At("11:00") || runs[1].Start != fixtures.At("11:30") {
		t.Errorf("%+v", runs)
	}
}

func TestAWeekIsCountedWholeAndARowOfDatesFromItsFirst(t *testing.T) {
	everyDay := func(b *fixtures.Barn) {
		for d := fixtures.Monday - 2; d < fixtures.Monday+6; d++ {
			b.Rode(b.Turn(b.Star, b.Oak), d, "10:00-11:00")
		}
		b.House.Limits.WeekMinutes, b.House.Limits.WeekDays, b.House.Limits.RowDates = 360, 6, 8
	}
	x := record(t, everyDay)
	if n := len(x.Dates); n != 6 || x.Dates[0].Row != 3 || x.Dates[5].Row != 8 {
		t.Errorf("%+v", x.Dates)
	}
	if len(x.Weeks) != 1 || x.Weeks[0].Work != 360*100*100 || x.Weeks[0].Dates != 6 || x.Weeks[0].Over || len(x.Over) != 0 {
		t.Errorf("%+v, over %q", x.Weeks, x.Over)
	}
	x = record(t, everyDay, func(b *fixtures.Barn) {
		b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+6, "10:00-11:00")
	})
	if !x.Weeks[0].Over || len(x.Over) != 3 {
		t.Errorf("%+v, over %q", x.Weeks, x.Over)
	}
}

// What is over is what the audit of that very week names.
func TestTheRecordIsOverWhereTheAuditIs(t *testing.T) {
	b := fixtures.New()
	b.House.Limits = model.Limits{DayMinutes: 100, DaySessions: 1, RunMinutes: 100, RunSessions: 1, WeekMinutes: 100, WeekDays: 1, RowDates: 1}
	b.Also(worked("09:00-10:00", "10:10-11:10"))
	b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+1, "09:00-10:00")
	b.Now = model.Instant{Date: fixtures.Monday + 6}
	w := b.Week()
	var want []string
	for _, v := range w.Audit(&model.Plan{Turns: make([]*model.Turn, len(w.Rides))}) {
		if slices.Contains([]string{"day's work", "run of work", "week's work"}, v.Rule.Name) {
			want = append(want, v.Words)
		}
	}
	got := b.Workloads(fixtures.Monday, fixtures.Monday+6, b.Now)[0].Over
	if !slices.Equal(got, want) || len(got) != 7 {
		t.Errorf("got %q\nwant %q", got, want)
	}
}

func TestWhatWasPlannedStandsBesideWhatWasDone(t *testing.T) {
	x := record(t, worked("09:00-10:00", "11:00-12:00"), func(b *fixtures.Barn) {
		b.Works = append(b.Works, &model.Work{Horse: b.Star, Kind: "schooling", On: fixtures.Monday, Start: fixtures.At("08:00"), End: fixtures.At("08:20")})
		b.Ridden = []*model.Ridden{{Date: fixtures.Monday, By: b.Ann,
			Differs: []model.Differs{{How: model.NoShow, Lesson: b.Lessons[0], Rider: b.Mia}, {How: model.CutShort, Lesson: b.Lessons[1], Rider: b.Mia, End: fixtures.At("11:45")}},
			Works:   []*model.Work{{Horse: b.Star, Kind: "lunging", On: fixtures.Monday, Start: fixtures.At("14:00"), End: fixtures.At("14:10")}}}}
	})
	d := x.Dates[0]
	if model.InHours(d.PlannedWork) != "2 h 20" || model.InHours(d.Work) != "1 h 15" || d.Closed == nil || d.Closed.By.Name != "Ann" {
		t.Errorf("planned %s, done %s, %+v", model.InHours(d.PlannedWork), model.InHours(d.Work), d.Closed)
	}
	if got := whats(d.Planned) + "; " + whats(d.Done); got != "schooling, Mon 23 Nov 09:00, Mon 23 Nov 11:00; schooling, Mon 23 Nov 11:00, lunging" {
		t.Error(got)
	}
}

func whats(pieces []model.WorkPiece) string {
	var all []string
	for _, p := range pieces {
		all = append(all, p.What)
	}
	return strings.Join(all, ", ")
}

func TestWorkThatNobodyDidSinceItsHorseWasOutIsPlannedAlone(t *testing.T) {
	x := record(t, func(b *fixtures.Barn) {
		b.Work(b.Star, fixtures.Monday, "09:00-09:30")
		b.Note(model.Note{Kind: model.NoteHorseOut, Horse: b.Star, Why: model.Lame, At: model.Instant{Date: fixtures.Monday, Minute: 420}})
	})
	if d := x.Dates[0]; len(d.Planned) != 1 || len(d.Done) != 0 || d.Row != 0 || d.Closed != nil {
		t.Errorf("%+v", d)
	}
}

func TestWorkInHoursKeepsWhatAFactorLeaves(t *testing.T) {
	for work, want := range map[int64]string{0: "0 h 00", 90000: "0 h 09", 495000: "0 h 49.5", 361 * 10000: "6 h 01", 36055000: "60 h 05.5"} {
		if got := model.InHours(work); got != want {
			t.Errorf("%d: %s, want %s", work, got, want)
		}
	}
}
