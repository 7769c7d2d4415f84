package folder

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"tackwright/model"
)

func TestANewFolderHasNoMistakeAndNothingToFindOnAnyDay(t *testing.T) {
	for _, today := range []model.Date{model.On(2026, 11, 23), model.On(2028, 2, 29), model.On(2026, 12, 31)} {
		dir := filepath.Join(t.TempDir(), "larkfield")
		if err := New(dir, `Larkfield "the farm"`, today); err != nil {
			t.Fatal(err)
		}
		f, err := Open(dir)
		if err != nil {
			t.Fatal(err)
		}
		if got := shown(f.Mistakes()) + shown(f.Findings(today)); got != "" {
			t.Errorf("on %s:\n%s", today, got)
		}
		if f.Centre.Name != `Larkfield "the farm"` {
			t.Errorf("the centre is called %s", f.Centre.Name)
		}
		w := f.Centre.Week(today, 7, model.Instant{})
		if len(w.Rides) != 1 || w.Rides[0].Date().Weekday() != time.Tuesday {
			t.Errorf("the example has one ride a week, on Tuesday; got %v", w.Rides)
		}
	}
}

func TestANewFolderIsRefusedWhereThereAreFiles(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, ".gitignore"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := New(dir, "", 1); err == nil {
		t.Error("a centre without a name was made")
	}
	if err := New(dir, "Larkfield", model.On(2026, 11, 23)); err != nil {
		t.Errorf("a hidden file is no hindrance: %v", err)
	}
	if err := New(dir, "Larkfield", model.On(2026, 11, 23)); err == nil {
		t.Error("a folder with a centre was written over")
	}
}
