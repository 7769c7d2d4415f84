package folder

import (
	"os"
	"path/filepath"
	"sync"
	"testing"

	"tackwright/model"
)

var pullDay = model.On(2026, 11, 25)

func tickedAt(minute model.Minute) model.Instant {
	return model.Instant{Date: pullDay, Minute: minute}
}

func TestWhatIsTickedIsTickedUntilItIsTakenBack(t *testing.T) {
	f := openYard(t)
	for _, x := range []Tick{{What: "Barley 09:50 S10", At: tickedAt(500), By: "Jo Marsh"}, {What: "Barley 09:50 G8", At: tickedAt(501)}, {What: "Barley 09:50 S10", Off: true, At: tickedAt(502)}} {
		if err := f.AddTick(pullDay, x); err != nil {
			t.Fatal(err)
		}
	}
	got, err := reopen(t, f).Ticked(pullDay)
	if err != nil || len(got) != 1 || got["Barley 09:50 G8"].At != tickedAt(501) {
		t.Errorf("ticked: %v, %v", got, err)
	}
	if other, err := f.Ticked(pullDay + 1); err != nil || len(other) != 0 {
		t.Errorf("on the next day: %v, %v", other, err)
	}
}

func TestTwoSittingsThatTickAtOnceLoseNothing(t *testing.T) {
	f := openYard(t)
	var all sync.WaitGroup
	for _, by := range []string{"Jo", "Sam"} {
		f := reopen(t, f)
		all.Go(func() {
			for i := range 10 {
				if err := f.AddTick(pullDay, Tick{What: by + model.Minute(i).String(), At: tickedAt(600), By: by}); err != nil {
					t.Error(err)
				}
			}
		})
	}
	all.Wait()
	if got, err := reopen(t, f).Ticked(pullDay); err != nil || len(got) != 20 {
		t.Errorf("%d are ticked of 20, %v", len(got), err)
	}
}

func TestTicksAreNoPartOfTheFolderThatIsChecked(t *testing.T) {
	f := openYard(t)
	before := len(reopen(t, f).Findings(0))
	if err := os.MkdirAll(filepath.Join(f.Dir, "ticks"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(f.Dir, ticksName(pullDay)), []byte("torn = [\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	f = reopen(t, f)
	if got, err := f.Ticked(pullDay); err != nil || len(got) != 0 || len(f.Findings(0)) != before || len(f.Mistakes()) > 0 {
		t.Errorf("ticked %v, %v; %d findings, not %d; mistakes: %v", got, err, len(f.Findings(0)), before, f.Mistakes())
	}
}
