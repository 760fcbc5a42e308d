// Package check holds the library to its own design. Its tests read the source and fail if an import
// runs the wrong way, a package variable changes after init, an exported name has no documentation or no
// Example, the README names something that is not there, or the compiler could give other bits on another
// architecture.
//
// It is a module of its own, so that go test ./... at the top tests the product alone. Beside it stand
// golden (the same numbers always and everywhere), hostile (no input breaks a function, and each refusal names
// its field), even (package placement over all its trees), source (which reads the library for these tests) and the programs that .ci/run calls:
// covered, evidence and nbrun.
//
//	cd internal/check && go test -count=1 ./...
//
// The go command does not see that a file outside this module has changed, so -count=1 it is.
package check
