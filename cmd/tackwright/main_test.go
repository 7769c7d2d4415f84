package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"go/format"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"tackwright/cmd/tackwright/internal/command"
)

var update = flag.Bool("update", false, "write what the scripts and the manual expect anew")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"tackwright": atFixedTime, "interrupted": interrupted, "interrupted-midway": interruptedMidway})
}

// atFixedTime is the program on a computer whose clock stands: at $CLOCK, or on
// a Wednesday morning.
func atFixedTime() { os.Exit(run(context.Background())) }

// interrupted is the program with Ctrl-C pressed as it begins.
func interrupted() {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	os.Exit(run(ctx))
}

// interruptedMidway is the program on a terminal, with Ctrl-C pressed once a
// first plan has been found.
func interruptedMidway() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	os.Exit(runOn(ctx, &presser{ctx: ctx, instead: stop}, true))
}

// presser presses Ctrl-C when it is told how far a goal is, and holds the search
// up until that has been heard.
type presser struct {
	ctx     context.Context
	instead func() // where no program can press it for itself
	pressed bool
}

func (p *presser) Write(text []byte) (int, error) {
	if bytes.Contains(text, []byte("so far")) && !p.pressed {
		p.pressed = true
		me, err := os.FindProcess(os.Getpid())
		if err != nil || me.Signal(os.Interrupt) != nil {
			p.instead()
		}
		<-p.ctx.Done()
	}
	return os.Stderr.Write(text)
}

func run(ctx context.Context) int { return runOn(ctx, os.Stderr, false) }

func runOn(ctx context.Context, errOut io.Writer, terminal bool) int {
	time.Local = time.UTC // of folders that name no time zone
	now := time.Date(2026, 11, 25, 7, 10, 0, 0, time.UTC)
	if s := os.Getenv("CLOCK"); s != "" {
		var err error
		if now, err = time.Parse(time.RFC3339, s); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return command.Failed
		}
	}
	env := command.Env{Now: func() time.Time { return now }, Terminal: terminal, By: os.Getenv("TACKWRIGHT_BY")}
	return command.Run(ctx, env, os.Stdin, os.Stdout, errOut, os.Args[1:])
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", UpdateScripts: *update, RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error { // each has the demo centre at hand
			demo := filepath.Join(env.WorkDir, "sallowdene")
			// Without what the README's first command leaves there.
			return errors.Join(os.CopyFS(demo, os.DirFS("../../examples/sallowdene")),
				os.RemoveAll(filepath.Join(demo, "plans")), os.RemoveAll(filepath.Join(demo, "history")))
		}})
}

// The manual is the package comment, so that it is read where Go's documentation
// is; it says what help says, a file a command.
func TestTheManualSaysWhatHelpSays(t *testing.T) {
	manual := command.Manual()
	for name, text := range manual {
		want, err := format.Source([]byte("/*\n" + text + "*/\npackage main\n"))
		if err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(name, want, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		if got, err := os.ReadFile(name); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what help says: go test ./cmd/tackwright -run Manual -update", name)
		}
	}
	files, err := filepath.Glob("doc*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if manual[name] == "" {
			t.Errorf("%s speaks of no command", name)
		}
	}
}
