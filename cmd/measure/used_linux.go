package main

import (
	"os"
	"syscall"
	"time"
)

// used is what a process took that has ended: CPU seconds, and the most memory that it held, in bytes.
func used(p *os.ProcessState) (cpu float64, memory int64) {
	cpu = (p.UserTime() + p.SystemTime()).Seconds()
	if u, ok := p.SysUsage().(*syscall.Rusage); ok {
		memory = u.Maxrss << 10 // Linux counts it in KiB: getrusage(2)
	}
	return cpu, memory
}

// spent is the seconds of processor that this process took so far.
func spent() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return (time.Duration(u.Utime.Nano()) + time.Duration(u.Stime.Nano())).Seconds()
}
