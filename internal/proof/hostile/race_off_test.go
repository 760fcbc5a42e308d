//go:build !race

package hostile

const raced = false // the race detector does not watch
