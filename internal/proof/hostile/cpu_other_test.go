//go:build !unix

package hostile

import "time"

var begin = time.Now()

// spent returns the time since the start, where there is no telling what of it this process had.
func spent() time.Duration { return time.Since(begin) }
