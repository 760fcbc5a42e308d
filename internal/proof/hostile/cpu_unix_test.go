//go:build unix

package hostile

import (
	"syscall"
	"time"
)

// spent returns the processor time that this process has used: what else the machine does is not in it.
func spent() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
