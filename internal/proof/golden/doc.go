// Package golden records what every exported function gives for a grid of arguments,
// and holds every architecture, and every later version, to the same bits.
//
// testdata/digests.txt has a line for each function: its name, the number of cases and a
// digest of them. testdata/NAME.txt.gz has the rows behind the digests of package NAME,
// one call a line, so that a test that fails can show the first row that differs. Both
// are written anew, after a change that is meant, by
//
//	go test ./internal/proof/golden -update
//
// A row is only what the code did once. What makes it true stands in oracle_test.go, where rows
// are worked out a second time by other means, and in the packages' own tests against
// published values.
package golden
