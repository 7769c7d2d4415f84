package folder

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"tackwright/model"
)

func TestPlansOfADateAreFoundByTheNamesThatTheyAreWrittenUnder(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "plans"), 0o755); err != nil {
		t.Fatal(err)
	}
	monday := model.On(2026, 11, 23)
	week := func(from, until model.Date) string { return planName(&model.Week{From: from, Until: until}) + ".toml" }
	written := []string{week(monday, monday+6), week(monday+1, monday+1), week(monday+2, monday+6), week(monday+7, monday+13)}
	for _, name := range append(written, "2026-11-23-edited-1.toml", "2026-11-31.toml", "notes.toml") {
		if err := os.WriteFile(filepath.Join(dir, "plans", name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		date model.Date
		want []string
	}{
		{monday, written[:1]},
		{monday + 1, written[:2]},
		{monday + 2, []string{written[0], written[2]}},
		{monday + 6, []string{written[0], written[2]}},
		{monday + 7, written[3:]},
		{monday - 1, nil},
	} {
		got, err := PlansOn(dir, c.date)
		for i := range got {
			got[i] = filepath.Base(got[i])
		}
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q; %v", c.date, got, c.want, err)
		}
	}
}

func TestAFolderWithoutPlansHasNone(t *testing.T) {
	if got, err := PlansOn(t.TempDir(), model.On(2026, 11, 23)); len(got) != 0 || err != nil {
		t.Errorf("%q, %v", got, err)
	}
}
