//go:build race

package hostile

const raced = true // the race detector watches
