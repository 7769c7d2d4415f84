package search

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tackwright/model"
	"tackwright/model/folder"
)

var week = Dates{From: model.On(2026, time.October, 12), Days: 7, Limit: time.Minute}

func demo(t *testing.T) *folder.Folder {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "sallowdene")
	if err := os.CopyFS(dir, os.DirFS("../../../../../examples/sallowdene")); err != nil {
		t.Fatal(err)
	}
	f, err := folder.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// here is the other end in this process.
func here(ctx context.Context, in io.Reader, out io.Writer) error {
	return Serve(ctx, in, out, func(_ context.Context, args []string) Answer { return Answer{Out: strings.Join(args, " ")} })
}

func TestAPlanComesBackWithTheProofOfTheWeekHere(t *testing.T) {
	f := demo(t)
	goals := map[string]Progress{}
	w, p, err := Plan(t.Context(), here, f, week, nil, func(x Progress) { goals[x.Goal] = x })
	if err != nil {
		t.Fatal(err)
	}
	if !p.Proof.Proved() || p.Proof.Hash != w.Fingerprint(p) || w.Centre != f.Centre {
		t.Errorf("proof %+v", p.Proof)
	}
	for _, g := range p.Proof.Goals { // the last that is told of each goal is what was reached
		if x, told := goals[g.Name]; told && (x.Best != g.Value || x.Bound != g.Bound) {
			t.Errorf("%s: told %+v, reached %+v", g.Name, x, g)
		}
	}
	if len(goals) < 3 {
		t.Errorf("told of %v", goals)
	}
}

func TestAPlanOfAFolderThatWasChangedMeanwhileIsNotTaken(t *testing.T) {
	f := demo(t)
	other, err := folder.Open(f.Dir)
	if err != nil {
		t.Fatal(err)
	}
	c := other.Centre
	if _, err := other.AddNote(&model.Note{Kind: model.NoteHorseOut, Date: week.From, Horse: c.Horses[0], Why: model.Ill, Hands: model.NoHands,
		By: c.Persons[0], At: model.Instant{Date: week.From, Minute: 420}}); err != nil {
		t.Fatal(err)
	}
	if _, _, err := Plan(t.Context(), here, f, week, nil, func(Progress) {}); !errors.Is(err, ErrChanged) {
		t.Error(err)
	}
}

func TestASearchThatIsStoppedGivesTheBestSoFar(t *testing.T) {
	stop := make(chan struct{})
	close(stop)
	w, p, err := Plan(t.Context(), here, demo(t), week, stop, func(Progress) {})
	if err != nil {
		t.Fatal(err)
	}
	if broken := model.Broken(w.Audit(p)); len(broken) > 0 {
		t.Errorf("it breaks %v", broken)
	}
}

func TestASearchThatDiesIsAnError(t *testing.T) {
	dies := func(ctx context.Context, in io.Reader, out io.Writer) error { return errors.New("killed") }
	if _, _, err := Plan(t.Context(), dies, demo(t), week, nil, func(Progress) {}); err == nil || !strings.Contains(err.Error(), "without an answer") {
		t.Error(err)
	}
}

func TestACommandIsAnsweredAsItIsTyped(t *testing.T) {
	if a, err := Command(t.Context(), here, []string{"why", "folder", "Alban"}); err != nil || a.Out != "why folder Alban" {
		t.Errorf("%+v, %v", a, err)
	}
}
