package folder

import (
	"errors"
	"fmt"
	"os"
	"path"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// watch has do called ahead of everything that is done to the disk.
func watch(t testing.TB, do func(doing, file string) error) {
	t.Helper()
	old := before
	before = do
	t.Cleanup(func() { before = old })
}

// act is one of the writes of the folder.
type act struct {
	name string
	do   func(*Folder) error
}

// acts are all writes, each of which a folder in which each was done once takes.
var acts = []act{
	{"note", func(f *Folder) error { _, err := f.AddNote(lame(f)); return err }},
	{"post", func(f *Folder) error {
		w, p := onGround(f, monday)
		_, err := f.Post(w, p, f.Centre.Persons[0], tuesdayMorning)
		return err
	}},
	{"close", func(f *Folder) error { return f.Close(closing(f, 1200)) }},
	{"undo a note", func(f *Folder) error { return undone(f, "wrote note") }},
	{"undo a post", func(f *Folder) error { return undone(f, "posted") }},
	{"undo what was ridden", func(f *Folder) error { return undone(f, "closed") }},
	{"forget", func(f *Folder) error {
		_, err := f.Forget(f.Centre.Riders[0], f.Centre.Persons[0], tuesdayMorning)
		return err
	}},
	{"pencil", func(f *Folder) error {
		w, p := adaRides(f, monday)
		_, _, err := f.WritePlan(w, p)
		return err
	}},
}

// undone undoes the latest change of a kind.
func undone(f *Folder, what string) error {
	all, err := f.History(100)
	if err != nil {
		return err
	}
	for _, c := range all {
		if strings.HasPrefix(c.What, what) {
			_, err := f.Undo(c.Number, f.Centre.Persons[0], tuesdayMorning)
			return err
		}
	}
	return fmt.Errorf("nothing was %s", what)
}

// lived is a folder in which a plan, a note and a date closed are acknowledged.
func lived(t testing.TB) *Folder {
	livedOnce.Do(func() {
		f := live(t)
		livedIn = files(t, f.Dir)
	})
	a := &txtar.Archive{}
	for name, text := range livedIn {
		a.Files = append(a.Files, txtar.File{Name: name, Data: []byte(text)})
	}
	return openTxtar(t, a)
}

var (
	livedOnce sync.Once
	livedIn   map[string]string
)

func live(t testing.TB) *Folder {
	f := openYard(t)
	post(t, f, monday, adaRides)
	f = reopen(t, f)
	noted(t, f, &model.Note{Kind: model.NoteRiderAway, By: f.Centre.Persons[0], At: tuesdayMorning, Rider: f.Centre.Riders[1]})
	if err := f.Close(closing(f, 1100)); err != nil {
		t.Fatal(err)
	}
	return reopen(t, f)
}

// says is what an open folder knows: its records, and history's last change.
func says(t testing.TB, f *Folder) string {
	t.Helper()
	var b strings.Builder
	fmt.Fprintln(&b, standing(f, monday+1))
	for _, n := range f.Centre.Notes {
		fmt.Fprintf(&b, "note %d %q undoes %d\n", n.Number, n.Kind, n.Undoes)
	}
	for _, x := range f.Centre.Ridden {
		fmt.Fprintf(&b, "closed %s at %s\n", x.Date, x.At.Minute)
	}
	history, err := f.History(100)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range history {
		fmt.Fprintf(&b, "%d %s\n", c.Number, c.What)
	}
	return b.String()
}

// A disk that is full, one that fails and a folder that may not be written all
// look alike: some step fails, from then on every one that needs room.
func TestADiskThatTakesNoMoreLosesNothing(t *testing.T) {
	for _, wrong := range []error{syscall.ENOSPC, syscall.EROFS} {
		for _, a := range acts {
			if wrong == syscall.EROFS && a.name != "note" && a.name != "undo what was ridden" {
				continue // the others go the same way
			}
			steps, refused := 1<<30, 0
			for n := 1; n <= steps; n++ {
				f := lived(t)
				was := says(t, f)
				done := 0
				watch(t, func(doing, file string) error {
					if done++; done >= n && !(wrong == syscall.ENOSPC && (doing == "remove" || doing == "rename")) {
						return wrong
					}
					return nil
				})
				err := a.do(f)
				before = func(string, string) error { return nil }
				var disk *DiskError
				is := says(t, reopen(t, f))
				switch {
				case err == nil && done < n:
					steps = n // it came through
				case err == nil && is == was && a.name != "pencil":
					t.Errorf("%s, %v from step %d on: it was acknowledged and is not there", a.name, wrong, n)
				case err != nil && (!errors.As(err, &disk) || !errors.Is(err, wrong)):
					t.Errorf("%s, step %d: the error is %v", a.name, n, err)
				case err != nil && is != was && !disk.Uncertain:
					t.Errorf("%s, %v from step %d on: it was refused and is there:\n%s", a.name, wrong, n, cmp.Diff(was, is))
				case err != nil:
					refused++
				}
				if n == steps || err == nil || disk.Uncertain {
					continue
				}
				if err := a.do(reopen(t, f)); err != nil {
					t.Errorf("%s, step %d: with room again it is refused: %v", a.name, n, err)
				}
				for name := range files(t, f.Dir) {
					if strings.HasPrefix(path.Base(name), halfDone) || name == journalFile {
						t.Errorf("%s, step %d leaves %s", a.name, n, name)
					}
				}
			}
			if steps < 8 || refused < 5 {
				t.Errorf("%s has %d steps, %d of which were refused", a.name, steps, refused)
			}
		}
	}
}

func TestAFolderThatMayNotBeWrittenSaysSo(t *testing.T) {
	f := openYard(t)
	if err := os.WriteFile(f.Dir+"/history", nil, 0o444); err != nil { // a file where a directory is to be
		t.Fatal(err)
	}
	_, err := f.AddNote(lame(f))
	var disk *DiskError
	if !errors.As(err, &disk) || !strings.HasPrefix(err.Error(), "nothing was changed, because the folder cannot be written: ") {
		t.Errorf("got %v", err)
	}
}

// What a loss of power takes is what was not brought to the disk. So a file is
// renamed only once it is there, and a write ends only once its names are.
func TestNothingIsAcknowledgedBeforeItIsOnTheDisk(t *testing.T) {
	for _, a := range acts {
		f := lived(t)
		unsynced, unnamed := map[string]bool{}, map[string]bool{}
		renames := 0
		watch(t, func(doing, file string) error {
			switch dir := path.Dir(file) + "/"; doing {
			case "write":
				unsynced[file] = file != holderFile // which is of no account
			case "rename":
				renames++
				if unsynced[file] {
					t.Errorf("%s: %s is renamed before it is on the disk", a.name, file)
				}
				unnamed[dir] = true
			case "remove":
				unnamed[dir] = true
			case "sync":
				delete(unsynced, file)
				delete(unnamed, file)
			}
			return nil
		})
		if err := a.do(f); err != nil {
			t.Fatal(err)
		}
		for dir := range unnamed {
			t.Errorf("%s: the names in %s may be lost", a.name, dir)
		}
		if renames == 0 {
			t.Errorf("%s renames nothing", a.name)
		}
	}
}

func TestWhoIsRefusedIsToldWhoWrites(t *testing.T) {
	f := openYard(t)
	old := lockWait
	lockWait = 20 * time.Millisecond
	t.Cleanup(func() { lockWait = old })
	release, err := disk(f.Dir).lock("Kim Alder")
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.AddNote(lame(f))
	host, _ := os.Hostname()
	var busy *BusyError
	if !errors.As(err, &busy) || busy.By != "Kim Alder" || busy.Host != host || time.Since(busy.Since) > time.Minute {
		t.Errorf("got %v", err)
	}
	release()
	noted(t, f, lame(f))
	// What somebody who died left is of no account.
	if err := os.WriteFile(disk(f.Dir).path(holderFile), []byte(`{"By":"a gh`), 0o644); err != nil {
		t.Fatal(err)
	}
	noted(t, f, lame(f))
}

// Whoever opens the folder sees each change whole, also while it is made.
func TestReadersSeeEachChangeWhole(t *testing.T) {
	f := openYard(t)
	var wait sync.WaitGroup
	stop := make(chan bool)
	wait.Go(func() {
		defer close(stop)
		for range 40 {
			g, err := Open(f.Dir)
			if err == nil {
				w, p := onGround(g, monday)
				_, err = g.Post(w, p, g.Centre.Persons[0], tuesdayMorning)
			}
			if err != nil {
				t.Error(err)
			}
		}
	})
	opened := 0
	for going := true; going; opened++ {
		select {
		case <-stop:
			going = false
		default:
		}
		g, err := Open(f.Dir)
		if err != nil {
			t.Fatal(err)
		}
		if len(g.Mistakes()) > 0 || len(g.Centre.Posted) != g.opened {
			t.Fatalf("change %d is there, and %d versions: %s", g.opened, len(g.Centre.Posted), shown(g.Mistakes()))
		}
	}
	wait.Wait()
	if n := len(reopen(t, f).Centre.Posted); n != 40 || opened < 10 {
		t.Errorf("%d versions, opened %d times", n, opened)
	}
}

func TestAJournalThatCannotBeReadStopsNothing(t *testing.T) {
	f := lived(t)
	was := says(t, f)
	if err := disk(f.Dir).put(journalFile, []byte(`{"Files":[{"Na`)); err != nil {
		t.Fatal(err)
	}
	g := reopen(t, f)
	if is := says(t, g); is != was {
		t.Error(cmp.Diff(was, is))
	}
	noted(t, g, lame(g))
	if _, there := files(t, f.Dir)[journalFile]; there {
		t.Error("it is still there")
	}
}

// A change that stands is completed by the next who writes, but for a file that
// somebody edited meanwhile: that stays as it is.
func TestAFileEditedAfterACrashIsLeftAsItIs(t *testing.T) {
	f := lived(t)
	fail := errors.New("the power fails")
	watch(t, func(doing, file string) error {
		if doing == "rename" && file == "notes/2026-11-24.toml" {
			return fail
		}
		return nil
	})
	noted(t, f, lame(f))
	before = func(string, string) error { return nil }
	if g := reopen(t, f); len(g.Centre.Notes) != 2 {
		t.Error("the note is not there before its file is in place")
	}
	const hand = "# by hand\n"
	if err := os.WriteFile(disk(f.Dir).path("notes/2026-11-24.toml"), []byte(hand), 0o644); err != nil {
		t.Fatal(err)
	}
	g := reopen(t, f)
	if n := len(g.Centre.Notes); n != 0 {
		t.Errorf("the edit does not count: there are %d notes", n)
	}
	if err := g.Close(closing(g, 1200)); err != nil {
		t.Fatal(err)
	}
	if got := files(t, f.Dir)["notes/2026-11-24.toml"]; got != hand {
		t.Errorf("the edit is written over: %s", got)
	}
}
