package main

import (
	"context"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"time"

	"golang.org/x/term"

	"tackwright/cmd/tackwright/internal/command"
)

func main() {
	// The same folder gives the same plan: with more processors a search can miss a tick (see solver/sat). While
	// it waits for what is worked out beside it takes them all.
	runtime.GOMAXPROCS(1)
	// The largest weeks need about 300 MB, and twice that would be taken before garbage is collected.
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(380 << 20)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends the program at once
	env := command.Env{Now: time.Now, Terminal: term.IsTerminal(int(os.Stderr.Fd())), By: os.Getenv("TACKWRIGHT_BY")}
	os.Exit(command.Run(ctx, env, os.Stdin, os.Stdout, os.Stderr, os.Args[1:]))
}
