// Package tally is for the tests of the searches: it keeps count of the steps that
// they take. A search gives up when its steps are spent, so a count that changes is an
// answer that changes for some problem past the bounds, and it must be the same on
// every machine. That answers are right is for other tests; a count that is meant to
// change is recorded anew.
package tally

import (
	"encoding/binary"
	"fmt"
	"hash"
	"hash/fnv"
	"testing"
)

// A Tally is the steps of a test, and a hash of them and of the results.
type Tally struct {
	hash  hash.Hash64
	steps int64
}

// New returns a Tally of nothing.
func New() *Tally { return &Tally{hash: fnv.New64a()} }

// Add adds the steps of one problem and what they came to.
func (c *Tally) Add(steps int64, results ...int64) {
	c.steps += steps
	binary.Write(c.hash, binary.BigEndian, steps)
	binary.Write(c.hash, binary.BigEndian, results)
}

// Check compares the tally with one that was recorded.
func (c *Tally) Check(t *testing.T, recorded string) {
	t.Helper()
	if got := fmt.Sprintf("%d %016x", c.steps, c.hash.Sum64()); got != recorded {
		t.Errorf("counted %q, want %q", got, recorded)
	}
}

// Bit returns 1 for true.
func Bit(b bool) int64 {
	if b {
		return 1
	}
	return 0
}
