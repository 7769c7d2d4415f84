// Command measure sets our solver, and its peers where they are installed, to weeks of a pinned
// generator and to published instances, and prints what they reached as a table. It is for those who
// work on this program. README.md says how to read what it prints.
package main

import (
	"context"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
)

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(380 << 20) // as the program has it
	}
	runtime.GOMAXPROCS(1) // as well, while it searches
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends the program at once
	os.Exit(run(ctx, os.Stdout, os.Stderr, os.Args[1:]))
}
