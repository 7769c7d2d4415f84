package main

import (
	"context"
	"os"
	"os/signal"
	"time"

	"tackwright/cmd/tackwright/internal/command"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends the program at once
	env := command.Env{Now: time.Now, Terminal: isTerminal(os.Stderr)}
	os.Exit(command.Run(ctx, env, os.Stdin, os.Stdout, os.Stderr, os.Args[1:]))
}

func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
