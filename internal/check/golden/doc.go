// Package golden holds the numbers of the whole library: a fixed, hand-chosen grid of inputs
// for each package, and what came of each, one case a line, in testdata/NAME.txt.
//
// A line has exact figures only: lengths, areas, masses and powers in base units (nm, um2, ng, mW),
// floats with all their digits, colors in hex, and for what is refused one word. It has no name of a
// Go type, no struct and no sentence, so that a renamed function, a new field or a better text
// leaves every line as it is.
//
// The rule for whoever renames an API: mend the calls in NAME_test.go; testdata stays as it is, byte for
// byte. A function that is taken away takes its lines with it. A number that is meant to move is recorded by
//
//	go test ./golden -update
//
// and the commit says which lines moved, and why.
//
// A recorded line is only what the code did once. What makes it true is oracle_test.go: it reads the
// recorded text, calls nothing of the library, and works the lines out again by other means.
package golden
