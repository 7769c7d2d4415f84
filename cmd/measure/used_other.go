//go:build !linux

package main

import "os"

// used is what a process took that has ended: CPU seconds. Memory is told on Linux alone, where its
// unit is known; 0 is not known.
func used(p *os.ProcessState) (cpu float64, memory int64) {
	return (p.UserTime() + p.SystemTime()).Seconds(), 0
}

// spent is the seconds of processor that this process took so far; it is told on Linux alone.
func spent() float64 { return 0 }
