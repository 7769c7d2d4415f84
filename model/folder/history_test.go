package folder

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/model"
)

// told are the changes of history in words, newest first.
func toldHistory(t testing.TB, f *Folder) []string {
	t.Helper()
	changes, err := f.History(100)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, c := range changes {
		out = append(out, fmt.Sprintf("%d %s %s %s", c.Number, instantText(c.At), c.By, c.What))
	}
	return out
}

func closing(f *Folder, minute model.Minute) *model.Ridden {
	return &model.Ridden{Date: monday, By: f.Centre.Persons[0], At: model.Instant{Date: monday, Minute: minute}}
}

func TestHistorySaysWhoDidWhatWhen(t *testing.T) {
	f := openYard(t)
	post(t, f, monday, adaRides)
	noted(t, f, lame(f))
	if err := f.Close(closing(f, 1100)); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Undo(2, f.Centre.Persons[0], tuesdayMorning); err != nil {
		t.Fatal(err)
	}
	want := []string{
		"4 2026-11-24T07:40 Jo Marsh undid note 1: horse out: Duke",
		"3 2026-11-23T18:20 Jo Marsh closed 2026-11-23",
		"2 2026-11-24T07:40 Jo Marsh wrote note 1: horse out: Duke",
		"1 2026-11-23T16:00 Jo Marsh posted version 1, Mon 23 Nov to Sun 29 Nov",
	}
	if d := cmp.Diff(want, toldHistory(t, f)); d != "" {
		t.Error(d)
	}
	if g := reopen(t, f); len(g.Centre.Horses[0].Out) > 0 || len(g.Centre.Notes) != 2 {
		t.Errorf("the note that was undone counts: %v", g.Centre.Horses[0].Out)
	}
}

func TestEveryChangeCanBeUndoneAndTheUndoingToo(t *testing.T) {
	f := openYard(t)
	jo := f.Centre.Persons[0]
	for _, m := range []model.Minute{1000, 1100} {
		if err := f.Close(closing(f, m)); err != nil {
			t.Fatal(err)
		}
	}
	ridden := func() string {
		_, at, _ := strings.Cut(files(t, f.Dir)["ridden/2026-11-23.toml"], "at = 2026-11-23T")
		return strings.TrimSpace(at)
	}
	for _, step := range []struct {
		undo int
		want string // when the record says that the date was closed
	}{
		{0, "16:40"}, // of 2
		{0, ""},      // of 1: there was none
		{4, "16:40"}, // of the last undoing
		{3, "18:20"}, // of the first
	} {
		if _, err := f.Undo(step.undo, jo, tuesdayMorning); err != nil {
			t.Fatal(err)
		}
		if got := ridden(); got != step.want {
			t.Errorf("undoing %d gives %q, want %q", step.undo, got, step.want)
		}
	}
}

func TestWhatCannotBeUndoneIsRefusedWithTheReason(t *testing.T) {
	f := openYard(t)
	jo := f.Centre.Persons[0]
	undo := func(n int, want string) {
		t.Helper()
		_, err := f.Undo(n, jo, tuesdayMorning)
		var refused *RefusedError
		if !errors.As(err, &refused) || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	undo(0, "there is nothing to undo")
	undo(1, "there is no change 1")
	for _, m := range []model.Minute{1000, 1100} {
		if err := f.Close(closing(f, m)); err != nil {
			t.Fatal(err)
		}
	}
	undo(1, "change 1 (closed 2026-11-23) cannot be undone: ridden/2026-11-23.toml has changed since")
	if err := os.WriteFile(filepath.Join(f.Dir, "ridden", "2026-11-23.toml"), []byte("date = 2026-11-23\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	undo(2, "change 2 (closed 2026-11-23) cannot be undone: ridden/2026-11-23.toml has changed since")
	noted(t, f, lame(f))
	if _, err := f.Undo(3, jo, tuesdayMorning); err != nil {
		t.Fatal(err)
	}
	undo(3, "change 3 is undone already, by change 4")
	n := noted(t, f, lame(f))
	by := noted(t, f, &model.Note{By: jo, At: tuesdayMorning, Date: tuesdayMorning.Date, Undoes: n})
	var err error
	if f, err = Open(f.Dir); err != nil {
		t.Fatal(err)
	}
	undo(5, fmt.Sprintf("note %d does not stand already, by note %d", n, by))
}

func TestAFileThatWasEditedByHandIsNeverOverwritten(t *testing.T) {
	for name, c := range map[string]struct {
		file  string
		write func(*Folder) error
	}{
		"what was ridden": {"ridden/2026-11-23.toml", func(f *Folder) error { return f.Close(closing(f, 1200)) }},
		"a note":          {"notes/2026-11-24.toml", func(f *Folder) error { _, err := f.AddNote(lame(f)); return err }},
	} {
		t.Run(name, func(t *testing.T) {
			f := openYard(t)
			if err := c.write(f); err != nil {
				t.Fatal(err)
			}
			const hand = "# by hand\n"
			if err := os.WriteFile(filepath.Join(f.Dir, filepath.FromSlash(c.file)), []byte(hand), 0o644); err != nil {
				t.Fatal(err)
			}
			err := c.write(f)
			var changed *ChangedError
			if !errors.As(err, &changed) || changed.File != c.file || changed.Change != nil || files(t, f.Dir)[c.file] != hand {
				t.Errorf("got %v, and %s", err, files(t, f.Dir)[c.file])
			}
			again, err := Open(f.Dir)
			if err != nil {
				t.Fatal(err)
			}
			if err := c.write(again); c.file != "ridden/2026-11-23.toml" && err != nil {
				t.Errorf("opened again it is refused too: %v", err)
			}
		})
	}
}

func TestANoteIsAddedToWhatOthersNotedMeanwhile(t *testing.T) {
	f, g := openYard(t), (*Folder)(nil)
	g = reopen(t, f)
	for i, x := range []*Folder{f, g, f, g} {
		if n := noted(t, x, lame(x)); n != i+1 {
			t.Errorf("it is note %d, want %d", n, i+1)
		}
	}
	if n := len(reopen(t, f).Centre.Notes); n != 4 {
		t.Errorf("%d notes are there", n)
	}
	if err := f.Close(closing(f, 1100)); err != nil {
		t.Fatal(err)
	}
	var changed *ChangedError
	if err := g.Close(closing(g, 1200)); !errors.As(err, &changed) || changed.Change == nil || changed.Change.What != "closed 2026-11-23" {
		t.Errorf("another's record was written over: %v", err)
	}
}

func TestChangesAreNumberedAcrossTheirDirectories(t *testing.T) {
	f := openYard(t)
	for i := range 101 {
		if err := f.Close(closing(f, model.Minute(600+i))); err != nil {
			t.Fatal(err)
		}
	}
	all := files(t, f.Dir)
	if all["history/0000/000099.toml"] == "" || all["history/0001/000101.toml"] == "" {
		t.Error("a hundred changes are not in a directory of their own")
	}
	// A crash can leave a directory empty.
	if err := os.Mkdir(filepath.Join(f.Dir, "history", "0002"), 0o755); err != nil {
		t.Fatal(err)
	}
	if got := toldHistory(t, f); len(got) != 100 || !strings.HasPrefix(got[0], "101 ") {
		t.Errorf("%d changes, the last %v", len(got), got[0])
	}
	if c, err := f.Undo(0, f.Centre.Persons[0], tuesdayMorning); err != nil || c.Number != 102 || c.Undoes != 101 {
		t.Errorf("%v %v", c, err)
	}
}
