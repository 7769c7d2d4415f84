package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"go/format"
	"os"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"tackwright/cmd/tackwright/internal/command"
)

var update = flag.Bool("update", false, "write what the scripts and the manual expect anew")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"tackwright": atFixedTime, "interrupted": interrupted})
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

func run(ctx context.Context) int {
	time.Local = time.UTC // of folders that name no time zone
	now := time.Date(2026, 11, 25, 7, 10, 0, 0, time.UTC)
	if s := os.Getenv("CLOCK"); s != "" {
		var err error
		if now, err = time.Parse(time.RFC3339, s); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return command.Failed
		}
	}
	env := command.Env{Now: func() time.Time { return now }}
	return command.Run(ctx, env, os.Stdin, os.Stdout, os.Stderr, os.Args[1:])
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", UpdateScripts: *update, RequireExplicitExec: true})
}

// The manual is the package comment, so that it is read where Go's documentation
// is; it says what help says.
func TestTheManualSaysWhatHelpSays(t *testing.T) {
	want, err := format.Source([]byte("/*\n" + command.Manual() + "*/\npackage main\n"))
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("doc.go", want, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("doc.go is not what help says: go test ./cmd/tackwright -run Manual -update")
	}
}
