package main

import (
	"context"
	"os"
	"os/signal"
	"runtime"
	"time"

	"golang.org/x/term"

	"tackwright/cmd/tackwright/internal/command"
)

func main() {
	// The same folder gives the same plan: with more processors a search can miss a tick (see solver/sat).
	runtime.GOMAXPROCS(1)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends the program at once
	env := command.Env{Now: time.Now, Terminal: term.IsTerminal(int(os.Stderr.Fd())), By: os.Getenv("TACKWRIGHT_BY")}
	os.Exit(command.Run(ctx, env, os.Stdin, os.Stdout, os.Stderr, os.Args[1:]))
}
