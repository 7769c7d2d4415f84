//go:build crash

package folder

import (
	"bufio"
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"tackwright/model"
)

var kills = flag.Int("kills", 40, "how many times a writer is killed at a random moment")

// The test's program is also the writer that is killed: with these set it writes
// into a folder, and is no test.
const (
	childDir = "TACKWRIGHT_CHILD_DIR"
	childAct = "TACKWRIGHT_CHILD_ACT" // "": all of them, over and over
)

func TestMain(m *testing.M) {
	if dir := os.Getenv(childDir); dir != "" {
		if err := child(dir, os.Getenv(childAct)); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

func child(dir, name string) error {
	for i := 0; ; i++ {
		f, err := Open(dir)
		if err != nil {
			return err
		}
		if name != "" {
			a := acts[slices.IndexFunc(acts, func(a act) bool { return a.name == name })]
			return a.do(f)
		}
		switch i % 3 {
		case 0, 1:
			number, err := f.AddNote(lame(f))
			if err != nil {
				return err
			}
			fmt.Println("note", number)
		case 2:
			w, p := onGround(f, monday)
			version, err := f.Post(w, p, f.Centre.Persons[0], tuesdayMorning)
			if err != nil {
				return err
			}
			fmt.Println("version", version)
		}
	}
}

// writer is the command that writes into a folder, and dies ahead of the n-th
// thing that it does to the disk.
func writing(t testing.TB, dir, name string, n int) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self)
	c.Env = append(os.Environ(), childDir+"="+dir, childAct+"="+name, "TACKWRIGHT_CRASH_AT="+strconv.Itoa(n))
	return c
}

// cleanAfter writes once more and looks for what a crash left.
func cleanAfter(t *testing.T, f *Folder) {
	t.Helper()
	noted(t, f, lame(f))
	for name := range files(t, f.Dir) {
		if strings.HasPrefix(path.Base(name), halfDone) || name == journalFile {
			t.Errorf("%s is left", name)
		}
	}
}

func TestAWriterKilledAtAnyStepLeavesTheChangeWholeOrNotAtAll(t *testing.T) {
	for _, a := range acts {
		full := lived(t)
		if err := a.do(full); err != nil {
			t.Fatal(err)
		}
		is := says(t, reopen(t, full))
		killed, stood := 0, 0
		for n := 1; ; n++ {
			f := lived(t)
			was := says(t, f)
			var told bytes.Buffer
			c := writing(t, f.Dir, a.name, n)
			c.Stderr = &told
			if err := c.Run(); err == nil {
				break // it came through
			} else if told.Len() > 0 || c.ProcessState.Exited() {
				t.Fatalf("%s, step %d: it ended by itself: %v %s", a.name, n, err, &told)
			}
			killed++
			g := reopen(t, f)
			got := says(t, g)
			if got != was && got != is {
				t.Errorf("%s, killed at step %d: it is neither as before nor as after:\n%s", a.name, n, cmp.Diff(was, got))
			}
			if got == is && is != was {
				stood++
			}
			cleanAfter(t, g)
		}
		t.Logf("%s: killed at %d steps; after %d of them the change stood", a.name, killed, stood)
		if killed < 8 || stood == 0 && a.name != "pencil" {
			t.Errorf("%s was killed %d times and stood %d times", a.name, killed, stood)
		}
	}
}

func TestNothingAcknowledgedIsLostAtARandomMoment(t *testing.T) {
	var f *Folder
	acknowledged, lost := 0, 0
	var note, version int
	for i := range *kills {
		if i%20 == 0 { // so that the folder stays small, and opens fast
			f = lived(t)
			note, version = 1, 1
		}
		c := writing(t, f.Dir, "", 0)
		var wrong bytes.Buffer
		c.Stderr = &wrong
		out, err := c.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.AfterFunc(time.Duration(rand.IntN(60_000))*time.Microsecond, func() { c.Process.Kill() })
		for lines := bufio.NewScanner(out); lines.Scan(); acknowledged++ {
			kind, number, _ := strings.Cut(lines.Text(), " ")
			n, err := strconv.Atoi(number)
			if err != nil {
				break // it was killed while it said so
			}
			if kind == "note" {
				note = n
			} else {
				version = n
			}
		}
		c.Wait()
		if wrong.Len() > 0 {
			t.Fatal(wrong.String())
		}
		g := reopen(t, f)
		posted := g.Centre.Posted[len(g.Centre.Posted)-1].Version
		has := slices.ContainsFunc(g.Centre.Notes, func(n *model.Note) bool { return n.Number == note })
		if !has || posted < version || len(g.Centre.Notes) < note {
			lost++
			t.Errorf("note %d and version %d were acknowledged; there are %d notes and version %d", note, version, len(g.Centre.Notes), posted)
		}
	}
	cleanAfter(t, reopen(t, f))
	t.Logf("%d kills, %d changes acknowledged, %d folders that had lost any", *kills, acknowledged, lost)
	if acknowledged < *kills/4 {
		t.Errorf("only %d changes were acknowledged in %d runs", acknowledged, *kills)
	}
}
