//go:build crash

package folder

import (
	"os"
	"strconv"
)

// A program built with the tag crash ends without a word ahead of the n-th thing
// that it does to the disk, where TACKWRIGHT_CRASH_AT is n.
func init() {
	at, err := strconv.Atoi(os.Getenv("TACKWRIGHT_CRASH_AT"))
	if err != nil {
		return
	}
	done := 0
	before = func(string, string) error {
		if done++; done == at {
			die()
		}
		return nil
	}
}

// die kills the process as a loss of power would: nothing that is deferred runs.
func die() {
	if p, err := os.FindProcess(os.Getpid()); err == nil {
		p.Kill()
	}
	select {}
}
